#include "gauge/corrections.h"

/* The count has left a limit when it is a two-hundredth of the capacity away. */
#define LEAVE_DIVISOR 200

#define SENSOR_BITS \
    (FAULT_BIT(FAULT_POLARITY_REVERSED) | FAULT_BIT(FAULT_CURRENT_NOT_SEEN) | \
     FAULT_BIT(FAULT_IN_OUT_RATIO_OFF) | FAULT_BIT(FAULT_ADJUSTMENT_LOST))

void corrections_init(struct corrections *c)
{
    *c = (struct corrections){TRUST_UNKNOWN, false, false, false};
}

enum trust_reason corrections_trust_reason(const struct corrections *c, const struct stages *s,
                                           uint32_t fault_bits)
{
    if (c->trust == TRUST_UNKNOWN) {
        return TRUST_REASON_NOTHING_KNOWN;
    }
    if ((fault_bits & SENSOR_BITS) != 0) {
        return TRUST_REASON_SENSOR_SUSPECT;
    }
    if (state_band_is_unknown(&s->band)) {
        return TRUST_REASON_BAND_UNKNOWN;
    }
    if ((fault_bits & FAULT_BIT(FAULT_SCALE_SUSPECT)) != 0) {
        return TRUST_REASON_SCALE_SUSPECT;
    }
    if ((fault_bits & FAULT_BIT(FAULT_FULL_OVERDUE)) != 0) {
        return TRUST_REASON_FULL_OVERDUE;
    }
    return c->trust == TRUST_DECLARED ? TRUST_REASON_DECLARED_ONLY : TRUST_REASON_NO_OBJECTION;
}

static void tell(const struct correction_scene *scene, enum event event, int64_t value)
{
    announce(scene->events, event, scene->uptime_millis, value);
}

/* A count that nobody was shown has no step: the event's figure is then 0. */
static void prove(struct corrections *c, const struct correction_scene *scene, enum event event,
                  int64_t step_nanocoulombs)
{
    int64_t shown_step = corrections_is_known(c) ? step_nanocoulombs : 0;
    c->trust = TRUST_PROVEN;
    tell(scene, event, shown_step);
}

static void set_to_full(struct corrections *c, const struct correction_scene *scene)
{
    struct stages *s = scene->s;
    bool evidence = s->full_rule.reason == RULE_REASON_PROVEN_BY_TAPER;
    int64_t step = charge_accumulator_set_to(&s->charge, s->charge.capacity_nanocoulombs, true);
    state_band_anchor(&s->band, s->full_rule.residual_ppm);
    c->rests_on_record = false;
    prove(c, scene, EVENT_SET_TO_FULL, step);
    diagnosis_full(&s->diagnosis, s->full_rule.reason == RULE_REASON_PROVEN_LATE);
    capacity_estimate_full(&s->capacity, evidence);
    if (efficiency_estimate_full(&s->efficiency, evidence)) {
        tell(scene, EVENT_EFFICIENCY_MEASURED, s->efficiency.ppm.measured);
    }
}

static void offer_capacity(const struct correction_scene *scene)
{
    if (capacity_estimate_empty(&scene->s->capacity)) {
        tell(scene, EVENT_CAPACITY_MEASURED, scene->s->capacity.milliamp_hours.measured);
    }
}

static void set_to_empty(struct corrections *c, const struct correction_scene *scene)
{
    struct stages *s = scene->s;
    int64_t target = state_of_charge_nanocoulombs(setting_of(s->settings, SETTING_EMPTY_STATE),
                                                  s->charge.capacity_nanocoulombs);
    int64_t step = charge_accumulator_set_to(&s->charge, target, false);
    state_band_anchor(&s->band, setting_of(s->settings, SETTING_EMPTY_RESIDUAL));
    c->rests_on_record = false;
    prove(c, scene, EVENT_SET_TO_EMPTY, step);
    offer_capacity(scene);
}

/* A rest correction leans on the record: rests_on_record stays (M6). */
static void correct_by_rest(struct corrections *c, const struct correction_scene *scene)
{
    struct stages *s = scene->s;
    int64_t target =
        state_of_charge_nanocoulombs(s->rest_rule.target_ppm, s->charge.capacity_nanocoulombs);
    int64_t step = charge_accumulator_set_to(&s->charge, target, s->charge.full_proven);
    state_band_anchor(&s->band, s->rest_rule.residual_ppm);
    prove(c, scene, EVENT_CORRECTED_BY_REST, step);
    s->capacity.fit = false;
    s->efficiency.fit = false;
}

/* Answers whether the count was set. */
static bool act(struct corrections *c, const struct correction_scene *scene,
                enum rule_outcome outcome)
{
    struct stages *s = scene->s;
    switch (outcome) {
    case RULE_OUTCOME_SET_TO_FULL:
        set_to_full(c, scene);
        return true;
    case RULE_OUTCOME_ARMED:
        /* The limit is 99 % again (G4). */
        s->charge.full_proven = false;
        tell(scene, EVENT_FULL_RULE_ARMED, s->full_rule.discharged_nanocoulombs);
        return false;
    case RULE_OUTCOME_SET_TO_EMPTY:
        set_to_empty(c, scene);
        return true;
    case RULE_OUTCOME_EARLY_EMPTY:
        tell(scene, EVENT_EARLY_EMPTY, stages_state_of_charge_ppm(s));
        s->diagnosis.early_empty = true;
        offer_capacity(scene);
        return false;
    case RULE_OUTCOME_CORRECTED_BY_REST:
        correct_by_rest(c, scene);
        return true;
    case RULE_OUTCOME_BAND_CLIPPED:
        state_band_clip(&s->band, stages_state_of_charge_ppm(s), s->rest_rule.lowest_ppm,
                        s->rest_rule.highest_ppm);
        return false;
    case RULE_OUTCOME_NONE:
    default:
        return false;
    }
}

/* Acts on a rule's word and brings the band after it. */
static bool apply(struct corrections *c, const struct correction_scene *scene,
                  enum rule_outcome outcome)
{
    if (outcome == RULE_OUTCOME_NONE) {
        return false;
    }
    bool set = act(c, scene, outcome);
    stages_update_band(scene->s);
    return set;
}

bool corrections_decide(struct corrections *c, const struct correction_scene *scene,
                        int32_t temperature_millicelsius)
{
    struct stages *s = scene->s;
    const struct minute_figures *minute = &s->minute.last;
    int32_t shown_ppm = stages_state_of_charge_ppm(s);
    enum rule_outcome full =
        full_charge_rule_judge(&s->full_rule, minute, temperature_millicelsius,
                               s->band.upper_edge_ppm,
                               charge_accumulator_is_at_upper_limit(&s->charge));
    bool set = apply(c, scene, full);
    enum rule_outcome empty = empty_rule_judge(&s->empty_rule, minute, temperature_millicelsius,
                                               shown_ppm, s->band.lower_edge_ppm);
    set = set || apply(c, scene, empty);
    enum rule_outcome rest =
        rest_rule_judge(&s->rest_rule, &s->full_rule.limits, minute, temperature_millicelsius,
                        shown_ppm, state_band_half_width_ppm(&s->band));
    return set || apply(c, scene, rest);
}

void corrections_declare(struct corrections *c, const struct correction_scene *scene, int64_t ppm)
{
    struct stages *s = scene->s;
    bool full = ppm == FULL_PPM;
    (void)charge_accumulator_set_to(
        &s->charge, state_of_charge_nanocoulombs(ppm, s->charge.capacity_nanocoulombs), full);
    if (full) {
        full_charge_rule_declare_full(&s->full_rule);
        diagnosis_full(&s->diagnosis, false);
    } else {
        full_charge_rule_declare_not_full(&s->full_rule);
    }
    state_band_anchor(&s->band, setting_of(s->settings, SETTING_DECLARED_RESIDUAL));
    c->rests_on_record = false;
    capacity_estimate_full(&s->capacity, false);
    s->efficiency.fit = false;
    c->trust = TRUST_DECLARED;
    /* What was held before the declaration is not held after it: the next time is news. */
    c->held_at_limit = false;
    c->held_at_empty = false;
    tell(scene, EVENT_DECLARED, ppm);
}

void corrections_new_battery(struct corrections *c, const struct correction_scene *scene,
                             struct energy_counter *energy)
{
    struct stages *s = scene->s;
    int64_t step = charge_accumulator_set_to(&s->charge, 0, false);
    charge_accumulator_resume_sums(&s->charge, 0, 0, 0);
    stages_mark_accounted(s);
    energy_counter_resume(energy, 0, 0);
    full_charge_rule_new_battery(&s->full_rule);
    empty_rule_resume(&s->empty_rule, true, EMPTY_NO_EARLY_END);
    capacity_estimate_forget(&s->capacity);
    efficiency_estimate_forget(&s->efficiency);
    diagnosis_new_battery(&s->diagnosis);
    state_band_forget(&s->band);
    c->rests_on_record = false;
    int64_t shown_step = corrections_is_known(c) ? step : 0;
    c->trust = TRUST_UNKNOWN;
    c->held_at_limit = false;
    c->held_at_empty = false;
    tell(scene, EVENT_NEW_BATTERY, shown_step);
}

void corrections_announce_limits(struct corrections *c, const struct correction_scene *scene)
{
    const struct charge_accumulator *charge = &scene->s->charge;
    int64_t settled = charge->settled_nanocoulombs;
    int64_t leave = charge->capacity_nanocoulombs / LEAVE_DIVISOR;
    if (charge->surplus_nanocoulombs > 0 && charge_accumulator_is_at_upper_limit(charge)) {
        if (!c->held_at_limit && corrections_is_known(c)) {
            tell(scene, EVENT_HELD_AT_LIMIT, settled);
        }
        c->held_at_limit = true;
    } else if (settled < charge_accumulator_upper_limit(charge) - leave) {
        c->held_at_limit = false;
    }
    if (charge->deficit_nanocoulombs > 0 && settled == 0) {
        if (!c->held_at_empty && corrections_is_known(c)) {
            tell(scene, EVENT_HELD_AT_EMPTY, charge->deficit_nanocoulombs);
        }
        c->held_at_empty = true;
    } else if (settled > leave) {
        c->held_at_empty = false;
    }
}
