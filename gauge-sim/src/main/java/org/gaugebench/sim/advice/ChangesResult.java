package org.gaugebench.sim.advice;

import java.util.List;

/**
 * What to redo after a change, and how far the figure can be believed until then.
 *
 * @param answer one sentence with a number
 * @param daysBelieved whole days, from now and without redoing anything, within which the figure
 *     stays within 10 points; 0 if it is further off at once
 * @param offAtOnce by how many points it may be off before anything else is done
 * @param figures the evidence, in order
 * @param redo what to do, in order
 * @param assumed what was taken where nothing was told
 * @param scenario the main run behind it
 */
public record ChangesResult(
        String answer,
        int daysBelieved,
        double offAtOnce,
        List<Figure> figures,
        List<String> redo,
        List<String> assumed,
        String scenario) {

    /** Keeps its own lists. */
    public ChangesResult {
        figures = List.copyOf(figures);
        redo = List.copyOf(redo);
        assumed = List.copyOf(assumed);
    }

    /**
     * One figure of the evidence.
     *
     * @param words what it is
     * @param value how much
     * @param unit of it, such as "points", "%" or "days"
     */
    public record Figure(String words, double value, String unit) {}
}
