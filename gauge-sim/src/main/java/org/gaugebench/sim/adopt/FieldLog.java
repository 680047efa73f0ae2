package org.gaugebench.sim.adopt;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.gaugebench.sim.adopt.AdoptSetup.GapCurrent;
import org.gaugebench.sim.logs.Durations;
import org.gaugebench.sim.logs.Hold;
import org.gaugebench.sim.logs.LogException;
import org.gaugebench.sim.logs.LogProblem;
import org.gaugebench.sim.logs.MeasuredLog;
import org.jspecify.annotations.Nullable;

/**
 * A log as a scenario takes it: times in whole milliseconds, current in whole microamps, gaps and
 * restarts found, and in each gap a current that somebody answers for.
 *
 * <p>Rows are in the form of a profile: with figures that hold, a row's current is that from the
 * row to the next, whatever the log's own hold is.
 */
final class FieldLog {
    private static final long NANOS_PER_MILLI = 1_000_000;
    private static final double MILLIS_PER_HOUR = 3_600_000;

    private final MeasuredLog log;
    private final AdoptSetup setup;
    private final boolean linear;
    private final List<LogProblem> problems = new ArrayList<>();
    private final List<LogSpan> gaps = new ArrayList<>();
    private final List<LogSpan> restarts = new ArrayList<>();
    private final List<String> assumptions = new ArrayList<>();

    // Rows of the profile; a gap may add some.
    private final LongColumn millis = new LongColumn();
    private final LongColumn microamps = new LongColumn();
    private final LongColumn microvolts = new LongColumn();
    private final LongColumn lines = new LongColumn();

    private FieldLog(MeasuredLog log, AdoptSetup setup) {
        this.log = log;
        this.setup = setup;
        this.linear = setup.hold() == Hold.LINEAR;
    }

    /**
     * Takes a log.
     *
     * @throws LogException where nobody says what flowed in a gap, or a figure cannot be
     */
    static FieldLog of(MeasuredLog log, AdoptSetup setup) throws LogException {
        FieldLog it = new FieldLog(log, setup);
        it.read();
        if (it.problems.isEmpty() && it.millis.size() < 2) {
            it.problem(0, "all rows lie within one millisecond; is the time column right?");
        }
        if (!it.problems.isEmpty()) {
            throw new LogException(it.problems);
        }
        return it;
    }

    private void read() {
        for (int row = 1; row < log.rows() && problems.size() < 10; row++) {
            long from = millisOf(row - 1);
            long to = millisOf(row);
            LogSpan restart = restart(row, from, to);
            if (restart != null) {
                restarts.add(restart);
            }
            boolean gap = to - from > setup.gapMillis();
            if (gap) {
                gaps.add(new LogSpan(from, to, log.line(row)));
            }
            if (to == from) {
                if (linear) {
                    add(from, microampsOf(row - 1), row - 1);
                }
                continue;
            }
            if (gap) {
                addGap(row, from, to, restart != null);
            } else {
                add(from, microampsOf(held(row)), row - 1);
            }
        }
        int last = log.rows() - 1;
        add(millisOf(last), microampsOf(last), last);
    }

    /** Row whose current holds over the interval that ends at a row; its start for a line. */
    private int held(int row) {
        return setup.hold() == Hold.NEXT ? row : row - 1;
    }

    private void addGap(int row, long from, long to, boolean restarted) {
        long current = gapMicroamps(row, from, to, restarted);
        if (linear) {
            add(from, microampsOf(row - 1), row - 1);
            if (to - from > 2) {
                add(from + 1, current, row - 1);
                add(to - 1, current, row);
            }
        } else {
            add(from, current, row - 1);
        }
    }

    /** The log's own count knows best, if the unit went on counting; then rest; then the user. */
    private long gapMicroamps(int row, long from, long to, boolean restarted) {
        String where = "gap of " + Durations.words((to - from) * NANOS_PER_MILLI);
        if (log.hasCounter() && !restarted) {
            double moved = log.counterAmpHours(row) - log.counterAmpHours(row - 1);
            assume(row, where, "what the log's own count moved by flowed evenly");
            return Math.round(moved * MILLIS_PER_HOUR / (to - from) * 1e6);
        }
        double before = log.currentAmps(row - 1) * setup.ampsPerUnit();
        double after = log.currentAmps(row) * setup.ampsPerUnit();
        if (Math.max(Math.abs(before), Math.abs(after)) < setup.quietAmps()) {
            assume(row, where, "at rest on both sides, so the battery rested in it");
            return microampsOf(held(row));
        }
        if (setup.gapCurrent() == null) {
            problem(
                    row,
                    String.format(
                            Locale.ROOT,
                            "%s before this row, with %.3f A before and %.3f A after it, and the"
                                    + " log does not say what flowed; say --gap-current zero or"
                                    + " --gap-current before, name the log's own count with"
                                    + " --counter, or give a longer --gap if its rhythm is that"
                                    + " slow",
                            where,
                            before,
                            after));
            return 0;
        }
        boolean zero = setup.gapCurrent() == GapCurrent.ZERO;
        assume(row, where, zero ? "nothing flowed" : "what flowed before it went on");
        return zero ? 0 : microampsOf(row - 1);
    }

    private void assume(int row, String where, String what) {
        if (assumptions.size() < 20) {
            assumptions.add(where + " before line " + log.line(row) + ": " + what);
        }
    }

    /** Power came back after the row before, or the unit's own clock of it says less. */
    private @Nullable LogSpan restart(int row, long from, long to) {
        if (!log.hasUptime()) {
            return null;
        }
        double uptime = log.uptimeSeconds(row);
        if (uptime < 0) {
            problem(row, "uptime: a unit is powered for 0 s or more, but found " + uptime);
            return null;
        }
        long on = to - Math.round(uptime * 1e3);
        if (on <= from && uptime >= log.uptimeSeconds(row - 1)) {
            return null;
        }
        return new LogSpan(from, Math.min(Math.max(on, from), to), log.line(row));
    }

    /**
     * Appends a row of the profile. Of rows in one millisecond the first counts where figures hold,
     * for it was the one looked for; where they run straight a repeated time is a step, and what
     * comes after it stands one millisecond later.
     */
    private void add(long time, long current, int row) {
        int size = millis.size();
        long last = size == 0 ? -1 : millis.get(size - 1);
        if (last > time || (last == time && (!linear || microamps.get(size - 1) == current))) {
            return;
        }
        long at = last == time ? time + 1 : time;
        boolean same =
                !linear
                        && !log.hasVoltage()
                        && size > 0
                        && row < log.rows() - 1
                        && microamps.get(size - 1) == current;
        if (same) {
            return;
        }
        millis.add(at);
        microamps.add(current);
        microvolts.add(Math.round(log.voltageVolts(row) * 1e6));
        lines.add(log.line(row));
    }

    private long microampsOf(int row) {
        double amps = log.currentAmps(row) * setup.ampsPerUnit();
        if (Math.abs(amps) > 2_000) {
            problem(row, "current: more than 2000 A; is the unit right?");
        }
        return Math.round(amps * 1e6);
    }

    private void problem(int row, String message) {
        LogProblem problem = new LogProblem(log.file(), log.line(row), 0, message);
        // A row's current is looked at from both its sides.
        if (!problems.contains(problem)) {
            problems.add(problem);
        }
    }

    private long millisOf(int row) {
        return (log.timeNanos(row) + NANOS_PER_MILLI / 2) / NANOS_PER_MILLI;
    }

    MeasuredLog log() {
        return log;
    }

    /** Time of a row of the log. */
    long logMillis(int row) {
        return millisOf(row);
    }

    /** Rows of the profile. */
    int rows() {
        return millis.size();
    }

    long millis(int row) {
        return millis.get(row);
    }

    long microamps(int row) {
        return microamps.get(row);
    }

    long microvolts(int row) {
        return microvolts.get(row);
    }

    /** Line of the log that a row of the profile comes from. */
    int line(int row) {
        return (int) lines.get(row);
    }

    boolean isLinear() {
        return linear;
    }

    List<LogSpan> gaps() {
        return gaps;
    }

    List<LogSpan> restarts() {
        return restarts;
    }

    /** What was taken to flow in each gap, for people. */
    List<String> assumptions() {
        return assumptions;
    }

    /** Charge moved either way over a stretch, in microamp-hours; for a line by its ends. */
    double throughputMicroampHours(long from, long to) {
        int row = millis.placeOf(from);
        double sum = 0;
        for (; row + 1 < rows() && millis(row) < to; row++) {
            long start = Math.max(from, millis(row));
            long end = Math.min(to, millis(row + 1));
            double amps = Math.abs((double) microamps(row));
            if (linear) {
                amps = Math.max(amps, Math.abs((double) microamps(row + 1)));
            }
            sum += amps * Math.max(0, end - start);
        }
        return sum / MILLIS_PER_HOUR;
    }

    /** Length of the run: whole ticks, none of them beyond the last row. */
    long durationMillis() {
        return millis(rows() - 1) / setup.tickMillis() * setup.tickMillis();
    }
}
