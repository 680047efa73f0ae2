package org.gaugebench.sim.logs;

/**
 * The current of a log as a function of time under one {@link Hold}: means and integrals over any
 * interval, not only between rows. Two rows of equal time enclose no charge.
 *
 * <p>Queries that go forward cost a few steps each; one that goes back starts from the first row.
 */
public final class LogProfile {
    private static final double NANOS_PER_SECOND = 1e9;

    private final MeasuredLog log;
    private final Hold hold;

    /** Interval under the cursor: from row - 1 to row. */
    private int row = 1;

    /** Puts a meaning on a log. */
    public LogProfile(MeasuredLog log, Hold hold) {
        this.log = log;
        this.hold = hold;
    }

    /**
     * Mean current over a stretch.
     *
     * @param fromNanos from the first row, at least 0
     * @param toNanos end, above {@code fromNanos}; beyond the last row no current flows
     * @return amps, positive into the battery
     */
    public double meanAmps(long fromNanos, long toNanos) {
        seek(fromNanos);
        if (hold != Hold.LINEAR && toNanos <= log.timeNanos(row)) {
            return held(row);
        }
        return coulombs(fromNanos, toNanos) * NANOS_PER_SECOND / (toNanos - fromNanos);
    }

    /** Charge over a stretch, in coulombs; arguments as for {@link #meanAmps}. */
    public double coulombs(long fromNanos, long toNanos) {
        seek(fromNanos);
        double sum = 0;
        long from = fromNanos;
        while (from < toNanos) {
            long to = Math.min(toNanos, log.timeNanos(row));
            if (to > from) {
                sum += within(row, from, to) * ((to - from) / NANOS_PER_SECOND);
                from = to;
            }
            if (from < toNanos && ++row == log.rows()) {
                row--;
                break;
            }
        }
        return sum;
    }

    /** Charge of the interval that ends at a row, in coulombs. */
    public double intervalCoulombs(int endRow) {
        return mean(endRow) * intervalSeconds(endRow);
    }

    /** Charge moved either way in the interval that ends at a row, in coulombs. */
    public double intervalThroughputCoulombs(int endRow) {
        double a = log.currentAmps(endRow - 1);
        double b = log.currentAmps(endRow);
        if (hold == Hold.LINEAR && a * b < 0) {
            // Two triangles on either side of zero.
            return (a * a + b * b) / (2 * Math.abs(b - a)) * intervalSeconds(endRow);
        }
        return Math.abs(mean(endRow)) * intervalSeconds(endRow);
    }

    /** Net charge of the whole log, in coulombs. */
    public double totalCoulombs() {
        double sum = 0;
        for (int r = 1; r < log.rows(); r++) {
            sum += intervalCoulombs(r);
        }
        return sum;
    }

    /** Charge moved either way over the whole log, in coulombs. */
    public double throughputCoulombs() {
        double sum = 0;
        for (int r = 1; r < log.rows(); r++) {
            sum += intervalThroughputCoulombs(r);
        }
        return sum;
    }

    /** Voltage at a time in volts, straight between rows whatever the hold; 0 without voltage. */
    public double voltageVolts(long nanos) {
        seek(nanos);
        return between(nanos, log.voltageVolts(row - 1), log.voltageVolts(row));
    }

    /** Temperature at a time in degrees Celsius, straight between rows; 0 without temperature. */
    public double temperatureCelsius(long nanos) {
        seek(nanos);
        return between(nanos, log.temperatureCelsius(row - 1), log.temperatureCelsius(row));
    }

    private double intervalSeconds(int endRow) {
        return (log.timeNanos(endRow) - log.timeNanos(endRow - 1)) / NANOS_PER_SECOND;
    }

    private double mean(int endRow) {
        return hold == Hold.LINEAR
                ? (log.currentAmps(endRow - 1) + log.currentAmps(endRow)) / 2
                : held(endRow);
    }

    private double held(int endRow) {
        return log.currentAmps(hold == Hold.NEXT ? endRow : endRow - 1);
    }

    /** Mean current of a part of one interval. */
    private double within(int endRow, long from, long to) {
        if (hold != Hold.LINEAR) {
            return held(endRow);
        }
        double atFrom = line(endRow, from, log.currentAmps(endRow - 1), log.currentAmps(endRow));
        double atTo = line(endRow, to, log.currentAmps(endRow - 1), log.currentAmps(endRow));
        return (atFrom + atTo) / 2;
    }

    private double between(long nanos, double before, double after) {
        return line(row, Math.min(nanos, log.timeNanos(row)), before, after);
    }

    private double line(int endRow, long nanos, double before, double after) {
        long start = log.timeNanos(endRow - 1);
        long length = log.timeNanos(endRow) - start;
        return length == 0 ? after : before + (after - before) * (nanos - start) / length;
    }

    /** Puts the cursor on the interval that holds the time; at a row, the one that starts there. */
    private void seek(long nanos) {
        if (nanos < log.timeNanos(row - 1)) {
            row = 1;
        }
        while (row < log.rows() - 1 && log.timeNanos(row) <= nanos) {
            row++;
        }
    }
}
