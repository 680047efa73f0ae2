package org.gaugebench.sim.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import org.gaugebench.sim.report.PictureSeries;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The picture of a run: where it goes and what it shows. */
final class PictureOptions {
    private static final String EXAMPLE = "week.svg";

    @Option(
            names = "--picture",
            paramLabel = "SVG",
            description =
                    "Draw the run into this SVG file: truth and readings over time, with the error"
                            + " band, and the events; one run only.")
    private @Nullable Path place;

    @Option(
            names = "--picture-shows",
            paramLabel = "NAMES",
            split = ",",
            converter = PictureSeriesName.class,
            description =
                    "What the picture shows, from top to bottom, with a comma between:"
                        + " state-of-charge, charge, error, error-with-band, current, voltage,"
                        + " time-to-empty, temperature, causes (default:"
                        + " state-of-charge,current,voltage); causes runs the scenario once more.")
    private List<PictureSeries> shows = new ArrayList<>();

    PictureOptions() {}

    boolean isWanted() {
        return place != null;
    }

    /** Whether the error is to be drawn split by cause. */
    boolean showsCauses() {
        return shows.contains(PictureSeries.CAUSES);
    }

    /** Refuses what does not go together, before anything runs. */
    void check(boolean momentIsWanted) throws InputException {
        Path wanted = place;
        if (wanted == null) {
            if (!shows.isEmpty()) {
                throw new InputException(
                        "--picture-shows says what a picture shows, but there is none; add"
                                + " --picture "
                                + EXAMPLE);
            }
            return;
        }
        if (momentIsWanted) {
            throw new InputException(
                    "--picture shows a whole run and --at a moment of it; ask for one of them");
        }
        OutputFile.checkEnding("--picture", wanted, EXAMPLE);
        if (new HashSet<>(shows).size() < shows.size()) {
            throw new InputException(
                    "--picture-shows: the same name stands there twice; expected each once, such"
                            + " as state-of-charge,current");
        }
    }

    /** Opens the file, if one is wanted. */
    PictureFile open() throws InputException {
        return new PictureFile(
                OutputFile.open("--picture", place, EXAMPLE),
                isWanted(),
                shows.isEmpty() ? PictureSeries.USUAL : shows);
    }
}
