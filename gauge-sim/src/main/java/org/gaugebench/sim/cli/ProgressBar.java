package org.gaugebench.sim.cli;

import java.io.PrintStream;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.jspecify.annotations.Nullable;

/**
 * A bar on standard error for a run that takes longer than two seconds, where a person looks on.
 * The only part of a run that reads the machine's clock; nothing of it reaches a result.
 */
final class ProgressBar implements Observer, AutoCloseable {
    private static final long QUIET_NANOS = 2_000_000_000L;
    private static final long REDRAW_NANOS = 200_000_000L;
    private static final int WIDTH = 30;

    private final ProgressLine line;
    private final long startNanos = System.nanoTime();
    private @Nullable Rig first;
    private long drawnNanos = startNanos + QUIET_NANOS - REDRAW_NANOS;

    ProgressBar(PrintStream err) {
        line = new ProgressLine(err);
    }

    @Override
    public void onMoment(Rig rig) {
        long now = System.nanoTime();
        if (now - drawnNanos >= REDRAW_NANOS) {
            drawnNanos = now;
            if (first == null) {
                first = rig;
            }
            draw(
                    first == rig ? "" : "once more, for the causes  ",
                    rig.timeMillis(),
                    rig.scenario().durationMillis());
        }
    }

    void draw(String what, long millis, long wholeMillis) {
        int done = (int) (WIDTH * millis / wholeMillis);
        line.draw(
                what
                        + "["
                        + "#".repeat(done)
                        + ".".repeat(WIDTH - done)
                        + "] "
                        + (100 * millis / wholeMillis)
                        + " %  "
                        + Figures.duration(millis / 3_600_000 * 3_600_000)
                        + " of "
                        + Figures.duration(wholeMillis));
    }

    /** Takes the bar away, so that something else can be printed. */
    void clear() {
        line.clear();
    }

    /** Takes the bar away for good. */
    @Override
    public void close() {
        clear();
    }
}
