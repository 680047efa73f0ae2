package org.gaugebench.sim.judge;

import java.math.BigDecimal;

/**
 * One figure of two runs that is not the same in both.
 *
 * @param name of the figure
 * @param unit of the difference; empty where it stands in the name
 * @param firstMillis when the two first differ
 * @param firstA what A has then
 * @param firstB what B has then
 * @param worst the largest difference by magnitude, B less A; null for words, which have none
 * @param worstMillis when that is; as {@code firstMillis} for words
 * @param count at how many ticks or rows they differ
 */
public record Divergence(
        String name,
        String unit,
        long firstMillis,
        String firstA,
        String firstB,
        @org.jspecify.annotations.Nullable BigDecimal worst,
        long worstMillis,
        long count) {}
