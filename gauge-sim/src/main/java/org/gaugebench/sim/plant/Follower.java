package org.gaugebench.sim.plant;

import org.gaugebench.sim.logs.TimeProfile;
import org.gaugebench.sim.scenario.ProfileSpec;

/**
 * A profile as a function of time: what an instant sees, and the exact integral over any stretch.
 * Figures are in the unit of the profile's millionths (amps, watts, volts). Times count from the
 * start of the run; before the first row and after the end there is nothing.
 *
 * <p>Its cursor only makes looking up cheap: answers do not depend on what was asked before.
 */
public final class Follower {
    private static final double MICROS = 1e6;

    private final TimeProfile values;
    private final boolean straight;
    private final boolean repeats;
    private final long endMillis;

    /** Row that the last time asked for lay in. */
    private int row;

    /** Follows a profile from its beginning. */
    public Follower(ProfileSpec spec) {
        values = spec.values();
        straight = spec.straightLine();
        repeats = spec.repeats();
        endMillis = values.endMillis();
    }

    /** Whether there is a figure for a time, the moment of the last row included. */
    public boolean covers(long millis) {
        return millis >= values.millis(0) && (repeats || millis <= endMillis);
    }

    /** The figure at a time that it covers; at the very end that of the last row. */
    public double shownAt(long millis) {
        return millis == endMillis && !repeats
                ? values.micros(values.rows() - 1) / MICROS
                : at(millis);
    }

    /** The figure that holds from an instant on; 0 where there is none. */
    double at(long millis) {
        return isOver(millis) ? 0 : microsAt(local(millis)) / MICROS;
    }

    /** Integral over time, in milliseconds; exact for figures that are held. */
    double integral(long fromMillis, long toMillis) {
        double sum = 0;
        long from = fromMillis;
        while (from < toMillis && !isOver(from)) {
            long at = local(from);
            long step = Math.min(toMillis - from, nextRowMillis(at) - at);
            sum += straight ? trapezium(at, at + step) : microsAt(at) * step;
            from += step;
        }
        return sum / MICROS;
    }

    private double trapezium(long from, long to) {
        if (row < 0) {
            return 0;
        }
        return (line(row, from) + line(row, to)) / 2 * (to - from);
    }

    /** First instant at or after the given one from which the mean over a step changes. */
    long nextChange(long millis) {
        if (isOver(millis)) {
            return Long.MAX_VALUE;
        }
        long at = local(millis);
        long next = nextRowMillis(at);
        boolean slopes = straight && row >= 0 && values.micros(row) != values.micros(row + 1);
        return slopes ? millis : millis + (next - at);
    }

    private boolean isOver(long millis) {
        return !repeats && millis >= endMillis;
    }

    private long local(long millis) {
        return repeats ? millis % endMillis : millis;
    }

    private double microsAt(long at) {
        seek(at);
        if (row < 0) {
            return 0;
        }
        return straight ? line(row, at) : values.micros(row);
    }

    private double line(int start, long at) {
        long from = values.millis(start);
        double part = (double) (at - from) / (values.millis(start + 1) - from);
        return values.micros(start) + (values.micros(start + 1) - values.micros(start)) * part;
    }

    private long nextRowMillis(long at) {
        seek(at);
        return values.millis(row + 1);
    }

    /** Puts the cursor on the row that holds a time before the end; -1 before the first row. */
    private void seek(long at) {
        boolean here = row >= 0 && values.millis(row) <= at;
        if (here && at < values.millis(row + 1)) {
            return;
        }
        if (here && row + 2 < values.rows() && at < values.millis(row + 2)) {
            row++;
            return;
        }
        row = values.rowAt(at);
    }
}
