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

    /** What the scenario makes of this: a claim that is expected to fail is turned round. */
    ExpectationResult turned() {
        if (expectation.expectedToFail().isEmpty()) {
            return this;
        }
        return switch (outcome) {
            case HELD ->
                    new ExpectationResult(
                            expectation, Outcome.HELD_UNEXPECTEDLY, atMillis, found, detail);
            case FAILED ->
                    new ExpectationResult(
                            expectation, Outcome.FAILED_AS_EXPECTED, atMillis, found, detail);
            default -> this;
        };
    }

    /** What an expectation can come to. */
    public enum Outcome {
        /** It held. */
        HELD("held"),
        /** It did not. */
        FAILED("failed"),
        /** Its time never came: as bad as failed. */
        NEVER_EVALUATED("never evaluated"),
        /** It did not hold, and the scenario says why it cannot. */
        FAILED_AS_EXPECTED("failed as expected"),
        /** It held though the scenario says that it cannot: as bad as failed. */
        HELD_UNEXPECTEDLY("held, though expected to fail");

        private final String words;

        Outcome(String words) {
            this.words = words;
        }

        /** Whether the scenario may still pass. */
        public boolean isGood() {
            return this == HELD || this == FAILED_AS_EXPECTED;
        }

        /** For people and for JSON. */
        public String words() {
            return words;
        }
    }
}
