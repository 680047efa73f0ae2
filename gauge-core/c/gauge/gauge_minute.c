/* What happens at the end of a minute, in a gap, and when the state is saved. */
#include "gauge/gauge_parts.h"

void gauge_update_estimates(struct gauge *g)
{
    bool known = corrections_is_known(&g->corrections);
    stages_update_estimates(&g->s, known, &g->last);
    stages_update_shown(&g->s, known);
    stages_update_bus(&g->s, known, &g->last);
}

void gauge_after_command(struct gauge *g)
{
    stages_update_band(&g->s);
    gauge_update_estimates(g);
}

/* The minute is whole: settle it, then let the rules look at it, then estimate. */
static void close_minute(struct gauge *g)
{
    struct stages *s = &g->s;
    struct correction_scene scene = gauge_scene(g);
    int32_t celsius = g->last.temperature_millicelsius;
    int32_t warmth_q8 = self_discharge_warmth_q8(celsius);
    minute_mean_close(&s->minute);
    charge_accumulator_settle_minute(
        &s->charge, self_discharge_minute_nanocoulombs(&s->self_discharge, warmth_q8));
    stages_account(s, MINUTE_MILLIS, warmth_q8);
    corrections_announce_limits(&g->corrections, &scene);
    capacity_estimate_add_minute(&s->capacity, &s->minute.last, celsius);
    efficiency_estimate_add_minute(&s->efficiency, &s->minute.last,
                                   full_charge_rule_is_kept_full(&s->full_rule));
    stages_update_band(s);
    if (corrections_decide(&g->corrections, &scene, celsius)) {
        g->memory.schedule.anchor_pending = true;
    }
    uint32_t bits = diagnosis_judge(&s->diagnosis, &s->minute.last, &s->full_rule,
                                    s->capacity.milliamp_hours.measured);
    fault_log_stand(&g->faults, &g->events, FAULT_DIAGNOSED_BITS, bits, g->clock.uptime_millis);
    /* Its stretches went into the filter as they came. */
    load_filter_close_minute(&s->load_filter, s->minute.last.mean_microamps);
    stages_update_minute_estimates(s, corrections_is_known(&g->corrections));
    s->shown.minute_millis += MINUTE_MILLIS;
    gauge_update_estimates(g);
}

int32_t gauge_pass_minutes(struct gauge *g, int32_t left_millis)
{
    while (left_millis >= minute_mean_millis_left(&g->s.minute)) {
        int32_t stretch_millis = minute_mean_millis_left(&g->s.minute);
        gauge_add_stretch(g, stretch_millis);
        left_millis -= stretch_millis;
        close_minute(g);
    }
    return left_millis;
}

void gauge_end_minute_early(struct gauge *g)
{
    int32_t millis = g->s.minute.millis;
    charge_accumulator_settle_minute(&g->s.charge, 0);
    stages_account(&g->s, millis, self_discharge_warmth_q8(g->last.temperature_millicelsius));
    minute_mean_abandon(&g->s.minute);
    load_filter_abandon_minute(&g->s.load_filter);
}

void gauge_skip(struct gauge *g, int64_t elapsed_millis)
{
    struct stages *s = &g->s;
    bool backwards = elapsed_millis < 0;
    fault_log_raise(&g->faults, &g->events,
                    backwards ? FAULT_CLOCK_BACKWARDS : FAULT_SAMPLES_MISSING,
                    g->clock.uptime_millis);
    gauge_end_minute_early(g);
    /* A clock that ran backwards may hide any time; half its range is the least that it hides. */
    state_band_add_unmeasured(&s->band, backwards ? INT32_MAX : elapsed_millis);
    full_charge_rule_samples_missing(&s->full_rule);
    s->empty_rule.light_minutes = 0;
    rest_rule_samples_missing(&s->rest_rule);
    s->diagnosis.steps.started = false;
    s->capacity.fit = false;
    s->efficiency.fit = false;
    /* Gaps less than a minute apart close no minute: the figures shown must follow all the same. */
    gauge_after_command(g);
}

void gauge_save(struct gauge *g)
{
    struct memory_scene scene = {&g->s, &g->energy, &g->corrections};
    enum save_outcome outcome =
        gauge_memory_save(&g->memory, &scene, g->clock.uptime_millis, &g->last);
    bool saved = outcome == SAVE_OUTCOME_SAVED || outcome == SAVE_OUTCOME_SAVED_AFTER_FAILURE;
    /* A memory that does not write now may not have written before power went either (M6). */
    if (g->corrections.rests_on_record && !saved) {
        state_band_forget(&g->s.band);
    }
    g->corrections.rests_on_record = false;
    gauge_stand(g, FAULT_MEMORY_FAILING,
                outcome == SAVE_OUTCOME_SAVED_AFTER_FAILURE || outcome == SAVE_OUTCOME_NOT_SAVED);
}
