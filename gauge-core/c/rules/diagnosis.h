/*
 * The slow faults (the D rules): what no single sample shows but minutes, days and cycles do.
 * Answers with a bit for each fault that stands now; corrects nothing.
 */
#ifndef GAUGE_RULES_DIAGNOSIS_H
#define GAUGE_RULES_DIAGNOSIS_H

#include <stdbool.h>
#include <stdint.h>

#include "charge/minute_mean.h"
#include "rules/full_charge_rule.h"
#include "settings/gauge_settings.h"

/* What steps of current and voltage from one minute to the next say (D1 to D3). */
struct step_watch {
    /* Parameters: a step of current, none; a voltage that needs one, one with a direction. */
    int64_t step_microamps;
    int64_t still_microamps;
    int64_t step_microvolts;
    int64_t telling_microvolts;
    /* State. */
    int64_t resistance_microohms;
    int64_t reference_microohms;
    int32_t last_microamps;
    int32_t last_microvolts;
    int32_t reversed_count;
    int32_t silent_count;
    int32_t step_count;
    bool started;
    bool last_cut_off;
    bool last_silent_up;
};

/* Charge in over charge out of a week (D4). */
struct charge_balance {
    int64_t least_nanocoulombs;
    int64_t stored_nanocoulombs;
    int64_t in_nanocoulombs;
    int64_t out_nanocoulombs;
    int32_t minutes;
    bool off;
};

/* Cut off: a charger's voltage stands on the wires and nothing flows. */
void step_watch_add_minute(struct step_watch *watch, int32_t microamps, int32_t microvolts,
                           bool cut_off);
void step_watch_forget(struct step_watch *watch);
bool step_watch_is_reversed(const struct step_watch *watch);
bool step_watch_is_silent(const struct step_watch *watch);
bool step_watch_is_resistance_risen(const struct step_watch *watch);

struct diagnosis {
    struct step_watch steps;
    struct charge_balance balance;
    int64_t overdue_minutes;
    int64_t declared_milliamp_hours;
    int64_t since_full_minutes;
    int32_t blocked_minutes;
    bool scale_suspect;
    bool early_empty;
};

void diagnosis_init(struct diagnosis *d, const struct gauge_settings *settings);

/* Judges one whole minute, after the full-charge rule; measured capacity, or 0. */
uint32_t diagnosis_judge(struct diagnosis *d, const struct minute_figures *minute,
                         const struct full_charge_rule *full, int64_t measured_milliamp_hours);

/* Full was proven or declared; against the count: scale, capacity or wiring is wrong (D8). */
void diagnosis_full(struct diagnosis *d, bool against_count);

/* Another battery: what was found belongs to the old one (D11). */
void diagnosis_new_battery(struct diagnosis *d);

/* Time passed without power, whole minutes, 0 or more (D7). */
void diagnosis_add_off_time(struct diagnosis *d, int64_t minutes);

#endif
