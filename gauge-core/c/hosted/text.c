#include "hosted/text.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#include "fixed/fixed_math.h"
#include "hosted/csv.h"
#include "hosted/names.h"

void text_receive(struct text_line *line)
{
    if (fgets(line->bytes, sizeof line->bytes, stdin) == NULL) {
        link_break("standard input ended before a line");
    }
    line->bytes[strcspn(line->bytes, "\r\n")] = '\0';
    line->count = 0;
    char *place = line->bytes;
    while (line->count < TEXT_MOST_WORDS) {
        line->words[line->count++] = place;
        char *space = strchr(place, ' ');
        if (space == NULL) {
            break;
        }
        *space = '\0';
        place = space + 1;
    }
}

static void need(const struct text_line *line, int count)
{
    if (line->count < count) {
        link_break("a line has fewer words than its kind has to have");
    }
}

static int64_t number_of(const char *text)
{
    int64_t value = 0;
    if (!parse_int64(text, &value)) {
        link_break("a whole number was expected in a line");
    }
    return value;
}

static uint32_t bits_of(const char *text)
{
    uint32_t bits = 0;
    if (!parse_bits32(text, &bits)) {
        link_break("a number of 32 bits was expected in a line");
    }
    return bits;
}

static int code_of(const struct name_table *table, const char *name)
{
    int number = number_of_name(table, name);
    if (number < 0) {
        link_break("a line holds a name that is not in its table");
    }
    return number;
}

/* tick SHUNT VOLTAGE TEMPERATURE CLOCK */
static struct sample sample_of(const struct text_line *line)
{
    need(line, 5);
    bool absent = strcmp(line->words[3], "-") == 0;
    return (struct sample){
        int32_from_bits(bits_of(line->words[1])),
        int32_from_bits(bits_of(line->words[2])),
        absent ? TEMPERATURE_ABSENT : int32_from_bits(bits_of(line->words[3])),
        bits_of(line->words[4]),
    };
}

static void parse_ticks(struct text_line *line, struct link_message *message)
{
    int64_t count = number_of(line->words[1]);
    if (count < 1 || count > LINK_MOST_TICKS) {
        link_break("a batch has no tick, or more than the hello asked for");
    }
    message->count = (int)count;
    for (int i = 0; i < message->count; i++) {
        text_receive(line);
        if (strcmp(line->words[0], "tick") != 0) {
            link_break("a batch holds a line that is no tick");
        }
        message->samples[i] = sample_of(line);
    }
}

void text_receive_message(struct link_message *message)
{
    static struct text_line line;
    text_receive(&line);
    const char *word = line.words[0];
    message->count = 1;
    if (strcmp(word, "tick") == 0) {
        message->kind = LINK_TICKS;
        message->samples[0] = sample_of(&line);
    } else if (strcmp(word, "ticks") == 0) {
        need(&line, 2);
        message->kind = LINK_TICKS;
        parse_ticks(&line, message);
    } else if (strcmp(word, "set") == 0) {
        need(&line, 3);
        message->kind = LINK_SET;
        message->setting_numbers[0] = code_of(&SETTING_KEYS, line.words[1]);
        message->setting_values[0] = number_of(line.words[2]);
    } else if (strcmp(word, "power") == 0) {
        need(&line, 3);
        message->kind = LINK_POWER;
        message->number = code_of(&OFF_TIME_NAMES, line.words[1]);
        message->argument = number_of(line.words[2]);
    } else if (strcmp(word, "command") == 0) {
        need(&line, 3);
        message->kind = LINK_COMMAND;
        message->number = code_of(&COMMAND_NAMES, line.words[1]);
        message->argument = number_of(line.words[2]);
    } else if (strcmp(word, "change") == 0) {
        message->kind = LINK_CHANGE;
    } else if (strcmp(word, "registers") == 0) {
        message->kind = LINK_ASK_REGISTERS;
    } else if (strcmp(word, "end") == 0) {
        message->kind = LINK_END;
    } else {
        link_break("a line begins with a word that the bench does not say here");
    }
}

void text_put_values(const int64_t *values, int count)
{
    for (int i = 0; i < count; i++) {
        (void)printf(" %" PRId64, values[i]);
    }
}

void text_put_place(int place)
{
    if (place > 0) {
        (void)printf("@%d ", place);
    }
}

void text_put_bytes(const uint8_t *bytes, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        (void)printf("%02x", (unsigned)bytes[i]);
    }
}

static int nibble(char digit)
{
    if (digit >= '0' && digit <= '9') {
        return digit - '0';
    }
    if (digit >= 'a' && digit <= 'f') {
        return digit - 'a' + 10;
    }
    return digit >= 'A' && digit <= 'F' ? digit - 'A' + 10 : -1;
}

int text_parse_bytes(const char *text, uint8_t *bytes, size_t count)
{
    if (strlen(text) != 2 * count) {
        return 0;
    }
    for (size_t i = 0; i < count; i++) {
        int high = nibble(text[2 * i]);
        int low = nibble(text[2 * i + 1]);
        if (high < 0 || low < 0) {
            return 0;
        }
        bytes[i] = (uint8_t)(high * 16 + low);
    }
    return 1;
}
