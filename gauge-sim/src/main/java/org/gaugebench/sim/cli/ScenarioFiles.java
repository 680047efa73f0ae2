package org.gaugebench.sim.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileSystems;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.regex.PatternSyntaxException;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gaugebench.sim.scenario.Nearest;

/**
 * Turns files, folders and patterns into scenario files, in a fixed order. A folder stands for
 * every {@code .yaml} and {@code .yml} file in it and below, without hidden folders and without
 * {@code parts}, which holds pieces that scenarios include.
 */
final class ScenarioFiles {
    private static final String PARTS = "parts";

    private final Collection<Path> found = new LinkedHashSet<>();
    private final List<String> problems = new ArrayList<>();

    private ScenarioFiles() {}

    /**
     * Expands arguments. No argument may come to nothing.
     *
     * @param arguments as typed
     * @return at least one file, none twice
     * @throws InputException with every argument that names no file
     */
    static List<Path> expand(List<String> arguments) throws InputException {
        List<String> problems = new ArrayList<>();
        List<Path> files = expand(arguments, problems);
        if (!problems.isEmpty()) {
            throw new InputException(String.join(System.lineSeparator(), problems));
        }
        return files;
    }

    /** The same for who has more to refuse: arguments that name no file go into the list. */
    static List<Path> expand(List<String> arguments, List<String> problems) {
        ScenarioFiles files = new ScenarioFiles();
        for (String argument : arguments) {
            files.add(argument);
        }
        problems.addAll(files.problems);
        return List.copyOf(files.found);
    }

    private void add(String argument) {
        if (argument.isBlank()) {
            problems.add(
                    "'"
                            + argument
                            + "': no name of a file; expected one such as"
                            + " scenarios/first-steps/a-week-in-the-hut.yaml");
            return;
        }
        try {
            if (isPattern(argument) && !exists(argument)) {
                addPattern(argument);
                return;
            }
            Path path = Path.of(argument);
            if (Files.isDirectory(path)) {
                addAll(
                        scenariosUnder(path),
                        argument
                                + ": no scenario in this folder; expected files that end in .yaml,"
                                + " such as scenarios/first-steps/a-week-in-the-hut.yaml");
            } else if (Files.exists(path)) {
                found.add(path);
            } else {
                problems.add(argument + ": no such file" + suggestion(path));
            }
        } catch (InvalidPathException | PatternSyntaxException e) {
            problems.add(argument + ": not a name that a file can have: " + e.getMessage());
        } catch (IOException | UncheckedIOException e) {
            problems.add(argument + ": cannot be read: " + e.getMessage());
        }
    }

    private static boolean isPattern(String argument) {
        return argument.matches(".*[*?\\[{].*");
    }

    private static boolean exists(String argument) {
        try {
            return Files.exists(Path.of(argument));
        } catch (InvalidPathException e) {
            return false;
        }
    }

    private void addPattern(String pattern) throws IOException {
        String plain = pattern.replace('\\', '/');
        int firstWild = plain.replaceFirst("[*?\\[{].*", "").length();
        String base = plain.substring(0, plain.lastIndexOf('/', firstWild) + 1);
        PathMatcher matcher =
                FileSystems.getDefault().getPathMatcher("glob:" + plain.substring(base.length()));
        Path folder = Path.of(base.isEmpty() ? "." : base);
        List<Path> matches = new ArrayList<>();
        if (Files.isDirectory(folder)) {
            for (Path path : scenariosUnder(folder)) {
                if (matcher.matches(folder.relativize(path))) {
                    matches.add(base.isEmpty() ? folder.relativize(path) : path);
                }
            }
        }
        addAll(matches, pattern + ": no scenario matches this pattern");
    }

    private void addAll(List<Path> files, String problemWhenNone) {
        if (files.isEmpty()) {
            problems.add(problemWhenNone);
        }
        found.addAll(files);
    }

    private static List<Path> scenariosUnder(Path folder) throws IOException {
        List<Path> scenarios = new ArrayList<>();
        Files.walkFileTree(
                folder,
                new SimpleFileVisitor<>() {
                    @Override
                    public FileVisitResult preVisitDirectory(
                            Path directory, BasicFileAttributes attributes) {
                        boolean skipped =
                                !directory.equals(folder)
                                        && (name(directory).equals(PARTS)
                                                || name(directory).startsWith("."));
                        return skipped ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
                    }

                    @Override
                    public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                        if (name(file).matches("[^.].*\\.ya?ml")) {
                            scenarios.add(file);
                        }
                        return FileVisitResult.CONTINUE;
                    }
                });
        // By text with one separator: the order of a folder differs between file systems.
        scenarios.sort((a, b) -> slashed(a).compareTo(slashed(b)));
        return scenarios;
    }

    private static String slashed(Path path) {
        return path.toString().replace('\\', '/');
    }

    private static String name(Path path) {
        Path last = path.getFileName();
        return last == null ? "" : last.toString();
    }

    private static String suggestion(Path missing) throws IOException {
        Path folder = missing.toAbsolutePath().getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            return folder == null ? "" : "; there is no folder " + folder;
        }
        try (Stream<Path> siblings = Files.list(folder)) {
            String nearest =
                    Nearest.of(
                            name(missing),
                            siblings.map(ScenarioFiles::name)
                                    .sorted()
                                    .collect(Collectors.toList()));
            return nearest == null ? "" : "; did you mean " + missing.resolveSibling(nearest) + "?";
        }
    }
}
