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

/**
 * The top level holds exactly what the house allows; build output and dotfiles are not looked at.
 */
public final class TopLevelRule {
    private static final String BUILD_OUTPUT = "target";

    private TopLevelRule() {}

    /**
     * Judges the top level.
     *
     * @param root the project's root folder
     * @param allowed names of files and folders
     * @return a finding for each name too many or missing
     */
    public static List<Finding> check(Path root, Set<String> allowed) {
        Set<String> names = new TreeSet<>();
        try (Stream<Path> entries = Files.list(root)) {
            entries.map(e -> e.getFileName().toString())
                    .filter(n -> !n.startsWith(".") && !n.equals(BUILD_OUTPUT))
                    .forEach(names::add);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        List<Finding> findings = new ArrayList<>();
        for (String name : names) {
            if (!allowed.contains(name)) {
                findings.add(new Finding(name, "has no room on the top level"));
            }
        }
        for (String name : new TreeSet<>(allowed)) {
            if (!names.contains(name)) {
                findings.add(new Finding(name, "is missing on the top level"));
            }
        }
        return findings;
    }

    /**
     * Walks up from the working folder to the project's root.
     *
     * @return the first folder that holds the root pom and both modules
     */
    public static Path projectRoot() {
        Path folder = Path.of("").toAbsolutePath();
        while (folder != null) {
            if (Files.exists(folder.resolve("pom.xml"))
                    && Files.isDirectory(folder.resolve("gauge-core"))
                    && Files.isDirectory(folder.resolve("gauge-sim"))) {
                return folder;
            }
            folder = folder.getParent();
        }
        throw new IllegalStateException("the tests run outside of the project's folder");
    }
}
