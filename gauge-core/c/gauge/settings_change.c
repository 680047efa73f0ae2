#include "gauge/settings_change.h"

/* What carries over, copied out of the stages before they are built anew. */
struct carried {
    const struct gauge_settings *settings;
    struct charge_accumulator charge;
    struct band_sums band;
    struct flow_watch flow;
    int64_t charge_nanocoulombs;
    int64_t discharged_nanocoulombs;
    int64_t measured_capacity;
    int64_t candidate_capacity;
    int64_t measured_efficiency;
    int64_t candidate_efficiency;
    int64_t since_full_minutes;
    int32_t state_of_charge_ppm;
    int32_t full_count;
    int32_t early_end_ppm;
    bool full_armed;
    bool empty_armed;
    bool scale_suspect;
    bool early_empty;
};

/* The adjustment belongs to the converter, whatever battery hangs on it (S4). */
struct carried_adjustment {
    int32_t zero_counts_q8;
    int32_t gain_ppm;
    bool carries;
};

static bool differ(const struct gauge_settings *before, const struct gauge_settings *after,
                   enum setting setting)
{
    return setting_of(before, setting) != setting_of(after, setting);
}

bool settings_change_is_other_battery(const struct stages *s, const struct gauge_settings *settings)
{
    return differ(s->settings, settings, SETTING_CHEMISTRY) ||
           differ(s->settings, settings, SETTING_NOMINAL_VOLTAGE);
}

static struct carried_adjustment take_adjustment(const struct stages *s,
                                                 const struct gauge_settings *settings)
{
    return (struct carried_adjustment){
        s->adjustment.zero_counts_q8,
        s->adjustment.gain_ppm,
        !differ(s->settings, settings, SETTING_SHUNT_CONVERTER_BITS) &&
            !differ(s->settings, settings, SETTING_SHUNT_FULL_SCALE),
    };
}

static void put_adjustment(struct stages *s, const struct carried_adjustment *carried)
{
    if (carried->carries) {
        shunt_adjustment_resume(&s->adjustment, carried->zero_counts_q8, carried->gain_ppm);
        stages_adopt_adjustment(s);
    }
}

void settings_change_to_other_battery(struct stages *s, const struct gauge_settings *settings)
{
    struct carried_adjustment adjustment = take_adjustment(s, settings);
    stages_init(s, settings);
    put_adjustment(s, &adjustment);
}

static void take(struct carried *carried, const struct stages *s)
{
    carried->settings = s->settings;
    carried->charge = s->charge;
    carried->band = s->band.sums;
    carried->flow = s->full_rule.flow;
    carried->charge_nanocoulombs = charge_accumulator_charge(&s->charge);
    carried->discharged_nanocoulombs = s->full_rule.discharged_nanocoulombs;
    carried->measured_capacity = s->capacity.milliamp_hours.measured;
    carried->candidate_capacity = s->capacity.milliamp_hours.candidate;
    carried->measured_efficiency = s->efficiency.ppm.measured;
    carried->candidate_efficiency = s->efficiency.ppm.candidate;
    carried->since_full_minutes = s->diagnosis.since_full_minutes;
    carried->state_of_charge_ppm = stages_state_of_charge_ppm(s);
    carried->full_count = s->full_rule.full_count;
    carried->early_end_ppm = s->empty_rule.early_end_ppm;
    carried->full_armed = full_charge_rule_is_armed(&s->full_rule);
    carried->empty_armed = s->empty_rule.armed;
    carried->scale_suspect = s->diagnosis.scale_suspect;
    carried->early_empty = s->diagnosis.early_empty;
}

/* A changed capacity keeps the percentage, widens the band and drops what was measured (S2). */
static void put(struct stages *s, const struct carried *carried)
{
    bool same_capacity = !differ(carried->settings, s->settings, SETTING_CAPACITY);
    int64_t charge = same_capacity
                         ? carried->charge_nanocoulombs
                         : state_of_charge_nanocoulombs(carried->state_of_charge_ppm,
                                                        s->charge.capacity_nanocoulombs);
    charge_accumulator_resume(&s->charge, charge, carried->charge.full_proven,
                              carried->charge.surplus_nanocoulombs,
                              carried->charge.deficit_nanocoulombs);
    charge_accumulator_resume_sums(&s->charge, carried->charge.in_nanocoulombs,
                                   carried->charge.out_nanocoulombs,
                                   carried->charge.efficiency.remainder_q16);
    band_sums_resume(&s->band.sums, &carried->band);
    band_sums_capacity_changed(&s->band.sums, &s->band.bounds,
                               setting_of(carried->settings, SETTING_CAPACITY),
                               setting_of(s->settings, SETTING_CAPACITY));
    if (same_capacity) {
        capacity_estimate_resume(&s->capacity, carried->measured_capacity,
                                 carried->candidate_capacity);
        efficiency_estimate_resume(&s->efficiency, carried->measured_efficiency,
                                   carried->candidate_efficiency);
    } else if (s->band.sums.residual_ppm < BAND_WHOLE_PPM) {
        band_sums_widen(&s->band.sums, setting_of(s->settings, SETTING_CAPACITY_BOUND));
    }
    s->full_rule.flow = carried->flow;
    full_charge_rule_resume(&s->full_rule, carried->full_armed, carried->discharged_nanocoulombs,
                            carried->full_count);
    empty_rule_resume(&s->empty_rule, carried->empty_armed, carried->early_end_ppm);
    s->diagnosis.since_full_minutes = carried->since_full_minutes;
    s->diagnosis.scale_suspect = carried->scale_suspect;
    s->diagnosis.early_empty = carried->early_empty;
}

int64_t settings_change_carry_over(struct stages *s, const struct gauge_settings *settings)
{
    struct carried carried;
    struct carried_adjustment adjustment = take_adjustment(s, settings);
    take(&carried, s);
    stages_init(s, settings);
    put(s, &carried);
    put_adjustment(s, &adjustment);
    return charge_accumulator_charge(&s->charge) - carried.charge_nanocoulombs;
}
