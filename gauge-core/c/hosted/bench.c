#include "hosted/bench.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "gauge/gauge.h"
#include "hosted/csv.h"
#include "hosted/names.h"

#define MOST_SAMPLES 1000000

static struct gauge tested;
static struct gauge_settings settings;
static struct csv rows;
static struct sample *samples;
static long sample_count;

static int32_t int32_of(const char *text)
{
    return (int32_t)strtol(text, NULL, 10);
}

static bool read_settings(const char *folder)
{
    if (!csv_open(&rows, folder, "settings.csv")) {
        return false;
    }
    gauge_settings_init(&settings);
    while (csv_next(&rows)) {
        int number = number_of_name(&SETTING_KEYS, rows.fields[0]);
        if (number >= 0 && rows.count >= 2) {
            settings.values[number] = strtol(rows.fields[1], NULL, 10);
        }
    }
    csv_close(&rows);
    return true;
}

static bool read_samples(const char *folder)
{
    if (!csv_open(&rows, folder, "vectors.csv")) {
        return false;
    }
    while (sample_count < MOST_SAMPLES && csv_next(&rows)) {
        if (rows.count >= 8 && strcmp(rows.fields[1], "sample") == 0) {
            bool absent = rows.fields[7][0] == '\0';
            samples[sample_count++] = (struct sample){
                int32_of(rows.fields[5]), int32_of(rows.fields[6]),
                absent ? TEMPERATURE_ABSENT : int32_of(rows.fields[7]),
                (uint32_t)strtol(rows.fields[4], NULL, 10)};
        }
    }
    csv_close(&rows);
    return true;
}

/*
 * A day after a day: the clock goes on, so that nothing is a repeated sample. Time of the
 * processor, not of the wall: neighbours on the machine count less.
 */
static double nanoseconds_per_tick(int days, uint32_t *start_millis)
{
    clock_t begin = clock();
    for (int day = 0; day < days; day++) {
        for (long i = 0; i < sample_count; i++) {
            struct sample sample = samples[i];
            sample.clock_millis += *start_millis;
            gauge_tick(&tested, &sample);
        }
        *start_millis += samples[sample_count - 1].clock_millis;
    }
    double seconds = (double)(clock() - begin) / CLOCKS_PER_SEC;
    return seconds * 1e9 / ((double)days * (double)sample_count);
}

int bench_run(const char *folder, int rounds)
{
    static const struct state_store NO_STORE = {0, 0, NULL, NULL, NULL, NULL};
    static const struct event_sink NO_EVENTS = {NULL, NULL};
    struct registers registers;
    uint32_t start_millis = 0;
    samples = malloc(sizeof *samples * MOST_SAMPLES);
    if (samples == NULL || !read_settings(folder) || !read_samples(folder) || sample_count == 0) {
        return 2;
    }
    gauge_init(&tested, &settings, &NO_STORE, &NO_EVENTS);
    gauge_power_up(&tested, 0, OFF_TIME_EXACT);
    (void)gauge_command(&tested, COMMAND_DECLARE_STATE_OF_CHARGE, 700000);
    int days = (int)(5000000 / sample_count) + 1;
    for (int i = 0; i < rounds; i++) {
        (void)printf("%.3f ns per tick\n", nanoseconds_per_tick(days, &start_millis));
    }
    /* What was worked out is printed, so that nothing can be left out. */
    gauge_inspect(&tested, &registers);
    (void)printf("digest %016llx after %ld ticks a round\n",
                 (unsigned long long)registers_fold(&registers, REGISTERS_DIGEST_START),
                 (long)days * sample_count);
    free(samples);
    return 0;
}
