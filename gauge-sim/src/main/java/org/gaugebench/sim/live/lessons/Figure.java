package org.gaugebench.sim.live.lessons;

import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Register;
import org.gaugebench.sim.scenario.Expectation.Reading;
import org.jspecify.annotations.Nullable;

/**
 * A figure that a lesson takes from its run.
 *
 * @param owner name of a gauge of the scenario, or {@value #TRUTH}
 * @param kind what is taken
 * @param reading what is read, for {@link Kind#READING} and {@link Kind#ERROR}; null otherwise
 * @param register a sum of charge, for {@link Kind#REGISTER}; null otherwise
 * @param event what is counted, for {@link Kind#EVENTS}; null otherwise
 * @param fromMillis first moment that counts; for all but events the only one
 * @param toMillis last moment that counts
 * @param unit of the value
 * @param digits after the decimal sign
 */
public record Figure(
        String owner,
        Kind kind,
        @Nullable Reading reading,
        @Nullable Register register,
        @Nullable Event event,
        long fromMillis,
        long toMillis,
        FigureUnit unit,
        int digits) {
    /** The owner of what is really so. */
    public static final String TRUTH = "truth";

    /** What is taken from the run. */
    public enum Kind {
        /** What the gauge shows, or what is so. */
        READING,
        /** What the gauge shows, less what is so. */
        ERROR,
        /** A sum inside the gauge. */
        REGISTER,
        /** How often the gauge announced something. */
        EVENTS
    }

    /** Whether it is read from the truth and not from a gauge. */
    public boolean isOfTruth() {
        return owner.equals(TRUTH);
    }
}
