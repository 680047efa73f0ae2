/*
 * The table of settings along a sample's way, in the order of settings.Setting: the fingerprint
 * runs through it. S(name, key, unit, smallest, largest, default); meanings are in docs/rules.md.
 */
#ifndef GAUGE_SETTINGS_SETTING_LIST_H
#define GAUGE_SETTINGS_SETTING_LIST_H

#define SETTING_LIST(S) \
    S(CHEMISTRY, "chemistry", "code", 1, 5, 2) \
    S(NOMINAL_VOLTAGE, "nominal-voltage", "mV", 6000, 96000, 12000) \
    S(SHUNT_RATED_CURRENT, "shunt-rated-current", "mA", 1000, 2000000, 100000) \
    S(SHUNT_RATED_DROP, "shunt-rated-drop", "uV", 10000, 300000, 75000) \
    S(SHUNT_CONVERTER_BITS, "shunt-converter-bits", "bit", 12, 24, 20) \
    S(SHUNT_FULL_SCALE, "shunt-full-scale", "uV", 10000, 1000000, 100000) \
    S(SHUNT_OFFSET, "shunt-offset", "counts/256", -65536, 65536, 0) \
    S(ZERO_LIMIT, "zero-limit", "ppm", 100, 50000, 2000) \
    S(VOLTAGE_CONVERTER_BITS, "voltage-converter-bits", "bit", 10, 24, 16) \
    S(VOLTAGE_FULL_SCALE, "voltage-full-scale", "mV", 5000, 100000, 65536) \
    S(CAPACITY, "capacity", "mAh", 100, 10000000, 100000) \
    S(COULOMBIC_EFFICIENCY, "coulombic-efficiency", "ppm", 500000, 1000000, 920000) \
    S(OWN_SUPPLY, "own-supply-current", "uA", 0, 1000000, 0) \
    S(SELF_DISCHARGE, "self-discharge", "ppm/month", 0, 500000, 0) \
    S(OFFSET_BOUND, "offset-bound", "uA", 1, 10000000, 10000) \
    S(GAIN_BOUND, "gain-bound", "ppm", 0, 100000, 5000) \
    S(ASYMMETRY_BOUND, "asymmetry-bound", "ppm", 0, 100000, 1000) \
    S(EFFICIENCY_BOUND, "efficiency-bound", "ppm", 0, 300000, 30000) \
    S(SELF_DISCHARGE_BOUND, "self-discharge-bound", "ppm/month", 0, 500000, 40000) \
    S(CAPACITY_BOUND, "capacity-bound", "ppm", 0, 500000, 50000) \
    S(UNMEASURED_BOUND, "unmeasured-bound", "uA", 0, 10000000, 10000) \
    S(DECLARED_RESIDUAL, "declared-residual", "ppm", 0, 500000, 100000) \
    S(OFF_CURRENT_BOUND, "off-current-bound", "ppm", 0, 1000000, 50000) \
    S(ABSORPTION, "absorption", "mV", 0, 100000, 14400) \
    S(ABSORPTION_MARGIN, "absorption-margin", "mV", 0, 5000, 200) \
    S(TEMPERATURE_COEFFICIENT, "temperature-coefficient", "uV/K", -250000, 0, -24000) \
    S(COMPENSATION_LIMIT, "compensation-limit", "mV", 0, 10000, 600) \
    S(TAPER, "taper", "ppm", 1000, 200000, 20000) \
    S(HOLD, "hold", "min", 1, 600, 60) \
    S(FLATNESS, "flatness", "mV", 0, 5000, 100) \
    S(PLATEAU_HOLD, "plateau-hold", "min", 0, 600, 60) \
    S(FLOAT_VOLTAGE, "float-voltage", "mV", 0, 100000, 13500) \
    S(FLOAT_HOLD, "float-hold", "min", 1, 20000, 1440) \
    S(REARM_DISCHARGE, "rearm-discharge", "ppm", 1000, 500000, 20000) \
    S(QUIET_TIME, "quiet-time", "min", 0, 120, 10) \
    S(FULL_RESIDUAL, "full-residual", "ppm", 0, 200000, 30000) \
    S(LATE_RESIDUAL, "late-residual", "ppm", 0, 300000, 50000) \
    S(FULL_OVERDUE, "full-overdue", "d", 0, 365, 7) \
    S(EMPTY_VOLTAGE, "empty-voltage", "mV", 0, 100000, 10600) \
    S(EMPTY_CURRENT, "empty-current", "ppm", 1000, 1000000, 60000) \
    S(EMPTY_STATE, "empty-state", "ppm", 0, 200000, 10000) \
    S(EMPTY_RESIDUAL, "empty-residual", "ppm", 0, 300000, 30000) \
    S(REST_TIME, "rest-time", "h", 0, 72, 8) \
    S(REST_VOLTAGE_BOUND, "rest-voltage-bound", "mV", 1, 5000, 80) \
    S(REST_VOLTAGE_0, "rest-voltage-0", "mV", 0, 100000, 11800) \
    S(REST_VOLTAGE_10, "rest-voltage-10", "mV", 0, 100000, 11880) \
    S(REST_VOLTAGE_25, "rest-voltage-25", "mV", 0, 100000, 12000) \
    S(REST_VOLTAGE_50, "rest-voltage-50", "mV", 0, 100000, 12400) \
    S(REST_VOLTAGE_75, "rest-voltage-75", "mV", 0, 100000, 12600) \
    S(REST_VOLTAGE_90, "rest-voltage-90", "mV", 0, 100000, 12720) \
    S(REST_VOLTAGE_100, "rest-voltage-100", "mV", 0, 100000, 12800) \
    S(MEASURE_CAPACITY, "measure-capacity", "switch", 0, 1, 1) \
    S(MEASURE_EFFICIENCY, "measure-efficiency", "switch", 0, 1, 1) \
    S(AVERAGING_TIME, "averaging-time", "min", 1, 240, 30) \
    S(KEPT_BACK, "kept-back-charge", "ppm", 0, 900000, 0) \
    S(PEUKERT_EXPONENT, "peukert-exponent", "ppm", 1000000, 1600000, 1150000) \
    S(RATED_TIME, "rated-time", "h", 1, 120, 20) \
    S(USABLE_AT_10, "usable-at-10", "ppm", 100000, 1000000, 840000) \
    S(USABLE_AT_0, "usable-at-0", "ppm", 100000, 1000000, 710000) \
    S(USABLE_AT_MINUS_20, "usable-at-minus-20", "ppm", 50000, 1000000, 450000) \
    S(TAPER_TIME, "taper-time", "min", 0, 1440, 120) \
    S(LOW_CHARGE, "low-charge", "ppm", 0, 900000, 200000) \
    S(LOW_CHARGE_HYSTERESIS, "low-charge-hysteresis", "ppm", 1000, 200000, 50000) \
    S(SHOWN_AS_ZERO_BELOW, "shown-as-zero-below", "mA", 0, 10000, 50) \
    S(LONGEST_TIME, "longest-time", "h", 1, 1000, 99) \
    S(SAVE_STEP, "save-step", "ppm", 1000, 200000, 5000)

#endif
