#include "sense/voltage_sense.h"

void voltage_sense_init(struct voltage_sense *sense, const struct gauge_settings *settings)
{
    int32_t bits = setting_int32_of(settings, SETTING_VOLTAGE_CONVERTER_BITS);
    sense->highest_counts = (INT32_C(1) << bits) - 1;
    scale_factor_init(&sense->microvolts_per_count,
                      setting_of(settings, SETTING_VOLTAGE_FULL_SCALE) * 1000, INT64_C(1) << bits,
                      sense->highest_counts);
}
