package org.gaugebench.sim.judge;

import org.gaugebench.sim.scenario.Expectation;

/**
 * What became of one expectation.
 *
 * @param expectation the claim
 * @param outcome held, failed or never evaluated
 * @param atMillis the moment that decided: the first failure, or the worst moment that held; -1
 *     where there is none
 * @param found the figure found there, with unit, for people
 * @param detail time, reading, truth, rule state and reason of that moment; empty when it held
 */
public record ExpectationResult(
        Expectation expectation, Outcome outcome, long atMillis, String found, String detail) {

    /** What an expectation can come to. */
    public enum Outcome {
        /** It held. */
        HELD("held"),
        /** It did not. */
        FAILED("failed"),
        /** Its time never came: as bad as failed. */
        NEVER_EVALUATED("never evaluated");

        private final String words;

        Outcome(String words) {
            this.words = words;
        }

        /** For people and for JSON. */
        public String words() {
            return words;
        }
    }
}
