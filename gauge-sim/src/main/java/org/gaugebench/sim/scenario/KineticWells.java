package org.gaugebench.sim.scenario;

import org.jspecify.annotations.Nullable;

/**
 * The three figures of the kinetic battery model: Manwell and McGowan, "Lead acid battery storage
 * model for hybrid energy systems", Solar Energy 50 (1993) 399-405.
 *
 * <p>The papers on battery scheduling write k for what is {@code k' c (1 - c)} here.
 *
 * @param availablePart c, the part of the charge that stands in the available well when full, above
 *     0 and below 1
 * @param perHour k', the rate at which the heights of the wells approach each other
 * @param greatestAmpHours charge of both wells when full: what a very slow discharge would give
 */
public record KineticWells(double availablePart, double perHour, double greatestAmpHours) {
    private static final double SLOWEST_PER_HOUR = 1e-3;
    private static final double FASTEST_PER_HOUR = 1e2;
    private static final double GRID_FACTOR = 1.05;
    private static final int MOST_HALVINGS = 200;

    /** One line of a data sheet: what a discharge of so many hours gives. */
    public record Rating(double hours, double ampHours) {}

    /**
     * Charge that a discharge of constant current gives, full to empty.
     *
     * @param hours how long it lasts, above 0
     */
    public double ampHoursAt(double hours) {
        double spent = -StrictMath.expm1(-perHour * hours);
        return greatestAmpHours
                * (perHour * availablePart * hours)
                / (spent + availablePart * (perHour * hours - spent));
    }

    /**
     * The wells that give three ratings exactly: c eliminated between the pairs long-short and
     * middle-short, k' by halving an interval in which the difference changes its sign.
     *
     * @return null where no wells do: capacity must fall with the rate, and not like that of a
     *     battery of one well
     */
    public static @Nullable KineticWells through(Rating longest, Rating middle, Rating shortest) {
        double low = SLOWEST_PER_HOUR;
        double below = mismatch(longest, middle, shortest, low);
        while (low < FASTEST_PER_HOUR) {
            double high = low * GRID_FACTOR;
            double above = mismatch(longest, middle, shortest, high);
            if (below * above < 0) {
                double rate = halve(longest, middle, shortest, low, high);
                double part = 1 / (1 + openness(longest, shortest, rate));
                if (part > 0 && part < 1) {
                    KineticWells unit = new KineticWells(part, rate, 1);
                    return new KineticWells(
                            part, rate, longest.ampHours() / unit.ampHoursAt(longest.hours()));
                }
            }
            low = high;
            below = above;
        }
        return null;
    }

    private static double halve(
            Rating longest, Rating middle, Rating shortest, double from, double to) {
        double low = from;
        double high = to;
        double below = mismatch(longest, middle, shortest, low);
        for (int i = 0; i < MOST_HALVINGS; i++) {
            double centre = (low + high) / 2;
            double here = mismatch(longest, middle, shortest, centre);
            if (below * here <= 0) {
                high = centre;
            } else {
                low = centre;
                below = here;
            }
        }
        return (low + high) / 2;
    }

    private static double mismatch(Rating longest, Rating middle, Rating shortest, double perHour) {
        return numerator(longest, shortest, perHour) * span(middle, shortest, perHour)
                - numerator(middle, shortest, perHour) * span(longest, shortest, perHour);
    }

    /** (1 - c) / c: from (1 - c) N = c k t1 t2 (1 - F). */
    private static double openness(Rating slow, Rating fast, double perHour) {
        return span(slow, fast, perHour) / numerator(slow, fast, perHour);
    }

    private static double numerator(Rating slow, Rating fast, double perHour) {
        double part = fast.ampHours() / slow.ampHours();
        return -part * slow.hours() * StrictMath.expm1(-perHour * fast.hours())
                + fast.hours() * StrictMath.expm1(-perHour * slow.hours());
    }

    private static double span(Rating slow, Rating fast, double perHour) {
        double part = fast.ampHours() / slow.ampHours();
        return perHour * fast.hours() * slow.hours() * (1 - part);
    }
}
