/*
 * Works out the coulombic efficiency from full to full (C1, C3): what came out over what went in,
 * if no leak can have passed for it.
 */
#ifndef GAUGE_RULES_EFFICIENCY_ESTIMATE_H
#define GAUGE_RULES_EFFICIENCY_ESTIMATE_H

#include <stdbool.h>
#include <stdint.h>

#include "charge/minute_mean.h"
#include "rules/measured_value.h"
#include "settings/gauge_settings.h"

struct efficiency_estimate {
    struct measured_value ppm;
    int64_t capacity_nanocoulombs;
    int64_t unseen_microamps;
    /* The cycle since the last full anchor that is evidence. */
    int64_t in_nanocoulombs;
    int64_t out_nanocoulombs;
    int32_t minutes;
    bool fit;
    bool switched_off;
};

void efficiency_estimate_init(struct efficiency_estimate *e, const struct gauge_settings *settings);

/*
 * A minute of the cycle. Kept full: a charger keeps a full battery full, as of the minute before;
 * what it gives never comes out, so the cycle has not begun.
 */
void efficiency_estimate_add_minute(struct efficiency_estimate *e,
                                    const struct minute_figures *minute, bool kept_full);

/* Ends one cycle and begins the next; answers whether the measured efficiency moved. */
bool efficiency_estimate_full(struct efficiency_estimate *e, bool evidence);

void efficiency_estimate_forget(struct efficiency_estimate *e);

void efficiency_estimate_resume(struct efficiency_estimate *e, int64_t measured,
                                int64_t candidate);

#endif
