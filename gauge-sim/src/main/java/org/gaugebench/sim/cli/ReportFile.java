package org.gaugebench.sim.cli;

import org.gaugebench.sim.judge.Attribution;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.judge.ShelfCase;
import org.gaugebench.sim.report.ReportPage;
import org.gaugebench.sim.report.ReportTrace;
import org.gaugebench.sim.rig.Observer;
import org.jspecify.annotations.Nullable;

/** A report on its way into a file, from the run's first tick to its last; or none at all. */
final class ReportFile implements AutoCloseable {
    private final OutputFile file;
    private final @Nullable ReportTrace trace;
    private @Nullable RunResult result;
    private @Nullable Attribution attribution;

    ReportFile(OutputFile file, boolean wanted) {
        this.file = file;
        this.trace = wanted ? new ReportTrace() : null;
    }

    /** What has to look on while the run goes. */
    Observer guest() {
        return trace == null ? Observer.NONE : trace;
    }

    /** Takes what came of the run; nothing came of one that did not finish. */
    void take(ShelfCase ended, Attributing attributing) {
        RunResult known = ended.result();
        result = known;
        attribution = known == null ? null : attributing.drawn(known);
    }

    /** Writes and moves the file into place, if the run finished. */
    void keep() throws InputException {
        ReportTrace seen = trace;
        RunResult run = result;
        if (seen != null && run != null) {
            file.keep(() -> ReportPage.of(run, seen, attribution, Version.text()));
        }
    }

    /** Leaves no part of a file behind. */
    @Override
    public void close() {
        file.abandon();
    }
}
