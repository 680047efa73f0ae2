#include "band/anchor_residual.h"

#include "fixed/fixed_math.h"

int32_t anchor_weight_q16(int64_t count_ppm, int64_t anchor_ppm)
{
    int64_t p = count_ppm * count_ppm;
    int64_t r = anchor_ppm * anchor_ppm;
    return p + r == 0 ? 0 : (int32_t)(p * 65536 / (p + r));
}

int64_t anchor_combined_ppm(int64_t count_ppm, int64_t anchor_ppm)
{
    /* S - S S / (S + L): the product of both squares would not fit. */
    int64_t smaller = min_int64(count_ppm, anchor_ppm);
    int64_t larger = max_int64(count_ppm, anchor_ppm);
    int64_t square = smaller * smaller;
    int64_t cut = scale_q16_floor(square, anchor_weight_q16(smaller, larger), 0);
    return square_root_ceiling(square - cut);
}
