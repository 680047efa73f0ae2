/*
 * The gauge in the words of the Smart Battery Data Specification 1.1 (V4 to V8): charge from the
 * lower edge of the band, rounded down, and the width of the band as MaxError.
 */
#ifndef GAUGE_READOUT_SMART_BATTERY_VIEW_H
#define GAUGE_READOUT_SMART_BATTERY_VIEW_H

#include <stdbool.h>
#include <stdint.h>

#include "estimate/rate_model.h"
#include "settings/gauge_settings.h"

/* What the view is filled from, all of one instant. */
struct smart_battery_input {
    int64_t low_nanocoulombs;
    int64_t high_nanocoulombs;
    int64_t full_charge_nanocoulombs;
    int64_t cycle_count;
    int32_t current_microamps;
    int32_t one_minute_microamps;
    int32_t voltage_microvolts;
    int32_t temperature_millicelsius;
    /* -1 where there is no estimate. */
    int32_t time_to_full_minutes;
    bool known;
    bool full_proven;
};

struct smart_battery_view {
    /* Parameters. */
    int64_t unit_nanocoulombs;
    int64_t unit_microamps;
    int64_t design_nanocoulombs;
    int32_t scale_code;
    int32_t design_capacity_word;
    int32_t design_millivolts;
    /* What the host wrote. */
    int32_t at_rate_word;
    int32_t capacity_alarm_word;
    int32_t time_alarm_minutes;
    /* The last input, in words. */
    struct smart_battery_input in;
    int32_t remaining_word;
    int32_t full_charge_word;
    int32_t percent;
    int32_t max_error_percent;
    int32_t error_code;
    bool empty_latch;
};

void smart_battery_view_init(struct smart_battery_view *view,
                             const struct gauge_settings *settings);

/* Takes the figures of one instant. */
void smart_battery_view_update(struct smart_battery_view *view,
                               const struct smart_battery_input *input);

/* Reads one word by its function code; 0 with the error "unsupported" for one without answer. */
uint16_t smart_battery_view_read(struct smart_battery_view *view, const struct rate_model *model,
                                 int32_t code);

/* Writes the rate or one of the two alarms; else false, and the status word carries the error. */
bool smart_battery_view_write(struct smart_battery_view *view, int32_t code, uint16_t value);

#endif
