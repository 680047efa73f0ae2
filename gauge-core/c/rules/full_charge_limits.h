/* The full-charge rule's settings turned into microvolts, microamps, nanocoulombs and minutes. */
#ifndef GAUGE_RULES_FULL_CHARGE_LIMITS_H
#define GAUGE_RULES_FULL_CHARGE_LIMITS_H

#include <stdbool.h>
#include <stdint.h>

#include "settings/gauge_settings.h"

struct full_charge_limits {
    int64_t taper_microamps;
    int64_t flatness_microvolts;
    int64_t float_microamps;
    int64_t rearm_nanocoulombs;
    int64_t no_flow_microamps;
    int64_t some_flow_microamps;
    int64_t float_at_25_microvolts;
    int64_t threshold_at_25_microvolts;
    int64_t above_rest_microvolts;
    int64_t microvolts_per_kelvin;
    int64_t compensation_limit_microvolts;
    int32_t hold_minutes;
    int32_t plateau_minutes;
    /* 0 where the float path is off. */
    int32_t float_minutes;
    int32_t rearm_edge_ppm;
    int32_t taper_residual_ppm;
    int32_t other_residual_ppm;
    bool switched_off;
};

void full_charge_limits_init(struct full_charge_limits *limits,
                             const struct gauge_settings *settings);

/* How far the charger's voltages move with temperature (F2); 0 where it is absent. */
int64_t full_charge_compensation_microvolts(const struct full_charge_limits *limits,
                                            int32_t temperature_millicelsius);

static inline int64_t full_charge_threshold_microvolts(const struct full_charge_limits *limits,
                                                       int32_t temperature_millicelsius)
{
    return limits->threshold_at_25_microvolts +
           full_charge_compensation_microvolts(limits, temperature_millicelsius);
}

static inline int64_t full_charge_float_microvolts(const struct full_charge_limits *limits,
                                                   int32_t temperature_millicelsius)
{
    return limits->float_at_25_microvolts +
           full_charge_compensation_microvolts(limits, temperature_millicelsius);
}

/* The lowest voltage that a charger holds (F8). */
int64_t full_charge_charging_microvolts(const struct full_charge_limits *limits,
                                        int32_t temperature_millicelsius);

#endif
