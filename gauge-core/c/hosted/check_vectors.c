#include "hosted/check_vectors.h"

#include <inttypes.h>
#include <string.h>

#include "fixed/fixed_math.h"
#include "gauge/gauge.h"
#include "hosted/csv.h"
#include "hosted/names.h"

/* Columns before the registers: row, kind, word, argument, clock, shunt, voltage, temperature. */
#define REGISTERS_FROM 8

enum verdict { AGREES = 0, DIFFERS = 1, UNREADABLE = 2 };

/* A memory that answers as store.csv says, and notes the first call that the file does not have. */
struct vector_store {
    struct csv csv;
    bool has_line;
    char trouble[256];
};

static struct gauge tested;
/* The gauge keeps a pointer to one of these while the other is filled for a change. */
static struct gauge_settings kept[2];
static int in_use;
static struct vector_store memory;
static struct csv rows;

static int unreadable(const struct csv *csv, const char *what)
{
    (void)fprintf(stderr, "%s:%ld: %s\n", csv->path, csv->line_number, what);
    return UNREADABLE;
}

static void trouble(struct vector_store *store, const char *operation, int32_t slot,
                    const char *what)
{
    if (store->trouble[0] == '\0') {
        (void)snprintf(store->trouble, sizeof store->trouble,
                       "the memory is asked to %s slot %d: %s", operation, (int)slot, what);
    }
}

/* Takes the line of a call off the file; the answer, and the bytes in hexadecimal. */
static int next_call(struct vector_store *store, const char *operation, int32_t slot,
                     const char **bytes)
{
    int64_t file_slot = 0;
    int64_t answer = 0;
    *bytes = "";
    if (!store->has_line || store->csv.count < 5) {
        trouble(store, operation, slot, "store.csv has no more calls");
        return STORE_FAILED;
    }
    if (strcmp(store->csv.fields[1], operation) != 0 ||
        !parse_int64(store->csv.fields[2], &file_slot) || file_slot != slot ||
        !parse_int64(store->csv.fields[3], &answer)) {
        trouble(store, operation, slot, "store.csv has another call");
        return STORE_FAILED;
    }
    *bytes = store->csv.fields[4];
    return (int)answer;
}

static void pass_call(struct vector_store *store)
{
    store->has_line = csv_next(&store->csv);
}

static int nibble(char digit)
{
    if (digit >= '0' && digit <= '9') {
        return digit - '0';
    }
    return digit >= 'a' && digit <= 'f' ? digit - 'a' + 10 : 0;
}

static uint8_t byte_at(const char *bytes, size_t index)
{
    if (strlen(bytes) < 2 * index + 2) {
        return 0;
    }
    return (uint8_t)(nibble(bytes[2 * index]) * 16 + nibble(bytes[2 * index + 1]));
}

static int store_read(void *context, int32_t slot, uint8_t *destination, size_t count)
{
    struct vector_store *store = context;
    const char *bytes = NULL;
    int answer = next_call(store, "read", slot, &bytes);
    for (size_t i = 0; i < count; i++) {
        destination[i] = byte_at(bytes, i);
    }
    pass_call(store);
    return answer;
}

static int store_erase(void *context, int32_t slot)
{
    struct vector_store *store = context;
    const char *bytes = NULL;
    int answer = next_call(store, "erase", slot, &bytes);
    pass_call(store);
    return answer;
}

static int store_program(void *context, int32_t slot, const uint8_t *source, size_t count)
{
    struct vector_store *store = context;
    const char *bytes = NULL;
    int answer = next_call(store, "program", slot, &bytes);
    if (strlen(bytes) != 2 * count) {
        trouble(store, "program", slot, "the record has another length");
    }
    for (size_t i = 0; i < count; i++) {
        if (byte_at(bytes, i) != source[i]) {
            char what[80];
            (void)snprintf(what, sizeof what, "byte %d is %02x, expected %02x", (int)i,
                           (unsigned)source[i], (unsigned)byte_at(bytes, i));
            trouble(store, "program", slot, what);
            break;
        }
    }
    pass_call(store);
    return answer;
}

static int check_settings(const struct gauge_settings *settings)
{
    enum setting culprit = SETTING_CHEMISTRY;
    if (gauge_settings_check(settings, &culprit) == SETTINGS_GOOD) {
        return AGREES;
    }
    (void)fprintf(stderr, "%s:%ld: no gauge can be built from the setting %s\n", rows.path,
                  rows.line_number, SETTING_KEYS.names[culprit]);
    return UNREADABLE;
}

static int read_settings(const char *folder)
{
    in_use = 0;
    gauge_settings_init(&kept[0]);
    if (!csv_open(&rows, folder, "settings.csv")) {
        return UNREADABLE;
    }
    while (csv_next(&rows)) {
        int number = rows.count < 2 ? -1 : number_of_name(&SETTING_KEYS, rows.fields[0]);
        if (number < 0 || !parse_int64(rows.fields[1], &kept[0].values[number])) {
            int answer = unreadable(&rows, "a known setting and a whole number were expected, such"
                                           " as capacity,100000,mAh");
            csv_close(&rows);
            return answer;
        }
    }
    csv_close(&rows);
    return check_settings(&kept[0]);
}

/* Java asks the store for its size when it builds a gauge; here the figures are fields of it. */
static struct state_store store_of_file(struct vector_store *store)
{
    struct state_store answer = {0, 0, store_read, store_erase, store_program, store};
    while (store->has_line && store->csv.count >= 4) {
        int64_t figure = 0;
        bool slots = strcmp(store->csv.fields[1], "slots") == 0;
        if (!slots && strcmp(store->csv.fields[1], "slot-bytes") != 0) {
            break;
        }
        if (parse_int64(store->csv.fields[3], &figure)) {
            *(slots ? &answer.slots : &answer.slot_bytes) = (int32_t)clamp(figure, 0, INT32_MAX);
        }
        pass_call(store);
    }
    return answer;
}

/* KEY=VALUE for each setting that changes, with spaces between: into the other settings. */
static int take_changes(char *word)
{
    struct gauge_settings *changed = &kept[1 - in_use];
    *changed = kept[in_use];
    while (*word != '\0') {
        char *end = word + strcspn(word, " ");
        char *equals = strchr(word, '=');
        bool last = *end == '\0';
        *end = '\0';
        if (equals == NULL) {
            return unreadable(&rows, "a change of settings needs KEY=VALUE");
        }
        *equals = '\0';
        int number = number_of_name(&SETTING_KEYS, word);
        if (number < 0 || !parse_int64(equals + 1, &changed->values[number])) {
            return unreadable(&rows, "a change of settings needs KEY=VALUE of a known setting");
        }
        word = last ? end : end + 1;
    }
    if (check_settings(changed) != AGREES) {
        return UNREADABLE;
    }
    in_use = 1 - in_use;
    return AGREES;
}

static int feed_power_up(void)
{
    static const struct event_sink NO_EVENTS = {NULL, NULL};
    int64_t off_millis = 0;
    /* Settings that changed while there was no power stand behind the first word. */
    char *changes = strchr(rows.fields[2], ' ');
    if (changes != NULL) {
        *changes = '\0';
        if (take_changes(changes + 1) != AGREES) {
            return UNREADABLE;
        }
    }
    int off_time = number_of_name(&OFF_TIME_NAMES, rows.fields[2]);
    if (off_time < 0 || !parse_int64(rows.fields[3], &off_millis)) {
        return unreadable(&rows, "a power-up needs EXACT, AT_LEAST or UNKNOWN and milliseconds");
    }
    struct state_store store = store_of_file(&memory);
    gauge_init(&tested, &kept[in_use], &store, &NO_EVENTS);
    gauge_power_up(&tested, off_millis, (enum off_time)off_time);
    return AGREES;
}

static int feed_sample(void)
{
    uint32_t bits[4] = {0, 0, 0, 0};
    for (int i = 0; i < 4; i++) {
        const char *text = rows.fields[4 + i];
        bool absent = i == 3 && text[0] == '\0';
        if (absent) {
            bits[i] = (uint32_t)INT32_MAX + 1;
        } else if (!parse_bits32(text, &bits[i])) {
            return unreadable(&rows, "a sample needs clock, shunt and voltage as whole numbers");
        }
    }
    struct sample sample = {int32_from_bits(bits[1]), int32_from_bits(bits[2]),
                            int32_from_bits(bits[3]), bits[0]};
    gauge_tick(&tested, &sample);
    return AGREES;
}

static int feed_command(void)
{
    int64_t argument = 0;
    char *expected = strchr(rows.fields[2], '>');
    if (expected == NULL || !parse_int64(rows.fields[3], &argument)) {
        return unreadable(&rows, "a command needs NAME>OUTCOME and a whole number");
    }
    *expected = '\0';
    int command = number_of_name(&COMMAND_NAMES, rows.fields[2]);
    if (command < 0) {
        return unreadable(&rows, "there is no such command");
    }
    int outcome = (int)gauge_command(&tested, (enum command)command, argument);
    if (outcome != number_of_name(&OUTCOME_NAMES, expected + 1)) {
        (void)fprintf(stderr, "%s:%ld: row %s: the gauge answers %s, expected %s\n", rows.path,
                      rows.line_number, rows.fields[0], OUTCOME_NAMES.names[outcome], expected + 1);
        return DIFFERS;
    }
    return AGREES;
}

static int feed_settings(void)
{
    int answer = take_changes(rows.fields[2]);
    if (answer == AGREES) {
        gauge_change_settings(&tested, &kept[in_use]);
    }
    return answer;
}

static int feed(bool first)
{
    const char *kind = rows.fields[1];
    if (strcmp(kind, "power-up") == 0) {
        return feed_power_up();
    }
    if (first) {
        return unreadable(&rows, "the first row has to be a power-up");
    }
    if (strcmp(kind, "sample") == 0) {
        return feed_sample();
    }
    if (strcmp(kind, "command") == 0) {
        return feed_command();
    }
    if (strcmp(kind, "settings") == 0) {
        return feed_settings();
    }
    return unreadable(&rows, "a row is a power-up, a sample, a command or settings");
}

/* An empty cell stands for the figure of the row above. */
static int compare(struct registers *expected)
{
    static struct registers found;
    gauge_inspect(&tested, &found);
    if (memory.trouble[0] != '\0') {
        (void)fprintf(stderr, "%s:%ld: row %s: %s\n", rows.path, rows.line_number, rows.fields[0],
                      memory.trouble);
        return DIFFERS;
    }
    for (int i = 0; i < REGISTER_COUNT; i++) {
        const char *cell = rows.fields[REGISTERS_FROM + i];
        if (cell[0] != '\0' && !parse_int64(cell, &expected->values[i])) {
            return unreadable(&rows, "a register is a whole number");
        }
        if (found.values[i] != expected->values[i]) {
            (void)fprintf(stderr, "%s:%ld: row %s: %s is %" PRId64 ", expected %" PRId64 "\n",
                          rows.path, rows.line_number, rows.fields[0], REGISTER_NAMES.names[i],
                          found.values[i], expected->values[i]);
            return DIFFERS;
        }
    }
    return AGREES;
}

static int check_header(void)
{
    for (int i = 0; i < REGISTER_COUNT; i++) {
        if (rows.count != REGISTERS_FROM + REGISTER_COUNT ||
            strcmp(rows.fields[REGISTERS_FROM + i], REGISTER_NAMES.names[i]) != 0) {
            return unreadable(&rows, "the columns are not those of this version of the core");
        }
    }
    return AGREES;
}

static int replay(long *row_count)
{
    static struct registers expected;
    int answer = check_header();
    *row_count = 0;
    while (answer == AGREES && csv_next(&rows)) {
        if (rows.count != REGISTERS_FROM + REGISTER_COUNT) {
            return unreadable(&rows, "the row has another number of cells than the header");
        }
        answer = feed(*row_count == 0);
        if (answer == AGREES) {
            answer = compare(&expected);
        }
        (*row_count)++;
    }
    if (answer == AGREES && memory.has_line) {
        (void)fprintf(stderr, "%s:%ld: the memory was asked less than the file says\n",
                      memory.csv.path, memory.csv.line_number);
        return DIFFERS;
    }
    return answer;
}

int check_vectors(const char *folder)
{
    long row_count = 0;
    int answer = read_settings(folder);
    if (answer != AGREES) {
        return answer;
    }
    if (!csv_open(&memory.csv, folder, "store.csv")) {
        return UNREADABLE;
    }
    memory.trouble[0] = '\0';
    pass_call(&memory);
    if (!csv_open(&rows, folder, "vectors.csv")) {
        csv_close(&memory.csv);
        return UNREADABLE;
    }
    answer = replay(&row_count);
    csv_close(&rows);
    csv_close(&memory.csv);
    if (answer == AGREES) {
        (void)printf("%s: %ld rows agree\n", folder, row_count);
    }
    return answer;
}
