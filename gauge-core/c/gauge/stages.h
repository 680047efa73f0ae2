/*
 * Everything that is derived from one set of settings, in the order in which a sample passes. A
 * change of settings builds them anew and carries the state over; nothing is patched in place.
 */
#ifndef GAUGE_GAUGE_STAGES_H
#define GAUGE_GAUGE_STAGES_H

#include <stdbool.h>
#include <stdint.h>

#include "band/state_band.h"
#include "charge/charge_accumulator.h"
#include "charge/minute_mean.h"
#include "charge/self_discharge.h"
#include "charge/state_of_charge.h"
#include "estimate/load_filter.h"
#include "estimate/low_charge_alarm.h"
#include "estimate/rate_model.h"
#include "estimate/time_to_empty.h"
#include "estimate/time_to_full.h"
#include "gauge/last_sample.h"
#include "readout/display_rounding.h"
#include "readout/smart_battery_view.h"
#include "rules/capacity_estimate.h"
#include "rules/diagnosis.h"
#include "rules/efficiency_estimate.h"
#include "rules/empty_rule.h"
#include "rules/full_charge_rule.h"
#include "rules/rest_rule.h"
#include "sense/current_sense.h"
#include "sense/shunt_adjustment.h"
#include "sense/voltage_sense.h"
#include "settings/gauge_settings.h"

/* What a display shows; follows whole minutes and commands, however often anybody looks (V). */
struct shown_figures {
    int64_t zero_below_microamps;
    /* One tick may hold several minutes, so the uptime does not tell. */
    int64_t minute_millis;
    struct shown_hours hours;
    int32_t percent;
};

struct stages {
    const struct gauge_settings *settings;
    struct current_sense current_sense;
    struct voltage_sense voltage_sense;
    struct charge_accumulator charge;
    struct minute_mean minute;
    struct shunt_adjustment adjustment;
    struct self_discharge self_discharge;
    struct state_band band;
    struct full_charge_rule full_rule;
    struct empty_rule empty_rule;
    struct rest_rule rest_rule;
    struct capacity_estimate capacity;
    struct efficiency_estimate efficiency;
    struct diagnosis diagnosis;
    struct load_filter load_filter;
    struct rate_model rate_model;
    struct time_to_empty time_to_empty;
    struct time_to_full time_to_full;
    struct low_charge_alarm low_charge_alarm;
    struct shown_figures shown;
    struct smart_battery_view bus;
    /* The sums through the shunt when the band last saw them. */
    int64_t accounted_in_nanocoulombs;
    int64_t accounted_out_nanocoulombs;
};

/* Builds every stage as from the factory; keeps the pointer to the settings. */
void stages_init(struct stages *s, const struct gauge_settings *settings);

/* No rule decides until figures have settled (F14, E7, R8). */
void stages_begin_quiet_time(struct stages *s);

/* Takes the present adjustment into the conversion; cold: once for each adjustment (Z5). */
void stages_adopt_adjustment(struct stages *s);

/* What went through the shunt since the band last saw it widens the band. */
void stages_account(struct stages *s, int32_t millis, int32_t warmth_q8);

/* The band has seen all that went through the shunt so far. */
void stages_mark_accounted(struct stages *s);

/* Most mean current that may flow while the gauge is without power (M4). */
int64_t stages_off_microamps(const struct stages *s);

/* The estimates that look at whole minutes, and those of this moment. */
void stages_update_minute_estimates(struct stages *s, bool known);
void stages_update_estimates(struct stages *s, bool known, const struct last_sample *last);

/* What a display and the bus show of them. */
void stages_update_shown(struct stages *s, bool known);
void stages_update_bus(struct stages *s, bool known, const struct last_sample *last);

/* Works out the edges of the band for the count of this instant. */
void stages_update_band(struct stages *s);

static inline int32_t stages_state_of_charge_ppm(const struct stages *s)
{
    return state_of_charge_ppm(charge_accumulator_charge(&s->charge),
                               s->charge.capacity_nanocoulombs);
}

/* In and out added up, over the gauge's life; wraps: only differences of it mean anything. */
static inline int64_t stages_gross_nanocoulombs(const struct stages *s)
{
    return wrapping_add(s->charge.in_nanocoulombs, s->charge.out_nanocoulombs);
}

#endif
