#include "hosted/day.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "fixed/fixed_math.h"
#include "hosted/csv.h"
#include "hosted/names.h"

#define MOST_SAMPLES 1000000

static struct csv rows;

static bool read_settings(struct day *day, const char *folder)
{
    enum setting culprit = SETTING_CHEMISTRY;
    if (!csv_open(&rows, folder, "settings.csv")) {
        return false;
    }
    gauge_settings_init(&day->settings);
    while (csv_next(&rows)) {
        int number = number_of_name(&SETTING_KEYS, rows.fields[0]);
        if (number < 0 || rows.count < 2 ||
            !parse_int64(rows.fields[1], &day->settings.values[number])) {
            (void)fprintf(stderr, "%s:%ld: a known setting and a whole number were expected\n",
                          rows.path, rows.line_number);
            csv_close(&rows);
            return false;
        }
    }
    csv_close(&rows);
    return gauge_settings_check(&day->settings, &culprit) == SETTINGS_GOOD;
}

static bool read_sample(struct sample *sample)
{
    uint32_t bits[4] = {0, 0, 0, (uint32_t)INT32_MAX + 1};
    bool absent = rows.fields[7][0] == '\0';
    for (int i = 0; i < (absent ? 3 : 4); i++) {
        if (!parse_bits32(rows.fields[4 + i], &bits[i])) {
            return false;
        }
    }
    *sample = (struct sample){int32_from_bits(bits[1]), int32_from_bits(bits[2]),
                              int32_from_bits(bits[3]), bits[0]};
    return true;
}

static bool read_samples(struct day *day, const char *folder)
{
    if (!csv_open(&rows, folder, "vectors.csv")) {
        return false;
    }
    bool good = true;
    while (good && day->sample_count < MOST_SAMPLES && csv_next(&rows)) {
        if (rows.count >= 8 && strcmp(rows.fields[1], "sample") == 0) {
            good = read_sample(&day->samples[day->sample_count++]);
        }
    }
    if (!good) {
        (void)fprintf(stderr, "%s:%ld: a sample of whole numbers was expected\n", rows.path,
                      rows.line_number);
    }
    csv_close(&rows);
    return good && day->sample_count > 0;
}

bool day_read(struct day *day, const char *folder)
{
    day->sample_count = 0;
    day->start_millis = 0;
    day->samples = malloc(sizeof *day->samples * MOST_SAMPLES);
    return day->samples != NULL && read_settings(day, folder) && read_samples(day, folder);
}

void day_pass(struct day *day, struct gauge *gauge)
{
    for (long i = 0; i < day->sample_count; i++) {
        struct sample sample = day->samples[i];
        sample.clock_millis += day->start_millis;
        gauge_tick(gauge, &sample);
    }
    day->start_millis += day->samples[day->sample_count - 1].clock_millis;
}

void day_free(struct day *day)
{
    free(day->samples);
    day->samples = NULL;
}
