package org.gaugebench.sim.plant;

import org.gaugebench.sim.logs.Hold;
import org.gaugebench.sim.logs.LogProfile;
import org.gaugebench.sim.logs.MeasuredLog;
import org.gaugebench.sim.logs.SharedLogs;

/** A measured log as the plant needs it: steps of constant current that end at the rows. */
final class MeasuredRecord {
    private static final long NANOS_PER_MILLI = 1_000_000;

    /** Where the current runs in a straight line, steps this short follow it. */
    private static final long LONGEST_SLOPED_STEP_MILLIS = 10_000;

    /** A row in a long rest counts for one minute, so that a day of nothing outweighs nothing. */
    private static final double MOST_SECONDS_PER_ROW = 60;

    private final String label;
    private final MeasuredLog log;
    private final LogProfile profile;
    private final Hold hold;
    private final double startStateOfCharge;
    private final int firstRow;
    private final int rows;

    /**
     * Reads a record.
     *
     * @param label for people
     * @param file in the folder of measured logs
     * @param hold what its rows mean
     * @param startStateOfCharge at the first row, 0 to 1
     */
    MeasuredRecord(String label, String file, Hold hold, double startStateOfCharge) {
        this(label, file, hold, startStateOfCharge, 0, Double.POSITIVE_INFINITY);
    }

    /** A stretch of a record, by the seconds of its log. */
    MeasuredRecord(
            String label,
            String file,
            Hold hold,
            double startStateOfCharge,
            double fromSecond,
            double toSecond) {
        this.label = label;
        this.hold = hold;
        this.startStateOfCharge = startStateOfCharge;
        log = SharedLogs.read(file, false);
        profile = new LogProfile(log, hold);
        int row = 0;
        while (row < log.rows() && log.timeNanos(row) < fromSecond * 1e9) {
            row++;
        }
        firstRow = row;
        while (row < log.rows() && log.timeNanos(row) < toSecond * 1e9) {
            row++;
        }
        rows = row - firstRow;
    }

    String label() {
        return label;
    }

    double startStateOfCharge() {
        return startStateOfCharge;
    }

    int rows() {
        return rows;
    }

    double volts(int row) {
        return log.voltageVolts(firstRow + row);
    }

    private long nanos(int row) {
        return log.timeNanos(firstRow + row);
    }

    /** What a row weighs: the time that it stands for. */
    double seconds(int row) {
        return row == 0 ? 0 : Math.min((nanos(row) - nanos(row - 1)) / 1e9, MOST_SECONDS_PER_ROW);
    }

    /** What a battery answers at a row. */
    interface Row {
        void at(int row, double terminalVolts, double stateOfCharge);
    }

    /** Sends the record's current through a battery, from its first row. */
    void drive(Battery battery, Row each) {
        battery.prepare(1);
        double volts = battery.voltsAt(0);
        long millis = Math.round(nanos(0) / (double) NANOS_PER_MILLI);
        for (int row = 0; row < rows; row++) {
            long end = Math.round(nanos(row) / (double) NANOS_PER_MILLI);
            while (millis < end) {
                long next = end;
                if (hold == Hold.LINEAR) {
                    next = Math.min(end, millis + LONGEST_SLOPED_STEP_MILLIS);
                }
                double amps = profile.meanAmps(millis * NANOS_PER_MILLI, next * NANOS_PER_MILLI);
                battery.prepare((int) (next - millis));
                volts = battery.voltsAt(amps);
                battery.advance(amps, volts);
                millis = next;
            }
            each.at(row, volts, battery.chargeAmpHours() / battery.capacityAmpHours());
        }
    }
}
