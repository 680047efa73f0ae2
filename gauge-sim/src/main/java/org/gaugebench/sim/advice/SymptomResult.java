package org.gaugebench.sim.advice;

import java.util.List;

/**
 * What may be behind what was seen.
 *
 * @param answer one sentence
 * @param causes the likeliest first
 * @param alike those of them that notes fit as well as the first, with it; empty without notes
 * @param assumed what was not told
 * @param findOut what to do or to note next
 */
public record SymptomResult(
        String answer,
        List<Ranked> causes,
        List<TroubleCause> alike,
        List<String> assumed,
        List<String> findOut) {

    /** Keeps its own lists. */
    public SymptomResult {
        causes = List.copyOf(causes);
        alike = List.copyOf(alike);
        assumed = List.copyOf(assumed);
        findOut = List.copyOf(findOut);
    }

    /**
     * A cause in its place.
     *
     * @param cause what it is
     * @param size in plain words with a number
     */
    public record Ranked(TroubleCause cause, String size) {}
}
