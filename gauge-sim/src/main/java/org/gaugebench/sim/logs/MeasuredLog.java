package org.gaugebench.sim.logs;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A log as read: columns of equal length, at least two rows, time never running backwards. Currents
 * and counter are signed our way: positive into the battery.
 */
public final class MeasuredLog {
    private final String file;
    private final int[] lines;
    private final long[] timeNanos;
    private final double[] currentAmps;
    private final double @Nullable [] voltageVolts;
    private final double @Nullable [] temperatureCelsius;
    private final double @Nullable [] counterAmpHours;
    private final double @Nullable [] uptimeSeconds;
    private final double @Nullable [] shownPercent;
    private final List<String> notes;

    private MeasuredLog(Builder builder, List<String> notes) {
        int rows = builder.rows;
        file = builder.file;
        lines = Arrays.copyOf(builder.lines, rows);
        timeNanos = Arrays.copyOf(builder.timeNanos, rows);
        currentAmps = Arrays.copyOf(builder.values[0], rows);
        voltageVolts = builder.present[1] ? Arrays.copyOf(builder.values[1], rows) : null;
        temperatureCelsius = builder.present[2] ? Arrays.copyOf(builder.values[2], rows) : null;
        counterAmpHours = builder.present[3] ? Arrays.copyOf(builder.values[3], rows) : null;
        uptimeSeconds = builder.present[4] ? Arrays.copyOf(builder.values[4], rows) : null;
        shownPercent = builder.present[5] ? Arrays.copyOf(builder.values[5], rows) : null;
        this.notes = List.copyOf(notes);
    }

    /** The file as the user named it. */
    public String file() {
        return file;
    }

    /** Number of rows, at least 2. */
    public int rows() {
        return timeNanos.length;
    }

    /** Line of the file in which a row starts, from 1. */
    public int line(int row) {
        return lines[row];
    }

    /** Time of a row, in nanoseconds after the first row. */
    public long timeNanos(int row) {
        return timeNanos[row] - timeNanos[0];
    }

    /** Time from the first row to the last, in nanoseconds. */
    public long durationNanos() {
        return timeNanos(rows() - 1);
    }

    /** Current of a row in amps, positive into the battery. */
    public double currentAmps(int row) {
        return currentAmps[row];
    }

    /** Whether there is a voltage column. */
    public boolean hasVoltage() {
        return voltageVolts != null;
    }

    /** Voltage of a row in volts; 0 without a voltage column. */
    public double voltageVolts(int row) {
        return voltageVolts == null ? 0 : voltageVolts[row];
    }

    /** Whether there is a temperature column. */
    public boolean hasTemperature() {
        return temperatureCelsius != null;
    }

    /** Temperature of a row in degrees Celsius; 0 without a temperature column. */
    public double temperatureCelsius(int row) {
        return temperatureCelsius == null ? 0 : temperatureCelsius[row];
    }

    /** Whether the log carries its own count. */
    public boolean hasCounter() {
        return counterAmpHours != null;
    }

    /** The log's own count at a row in ampere-hours, signed our way; 0 without the column. */
    public double counterAmpHours(int row) {
        return counterAmpHours == null ? 0 : counterAmpHours[row];
    }

    /** What the log's own count moved by from the first row to the last, in ampere-hours. */
    public double counterMovedAmpHours() {
        return counterAmpHours(rows() - 1) - counterAmpHours(0);
    }

    /** Whether the log says how long its unit had been powered. */
    public boolean hasUptime() {
        return uptimeSeconds != null;
    }

    /** Seconds that the unit had been powered at a row; 0 without the column. */
    public double uptimeSeconds(int row) {
        return uptimeSeconds == null ? 0 : uptimeSeconds[row];
    }

    /** State of charge that the unit showed, in percent; NaN where it showed none. */
    public double shownPercent(int row) {
        return shownPercent == null ? Double.NaN : shownPercent[row];
    }

    /** Largest magnitude of the current, in amps. */
    public double peakAmps() {
        double peak = 0;
        for (double amps : currentAmps) {
            peak = Math.max(peak, Math.abs(amps));
        }
        return peak;
    }

    /** What was recognised while reading, for people. */
    public List<String> notes() {
        return notes;
    }

    /** Takes rows one by one; arrays grow by half. */
    static final class Builder {
        static final int COLUMNS = 6;

        private final String file;
        private final boolean[] present;
        private int rows;
        private int[] lines = new int[1024];
        private long[] timeNanos = new long[1024];
        private final double[][] values = new double[COLUMNS][1024];

        /** Present: current, voltage, temperature, counter, uptime, shown. */
        Builder(String file, boolean[] present) {
            this.file = file;
            this.present = present.clone();
        }

        int rows() {
            return rows;
        }

        /** Appends a row; the values in the order of the constructor. */
        void add(int line, long nanos, double[] row) {
            if (rows == lines.length) {
                int length = rows + rows / 2;
                lines = Arrays.copyOf(lines, length);
                timeNanos = Arrays.copyOf(timeNanos, length);
                for (int c = 0; c < COLUMNS; c++) {
                    values[c] = Arrays.copyOf(values[c], length);
                }
            }
            lines[rows] = line;
            timeNanos[rows] = nanos;
            for (int c = 0; c < COLUMNS; c++) {
                values[c][rows] = row[c];
            }
            rows++;
        }

        MeasuredLog build(List<String> notes) {
            return new MeasuredLog(this, notes);
        }
    }
}
