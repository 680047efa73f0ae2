#include "gauge/gauge_memory.h"

#define LOST_STEP_COUNT 2

static struct settings_mark mark_of(const struct gauge_settings *settings)
{
    return (struct settings_mark){
        gauge_settings_fingerprint(settings),
        setting_int32_of(settings, SETTING_CHEMISTRY),
        setting_int32_of(settings, SETTING_NOMINAL_VOLTAGE),
    };
}

void gauge_memory_init(struct gauge_memory *m, const struct state_store *store,
                       const struct gauge_settings *settings)
{
    struct settings_mark mark = mark_of(settings);
    m->keeps = store->slots > 0;
    slot_ring_init(&m->ring, store, &mark);
    save_schedule_init(&m->schedule, settings);
    m->state = (struct saved_state){0};
    m->found = SLOT_OUTCOME_NONE_VALID;
    m->uptime_before_millis = 0;
    m->saves_count = 0;
}

enum slot_outcome gauge_memory_open(struct gauge_memory *m)
{
    m->uptime_before_millis = 0;
    m->saves_count = 0;
    m->found = m->keeps ? slot_ring_open(&m->ring, &m->state) : SLOT_OUTCOME_NONE_VALID;
    return m->found;
}

bool gauge_memory_is_lost(const struct gauge_memory *m)
{
    return m->keeps && m->found == SLOT_OUTCOME_NONE_VALID && m->ring.damaged_slots > 0;
}

static void restore_band(const struct gauge_memory *m, struct stages *s)
{
    const struct saved_state *state = &m->state;
    struct band_sums saved = {
        state->band_residual_ppm,        state->band_millis,
        state->band_net_nanocoulombs,    state->band_gross_nanocoulombs,
        state->band_charge_in_nanocoulombs, state->band_gap_nanocoulombs,
        state->band_warm_millis_q8,
    };
    band_sums_resume(&s->band.sums, &saved);
    band_sums_capacity_changed(&s->band.sums, &s->band.bounds,
                               state->capacity_nanocoulombs / NANOCOULOMBS_PER_MILLIAMP_HOUR,
                               setting_of(s->settings, SETTING_CAPACITY));
}

int64_t gauge_memory_restore(struct gauge_memory *m, const struct memory_scene *scene)
{
    const struct saved_state *state = &m->state;
    struct stages *s = scene->s;
    int64_t capacity = s->charge.capacity_nanocoulombs;
    bool same_capacity = state->capacity_nanocoulombs == capacity;
    int64_t charge = state->charge_nanocoulombs;
    if (!same_capacity) {
        int32_t ppm = state_of_charge_ppm(charge, state->capacity_nanocoulombs);
        charge = state_of_charge_nanocoulombs(ppm, capacity);
    }
    charge_accumulator_resume(&s->charge, charge, state->full_proven != 0,
                              state->surplus_nanocoulombs, state->deficit_nanocoulombs);
    charge_accumulator_resume_sums(&s->charge, state->lifetime_in_nanocoulombs,
                                   state->lifetime_out_nanocoulombs,
                                   state->efficiency_remainder_q16);
    energy_counter_resume(scene->energy, state->lifetime_in_microjoules,
                          state->lifetime_out_microjoules);
    m->uptime_before_millis = state->lifetime_uptime_millis;
    restore_band(m, s);
    full_charge_rule_resume(&s->full_rule, state->rule_armed != 0,
                            state->rule_discharged_nanocoulombs, state->full_count);
    empty_rule_resume(&s->empty_rule, state->empty_armed != 0, state->early_end_ppm);
    if (same_capacity) {
        capacity_estimate_resume(&s->capacity, state->measured_capacity_milliamp_hours,
                                 state->evidence_capacity_milliamp_hours);
        efficiency_estimate_resume(&s->efficiency, state->measured_efficiency_ppm,
                                   state->evidence_efficiency_ppm);
    }
    s->diagnosis.since_full_minutes = state->since_full_minutes;
    shunt_adjustment_resume(&s->adjustment, state->zero_adjustment_counts_q8,
                            state->span_adjustment_ppm);
    stages_adopt_adjustment(s);
    scene->corrections->trust = (enum trust)state->trust_code;
    scene->corrections->rests_on_record = true;
    return charge_accumulator_charge(&s->charge) - state->charge_nanocoulombs;
}

void gauge_memory_widen_restored(const struct gauge_memory *m, struct stages *s)
{
    int64_t steps = m->ring.damaged_slots > 0 ? LOST_STEP_COUNT : 1;
    band_sums_widen(&s->band.sums, steps * setting_of(s->settings, SETTING_SAVE_STEP));
    if (m->found == SLOT_OUTCOME_FOREIGN_SETTINGS) {
        band_sums_widen(&s->band.sums, setting_of(s->settings, SETTING_CAPACITY_BOUND));
    }
}

void gauge_memory_begin(struct gauge_memory *m, const struct stages *s)
{
    save_schedule_power_up(&m->schedule, charge_accumulator_charge(&s->charge),
                           stages_gross_nanocoulombs(s));
}

/* Copies the stages into the record; the minute under way is part of it. */
static void capture(struct gauge_memory *m, const struct memory_scene *scene,
                    int64_t uptime_millis)
{
    struct saved_state *state = &m->state;
    const struct stages *s = scene->s;
    state->charge_nanocoulombs = charge_accumulator_charge(&s->charge);
    state->capacity_nanocoulombs = s->charge.capacity_nanocoulombs;
    state->surplus_nanocoulombs = s->charge.surplus_nanocoulombs;
    state->deficit_nanocoulombs = s->charge.deficit_nanocoulombs;
    state->efficiency_remainder_q16 = s->charge.efficiency.remainder_q16;
    state->lifetime_in_nanocoulombs = s->charge.in_nanocoulombs;
    state->lifetime_out_nanocoulombs = s->charge.out_nanocoulombs;
    state->lifetime_in_microjoules = energy_counter_in_microjoules(scene->energy);
    state->lifetime_out_microjoules = energy_counter_out_microjoules(scene->energy);
    /* Saturates, so that it stays within its range (M7). */
    state->lifetime_uptime_millis =
        m->uptime_before_millis + min_int64(uptime_millis, INT64_MAX - m->uptime_before_millis);
    state->full_proven = s->charge.full_proven ? 1 : 0;
    state->zero_adjustment_counts_q8 = s->adjustment.zero_counts_q8;
    state->span_adjustment_ppm = s->adjustment.gain_ppm;
    state->trust_code = (int8_t)scene->corrections->trust;
}

static void capture_rules(struct gauge_memory *m, const struct stages *s)
{
    struct saved_state *state = &m->state;
    bool armed = full_charge_rule_is_armed(&s->full_rule);
    state->rule_armed = armed ? 1 : 0;
    /* What armed the rule is used up: an armed one restored from the record holds 0 too. */
    state->rule_discharged_nanocoulombs = armed ? 0 : s->full_rule.discharged_nanocoulombs;
    state->full_count = s->full_rule.full_count;
    state->empty_armed = s->empty_rule.armed ? 1 : 0;
    state->early_end_ppm = s->empty_rule.early_end_ppm;
    state->measured_capacity_milliamp_hours = (int32_t)s->capacity.milliamp_hours.measured;
    state->evidence_capacity_milliamp_hours = (int32_t)s->capacity.milliamp_hours.candidate;
    state->measured_efficiency_ppm = (int32_t)s->efficiency.ppm.measured;
    state->evidence_efficiency_ppm = (int32_t)s->efficiency.ppm.candidate;
    state->since_full_minutes = s->diagnosis.since_full_minutes;
}

/*
 * The sums of the band, and what went through the shunt since it last saw it: saturating where the
 * band itself does (M7).
 */
static void capture_band(struct gauge_memory *m, const struct stages *s, int32_t warmth_q8)
{
    struct saved_state *state = &m->state;
    const struct band_sums *sums = &s->band.sums;
    int64_t in = s->charge.in_nanocoulombs - s->accounted_in_nanocoulombs;
    int64_t out = s->charge.out_nanocoulombs - s->accounted_out_nanocoulombs;
    state->band_residual_ppm = sums->residual_ppm;
    state->band_millis = min_int64(sums->millis + s->minute.millis, SAVED_LONGEST_BAND);
    state->band_net_nanocoulombs = saturating_add(sums->net_nanocoulombs, in - out);
    state->band_gross_nanocoulombs = saturating_add(sums->gross_nanocoulombs, in + out);
    state->band_charge_in_nanocoulombs =
        saturating_add(sums->in_nanocoulombs, max_int64(in - out, 0));
    state->band_gap_nanocoulombs = sums->gap_nanocoulombs;
    state->band_warm_millis_q8 =
        min_int64(sums->warm_millis_q8 + (int64_t)s->minute.millis * warmth_q8,
                  SAVED_LONGEST_BAND << 8);
}

enum save_outcome gauge_memory_save(struct gauge_memory *m, const struct memory_scene *scene,
                                    int64_t uptime_millis, const struct last_sample *last)
{
    capture(m, scene, uptime_millis);
    capture_rules(m, scene->s);
    capture_band(m, scene->s, self_discharge_warmth_q8(last->temperature_millicelsius));
    m->state.voltage_microvolts = last->voltage_microvolts;
    m->state.current_microamps = last->current_microamps;
    enum save_outcome outcome = slot_ring_save(&m->ring, &m->state);
    m->saves_count++;
    save_schedule_attempted(&m->schedule, charge_accumulator_charge(&scene->s->charge),
                            stages_gross_nanocoulombs(scene->s));
    return outcome;
}

void gauge_memory_settings_changed(struct gauge_memory *m, const struct stages *s)
{
    m->ring.settings = mark_of(s->settings);
    save_schedule_init(&m->schedule, s->settings);
    gauge_memory_begin(m, s);
    m->schedule.settings_pending = true;
}
