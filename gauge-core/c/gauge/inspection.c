/* Copies the stages' insides into the readout and into the register table. */
#include "gauge/gauge.h"

static int32_t shown_milliamps(const struct gauge *g)
{
    return shown_tenths_of_amp(g->last.current_microamps, g->s.shown.zero_below_microamps) * 100;
}

static void read_estimates(const struct stages *s, struct readout *r)
{
    const struct time_to_empty *t = &s->time_to_empty;
    r->time_to_empty_state = t->at_filtered_load.state;
    r->time_to_empty_minutes = t->at_filtered_load.minutes;
    r->time_to_empty_low_minutes = t->low.minutes;
    r->time_to_empty_high_minutes = t->high.minutes;
    r->time_at_this_load_state = t->at_this_load.state;
    r->time_at_this_load_minutes = t->at_this_load.minutes;
    r->time_at_usual_use_state = t->at_usual_use.state;
    r->time_at_usual_use_minutes = t->at_usual_use.minutes;
    r->time_to_full_state = s->time_to_full.state;
    r->time_to_full_minutes = s->time_to_full.minutes;
    r->low_charge = s->low_charge_alarm.on;
}

void gauge_read(struct gauge *g, struct readout *r)
{
    struct stages *s = &g->s;
    bool known = corrections_is_known(&g->corrections);
    /* The edges belong to the count of this instant, not to that of the last whole minute. */
    stages_update_band(s);
    r->state_of_charge_ppm = known ? stages_state_of_charge_ppm(s) : READOUT_NOT_KNOWN;
    r->lower_edge_ppm = s->band.lower_edge_ppm;
    r->upper_edge_ppm = s->band.upper_edge_ppm;
    r->band_unknown = !known || state_band_is_unknown(&s->band);
    r->remaining_nanocoulombs = known ? charge_accumulator_charge(&s->charge) : 0;
    r->full_charge_nanocoulombs = s->charge.capacity_nanocoulombs;
    r->measured_capacity_milliamp_hours = s->capacity.milliamp_hours.measured;
    r->measured_efficiency_ppm = s->efficiency.ppm.measured;
    r->average_current_microamps = load_filter_microamps(&s->load_filter);
    read_estimates(s, r);
    r->rule_state = s->full_rule.state;
    r->rule_reason = s->full_rule.reason;
    r->trust = g->corrections.trust;
    r->fault_bits = fault_log_present_bits(&g->faults);
    r->trust_reason = corrections_trust_reason(&g->corrections, s, r->fault_bits);
    r->shown_percent = s->shown.percent;
    r->shown_milliamps = shown_milliamps(g);
    r->shown_time_to_empty_minutes = shown_hours_minutes(&s->shown.hours);
    r->current_microamps = g->last.current_microamps;
    r->voltage_microvolts = g->last.voltage_microvolts;
    r->temperature_millicelsius = g->last.temperature_millicelsius;
}

static void inspect_sense(const struct gauge *g, int64_t *values)
{
    values[REGISTER_CLOCK_MILLIS] = g->clock.last_clock_millis;
    values[REGISTER_UPTIME_MILLIS] = g->clock.uptime_millis;
    values[REGISTER_SHUNT_COUNTS] = g->last.shunt_counts;
    values[REGISTER_VOLTAGE_COUNTS] = g->last.voltage_counts;
    values[REGISTER_CURRENT_MICROAMPS] = g->last.current_microamps;
    values[REGISTER_VOLTAGE_MICROVOLTS] = g->last.voltage_microvolts;
    values[REGISTER_TEMPERATURE_MILLICELSIUS] = g->last.temperature_millicelsius;
    values[REGISTER_ZERO_ADJUSTMENT_COUNTS_Q8] = g->s.adjustment.zero_counts_q8;
    values[REGISTER_SPAN_ADJUSTMENT_PARTS_PER_MILLION] = g->s.adjustment.gain_ppm;
}

static void inspect_charge(const struct gauge *g, int64_t *values)
{
    const struct charge_accumulator *charge = &g->s.charge;
    const struct minute_mean *minute = &g->s.minute;
    values[REGISTER_IN_NANOCOULOMBS] = charge->in_nanocoulombs;
    values[REGISTER_OUT_NANOCOULOMBS] = charge->out_nanocoulombs;
    values[REGISTER_MINUTE_NANOCOULOMBS] = charge->minute_nanocoulombs;
    values[REGISTER_MINUTE_MILLIS] = minute->millis;
    values[REGISTER_SETTLED_NANOCOULOMBS] = charge->settled_nanocoulombs;
    values[REGISTER_EFFICIENCY_REMAINDER_Q16] = charge->efficiency.remainder_q16;
    values[REGISTER_CHARGE_NANOCOULOMBS] = charge_accumulator_charge(charge);
    values[REGISTER_CAPACITY_NANOCOULOMBS] = charge->capacity_nanocoulombs;
    values[REGISTER_SURPLUS_NANOCOULOMBS] = charge->surplus_nanocoulombs;
    values[REGISTER_DEFICIT_NANOCOULOMBS] = charge->deficit_nanocoulombs;
    values[REGISTER_STATE_OF_CHARGE_PARTS_PER_MILLION] =
        corrections_is_known(&g->corrections) ? stages_state_of_charge_ppm(&g->s)
                                              : READOUT_NOT_KNOWN;
    values[REGISTER_IN_MICROJOULES] = energy_counter_in_microjoules(&g->energy);
    values[REGISTER_OUT_MICROJOULES] = energy_counter_out_microjoules(&g->energy);
    values[REGISTER_MINUTE_MEAN_MICROAMPS] = minute->last.mean_microamps;
    values[REGISTER_MINUTE_LOWEST_MICROVOLTS] = minute->last.lowest_microvolts;
}

static void inspect_band(const struct state_band *band, int64_t *values)
{
    values[REGISTER_LOWER_EDGE_PARTS_PER_MILLION] = band->lower_edge_ppm;
    values[REGISTER_UPPER_EDGE_PARTS_PER_MILLION] = band->upper_edge_ppm;
    values[REGISTER_BAND_RESIDUAL_PARTS_PER_MILLION] = band->sums.residual_ppm;
    values[REGISTER_BAND_MILLIS] = band->sums.millis;
    values[REGISTER_BAND_NET_NANOCOULOMBS] = band->sums.net_nanocoulombs;
    values[REGISTER_BAND_GROSS_NANOCOULOMBS] = band->sums.gross_nanocoulombs;
    values[REGISTER_BAND_IN_NANOCOULOMBS] = band->sums.in_nanocoulombs;
    values[REGISTER_BAND_GAP_NANOCOULOMBS] = band->sums.gap_nanocoulombs;
    values[REGISTER_BAND_WARM_MILLIS_Q8] = band->sums.warm_millis_q8;
}

static void inspect_rules(const struct stages *s, int64_t *values)
{
    const struct full_charge_rule *full = &s->full_rule;
    values[REGISTER_RULE_THRESHOLD_MICROVOLTS] = full->threshold_microvolts;
    values[REGISTER_RULE_STATE] = full->state;
    values[REGISTER_RULE_REASON] = full->reason;
    values[REGISTER_RULE_HELD_MINUTES] = full->taper.hold.held_minutes;
    values[REGISTER_RULE_DISCHARGED_NANOCOULOMBS] = full->discharged_nanocoulombs;
    values[REGISTER_FULL_COUNT] = full->full_count;
    values[REGISTER_RULE_STATES_SEEN] = full->coverage.state_bits;
    values[REGISTER_RULE_TRANSITIONS_SEEN] = (int64_t)full->coverage.transition_bits;
    values[REGISTER_RULE_REASONS_SEEN] = full->coverage.reason_bits;
    values[REGISTER_EMPTY_COUNT] = s->empty_rule.empty_count;
    values[REGISTER_RESTED_MINUTES] = s->rest_rule.rested_minutes;
    values[REGISTER_MINUTES_SINCE_FULL] = s->diagnosis.since_full_minutes;
    values[REGISTER_RESISTANCE_MICROOHMS] = s->diagnosis.steps.resistance_microohms;
    values[REGISTER_MEASURED_CAPACITY_MILLIAMP_HOURS] = s->capacity.milliamp_hours.measured;
    values[REGISTER_MEASURED_EFFICIENCY_PARTS_PER_MILLION] = s->efficiency.ppm.measured;
}

static void inspect_estimates(const struct gauge *g, int64_t *values)
{
    const struct stages *s = &g->s;
    const struct time_to_empty *t = &s->time_to_empty;
    values[REGISTER_FILTERED_MICROAMPS_Q8] = load_filter_microamps_q8(&s->load_filter);
    values[REGISTER_TIME_TO_EMPTY_STATE] = t->at_filtered_load.state;
    values[REGISTER_TIME_TO_EMPTY_MINUTES] = t->at_filtered_load.minutes;
    values[REGISTER_TIME_TO_EMPTY_LOW_MINUTES] = t->low.minutes;
    values[REGISTER_TIME_TO_EMPTY_HIGH_MINUTES] = t->high.minutes;
    values[REGISTER_TIME_AT_THIS_LOAD_MINUTES] = t->at_this_load.minutes;
    values[REGISTER_TIME_AT_USUAL_USE_MINUTES] = t->at_usual_use.minutes;
    values[REGISTER_TIME_TO_FULL_STATE] = s->time_to_full.state;
    values[REGISTER_TIME_TO_FULL_MINUTES] = s->time_to_full.minutes;
    values[REGISTER_SHOWN_PERCENT] = s->shown.percent;
    values[REGISTER_SHOWN_MILLIAMPS] = shown_milliamps(g);
    values[REGISTER_SHOWN_TIME_TO_EMPTY_MINUTES] = shown_hours_minutes(&s->shown.hours);
    values[REGISTER_LOW_CHARGE_ALARM] = s->low_charge_alarm.on ? 1 : 0;
}

void gauge_inspect(struct gauge *g, struct registers *registers)
{
    int64_t *values = registers->values;
    stages_update_band(&g->s);
    inspect_sense(g, values);
    inspect_charge(g, values);
    inspect_band(&g->s.band, values);
    inspect_rules(&g->s, values);
    inspect_estimates(g, values);
    values[REGISTER_TRUST] = g->corrections.trust;
    values[REGISTER_SAVES] = g->memory.saves_count;
    values[REGISTER_FAULT_BITS] = fault_log_present_bits(&g->faults);
    values[REGISTER_FAULT_TICKS] = g->faults.fault_ticks;
}
