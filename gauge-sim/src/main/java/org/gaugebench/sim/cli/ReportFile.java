package org.gaugebench.sim.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.LongStream;
import org.gaugebench.sim.judge.Attribution;
import org.gaugebench.sim.judge.AttributionRun;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.judge.ShelfCase;
import org.gaugebench.sim.report.ReportPage;
import org.gaugebench.sim.report.ReportTrace;
import org.gaugebench.sim.rig.Observer;
import org.jspecify.annotations.Nullable;

/** A report on its way into a file, from the run's first tick to its last; or none at all. */
final class ReportFile implements AutoCloseable {
    /** Moments at which the error is split, evenly over the run: an area has no sharper edges. */
    private static final int SPLITS = 240;

    private final OutputFile file;
    private final @Nullable ReportTrace trace;
    private final boolean attributing;
    private @Nullable RunResult result;
    private @Nullable Attribution attribution;

    ReportFile(OutputFile file, boolean wanted, boolean attributing) {
        this.file = file;
        this.trace = wanted ? new ReportTrace() : null;
        this.attributing = attributing;
    }

    /** What has to look on while the run goes. */
    Observer guest() {
        return trace == null ? Observer.NONE : trace;
    }

    /**
     * The error split for the text of a run. Where a page is wanted, one run of the twins serves
     * both, and the text takes the moments that are its own.
     */
    Attribution attribution(RunResult run) {
        if (trace == null) {
            return AttributionRun.of(run);
        }
        long[] own = AttributionRun.moments(run);
        Attribution whole = whole(run, own);
        List<Attribution.Split> splits = new ArrayList<>();
        for (long moment : Arrays.stream(own).sorted().distinct().toArray()) {
            whole.splits().stream()
                    .filter(split -> split.atMillis() >= moment)
                    .findFirst()
                    .ifPresent(splits::add);
        }
        return new Attribution(whole.gauge(), splits);
    }

    private Attribution whole(RunResult run, long[] own) {
        Attribution known = attribution;
        if (known != null) {
            return known;
        }
        long end = run.simulatedMillis();
        long tick = run.scenario().tickMillis();
        // Whole ticks, so that two moments are never the same one.
        LongStream even =
                LongStream.rangeClosed(0, SPLITS).map(i -> end / tick * i / SPLITS * tick);
        Attribution whole =
                AttributionRun.of(
                        run.scenario(),
                        run.seed(),
                        LongStream.concat(even, Arrays.stream(own)).toArray());
        attribution = whole;
        return whole;
    }

    /** Takes what came of the run; nothing came of one that did not finish. */
    void take(ShelfCase ended) {
        result = ended.result();
    }

    /** Writes and moves the file into place, if the run finished. */
    void keep() throws InputException {
        ReportTrace seen = trace;
        RunResult run = result;
        if (seen != null && run != null) {
            Attribution split = attributing ? whole(run, AttributionRun.moments(run)) : null;
            file.keep(() -> ReportPage.of(run, seen, split, Version.text()));
        }
    }

    /** Leaves no part of a file behind. */
    @Override
    public void close() {
        file.abandon();
    }
}
