#include "gauge/stages.h"

#include "port/readout.h"
#include "port/sample.h"

void stages_init(struct stages *s, const struct gauge_settings *settings)
{
    int64_t capacity_nanocoulombs =
        setting_of(settings, SETTING_CAPACITY) * NANOCOULOMBS_PER_MILLIAMP_HOUR;
    s->settings = settings;
    shunt_adjustment_init(&s->adjustment, settings);
    current_sense_init(&s->current_sense, settings, 0, 0);
    voltage_sense_init(&s->voltage_sense, settings);
    charge_accumulator_init(&s->charge, capacity_nanocoulombs,
                            setting_of(settings, SETTING_COULOMBIC_EFFICIENCY),
                            setting_of(settings, SETTING_OWN_SUPPLY));
    self_discharge_init(&s->self_discharge, setting_of(settings, SETTING_SELF_DISCHARGE),
                        capacity_nanocoulombs);
    minute_mean_init(&s->minute);
    /* The offset is in both: what is left is the current of one step (B3). */
    state_band_init(&s->band, settings,
                    (int64_t)current_sense_microamps(&s->current_sense, 1) -
                        current_sense_microamps(&s->current_sense, 0));
    full_charge_rule_init(&s->full_rule, settings);
    empty_rule_init(&s->empty_rule, settings);
    rest_rule_init(&s->rest_rule, settings);
    capacity_estimate_init(&s->capacity, settings);
    efficiency_estimate_init(&s->efficiency, settings);
    diagnosis_init(&s->diagnosis, settings);
    load_filter_init(&s->load_filter, capacity_nanocoulombs,
                     setting_int32_of(settings, SETTING_AVERAGING_TIME));
    rate_model_init(&s->rate_model, settings);
    time_to_empty_init(&s->time_to_empty, settings);
    time_to_full_init(&s->time_to_full, settings);
    low_charge_alarm_init(&s->low_charge_alarm, setting_int32_of(settings, SETTING_LOW_CHARGE),
                          setting_int32_of(settings, SETTING_LOW_CHARGE_HYSTERESIS));
    /* derived: 1 mA = 1,000 uA */
    s->shown = (struct shown_figures){setting_of(settings, SETTING_SHOWN_AS_ZERO_BELOW) * 1000,
                                      0,
                                      {0, 0, false},
                                      READOUT_NOT_KNOWN};
    smart_battery_view_init(&s->bus, settings);
    s->accounted_in_nanocoulombs = 0;
    s->accounted_out_nanocoulombs = 0;
}

void stages_begin_quiet_time(struct stages *s)
{
    quiet_time_begin(&s->full_rule.quiet);
    quiet_time_begin(&s->empty_rule.quiet);
    quiet_time_begin(&s->rest_rule.quiet);
}

void stages_adopt_adjustment(struct stages *s)
{
    current_sense_init(&s->current_sense, s->settings, s->adjustment.zero_counts_q8,
                       s->adjustment.gain_ppm);
}

void stages_account(struct stages *s, int32_t millis, int32_t warmth_q8)
{
    struct band_stretch stretch = {
        millis,
        s->charge.in_nanocoulombs - s->accounted_in_nanocoulombs,
        s->charge.out_nanocoulombs - s->accounted_out_nanocoulombs,
        warmth_q8,
    };
    state_band_add(&s->band, &stretch);
    stages_mark_accounted(s);
}

void stages_mark_accounted(struct stages *s)
{
    s->accounted_in_nanocoulombs = s->charge.in_nanocoulombs;
    s->accounted_out_nanocoulombs = s->charge.out_nanocoulombs;
}

int64_t stages_off_microamps(const struct stages *s)
{
    return setting_of(s->settings, SETTING_CAPACITY) *
           setting_of(s->settings, SETTING_OFF_CURRENT_BOUND) / 1000;
}

void stages_update_minute_estimates(struct stages *s, bool known)
{
    bool full_voltage = !s->full_rule.limits.switched_off &&
                        s->minute.last.lowest_microvolts >= s->full_rule.threshold_microvolts;
    time_to_full_add_minute(&s->time_to_full, known, charge_accumulator_charge(&s->charge),
                            s->minute.last.mean_microamps, full_voltage);
}

void stages_update_estimates(struct stages *s, bool known, const struct last_sample *last)
{
    int64_t capacity_part = s->charge.capacity_nanocoulombs / FULL_PPM;
    struct estimate_input input = {
        charge_accumulator_charge(&s->charge),
        s->band.lower_edge_ppm * capacity_part,
        s->band.upper_edge_ppm * capacity_part,
        last->current_microamps,
        last->temperature_millicelsius,
        known,
    };
    time_to_empty_update(&s->time_to_empty, &input, &s->load_filter, &s->rate_model);
    /* The low end speaks too early rather than too late; a band that says nothing says nothing. */
    int32_t alarm_ppm = state_band_is_unknown(&s->band) ? stages_state_of_charge_ppm(s)
                                                        : s->band.lower_edge_ppm;
    low_charge_alarm_update(&s->low_charge_alarm, known ? alarm_ppm : READOUT_NOT_KNOWN);
}

void stages_update_shown(struct stages *s, bool known)
{
    int32_t ppm = known ? stages_state_of_charge_ppm(s) : READOUT_NOT_KNOWN;
    s->shown.percent = shown_percent_next(s->shown.percent, ppm, s->charge.full_proven);
    if (s->time_to_empty.at_filtered_load.state == ESTIMATE_STATE_ESTIMATE) {
        shown_hours_update(&s->shown.hours, s->time_to_empty.at_filtered_load.minutes,
                           s->shown.minute_millis);
    } else {
        shown_hours_clear(&s->shown.hours);
    }
}

void stages_update_bus(struct stages *s, bool known, const struct last_sample *last)
{
    int64_t capacity_nanocoulombs = s->charge.capacity_nanocoulombs;
    int64_t capacity_part = capacity_nanocoulombs / FULL_PPM;
    struct smart_battery_input input;
    input.low_nanocoulombs = s->band.lower_edge_ppm * capacity_part;
    input.high_nanocoulombs = s->band.upper_edge_ppm * capacity_part;
    input.full_charge_nanocoulombs = capacity_nanocoulombs;
    input.cycle_count = s->charge.out_nanocoulombs / capacity_nanocoulombs;
    input.current_microamps = last->current_microamps;
    input.one_minute_microamps = load_filter_one_minute_microamps(&s->load_filter);
    input.voltage_microvolts = last->voltage_microvolts;
    input.temperature_millicelsius = last->temperature_millicelsius;
    input.time_to_full_minutes = s->time_to_full.state == FULL_TIME_STATE_ESTIMATE
                                     ? s->time_to_full.minutes
                                     : -1;
    /* A band that says nothing is wider than any MaxError: nothing is initialized then (V6). */
    input.known = known && !state_band_is_unknown(&s->band);
    input.full_proven = s->charge.full_proven;
    smart_battery_view_update(&s->bus, &input);
}

void stages_update_band(struct stages *s)
{
    state_band_update(&s->band, stages_state_of_charge_ppm(s),
                      charge_accumulator_charge(&s->charge));
}
