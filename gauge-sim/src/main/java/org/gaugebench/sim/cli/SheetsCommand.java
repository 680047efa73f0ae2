package org.gaugebench.sim.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import org.gaugebench.sim.live.lessons.LessonPages;
import org.gaugebench.sim.live.lessons.TextException;
import org.gaugebench.sim.live.lessons.Words;
import org.gaugebench.sim.report.FreshFile;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes the sheets and the plans of the lessons. */
@Command(
        name = "sheets",
        header = "Write the lessons' sheets and plans, to be printed.",
        description = {
            "",
            "Runs each lesson and writes, into a folder, a sheet for pupils, a sheet with the"
                    + " answers, the picture of the run, and three plans of 45 minutes. Each is a"
                    + " page that opens in a browser and prints on one sheet of A4 or Letter;"
                    + " begin with index.html. The file english.words beside them holds every text"
                    + " and is what a translator copies.",
            ""
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:written",
            " 2:wrong input or command line; nothing was written",
            "70:a defect of this program"
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  gauge-sim sheets for-my-class",
            "  gauge-sim sheets --words deutsch.words for-my-class"
        })
final class SheetsCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    @Parameters(
            paramLabel = "FOLDER",
            description = "Where the pages go; it is made if it is not there.")
    private Path folder = Path.of("");

    @Option(
            names = "--words",
            paramLabel = "FILE",
            description = "Texts in another language; what the file lacks stays English.")
    private @Nullable Path file;

    SheetsCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException {
        Words words = words(file);
        Map<String, String> files = new LinkedHashMap<>(LessonPages.files(words));
        files.put("english.words", Words.english().fileText());
        refuseOwnWords(files.keySet());
        try {
            if (Files.exists(folder) && !Files.isDirectory(folder)) {
                throw new IOException("it is a file");
            }
            if (!Files.exists(folder)) {
                Files.createDirectory(folder);
            }
            for (Map.Entry<String, String> each : files.entrySet()) {
                try (FreshFile fresh = new FreshFile(folder.resolve(each.getKey()))) {
                    fresh.writer().write(each.getValue());
                    fresh.keep();
                }
            }
        } catch (IOException e) {
            throw new InputException(
                    "the sheets cannot be written to %s: %s; expected a folder such as for-my-class"
                            .formatted(folder, FileTrouble.words(e)));
        }
        if (!words.missingText().isEmpty()) {
            terminal.err().println(file + ": " + words.missingText());
        }
        terminal.out().println(files.size() + " files in " + folder + "; begin with index.html");
        return ExitCodes.OK;
    }

    /** Whoever translates in the folder of the sheets must not lose the work to the next sheets. */
    private void refuseOwnWords(Set<String> names) throws InputException {
        Path own = file;
        for (String name : names) {
            if (own != null && OutputClash.isSame(folder.resolve(name), own)) {
                throw new InputException(
                        ("--words: %s is written anew by this command, and what is in it would be"
                                        + " lost; expected a file of another name, such as"
                                        + " our-language.words")
                                .formatted(own));
            }
        }
    }

    /** The words of a file, or English without one. */
    static Words words(@Nullable Path file) throws InputException {
        try {
            return file == null ? Words.english() : Words.load(file);
        } catch (TextException e) {
            throw new InputException(e.render());
        }
    }
}
