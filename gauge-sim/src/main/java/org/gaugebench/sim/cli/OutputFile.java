package org.gaugebench.sim.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.Supplier;
import org.gaugebench.sim.report.FreshFile;
import org.jspecify.annotations.Nullable;

/**
 * A file that a command writes at its end, opened before it begins: a place that cannot be written
 * is refused before the work and not after it. Without a place it does nothing.
 */
final class OutputFile {
    /** What people open, by the endings of its name. */
    private enum Form {
        PICTURE("a picture in SVG", ".svg", ".svg"),
        PAGE("a page in HTML", ".html", ".htm"),
        DUMP("a value change dump", ".vcd", ".vcd");

        private final String words;
        private final String ending;
        private final String shorter;

        Form(String words, String ending, String shorter) {
            this.words = words;
            this.ending = ending;
            this.shorter = shorter;
        }

        private static @Nullable Form of(String name) {
            String small = name.toLowerCase(Locale.ROOT);
            for (Form each : values()) {
                if (small.endsWith(each.ending) || small.endsWith(each.shorter)) {
                    return each;
                }
            }
            return null;
        }
    }

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
        if (place != null) {
            checkEnding(option, place, example);
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

    /**
     * Refuses a name that ends otherwise than what is written, where people open the file: a
     * browser or a viewer goes by the ending, and shows a page called week.txt as text. A table or
     * a list for a program may be called as one likes: whoever reads it is told its name.
     *
     * @param option that names it, for messages
     * @param place where it is to appear
     * @param example of a good name
     * @throws InputException if it ends otherwise than the example
     */
    static void checkEnding(String option, Path place, String example) throws InputException {
        Form form = Form.of(example);
        if (form != null && Form.of(place.toString()) != form) {
            throw new InputException(
                    "%s: %s is written, and %s ends otherwise; expected a name such as %s"
                            .formatted(option, form.words, place, example));
        }
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
