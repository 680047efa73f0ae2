package org.gaugebench.sim.judge;

import java.util.List;

/**
 * What became of holding two runs against each other.
 *
 * @param a what was compared
 * @param b with what
 * @param moments at how many ticks or rows
 * @param endMillis the last of them
 * @param divergences figures that differ, the earliest first, those of one moment in table order
 */
public record Comparison(
        String a, String b, long moments, long endMillis, List<Divergence> divergences) {}
