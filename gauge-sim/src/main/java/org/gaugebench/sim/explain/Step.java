package org.gaugebench.sim.explain;

import java.math.BigInteger;
import org.jspecify.annotations.Nullable;

/**
 * One line of an explanation.
 *
 * @param label what is worked out
 * @param calculation how, in whole numbers; empty where the line only says something
 * @param result what comes out: a figure, "yes" or "no", or the words themselves
 * @param unit of a figure, else empty
 * @param register the core's register that holds the same figure, or empty
 * @param held what the register holds
 */
public record Step(
        String label,
        String calculation,
        String result,
        String unit,
        String register,
        @Nullable BigInteger held) {
    /** Whether the result is a figure; else it is "yes", "no" or a sentence. */
    public boolean isFigure() {
        return !(calculation.isEmpty() && unit.isEmpty())
                && !result.equals("yes")
                && !result.equals("no");
    }

    /** Whether the register holds another figure: then one of the two is wrong. */
    public boolean contradicts() {
        return held != null && !held.toString().equals(result);
    }
}
