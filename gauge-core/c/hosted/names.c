#include "hosted/names.h"

#include "port/codes.h"
#include "port/registers.h"
#include "settings/gauge_settings.h"

#define CODE_AS_NAME(group, name) #name,
#define REGISTER_AS_NAME(name, unit) #name,
#define REGISTER_AS_UNIT(name, unit) unit,
#define SETTING_AS_KEY(name, key, unit, smallest, largest, usual) key,
#define SETTING_AS_UNIT(name, key, unit, smallest, largest, usual) unit,

static const char *const COMMANDS[] = {COMMAND_LIST(CODE_AS_NAME)};
static const char *const OUTCOMES[] = {COMMAND_OUTCOME_LIST(CODE_AS_NAME)};
static const char *const OFF_TIMES[] = {OFF_TIME_LIST(CODE_AS_NAME)};
static const char *const EVENTS[] = {EVENT_LIST(CODE_AS_NAME)};
static const char *const REGISTERS[] = {REGISTER_LIST(REGISTER_AS_NAME)};
static const char *const UNITS_OF_REGISTERS[] = {REGISTER_LIST(REGISTER_AS_UNIT)};
static const char *const KEYS[] = {SETTING_LIST(SETTING_AS_KEY)};
static const char *const UNITS_OF_SETTINGS[] = {SETTING_LIST(SETTING_AS_UNIT)};

const struct name_table COMMAND_NAMES = {COMMANDS, COMMAND_COUNT};
const struct name_table OUTCOME_NAMES = {OUTCOMES, OUTCOME_COUNT};
const struct name_table OFF_TIME_NAMES = {OFF_TIMES, OFF_TIME_COUNT};
const struct name_table EVENT_NAMES = {EVENTS, EVENT_COUNT};
const struct name_table REGISTER_NAMES = {REGISTERS, REGISTER_COUNT};
const struct name_table REGISTER_UNITS = {UNITS_OF_REGISTERS, REGISTER_COUNT};
const struct name_table SETTING_KEYS = {KEYS, SETTING_COUNT};
const struct name_table SETTING_UNITS = {UNITS_OF_SETTINGS, SETTING_COUNT};

static char folded(char letter)
{
    if (letter >= 'A' && letter <= 'Z') {
        return (char)(letter - 'A' + 'a');
    }
    return (char)(letter == '_' ? '-' : letter);
}

static bool equal(const char *one, const char *other)
{
    while (*one != '\0' && folded(*one) == folded(*other)) {
        one++;
        other++;
    }
    return *one == '\0' && *other == '\0';
}

int number_of_name(const struct name_table *table, const char *name)
{
    for (int i = 0; i < table->count; i++) {
        if (equal(table->names[i], name)) {
            return i;
        }
    }
    return -1;
}

void hyphen_name(const struct name_table *table, int number, char text[64])
{
    const char *name = table->names[number];
    int i = 0;
    for (; name[i] != '\0' && i < 63; i++) {
        text[i] = folded(name[i]);
    }
    text[i] = '\0';
}
