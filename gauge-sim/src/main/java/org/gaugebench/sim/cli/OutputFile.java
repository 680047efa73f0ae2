package org.gaugebench.sim.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.function.Supplier;
import org.gaugebench.sim.report.FreshFile;
import org.jspecify.annotations.Nullable;

/**
 * A file that a command writes at its end, opened before it begins: a place that cannot be written
 * is refused before the work and not after it. Without a place it does nothing.
 */
final class OutputFile {
    private final String option;
    private final @Nullable Path place;
    private final @Nullable FreshFile file;
    private final String example;

    private OutputFile(String option, @Nullable Path place, String example) throws InputException {
        this.option = option;
        this.place = place;
        this.example = example;
        if (place != null && place.toString().isEmpty()) {
            throw new InputException(
                    "%s: no file is named; expected one such as %s".formatted(option, example));
        }
        try {
            this.file = place == null ? null : new FreshFile(place);
        } catch (IOException e) {
            throw refusal(e);
        }
    }

    /**
     * Opens it.
     *
     * @param option that names it, for messages
     * @param place where it is to appear, or null for nowhere
     * @param example of a good name
     * @throws InputException if it cannot be written there
     */
    static OutputFile open(String option, @Nullable Path place, String example)
            throws InputException {
        return new OutputFile(option, place, example);
    }

    private InputException refusal(IOException trouble) {
        return new InputException(
                "%s: cannot write %s: %s; expected a file in an existing folder, such as %s"
                        .formatted(option, place, FileTrouble.words(trouble), example));
    }

    /** Writes the text and moves the file into place. */
    void keep(Supplier<String> text) throws InputException {
        FreshFile fresh = file;
        if (fresh == null) {
            return;
        }
        try (fresh) {
            fresh.writer().write(text.get());
            fresh.keep();
        } catch (IOException e) {
            throw refusal(e);
        }
    }

    /** Leaves nothing behind. */
    void abandon() {
        FreshFile fresh = file;
        try {
            if (fresh != null) {
                fresh.close();
            }
        } catch (IOException e) {
            // What made the command end tells more than a part file that stays.
        }
    }
}
