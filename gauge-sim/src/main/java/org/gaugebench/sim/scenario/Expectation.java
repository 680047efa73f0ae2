package org.gaugebench.sim.scenario;

import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.Register;
import org.jspecify.annotations.Nullable;

/**
 * Something the scenario claims about the run, and that can fail.
 *
 * @param text the claim in one line, as reports print it
 * @param mark where it stands
 * @param gauge name of the gauge it speaks of
 * @param kind when a reading is judged, or that events are counted
 * @param fromMillis first moment that counts; for AT the only one
 * @param toMillis last moment that counts
 * @param reading what is read; null for EVENTS and for a register
 * @param register what is read of the gauge's inside, in the register's own unit; null otherwise
 * @param event what is counted, for EVENTS; null otherwise
 * @param fault for EVENTS: only events that name this fault are counted; null for all
 * @param times when the first and the last of the events may come; {@link Times#ANY} for readings
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
        @Nullable Register register,
        @Nullable Event event,
        @Nullable Fault fault,
        Times times,
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
        /** True at one whole minute at least, from a time to a time. */
        BY,
        /** True at no whole minute from a time to a time. */
        NEVER,
        /** Becomes true exactly once, looked at every whole minute from a time to a time. */
        ONCE,
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
        TRUE_TIME_TO_EMPTY_AS_IT_GOES("true-time-to-empty-as-it-goes"),
        /** Microamps, the gauge's mean load. */
        AVERAGE_CURRENT("average-current"),
        /** Microampere-hours. */
        FULL_CHARGE_CAPACITY("full-charge-capacity"),
        /** Minutes. */
        TIME_TO_FULL("time-to-full"),
        /** Millidegrees Celsius. */
        TEMPERATURE("temperature"),
        /** Microamps; of the truth alone. */
        TRUE_CURRENT("true-current"),
        /** Microvolts; of the truth alone. */
        TRUE_VOLTAGE("true-voltage"),
        /** Millidegrees Celsius; of the truth alone. */
        TRUE_TEMPERATURE("true-temperature");

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

        /** Whether the truth has a figure of its own to compare it with. */
        public boolean hasTruth() {
            return switch (this) {
                case STATE_OF_CHARGE,
                        REMAINING_CHARGE,
                        CURRENT,
                        VOLTAGE,
                        FULL_CHARGE_CAPACITY,
                        TEMPERATURE,
                        TIME_TO_EMPTY ->
                        true;
                default -> false;
            };
        }

        /** Whether a gauge may not know it; without power it knows nothing. */
        public boolean canBeUnknown() {
            return !isOfTruthAlone();
        }

        /** Whether it is read from the truth alone, whatever any gauge says. */
        public boolean isOfTruthAlone() {
            return key.startsWith("true-") || this == AVAILABLE_CHARGE;
        }

        /** Whether it is a true time to empty, found by running a copy of the plant forward. */
        public boolean looksAhead() {
            return this == TRUE_TIME_TO_EMPTY_LOAD_HELD || this == TRUE_TIME_TO_EMPTY_AS_IT_GOES;
        }
    }

    /**
     * When the first and the last of the events may come.
     *
     * @param firstFromMillis the first is not before this
     * @param firstToMillis nor after this
     * @param lastFromMillis the last is not before this
     * @param lastToMillis nor after this
     */
    public record Times(
            long firstFromMillis, long firstToMillis, long lastFromMillis, long lastToMillis) {
        /** At any time. */
        public static final Times ANY = new Times(0, Long.MAX_VALUE, 0, Long.MAX_VALUE);
    }

    /** The same with a claim of its own, and with the text that goes with it. */
    Expectation claiming(Comparison claimed, long newValue, long newTolerance) {
        Expectation untitled = with("", claimed, newValue, newTolerance);
        return with(ExpectationText.of(untitled), claimed, newValue, newTolerance);
    }

    private Expectation with(String newText, Comparison claimed, long newValue, long newTolerance) {
        return new Expectation(
                newText,
                mark,
                gauge,
                kind,
                fromMillis,
                toMillis,
                reading,
                register,
                event,
                fault,
                times,
                claimed,
                newValue,
                newTolerance,
                trueStateAtLeastPartsPerMillion,
                because,
                expectedToFail);
    }

    /** Whether it is judged by events and not by what is read. */
    public boolean isOfEvents() {
        return kind == Kind.EVENTS;
    }
}
