/* A tick in full: a doubtful sample, a gap, the end of a minute; and how the state is saved. */
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

void gauge_end_minute_early(struct gauge *g)
{
    int32_t millis = g->s.minute.millis;
    charge_accumulator_settle_minute(&g->s.charge, 0);
    stages_account(&g->s, millis, self_discharge_warmth_q8(g->last.temperature_millicelsius));
    minute_mean_abandon(&g->s.minute);
    load_filter_abandon_minute(&g->s.load_filter);
}

/* An interval that no sample stands for: not counted, the minute under way starts again (G6). */
static void skip(struct gauge *g, int32_t elapsed_millis)
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

/*
 * Says what is wrong with a sample and takes it; false where it is garbage: the last plausible
 * figures stand then (G7).
 */
static bool take(struct gauge *g, const struct sample *sample)
{
    const struct current_sense *current = &g->s.current_sense;
    const struct voltage_sense *voltage = &g->s.voltage_sense;
    int64_t uptime_millis = g->clock.uptime_millis;
    if (current_sense_is_implausible(current, sample->shunt_counts) ||
        voltage_sense_is_implausible(voltage, sample->voltage_counts)) {
        fault_log_raise(&g->faults, &g->events, FAULT_COUNTS_IMPLAUSIBLE, uptime_millis);
        return false;
    }
    g->last.shunt_counts = sample->shunt_counts;
    g->last.current_microamps = current_sense_microamps(current, sample->shunt_counts);
    if (current_sense_is_clipped(current, sample->shunt_counts)) {
        fault_log_raise(&g->faults, &g->events, FAULT_SHUNT_CLIPPED, uptime_millis);
    }
    g->last.voltage_counts = sample->voltage_counts;
    g->last.voltage_microvolts = voltage_sense_microvolts(voltage, sample->voltage_counts);
    if (voltage_sense_is_clipped(voltage, sample->voltage_counts)) {
        fault_log_raise(&g->faults, &g->events, FAULT_VOLTAGE_CLIPPED, uptime_millis);
    }
    g->last.temperature_millicelsius = sample->temperature_millicelsius;
    return true;
}

/* Two voltages, both at rest, that one battery does not have within a short time (M5). */
static bool is_other_battery(const struct gauge *g)
{
    const struct gauge_settings *settings = g->s.settings;
    const struct saved_state *saved = &g->memory.state;
    /* derived: a hundredth of the capacity in one hour; a fortieth of the nominal voltage */
    int64_t rest_microamps = setting_of(settings, SETTING_CAPACITY) * 10;
    int64_t difference = setting_of(settings, SETTING_NOMINAL_VOLTAGE) * 1000 / 40;
    int64_t highest = setting_of(settings, SETTING_REST_VOLTAGE_100) * 1000 + difference;
    int64_t microvolts = g->last.voltage_microvolts;
    int64_t saved_microvolts = saved->voltage_microvolts;
    return magnitude((int64_t)saved->current_microamps) <= rest_microamps &&
           magnitude((int64_t)g->last.current_microamps) <= rest_microamps &&
           saved_microvolts > 0 && microvolts > 0 && saved_microvolts <= highest &&
           microvolts <= highest && magnitude(microvolts - saved_microvolts) > difference;
}

/* The first plausible sample after a restart. */
static void check_same_battery(struct gauge *g)
{
    g->check_battery = false;
    if (is_other_battery(g)) {
        state_band_forget(&g->s.band);
        gauge_after_command(g);
        announce(&g->events, EVENT_BATTERY_DOUBTFUL, g->clock.uptime_millis,
                 g->last.voltage_microvolts);
    }
}

/* A stretch of a tick in full; no rule takes a doubtful one for evidence (G24, C1). */
static void add_checked(struct gauge *g, int32_t millis)
{
    gauge_add_stretch(g, millis);
    if (g->faults.momentary_bits != 0) {
        if ((g->faults.momentary_bits & FAULT_CHARGE_HIDDEN_BITS) != 0) {
            state_band_add_unmeasured(&g->s.band, millis);
        }
        g->s.minute.doubtful = true;
        g->s.capacity.fit = false;
        g->s.efficiency.fit = false;
    }
}

void gauge_tick_in_full(struct gauge *g, const struct sample *sample, int32_t elapsed_millis)
{
    if (take(g, sample) && g->check_battery) {
        check_same_battery(g);
    }
    if (elapsed_millis == 0 && g->clock.past_first) {
        fault_log_raise(&g->faults, &g->events, FAULT_SAMPLE_REPEATED, g->clock.uptime_millis);
        return;
    }
    if (elapsed_millis > ELAPSED_LONGEST_TICK_MILLIS || elapsed_millis < 0) {
        skip(g, elapsed_millis);
        return;
    }
    /* A tick that crosses the end of a minute is split there (G2). */
    int32_t left_millis = elapsed_millis;
    while (left_millis >= minute_mean_millis_left(&g->s.minute)) {
        int32_t stretch_millis = minute_mean_millis_left(&g->s.minute);
        add_checked(g, stretch_millis);
        left_millis -= stretch_millis;
        close_minute(g);
    }
    if (left_millis > 0) {
        add_checked(g, left_millis);
    }
    gauge_save_if_due(g, elapsed_millis);
}
