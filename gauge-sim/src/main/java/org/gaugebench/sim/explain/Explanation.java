package org.gaugebench.sim.explain;

import java.util.List;

/**
 * A moment of a run explained.
 *
 * @param gauge whose arithmetic it is
 * @param atMillis the moment: the first tick at or after the time asked for
 * @param sentence what the gauge shows, what is true, how sure it is and why, in plain words
 * @param situation what happens in this moment, in plain words
 * @param sections in the order in which a sample passes
 */
public record Explanation(
        String gauge, long atMillis, String sentence, String situation, List<Section> sections) {
    /** How many figures are not those of the core's registers; 0 unless something is wrong. */
    public long contradictions() {
        return sections.stream()
                .flatMap(section -> section.steps().stream())
                .filter(Step::contradicts)
                .count();
    }
}
