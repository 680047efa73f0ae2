#include "hosted/bench.h"

#include <stdio.h>
#include <time.h>

#include "gauge/gauge.h"
#include "hosted/day.h"

#define YEAR_DAYS 365
#define SLOT_COUNT 4

static const struct event_sink NO_EVENTS = {NULL, NULL};
static const struct state_store NO_STORE = {0, 0, NULL, NULL, NULL, NULL};
static struct gauge tested;
static struct day day;

/* Slots in memory, with a count of all that was written; wear is spread evenly over the ring. */
struct counted_store {
    uint8_t bytes[SLOT_COUNT][SAVED_RECORD_BYTES];
    long erases;
};

static int counted_read(void *context, int32_t slot, uint8_t *destination, size_t count)
{
    const struct counted_store *store = context;
    for (size_t i = 0; i < count; i++) {
        destination[i] = store->bytes[slot][i];
    }
    return STORE_OK;
}

static int counted_erase(void *context, int32_t slot)
{
    struct counted_store *store = context;
    for (int i = 0; i < SAVED_RECORD_BYTES; i++) {
        store->bytes[slot][i] = 0xFF;
    }
    store->erases++;
    return STORE_OK;
}

static int counted_program(void *context, int32_t slot, const uint8_t *source, size_t count)
{
    struct counted_store *store = context;
    for (size_t i = 0; i < count; i++) {
        store->bytes[slot][i] = source[i];
    }
    return STORE_OK;
}

/* As the Java bench starts its gauges: 70 % declared. */
static void start(const struct state_store *store)
{
    gauge_init(&tested, &day.settings, store, &NO_EVENTS);
    gauge_power_up(&tested, 0, OFF_TIME_EXACT);
    (void)gauge_command(&tested, COMMAND_DECLARE_STATE_OF_CHARGE, 700000);
}

/* Time of the processor, not of the wall: neighbours on the machine count less. */
static double nanoseconds_per_tick(int passes)
{
    clock_t begin = clock();
    for (int i = 0; i < passes; i++) {
        day_pass(&day, &tested);
    }
    double seconds = (double)(clock() - begin) / CLOCKS_PER_SEC;
    return seconds * 1e9 / ((double)passes * (double)day.sample_count);
}

int bench_run(const char *folder, int rounds)
{
    struct registers registers;
    if (!day_read(&day, folder)) {
        return 2;
    }
    start(&NO_STORE);
    int passes = (int)(5000000 / day.sample_count) + 1;
    for (int i = 0; i < rounds; i++) {
        (void)printf("%.3f ns per tick\n", nanoseconds_per_tick(passes));
    }
    /* What was worked out is printed, so that nothing can be left out. */
    gauge_inspect(&tested, &registers);
    (void)printf("digest %016llx after %ld ticks a round\n",
                 (unsigned long long)registers_fold(&registers, REGISTERS_DIGEST_START),
                 (long)passes * day.sample_count);
    day_free(&day);
    return 0;
}

int bench_pass(const char *folder)
{
    if (!day_read(&day, folder)) {
        return 2;
    }
    start(&NO_STORE);
    day_pass(&day, &tested);
    (void)printf("ticks %ld\n", day.sample_count);
    day_free(&day);
    return 0;
}

static long erases_of_a_year(void)
{
    static struct counted_store memory;
    struct state_store store = {SLOT_COUNT,    SAVED_RECORD_BYTES, counted_read,
                                counted_erase, counted_program,    &memory};
    for (int32_t slot = 0; slot < SLOT_COUNT; slot++) {
        (void)counted_erase(&memory, slot);
    }
    start(&store);
    memory.erases = 0;
    day.start_millis = 0;
    for (int i = 0; i < YEAR_DAYS; i++) {
        day_pass(&day, &tested);
    }
    return memory.erases;
}

int bench_year(const char *folder)
{
    if (!day_read(&day, folder)) {
        return 2;
    }
    (void)printf("used %ld\n", erases_of_a_year());
    for (long i = 0; i < day.sample_count; i++) {
        day.samples[i].shunt_counts = 0;
        day.samples[i].voltage_counts = 12700;
    }
    (void)printf("parked %ld\n", erases_of_a_year());
    day_free(&day);
    return 0;
}
