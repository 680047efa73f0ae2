#include "readout/smart_battery_view.h"

#include "charge/state_of_charge.h"
#include "fixed/fixed_math.h"
#include "port/sample.h"
#include "port/smart_battery_word.h"

#define NOT_APPLICABLE_WORD 65535
#define LONGEST_WORD 65534
#define LARGEST_WORD 65535
#define LARGEST_CURRENT_WORD 32767
#define SMALLEST_CURRENT_WORD (-32768)
#define LARGEST_SCALE_CODE 3
#define VERSION_WORD 0x0021
#define MILLIS_PER_MINUTE 60000
#define AT_RATE_OK_MILLIS 10000
#define PERCENT 100
#define NO_LONGER_EMPTY_PERCENT 20
#define ZERO_CELSIUS_MILLIKELVIN 273150
#define TENTH_MILLIKELVIN 100
#define ALARM_MINUTES 10
#define ALARM_DIVISOR 10

void smart_battery_view_init(struct smart_battery_view *v, const struct gauge_settings *settings)
{
    *v = (struct smart_battery_view){0};
    int64_t design_milliamp_hours = setting_of(settings, SETTING_CAPACITY);
    int64_t rated_milliamps = setting_of(settings, SETTING_SHUNT_RATED_CURRENT);
    int64_t unit = 1;
    while (v->scale_code < LARGEST_SCALE_CODE && (design_milliamp_hours / unit > LARGEST_WORD ||
                                                  rated_milliamps / unit > LARGEST_CURRENT_WORD)) {
        v->scale_code++;
        unit *= 10;
    }
    v->unit_nanocoulombs = unit * NANOCOULOMBS_PER_MILLIAMP_HOUR;
    v->unit_microamps = unit * 1000;
    v->design_nanocoulombs = design_milliamp_hours * NANOCOULOMBS_PER_MILLIAMP_HOUR;
    v->design_capacity_word = (int32_t)clamp(design_milliamp_hours / unit, 0, LARGEST_WORD);
    v->design_millivolts =
        (int32_t)clamp(setting_of(settings, SETTING_NOMINAL_VOLTAGE), 0, LARGEST_WORD);
    v->capacity_alarm_word = v->design_capacity_word / ALARM_DIVISOR;
    v->time_alarm_minutes = ALARM_MINUTES;
    v->max_error_percent = PERCENT;
    v->in.temperature_millicelsius = TEMPERATURE_ABSENT;
    v->in.time_to_full_minutes = -1;
}

static int32_t word(int64_t value)
{
    return (int32_t)clamp(value, 0, LARGEST_WORD);
}

void smart_battery_view_update(struct smart_battery_view *v,
                               const struct smart_battery_input *input)
{
    v->in = *input;
    v->full_charge_word = word(input->full_charge_nanocoulombs / v->unit_nanocoulombs);
    if (!input->known) {
        v->remaining_word = 0;
        v->percent = 0;
        v->max_error_percent = PERCENT;
        return;
    }
    /* The low end is rounded down and the high end up, so that the truth stays between. */
    int64_t low = max_int64(0, input->low_nanocoulombs);
    v->remaining_word = word(low / v->unit_nanocoulombs);
    int64_t hundredth = max_int64(1, input->full_charge_nanocoulombs / PERCENT);
    v->percent = (int32_t)clamp(low / hundredth, 0, PERCENT);
    int64_t high_percent = (max_int64(low, input->high_nanocoulombs) + hundredth - 1) / hundredth;
    v->max_error_percent = (int32_t)clamp(high_percent - v->percent, 0, PERCENT - v->percent);
    if (v->remaining_word == 0) {
        v->empty_latch = true;
    } else if (v->percent >= NO_LONGER_EMPTY_PERCENT) {
        v->empty_latch = false;
    }
}

static int32_t fail(struct smart_battery_view *v, int32_t code)
{
    v->error_code = code;
    return 0;
}

/* Toward zero, so that no current is reported that is not there. */
static int32_t current(const struct smart_battery_view *v, int32_t microamps)
{
    return (int32_t)clamp(microamps / v->unit_microamps, SMALLEST_CURRENT_WORD,
                          LARGEST_CURRENT_WORD);
}

static int64_t at_rate_microamps(const struct smart_battery_view *v)
{
    return v->at_rate_word * v->unit_microamps;
}

/* Minutes at a discharge current, from the charge that the host reads; rounded down. */
static int32_t time_to_empty(const struct smart_battery_view *v, const struct rate_model *model,
                             int64_t microamps)
{
    if (microamps >= 0 || !v->in.known) {
        return NOT_APPLICABLE_WORD;
    }
    int64_t usable = rate_model_usable_nanocoulombs(
        model, v->remaining_word * v->unit_nanocoulombs, clamp_to_int32(microamps),
        v->in.temperature_millicelsius);
    return (int32_t)min_int64(usable / -microamps / MILLIS_PER_MINUTE, LONGEST_WORD);
}

static int32_t at_rate_time_to_full(const struct smart_battery_view *v)
{
    if (v->at_rate_word <= 0 || !v->in.known) {
        return NOT_APPLICABLE_WORD;
    }
    int64_t missing = max_int32(0, v->full_charge_word - v->remaining_word) * v->unit_nanocoulombs;
    return (int32_t)min_int64(missing / at_rate_microamps(v) / MILLIS_PER_MINUTE, LONGEST_WORD);
}

static int32_t average_time_to_full(const struct smart_battery_view *v)
{
    if (v->in.one_minute_microamps <= 0 || v->in.time_to_full_minutes < 0) {
        return NOT_APPLICABLE_WORD;
    }
    return min_int32(v->in.time_to_full_minutes, LONGEST_WORD);
}

/* Ten seconds of the rate on top of what flows now. */
static bool at_rate_ok(const struct smart_battery_view *v)
{
    if (v->at_rate_word >= 0) {
        return true;
    }
    int64_t out_microamps = -at_rate_microamps(v) - min_int32(0, v->in.current_microamps);
    return v->in.known &&
           v->remaining_word * v->unit_nanocoulombs >= out_microamps * AT_RATE_OK_MILLIS;
}

/* 0 where there is no sensor: no battery is at absolute zero. */
static int32_t temperature(const struct smart_battery_view *v)
{
    if (v->in.temperature_millicelsius == TEMPERATURE_ABSENT) {
        return 0;
    }
    int64_t millikelvin = (int64_t)v->in.temperature_millicelsius + ZERO_CELSIUS_MILLIKELVIN;
    return word((millikelvin + TENTH_MILLIKELVIN / 2) / TENTH_MILLIKELVIN);
}

static int32_t absolute_percent(const struct smart_battery_view *v)
{
    if (!v->in.known) {
        return 0;
    }
    return word(max_int64(0, v->in.low_nanocoulombs) /
                max_int64(1, v->design_nanocoulombs / PERCENT));
}

static int32_t status(const struct smart_battery_view *v, const struct rate_model *model)
{
    int32_t flow = current(v, v->in.current_microamps);
    int32_t bits = v->error_code | (flow > 0 ? 0 : STATUS_DISCHARGING);
    if (!v->in.known) {
        return bits;
    }
    bits |= STATUS_INITIALIZED;
    bits |= v->in.full_proven ? STATUS_FULLY_CHARGED : 0;
    bits |= v->empty_latch ? STATUS_FULLY_DISCHARGED : 0;
    bits |= v->remaining_word < v->capacity_alarm_word ? STATUS_REMAINING_CAPACITY : 0;
    bits |= time_to_empty(v, model, v->in.one_minute_microamps) < v->time_alarm_minutes
                ? STATUS_REMAINING_TIME
                : 0;
    bool nothing_left = flow < 0 && time_to_empty(v, model, v->in.current_microamps) == 0;
    return bits | (nothing_left ? STATUS_TERMINATE_DISCHARGE : 0);
}

static int32_t answer(struct smart_battery_view *v, const struct rate_model *model, int32_t code)
{
    switch (code) {
    case WORD_REMAINING_CAPACITY_ALARM: return v->capacity_alarm_word;
    case WORD_REMAINING_TIME_ALARM: return v->time_alarm_minutes;
    case WORD_BATTERY_MODE: return 0;
    case WORD_AT_RATE: return v->at_rate_word;
    case WORD_AT_RATE_TIME_TO_FULL: return at_rate_time_to_full(v);
    case WORD_AT_RATE_TIME_TO_EMPTY: return time_to_empty(v, model, at_rate_microamps(v));
    case WORD_AT_RATE_OK: return at_rate_ok(v) ? 1 : 0;
    case WORD_TEMPERATURE: return temperature(v);
    case WORD_VOLTAGE: return word(v->in.voltage_microvolts / 1000);
    case WORD_CURRENT: return current(v, v->in.current_microamps);
    case WORD_AVERAGE_CURRENT: return current(v, v->in.one_minute_microamps);
    case WORD_MAX_ERROR: return v->max_error_percent;
    case WORD_RELATIVE_STATE_OF_CHARGE: return v->percent;
    case WORD_ABSOLUTE_STATE_OF_CHARGE: return absolute_percent(v);
    case WORD_REMAINING_CAPACITY: return v->remaining_word;
    case WORD_FULL_CHARGE_CAPACITY: return v->full_charge_word;
    case WORD_RUN_TIME_TO_EMPTY: return time_to_empty(v, model, v->in.current_microamps);
    case WORD_AVERAGE_TIME_TO_EMPTY: return time_to_empty(v, model, v->in.one_minute_microamps);
    case WORD_AVERAGE_TIME_TO_FULL: return average_time_to_full(v);
    case WORD_BATTERY_STATUS: return status(v, model);
    case WORD_CYCLE_COUNT: return word(v->in.cycle_count);
    case WORD_DESIGN_CAPACITY: return v->design_capacity_word;
    case WORD_DESIGN_VOLTAGE: return v->design_millivolts;
    case WORD_SPECIFICATION_INFO: return VERSION_WORD | (v->scale_code << 12);
    default: return fail(v, STATUS_UNSUPPORTED_COMMAND);
    }
}

uint16_t smart_battery_view_read(struct smart_battery_view *v, const struct rate_model *model,
                                 int32_t code)
{
    if (code != WORD_BATTERY_STATUS) {
        v->error_code = 0;
    }
    /* Currents and the rate become sixteen bits in two's complement. */
    return (uint16_t)((uint32_t)answer(v, model, code) & 0xFFFFu);
}

bool smart_battery_view_write(struct smart_battery_view *v, int32_t code, uint16_t value)
{
    v->error_code = 0;
    switch (code) {
    case WORD_AT_RATE:
        v->at_rate_word = value <= LARGEST_CURRENT_WORD ? value : (int32_t)value - 65536;
        return true;
    case WORD_REMAINING_CAPACITY_ALARM:
        v->capacity_alarm_word = value;
        return true;
    case WORD_REMAINING_TIME_ALARM:
        v->time_alarm_minutes = value;
        return true;
    default:
        (void)fail(v, STATUS_ACCESS_DENIED);
        return false;
    }
}
