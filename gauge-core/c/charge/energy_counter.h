/*
 * Energy through the battery, in and out apart (G19). Millivolts times microamps times
 * milliseconds are picojoules; whole microjoules move to the total when the small sum grows, so
 * that no tick divides.
 */
#ifndef GAUGE_CHARGE_ENERGY_COUNTER_H
#define GAUGE_CHARGE_ENERGY_COUNTER_H

#include <stdint.h>

struct energy_counter {
    int64_t in_microjoules;
    int64_t out_microjoules;
    int64_t in_picojoules;
    int64_t out_picojoules;
};

#define ENERGY_FOLD_ABOVE_PICOJOULES INT64_C(500000000000000000)

/* A stretch above this is taken as two: 6.44e18 pJ at most, on top of at most 5e17. */
#define ENERGY_LONGEST_PRODUCT_MILLIS 30000

/* Moves whole microjoules to the totals; either sum may be small. */
void energy_counter_fold(struct energy_counter *e);

static inline void energy_counter_add_picojoules(struct energy_counter *e, int64_t picojoules)
{
    if (picojoules > 0) {
        e->in_picojoules += picojoules;
    } else {
        e->out_picojoules -= picojoules;
    }
    if (e->in_picojoules > ENERGY_FOLD_ABOVE_PICOJOULES ||
        e->out_picojoules > ENERGY_FOLD_ABOVE_PICOJOULES) {
        energy_counter_fold(e);
    }
}

/* A stretch of constant current and voltage: 0 to 100,000 mV, at most 60,000 ms. */
static inline void energy_counter_add(struct energy_counter *e, int32_t millivolts,
                                      int32_t current_microamps, int32_t millis)
{
    int64_t picojoules_per_milli = (int64_t)millivolts * current_microamps;
    if (millis > ENERGY_LONGEST_PRODUCT_MILLIS) {
        energy_counter_add_picojoules(e, picojoules_per_milli * ENERGY_LONGEST_PRODUCT_MILLIS);
        millis -= ENERGY_LONGEST_PRODUCT_MILLIS;
    }
    energy_counter_add_picojoules(e, picojoules_per_milli * millis);
}

/* Takes over totals that were saved. */
void energy_counter_resume(struct energy_counter *e, int64_t in_microjoules,
                           int64_t out_microjoules);

/* Whole microjoules, 3.6e9 to the watt-hour; both saturate. */
int64_t energy_counter_in_microjoules(const struct energy_counter *e);
int64_t energy_counter_out_microjoules(const struct energy_counter *e);

#endif
