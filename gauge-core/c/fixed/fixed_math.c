#include "fixed/fixed_math.h"

int64_t saturating_add(int64_t sum, int64_t addend)
{
    /* Twice 2^62 is one more than fits: compare before adding. */
    if (sum > 0 && addend > FIXED_LARGEST_SUM - sum) {
        return FIXED_LARGEST_SUM;
    }
    if (sum < 0 && addend < -FIXED_LARGEST_SUM - sum) {
        return -FIXED_LARGEST_SUM;
    }
    return clamp(sum + addend, -FIXED_LARGEST_SUM, FIXED_LARGEST_SUM);
}

int64_t saturating_product(int64_t one, int64_t other)
{
    return one > 0 && other > FIXED_LARGEST_SUM / one ? FIXED_LARGEST_SUM : one * other;
}

int64_t grown(int64_t value, int64_t old_figure, int64_t new_figure)
{
    int64_t whole = saturating_product(value / old_figure, new_figure);
    int64_t part = (value % old_figure * new_figure + old_figure - 1) / old_figure;
    return saturating_add(whole, part);
}

uint32_t highest_bit(uint64_t value)
{
    uint32_t bit = 0;
    for (uint32_t step = 32; step > 0; step /= 2) {
        if (value >> step != 0) {
            value >>= step;
            bit += step;
        }
    }
    return bit;
}

int64_t square_root_ceiling(int64_t value)
{
    /* A root below 2^31: its square needs 62 bits, and unsigned has no sign to mind. */
    uint64_t square = (uint64_t)value;
    uint64_t root = 0;
    uint32_t first = highest_bit(square) / 2;
    for (uint64_t bit = UINT64_C(1) << (first < 30 ? first : 30); bit > 0; bit >>= 1) {
        uint64_t trial = root + bit;
        root = trial * trial <= square ? trial : root;
    }
    return (int64_t)(root * root < square ? root + 1 : root);
}
