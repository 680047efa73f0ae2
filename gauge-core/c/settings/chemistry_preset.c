#include "settings/chemistry_preset.h"

/* Voltages are given for 12 V and scale with the nominal voltage. */
#define REFERENCE_MILLIVOLTS 12000

/* Rested voltages at 0, 10, 25, 50, 75, 90 and 100 % (R7), by chemistry code. */
static const int32_t REST_MILLIVOLTS[6][7] = {
    {0, 0, 0, 0, 0, 0, 0},
    {11890, 11958, 12060, 12240, 12450, 12570, 12650},
    {11800, 11880, 12000, 12400, 12600, 12720, 12800},
    {11800, 11880, 12000, 12400, 12600, 12720, 12800},
    {8040, 12795, 13034, 13196, 13304, 13369, 14392},
    {7500, 10043, 10617, 11220, 11942, 12271, 12600},
};

struct value {
    enum setting setting;
    int32_t at_12_volts;
};

/* The voltages of each kind. */
static const struct value LEAD_ACID_VOLTAGES[] = {
    {SETTING_ABSORPTION, 14400},       {SETTING_ABSORPTION_MARGIN, 200},
    {SETTING_TEMPERATURE_COEFFICIENT, -24000},
    {SETTING_COMPENSATION_LIMIT, 600}, {SETTING_FLATNESS, 100},
    {SETTING_FLOAT_VOLTAGE, 13500},    {SETTING_EMPTY_VOLTAGE, 10600},
    {SETTING_REST_VOLTAGE_BOUND, 80},
};

static const struct value LITHIUM_VOLTAGES[] = {
    {SETTING_ABSORPTION, 14200},       {SETTING_ABSORPTION_MARGIN, 200},
    {SETTING_TEMPERATURE_COEFFICIENT, 0},
    {SETTING_COMPENSATION_LIMIT, 600}, {SETTING_FLATNESS, 100},
    {SETTING_FLOAT_VOLTAGE, 13500},    {SETTING_EMPTY_VOLTAGE, 11600},
    {SETTING_REST_VOLTAGE_BOUND, 90},
};

/* What a nickel manganese cobalt battery has other than lithium iron phosphate. */
static const struct value NMC_VOLTAGES[] = {
    {SETTING_ABSORPTION, 12600}, {SETTING_ABSORPTION_MARGIN, 100},
    {SETTING_FLOAT_VOLTAGE, 0},  {SETTING_EMPTY_VOLTAGE, 9200},
    {SETTING_REST_VOLTAGE_BOUND, 150},
};

/* Lithium figures that no voltage scales. */
static const struct value LITHIUM_FIGURES[] = {
    {SETTING_COULOMBIC_EFFICIENCY, 995000}, {SETTING_EFFICIENCY_BOUND, 5000},
    {SETTING_SELF_DISCHARGE_BOUND, 10000},  {SETTING_CAPACITY_BOUND, 30000},
    {SETTING_TAPER, 40000},                 {SETTING_HOLD, 5},
    {SETTING_PLATEAU_HOLD, 0},              {SETTING_FLOAT_HOLD, 240},
    {SETTING_FULL_RESIDUAL, 10000},         {SETTING_LATE_RESIDUAL, 60000},
    {SETTING_FULL_OVERDUE, 30},             {SETTING_PEUKERT_EXPONENT, 1020000},
    {SETTING_USABLE_AT_10, 950000},         {SETTING_USABLE_AT_0, 800000},
    {SETTING_USABLE_AT_MINUS_20, 600000},   {SETTING_TAPER_TIME, 15},
    {SETTING_EMPTY_CURRENT, 100000},
};

#define COUNT_OF(list) ((int)(sizeof(list) / sizeof(list)[0]))

static void set_scaled(struct gauge_settings *settings, const struct value *list, int count,
                       int64_t nominal_millivolts)
{
    for (int i = 0; i < count; i++) {
        settings->values[list[i].setting] =
            list[i].at_12_volts * nominal_millivolts / REFERENCE_MILLIVOLTS;
    }
}

void chemistry_preset_init(struct gauge_settings *settings, enum chemistry chemistry,
                           int64_t nominal_millivolts)
{
    gauge_settings_init(settings);
    settings->values[SETTING_CHEMISTRY] = chemistry;
    settings->values[SETTING_NOMINAL_VOLTAGE] = nominal_millivolts;
    for (int i = 0; i < 7; i++) {
        settings->values[SETTING_REST_VOLTAGE_0 + i] =
            REST_MILLIVOLTS[chemistry][i] * nominal_millivolts / REFERENCE_MILLIVOLTS;
    }
    if (!chemistry_is_lithium(chemistry)) {
        set_scaled(settings, LEAD_ACID_VOLTAGES, COUNT_OF(LEAD_ACID_VOLTAGES), nominal_millivolts);
        if (chemistry == CHEMISTRY_LEAD_ACID_GEL) {
            settings->values[SETTING_ABSORPTION] =
                INT64_C(14200) * nominal_millivolts / REFERENCE_MILLIVOLTS;
        }
        return;
    }
    for (int i = 0; i < COUNT_OF(LITHIUM_FIGURES); i++) {
        settings->values[LITHIUM_FIGURES[i].setting] = LITHIUM_FIGURES[i].at_12_volts;
    }
    set_scaled(settings, LITHIUM_VOLTAGES, COUNT_OF(LITHIUM_VOLTAGES), nominal_millivolts);
    if (chemistry == CHEMISTRY_NMC) {
        set_scaled(settings, NMC_VOLTAGES, COUNT_OF(NMC_VOLTAGES), nominal_millivolts);
        settings->values[SETTING_FULL_RESIDUAL] = 30000;
    }
}
