#include "sense/current_sense.h"

/* floor(a x b / c) without overflow, saturating at 2^40: bit by bit, for the constructor alone. */
static int64_t multiply_divide_floor(int64_t a, int64_t b, int64_t c)
{
    int64_t quotient = 0;
    int64_t remainder = 0;
    for (int bit = 62; bit >= 0; bit--) {
        remainder *= 2;
        quotient *= 2;
        if (((b >> bit) & 1) == 1) {
            remainder += a;
        }
        quotient += remainder / c;
        remainder %= c;
        if (quotient > INT64_C(1) << 40) {
            return INT64_C(1) << 40;
        }
    }
    return quotient;
}

void current_sense_init(struct current_sense *sense, const struct gauge_settings *settings,
                        int32_t zero_counts_q8, int32_t gain_ppm)
{
    int32_t bits = setting_int32_of(settings, SETTING_SHUNT_CONVERTER_BITS);
    sense->highest_counts = (INT32_C(1) << (bits - 1)) - 1;
    sense->lowest_counts = -sense->highest_counts - 1;
    sense->offset_counts_q8 = setting_int32_of(settings, SETTING_SHUNT_OFFSET) + zero_counts_q8;
    /* derived: uA per count/256 = full scale uV x rated mA x 1000 / (drop uV x 2^(bits-1) x 256) */
    int64_t numerator = setting_of(settings, SETTING_SHUNT_FULL_SCALE) *
                        setting_of(settings, SETTING_SHUNT_RATED_CURRENT) *
                        (1000000 + (int64_t)gain_ppm);
    int64_t denominator = (setting_of(settings, SETTING_SHUNT_RATED_DROP) << (bits - 1 + 8)) * 1000;
    /* The lower rail with the offset against it, or what is just below the largest current. */
    int64_t rail_q8 =
        -(int64_t)sense->lowest_counts * 256 + magnitude((int64_t)sense->offset_counts_q8);
    int64_t fitting_q8 = multiply_divide_floor(denominator, CURRENT_LARGEST_MICROAMPS, numerator);
    int64_t limit_q8 = min_int64(rail_q8, fitting_q8);
    scale_factor_init(&sense->microamps_per_count_q8, numerator, denominator, limit_q8);
    /* derived: between the rails, and |counts x 256 - offset| below the limit */
    int64_t lowest = shift_right_floor(sense->offset_counts_q8 - limit_q8, 8) + 1;
    int64_t highest = shift_right_floor(sense->offset_counts_q8 + limit_q8 - 1, 8);
    sense->lowest_in_range_counts = (int32_t)max_int64(sense->lowest_counts + 1, lowest);
    sense->highest_in_range_counts = (int32_t)min_int64(sense->highest_counts - 1, highest);
}

int32_t current_sense_counts_q8(const struct current_sense *sense, int32_t microamps)
{
    int64_t low = -(INT64_C(1) << 31);
    int64_t high = INT64_C(1) << 31;
    while (high - low > 1) {
        int64_t middle = shift_right_floor(low + high, 1);
        if (scale_factor_apply(&sense->microamps_per_count_q8, middle) < microamps) {
            low = middle;
        } else {
            high = middle;
        }
    }
    return clamp_to_int32(high);
}
