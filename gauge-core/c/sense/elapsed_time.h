/*
 * Elapsed milliseconds from the machine's raw 32-bit counter (G6). The difference is taken modulo
 * 2^32, so the wrap after 49.71 days is an ordinary tick; above half the range it cannot be told
 * from a clock that ran backwards.
 */
#ifndef GAUGE_SENSE_ELAPSED_TIME_H
#define GAUGE_SENSE_ELAPSED_TIME_H

#include <stdbool.h>
#include <stdint.h>

/* Longest interval that a single sample may stand for. */
#define ELAPSED_LONGEST_TICK_MILLIS 65535

/* Answer when the clock went backwards. */
#define ELAPSED_BACKWARDS (-1)

struct elapsed_time {
    int64_t uptime_millis;
    uint32_t last_clock_millis;
    bool started;
    /* A second or later value was seen, so that the difference means something. */
    bool past_first;
};

/* The raw clock of the last sample stays; the next sample sets a new reference. */
static inline void elapsed_time_restart(struct elapsed_time *clock)
{
    clock->started = false;
    clock->past_first = false;
    clock->uptime_millis = 0;
}

/*
 * Milliseconds since the value before, 0 to 2^31-1, or ELAPSED_BACKWARDS. The first value after a
 * restart elapses 0 ms (G1). After ELAPSED_BACKWARDS the new value is the reference.
 */
static inline int32_t elapsed_time_advance(struct elapsed_time *clock, uint32_t clock_millis)
{
    uint32_t elapsed = clock_millis - clock->last_clock_millis;
    clock->last_clock_millis = clock_millis;
    if (!clock->started) {
        clock->started = true;
        return 0;
    }
    clock->past_first = true;
    if (elapsed > (uint32_t)INT32_MAX) {
        return ELAPSED_BACKWARDS;
    }
    clock->uptime_millis += elapsed;
    return (int32_t)elapsed;
}

#endif
