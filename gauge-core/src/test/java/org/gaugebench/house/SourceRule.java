package org.gaugebench.house;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** What a source file may look like: at most 400 lines of at most 100 columns, without tabs. */
public final class SourceRule {
    private static final int MOST_LINES = 400;
    private static final int MOST_COLUMNS = 100;

    private SourceRule() {}

    /**
     * Judges all sources of a folder.
     *
     * @param root a folder such as {@code src/main/java}
     * @param packageInfo whether each package needs a package-info
     * @return a finding for each file, line or package
     */
    public static List<Finding> check(Path root, boolean packageInfo) {
        List<Finding> findings = new ArrayList<>();
        Set<Path> folders = new TreeSet<>();
        for (Path file : javaFilesUnder(root)) {
            judge(root, file, findings);
            if (!file.getParent().equals(root)) {
                folders.add(file.getParent());
            }
        }
        for (Path folder : folders) {
            if (packageInfo && !Files.exists(folder.resolve("package-info.java"))) {
                findings.add(
                        new Finding(root.relativize(folder).toString(), "no package-info.java"));
            }
        }
        return findings;
    }

    private static void judge(Path root, Path file, List<Finding> findings) {
        List<String> lines;
        try {
            lines = Files.readAllLines(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        String name = root.relativize(file).toString();
        if (lines.size() > MOST_LINES) {
            findings.add(
                    new Finding(name, lines.size() + " lines, at most " + MOST_LINES + " allowed"));
        }
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            String place = name + ":" + (i + 1);
            int columns = line.codePointCount(0, line.length());
            if (columns > MOST_COLUMNS) {
                findings.add(
                        new Finding(
                                place, columns + " columns, at most " + MOST_COLUMNS + " allowed"));
            }
            if (line.indexOf('\t') >= 0) {
                findings.add(new Finding(place, "a tab"));
            }
        }
    }

    /**
     * All Java sources of a folder, in the order of their paths.
     *
     * @param root a folder; one that does not exist holds nothing
     * @return files
     */
    static List<Path> javaFilesUnder(Path root) {
        if (!Files.isDirectory(root)) {
            return List.of();
        }
        try (Stream<Path> paths = Files.walk(root)) {
            return paths.filter(p -> p.toString().endsWith(".java")).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
