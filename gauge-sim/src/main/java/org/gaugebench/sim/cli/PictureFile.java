package org.gaugebench.sim.cli;

import java.util.List;
import org.gaugebench.sim.judge.Attribution;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.judge.ShelfCase;
import org.gaugebench.sim.report.Picture;
import org.gaugebench.sim.report.PictureSeries;
import org.gaugebench.sim.report.PictureTrace;
import org.gaugebench.sim.rig.Observer;
import org.jspecify.annotations.Nullable;

/** A picture on its way into a file, from the run's first tick to its last; or none at all. */
final class PictureFile implements AutoCloseable {
    private final OutputFile file;
    private final @Nullable PictureTrace trace;
    private @Nullable RunResult result;
    private @Nullable Attribution causes;

    PictureFile(OutputFile file, boolean wanted, List<PictureSeries> shows) {
        this.file = file;
        this.trace = wanted ? new PictureTrace(shows) : null;
    }

    /** What has to look on while the run goes. */
    Observer guest() {
        return trace == null ? Observer.NONE : trace;
    }

    /** Takes what came of the run; nothing came of one that did not finish. */
    void take(ShelfCase ended, Attributing attributing) {
        RunResult known = ended.result();
        result = known;
        causes = known == null ? null : attributing.drawn(known);
    }

    /** Draws and moves the file into place, if the run finished. */
    void keep() throws InputException {
        PictureTrace seen = trace;
        RunResult known = result;
        if (seen != null && known != null) {
            file.keep(() -> Picture.of(known, seen, causes, Version.text()));
        }
    }

    /** Leaves no part of a file behind. */
    @Override
    public void close() {
        file.abandon();
    }
}
