package org.gaugebench.sim.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.gaugebench.sim.program.CommandWords;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/**
 * Refuses a command line by which a command would write over what it reads, or write two files into
 * one place: what a user typed by hand is lost for good, whatever the run was worth. It looks at
 * what the parser found, before the command begins, so that no command has to think of it.
 *
 * <p>Folders are not judged here. Their commands know which names they write into them.
 */
final class OutputClash {
    /** Options that name a file to write, with a good name; every other file is read. */
    static final Map<String, String> WRITTEN =
            Map.of(
                    "--csv", "table.csv",
                    "--devices-csv", "devices.csv",
                    "--dump", "day.vcd",
                    "--html", "covers.html",
                    "--junit", "verdicts.xml",
                    "--out", "parts/tuned.yaml",
                    "--picture", "week.svg",
                    "--report", "week.html",
                    "--rows", "part-2.rows",
                    "--trace", "week.csv");

    /** What the help calls a folder, whether it is read or written. */
    static final List<String> FOLDERS = List.of("DIR", "FOLDER");

    /**
     * A word of the command line that names a file.
     *
     * @param by the option, or nothing for a parameter
     * @param typed as the user wrote it, for messages
     * @param file it leads to
     */
    private record Named(String by, Path typed, Path file) {}

    private final List<Named> written = new ArrayList<>();
    private final List<Named> read = new ArrayList<>();

    private OutputClash(ParseResult parsed) {
        for (ArgSpec argument : parsed.matchedArgs()) {
            String name = name(argument);
            if (WRITTEN.containsKey(name) && !isFolder(argument)) {
                paths(argument)
                        .forEach(place -> written.add(new Named(name, place, asWritten(place))));
            }
        }
        if (!written.isEmpty()) {
            parsed.matchedArgs().forEach(this::addRead);
        }
    }

    private static String name(ArgSpec argument) {
        return argument instanceof OptionSpec option ? option.longestName() : "";
    }

    private static boolean isFolder(ArgSpec argument) {
        return FOLDERS.contains(argument.paramLabel());
    }

    private static List<Path> paths(ArgSpec argument) {
        return values(argument).filter(Path.class::isInstance).map(Path.class::cast).toList();
    }

    /** What was said for an option or a parameter, one by one. */
    private static Stream<?> values(ArgSpec argument) {
        return argument.typedValues().stream()
                .flatMap(it -> it instanceof Collection<?> many ? many.stream() : Stream.of(it));
    }

    /**
     * Looks at a command line.
     *
     * @param parsed that of the command which is about to run
     * @throws InputException with each file to be written that is read too, or written twice
     */
    static void refuse(ParseResult parsed) throws InputException {
        OutputClash files = new OutputClash(parsed);
        List<String> wrong = new ArrayList<>();
        for (int i = 0; i < files.written.size(); i++) {
            Named output = files.written.get(i);
            for (Named input : files.read) {
                if (isSame(output.file(), input.file())) {
                    wrong.add(overwrites(output));
                    break;
                }
            }
            for (Named other : files.written.subList(0, i)) {
                if (isSame(output.file(), other.file())) {
                    wrong.add(twice(output, other));
                }
            }
        }
        if (!wrong.isEmpty()) {
            throw new InputException(String.join(System.lineSeparator(), wrong));
        }
    }

    private void addRead(ArgSpec argument) {
        String name = name(argument);
        if (WRITTEN.containsKey(name) || isFolder(argument)) {
            return;
        }
        paths(argument).forEach(file -> read.add(new Named(name, file, file)));
        for (Object each : values(argument).toList()) {
            if (each instanceof String text && argument.isPositional()) {
                // A file; or a file and one of its gauges; or a folder or pattern of files.
                addRead(name, text.replaceFirst("#[^#]*$", ""));
                ScenarioFiles.expand(List.of(text), new ArrayList<>())
                        .forEach(file -> read.add(new Named(name, file, file)));
            } else if (each instanceof String command && name.equals("--device")) {
                words(command).forEach(word -> addRead(name, word));
            }
        }
    }

    private void addRead(String name, String text) {
        try {
            Path file = Path.of(text);
            read.add(new Named(name, file, file));
        } catch (InvalidPathException e) {
            // It names no file, so there is none to be lost; the command tells what is wrong.
        }
    }

    /** The program and what it is started with: a script, perhaps, or its settings. */
    private static List<String> words(String command) {
        try {
            return CommandWords.of(command);
        } catch (IllegalArgumentException e) {
            return List.of();
        }
    }

    /** Where a file comes to stand: the way up is taken by name, as whoever writes it does. */
    private static Path asWritten(Path place) {
        return place.toString().isEmpty() ? place : place.toAbsolutePath().normalize();
    }

    /** Whether two names lead to one file, that is there or is to be made. */
    static boolean isSame(Path a, Path b) {
        try {
            if (Files.exists(a) && Files.exists(b)) {
                return Files.isSameFile(a, b);
            }
            return !Files.exists(a) && !Files.exists(b) && real(a).equals(real(b));
        } catch (IOException e) {
            return false;
        }
    }

    /** A file that is not there, by the real way to its folder. */
    private static Path real(Path missing) throws IOException {
        Path whole = missing.toAbsolutePath().normalize();
        Path folder = whole.getParent();
        Path name = whole.getFileName();
        return folder == null || name == null || !Files.exists(folder)
                ? whole
                : folder.toRealPath().resolve(name);
    }

    private static String overwrites(Named output) {
        return ("%s: %s is read by this command too, and what is in it would be lost;"
                        + " expected another name, such as %s")
                .formatted(output.by(), output.typed(), example(output));
    }

    private static String twice(Named output, Named other) {
        return ("%s: %s is what %s writes too, and one of the two would be lost;"
                        + " expected another name, such as %s")
                .formatted(output.by(), output.typed(), other.by(), example(output));
    }

    /** A good name that is not the bad one. */
    private static String example(Named output) {
        String usual = WRITTEN.getOrDefault(output.by(), "");
        boolean isIt = output.file().endsWith(Path.of(usual).getFileName());
        return isIt ? usual.replaceFirst("([^/]+)$", "new-$1") : usual;
    }
}
