/*
 * Combines what the count says with what an anchor says (R5; arithmetic.md, stage 15): the weight
 * of the anchor is P / (P + R), with P and R the squares of the two half-widths.
 */
#ifndef GAUGE_BAND_ANCHOR_RESIDUAL_H
#define GAUGE_BAND_ANCHOR_RESIDUAL_H

#include <stdint.h>

/* Weight of the anchor, 0 to 65536; half-widths 0 to 1,000,000 ppm. */
int32_t anchor_weight_q16(int64_t count_ppm, int64_t anchor_ppm);

/* Half-width after the combination, rounded up: never above the smaller of the two. */
int64_t anchor_combined_ppm(int64_t count_ppm, int64_t anchor_ppm);

#endif
