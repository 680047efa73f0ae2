#include "gauge/gauge.h"

#include "gauge/gauge_parts.h"
#include "gauge/settings_change.h"

void gauge_init(struct gauge *g, const struct gauge_settings *settings,
                const struct state_store *store, const struct event_sink *events)
{
    g->events = *events;
    g->clock = (struct elapsed_time){0, 0, false, false};
    g->last = (struct last_sample){0, 0, 0, 0, TEMPERATURE_ABSENT};
    g->energy = (struct energy_counter){0, 0, 0, 0};
    corrections_init(&g->corrections);
    stages_init(&g->s, settings);
    fault_log_restart(&g->faults);
    gauge_memory_init(&g->memory, store, settings);
    g->check_battery = false;
}

static void restore(struct gauge *g, enum slot_outcome found, int64_t off_millis,
                    enum off_time off_time)
{
    struct memory_scene scene = {&g->s, &g->energy, &g->corrections};
    int64_t step = gauge_memory_restore(&g->memory, &scene);
    stages_mark_accounted(&g->s);
    gauge_memory_widen_restored(&g->memory, &g->s);
    if (off_time == OFF_TIME_EXACT) {
        state_band_add_off_time(&g->s.band, off_millis, stages_off_microamps(&g->s));
        diagnosis_add_off_time(&g->s.diagnosis, off_millis / MINUTE_MILLIS);
    } else {
        state_band_forget(&g->s.band);
    }
    announce(&g->events, EVENT_RESTORED, 0, stages_state_of_charge_ppm(&g->s));
    if (found == SLOT_OUTCOME_FOREIGN_SETTINGS) {
        announce(&g->events, EVENT_SETTINGS_CHANGED, 0,
                 corrections_is_known(&g->corrections) ? step : 0);
    }
}

void gauge_power_up(struct gauge *g, int64_t off_millis, enum off_time off_time)
{
    int64_t rest_off_millis = max_int64(off_millis, 0);
    elapsed_time_restart(&g->clock);
    fault_log_restart(&g->faults);
    g->last = (struct last_sample){0, 0, 0, 0, TEMPERATURE_ABSENT};
    g->energy = (struct energy_counter){0, 0, 0, 0};
    corrections_init(&g->corrections);
    stages_init(&g->s, g->s.settings);
    enum slot_outcome found = gauge_memory_open(&g->memory);
    bool restored = found != SLOT_OUTCOME_NONE_VALID && found != SLOT_OUTCOME_FOREIGN_BATTERY;
    g->check_battery = restored;
    announce(&g->events, EVENT_POWERED_UP, 0, rest_off_millis);
    if (restored) {
        restore(g, found, rest_off_millis, off_time);
    } else if (found == SLOT_OUTCOME_FOREIGN_BATTERY) {
        announce(&g->events, EVENT_NEW_BATTERY, 0, 0);
    }
    gauge_memory_begin(&g->memory, &g->s);
    stages_begin_quiet_time(&g->s);
    gauge_after_command(g);
    gauge_stand(g, FAULT_ADJUSTMENT_LOST, gauge_memory_is_lost(&g->memory));
}

/* Takes a sample with which nothing is wrong, as nearly all are; else takes nothing. */
static inline bool take_in_range(struct gauge *g, const struct sample *sample)
{
    const struct current_sense *current = &g->s.current_sense;
    const struct voltage_sense *voltage = &g->s.voltage_sense;
    if (!current_sense_is_in_range(current, sample->shunt_counts) ||
        !voltage_sense_is_in_range(voltage, sample->voltage_counts)) {
        return false;
    }
    g->last.shunt_counts = sample->shunt_counts;
    g->last.current_microamps = current_sense_microamps_in_range(current, sample->shunt_counts);
    g->last.voltage_counts = sample->voltage_counts;
    g->last.voltage_microvolts =
        voltage_sense_microvolts_in_range(voltage, sample->voltage_counts);
    g->last.temperature_millicelsius = sample->temperature_millicelsius;
    return true;
}

void gauge_tick(struct gauge *g, const struct sample *sample)
{
    fault_log_begin_tick(&g->faults);
    int32_t elapsed_millis = elapsed_time_advance(&g->clock, sample->clock_millis);
    if (elapsed_millis > 0 && elapsed_millis < minute_mean_millis_left(&g->s.minute) &&
        !g->check_battery && take_in_range(g, sample)) {
        gauge_add_stretch(g, elapsed_millis);
        gauge_save_if_due(g, elapsed_millis);
    } else {
        gauge_tick_in_full(g, sample, elapsed_millis);
    }
}

static enum command_outcome declare(struct gauge *g, int64_t ppm)
{
    if (ppm < 0 || ppm > FULL_PPM) {
        return OUTCOME_REFUSED_OUT_OF_RANGE;
    }
    struct correction_scene scene = gauge_scene(g);
    corrections_declare(&g->corrections, &scene, ppm);
    g->memory.schedule.anchor_pending = true;
    gauge_after_command(g);
    return OUTCOME_DONE;
}

static enum command_outcome adjust(struct gauge *g, enum command command,
                                   int64_t reference_microamps)
{
    struct stages *s = &g->s;
    if (!s->minute.any_whole) {
        return OUTCOME_REFUSED_NO_MINUTE;
    }
    struct shown_minute minute = {s->minute.last.mean_microamps, s->minute.last.lowest_microamps,
                                  s->minute.last.highest_microamps};
    enum command_outcome outcome =
        command == COMMAND_ZERO_ADJUSTMENT
            ? shunt_adjustment_zero(&s->adjustment, &minute, &s->current_sense)
            : shunt_adjustment_span(&s->adjustment, &minute, reference_microamps);
    if (outcome == OUTCOME_DONE) {
        gauge_end_minute_early(g);
        stages_adopt_adjustment(s);
        stages_begin_quiet_time(s);
        g->memory.schedule.anchor_pending = true;
        gauge_stand(g, FAULT_ADJUSTMENT_LOST, false);
        announce(&g->events, EVENT_ADJUSTED, g->clock.uptime_millis, s->adjustment.zero_counts_q8);
        gauge_after_command(g);
    }
    return outcome;
}

enum command_outcome gauge_command(struct gauge *g, enum command command, int64_t argument)
{
    struct correction_scene scene = gauge_scene(g);
    switch (command) {
    case COMMAND_DECLARE_STATE_OF_CHARGE:
        return declare(g, argument);
    case COMMAND_NEW_BATTERY:
        gauge_end_minute_early(g);
        corrections_new_battery(&g->corrections, &scene, &g->energy);
        g->memory.schedule.anchor_pending = true;
        gauge_after_command(g);
        return OUTCOME_DONE;
    case COMMAND_FORGET_MEASURED:
        capacity_estimate_forget(&g->s.capacity);
        efficiency_estimate_forget(&g->s.efficiency);
        g->memory.schedule.anchor_pending = true;
        return OUTCOME_DONE;
    case COMMAND_ZERO_ADJUSTMENT:
    case COMMAND_SPAN_ADJUSTMENT:
        return adjust(g, command, argument);
    case COMMAND_COUNT:
    default:
        return OUTCOME_REFUSED_NOT_OFFERED;
    }
}

void gauge_change_settings(struct gauge *g, const struct gauge_settings *settings)
{
    gauge_end_minute_early(g);
    if (settings_change_is_other_battery(&g->s, settings)) {
        struct correction_scene scene = gauge_scene(g);
        settings_change_to_other_battery(&g->s, settings);
        corrections_new_battery(&g->corrections, &scene, &g->energy);
    } else {
        int64_t step = settings_change_carry_over(&g->s, settings);
        announce(&g->events, EVENT_SETTINGS_CHANGED, g->clock.uptime_millis,
                 corrections_is_known(&g->corrections) ? step : 0);
    }
    stages_mark_accounted(&g->s);
    gauge_memory_settings_changed(&g->memory, &g->s);
    stages_begin_quiet_time(&g->s);
    gauge_after_command(g);
}

uint16_t gauge_read_bus(struct gauge *g, int32_t code)
{
    stages_update_band(&g->s);
    stages_update_bus(&g->s, corrections_is_known(&g->corrections), &g->last);
    return smart_battery_view_read(&g->s.bus, &g->s.rate_model, code);
}

bool gauge_write_bus(struct gauge *g, int32_t code, uint16_t value)
{
    return smart_battery_view_write(&g->s.bus, code, value);
}
