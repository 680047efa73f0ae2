package org.gaugebench.sim.advice;

import java.util.List;

/**
 * What an audit found.
 *
 * @param key short name, stable for programs
 * @param what in plain words
 * @param evidence what stands against what, with both figures
 * @param consequence what comes of it in the run, in numbers, and what the remedy makes of it
 * @param remedy settings to move and to what, as a scenario writes them; may be empty
 * @param confidence how sure it is
 */
public record Finding(
        String key,
        String what,
        String evidence,
        String consequence,
        List<String> remedy,
        Confidence confidence) {

    /** How sure a finding is. */
    public enum Confidence {
        /** The run goes wrong with the setting and better without it. */
        SHOWN("shown by the run"),
        /** The figures contradict each other; this run does not come to where it matters. */
        LIKELY("likely: the figures contradict each other, but this run does not show it");

        private final String words;

        Confidence(String words) {
            this.words = words;
        }

        /** For people. */
        public String words() {
            return words;
        }
    }
}
