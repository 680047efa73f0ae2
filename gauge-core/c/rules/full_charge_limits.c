#include "rules/full_charge_limits.h"

#include "charge/state_of_charge.h"
#include "port/sample.h"

#define REFERENCE_MILLICELSIUS 25000

/* Float is recognised from a tenth of a volt per 12 V under its set voltage (F11). */
#define FLOAT_MARGIN_DIVISOR 120

void full_charge_limits_init(struct full_charge_limits *l, const struct gauge_settings *s)
{
    int64_t absorption_millivolts = setting_of(s, SETTING_ABSORPTION);
    int64_t capacity_milliamp_hours = setting_of(s, SETTING_CAPACITY);
    l->switched_off = absorption_millivolts == 0;
    l->threshold_at_25_microvolts =
        (absorption_millivolts - setting_of(s, SETTING_ABSORPTION_MARGIN)) * 1000;
    l->microvolts_per_kelvin = setting_of(s, SETTING_TEMPERATURE_COEFFICIENT);
    l->compensation_limit_microvolts = setting_of(s, SETTING_COMPENSATION_LIMIT) * 1000;
    /* derived: mAh x ppm / 1000 = uA for one hour */
    l->taper_microamps = capacity_milliamp_hours * setting_of(s, SETTING_TAPER) / 1000;
    l->hold_minutes = setting_int32_of(s, SETTING_HOLD);
    l->flatness_microvolts = setting_of(s, SETTING_FLATNESS) * 1000;
    l->plateau_minutes = setting_int32_of(s, SETTING_PLATEAU_HOLD);
    int64_t float_millivolts = setting_of(s, SETTING_FLOAT_VOLTAGE);
    l->float_at_25_microvolts = (float_millivolts - float_millivolts / FLOAT_MARGIN_DIVISOR) * 1000;
    l->above_rest_microvolts =
        (setting_of(s, SETTING_REST_VOLTAGE_100) + setting_of(s, SETTING_REST_VOLTAGE_BOUND)) *
            1000 +
        1;
    l->float_minutes = float_millivolts == 0 ? 0 : setting_int32_of(s, SETTING_FLOAT_HOLD);
    /* derived: 0.5 % of the capacity in one hour */
    l->float_microamps = capacity_milliamp_hours * 5;
    l->rearm_nanocoulombs =
        state_of_charge_nanocoulombs(setting_of(s, SETTING_REARM_DISCHARGE),
                                     capacity_milliamp_hours * NANOCOULOMBS_PER_MILLIAMP_HOUR);
    l->rearm_edge_ppm = FULL_PPM - setting_int32_of(s, SETTING_REARM_DISCHARGE);
    /* derived: 0.05 % and 0.2 % of the capacity in one hour; an offset must not look like flow */
    int64_t offset_microamps = setting_of(s, SETTING_OFFSET_BOUND);
    l->no_flow_microamps = max_int64(capacity_milliamp_hours / 2, offset_microamps);
    l->some_flow_microamps = max_int64(capacity_milliamp_hours * 2, 2 * offset_microamps);
    l->taper_residual_ppm = setting_int32_of(s, SETTING_FULL_RESIDUAL);
    l->other_residual_ppm = setting_int32_of(s, SETTING_LATE_RESIDUAL);
}

int64_t full_charge_compensation_microvolts(const struct full_charge_limits *l,
                                            int32_t temperature_millicelsius)
{
    if (temperature_millicelsius == TEMPERATURE_ABSENT) {
        return 0;
    }
    int64_t above_reference = (int64_t)temperature_millicelsius - REFERENCE_MILLICELSIUS;
    return clamp(divide_half_away_from_zero(l->microvolts_per_kelvin * above_reference, 1000),
                 -l->compensation_limit_microvolts, l->compensation_limit_microvolts);
}

int64_t full_charge_charging_microvolts(const struct full_charge_limits *l,
                                        int32_t temperature_millicelsius)
{
    int64_t lowest = l->float_minutes == 0
                         ? l->above_rest_microvolts
                         : full_charge_float_microvolts(l, temperature_millicelsius);
    return min_int64(full_charge_threshold_microvolts(l, temperature_millicelsius), lowest);
}
