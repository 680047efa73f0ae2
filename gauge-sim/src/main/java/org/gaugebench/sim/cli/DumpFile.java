package org.gaugebench.sim.cli;

import java.io.IOException;
import java.nio.file.Path;
import org.gaugebench.sim.judge.ShelfCase;
import org.gaugebench.sim.report.WaveformDump;
import org.gaugebench.sim.rig.Observer;
import org.jspecify.annotations.Nullable;

/** A value change dump on its way into a file, from the first tick to the last; or none at all. */
final class DumpFile implements AutoCloseable {
    private final @Nullable Path place;
    private final @Nullable WaveformDump dump;
    private boolean finished;

    DumpFile(@Nullable Path place, long seed) throws InputException {
        this.place = place;
        try {
            this.dump = place == null ? null : new WaveformDump(place, Version.text(), seed);
        } catch (IOException e) {
            throw refusal(e);
        }
    }

    private InputException refusal(IOException trouble) {
        return new InputException(
                "--dump: cannot write %s: %s; expected a file in an existing folder, such as %s"
                        .formatted(place, FileTrouble.words(trouble), DumpOptions.EXAMPLE));
    }

    /** What has to look on while the run goes. */
    Observer guest() {
        return dump == null ? Observer.NONE : dump;
    }

    /** Takes what came of the run; the dump of one that did not finish is not kept. */
    void take(ShelfCase ended) {
        finished = ended.result() != null;
    }

    /** Moves the file into place, if the run finished. */
    void keep() throws InputException {
        WaveformDump seen = dump;
        if (seen == null || !finished) {
            return;
        }
        try {
            seen.keep();
        } catch (IOException e) {
            throw refusal(e);
        }
    }

    /** Leaves no part of a file behind. */
    @Override
    public void close() {
        WaveformDump seen = dump;
        try {
            if (seen != null) {
                seen.close();
            }
        } catch (IOException e) {
            // What made the command end tells more than a part file that stays.
        }
    }
}
