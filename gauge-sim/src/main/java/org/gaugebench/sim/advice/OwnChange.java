package org.gaugebench.sim.advice;

import org.jspecify.annotations.Nullable;

/**
 * Something that an owner changed, or that happened to the system.
 *
 * @param what it was
 * @param amount of it, in the unit of {@link What}
 * @param shownPercent what the gauge showed when it happened; null for not known
 */
public record OwnChange(What what, double amount, @Nullable Double shownPercent) {
    /** What can change, each with the unit of its amount. */
    public enum What {
        /** Another battery in the place of the old one: its printed amp-hours. */
        BATTERY_SWAPPED,
        /** A second battery beside the first: the printed amp-hours of the second. */
        SECOND_BATTERY,
        /** Nothing on and nothing charged for so many days. */
        STORED,
        /** The battery's temperature, in degrees Celsius. */
        WINTER,
        /** The gauge's supply wire was off for so many hours. */
        WIRE_OFF
    }

    /** Least amount that makes sense. */
    public double least() {
        return switch (what) {
            case BATTERY_SWAPPED, SECOND_BATTERY -> 0.1;
            case STORED -> 1;
            case WINTER -> -40;
            case WIRE_OFF -> 1 / 60.0;
        };
    }

    /** Largest amount that is worked out. */
    public double most() {
        return switch (what) {
            case BATTERY_SWAPPED, SECOND_BATTERY -> 10_000;
            case STORED -> 366;
            case WINTER -> 60;
            case WIRE_OFF -> 720;
        };
    }
}
