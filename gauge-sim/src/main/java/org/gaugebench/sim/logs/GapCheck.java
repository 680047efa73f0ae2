package org.gaugebench.sim.logs;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Steps between rows that are too long to be a logger's rhythm.
 *
 * <p>A gap is accepted only where the battery was at rest on both sides and the log's own count
 * stood still; then the hold applies to it as to any other interval. Everything else could have
 * happened in a gap with current on one side, so it is refused.
 */
public final class GapCheck {
    private final List<LogProblem> problems = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();

    /**
     * Looks at every step.
     *
     * @param log the log
     * @param profile the same under its hold
     * @param gapNanos longest step that is not a gap
     * @param quietAmps current under which a battery counts as at rest
     */
    public GapCheck(MeasuredLog log, LogProfile profile, long gapNanos, double quietAmps) {
        for (int row = 1; row < log.rows(); row++) {
            long step = log.timeNanos(row) - log.timeNanos(row - 1);
            if (step > gapNanos) {
                judge(log, profile, row, quietAmps);
            }
        }
    }

    /** Gaps that cannot be counted over. */
    public List<LogProblem> problems() {
        return problems;
    }

    /** Gaps that were accepted. */
    public List<String> notes() {
        return notes;
    }

    private void judge(MeasuredLog log, LogProfile profile, int row, double quietAmps) {
        double before = log.currentAmps(row - 1);
        double after = log.currentAmps(row);
        double moved = log.counterAmpHours(row) - log.counterAmpHours(row - 1);
        String size = Durations.words(log.timeNanos(row) - log.timeNanos(row - 1));
        String where =
                "gap of " + size + " between rows " + log.line(row - 1) + " and " + log.line(row);
        boolean quiet = Math.abs(before) < quietAmps && Math.abs(after) < quietAmps;
        if (quiet && moved == 0) {
            notes.add(
                    String.format(
                            Locale.ROOT,
                            "%s accepted: at rest on both sides, %s; the hold puts %.5f Ah into it",
                            where,
                            log.hasCounter()
                                    ? "the counter stood still"
                                    : "no counter column to confirm it",
                            profile.intervalCoulombs(row) / 3600));
            return;
        }
        String why =
                quiet
                        ? String.format(
                                Locale.ROOT, "the log's own counter moved by %.5f Ah", moved)
                        : String.format(
                                Locale.ROOT,
                                "the current is %.4f A before and %.4f A after it, at rest is"
                                        + " under %.4f A (0.1 %% of the shunt's rating)",
                                before,
                                after,
                                quietAmps);
        problems.add(
                new LogProblem(
                        log.file(),
                        log.line(row),
                        0,
                        where
                                + ": "
                                + why
                                + "; where the logger's rhythm is that slow, give a longer --gap,"
                                + " such as --gap \"2 h\""));
    }
}
