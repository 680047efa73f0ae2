package org.gaugebench.sim.scenario;

import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Fault;
import org.jspecify.annotations.Nullable;

/**
 * Something the scenario claims about the run, and that can fail.
 *
 * @param text the claim in one line, as reports print it
 * @param mark where it stands
 * @param gauge name of the gauge it speaks of
 * @param kind reading at a time, reading throughout, or number of events
 * @param fromMillis first moment that counts; for AT the only one
 * @param toMillis last moment that counts
 * @param reading what is read, for AT and THROUGHOUT; null for EVENTS
 * @param event what is counted, for EVENTS; null otherwise
 * @param fault for EVENTS: only events that name this fault are counted; null for all
 * @param comparison how the reading or the number of events is judged
 * @param value what it is compared with, in the reading's unit (ppm, uA, uV, uAh, min) or a number
 *     of events; for {@link Comparison#WITHIN_OF_TRUTH} unused
 * @param tolerance half-width for the two WITHIN comparisons, in the reading's unit
 * @param trueStateAtLeastPartsPerMillion for EVENTS: the true state of charge at each event must be
 *     at least this; -1 where nothing is claimed
 * @param because the reason of the figure, or empty
 * @param expectedToFail why it is known to fail, or empty: then one that holds is a failure
 */
public record Expectation(
        String text,
        SourceMark mark,
        String gauge,
        Kind kind,
        long fromMillis,
        long toMillis,
        @Nullable Reading reading,
        @Nullable Event event,
        @Nullable Fault fault,
        Comparison comparison,
        long value,
        long tolerance,
        long trueStateAtLeastPartsPerMillion,
        String because,
        String expectedToFail) {

    /** When the claim is judged. */
    public enum Kind {
        /** Once, at a time. */
        AT,
        /** At every whole minute from a time to a time. */
        THROUGHOUT,
        /** By the number of events from a time to a time. */
        EVENTS
    }

    /** How the claim is judged. */
    public enum Comparison {
        /** |reading - truth| at most the tolerance. */
        WITHIN_OF_TRUTH,
        /** The truth lies within the gauge's own error band. */
        BAND_HOLDS_TRUTH,
        /** |reading - value| at most the tolerance. */
        WITHIN_OF_VALUE,
        /** At least the value. */
        AT_LEAST,
        /** At most the value. */
        AT_MOST,
        /** Exactly the value. */
        EXACTLY,
        /** The reading says that it is not known, or that there is no estimate. */
        NOT_KNOWN,
        /** The time to empty says "more than" the value. */
        MORE_THAN
    }

    /** What can be read from a gauge and, most of it, from the truth. */
    public enum Reading {
        /** Parts per million. */
        STATE_OF_CHARGE("state-of-charge"),
        /** Parts per million; the lower edge of the gauge's own error band. */
        LOWER_EDGE("lower-edge"),
        /** Parts per million; its upper edge. */
        UPPER_EDGE("upper-edge"),
        /** Microampere-hours. */
        REMAINING_CHARGE("remaining-charge"),
        /** Microamps. */
        CURRENT("current"),
        /** Microvolts. */
        VOLTAGE("voltage"),
        /** Minutes. */
        TIME_TO_EMPTY("time-to-empty"),
        /** Parts per million; of the truth alone, whatever the gauge says. */
        TRUE_STATE_OF_CHARGE("true-state-of-charge"),
        /** Microampere-hours; of the truth alone: what can be drawn as things stand. */
        AVAILABLE_CHARGE("available-charge"),
        /** Minutes; of the truth alone: with the battery's present current held. */
        TRUE_TIME_TO_EMPTY_LOAD_HELD("true-time-to-empty-load-held"),
        /** Minutes; of the truth alone: as the scenario goes on. */
        TRUE_TIME_TO_EMPTY_AS_IT_GOES("true-time-to-empty-as-it-goes");

        /** Stands for a time to empty that never comes. */
        public static final long NEVER = Long.MAX_VALUE / 4;

        private final String key;

        Reading(String key) {
            this.key = key;
        }

        /** The name in scenario files. */
        public String key() {
            return key;
        }

        /** Whether it is read from the truth alone, whatever any gauge says. */
        public boolean isOfTruthAlone() {
            return this == TRUE_STATE_OF_CHARGE || this == AVAILABLE_CHARGE || looksAhead();
        }

        /** Whether it is a true time to empty, found by running a copy of the plant forward. */
        public boolean looksAhead() {
            return this == TRUE_TIME_TO_EMPTY_LOAD_HELD || this == TRUE_TIME_TO_EMPTY_AS_IT_GOES;
        }
    }
}
