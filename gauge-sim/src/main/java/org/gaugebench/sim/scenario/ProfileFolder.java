package org.gaugebench.sim.scenario;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.gaugebench.sim.logs.LogException;
import org.gaugebench.sim.logs.LogProblem;
import org.gaugebench.sim.logs.ProfileColumns;
import org.gaugebench.sim.logs.ProfileReader;
import org.gaugebench.sim.logs.TimeProfile;
import org.jspecify.annotations.Nullable;

/**
 * The folder of a scenario, in which the files of its profiles lie, also those that a part names:
 * nothing else on the machine can be reached. Each file is read once for all runs of a scenario.
 */
final class ProfileFolder {
    /** No separator and no leading point, so that no name leads anywhere else. */
    private static final String NAME = "[A-Za-z0-9][A-Za-z0-9._-]{0,99}\\.csv";

    private final Problems problems;
    private final @Nullable Path scenario;
    private final Map<String, Map<ProfileColumns, Optional<TimeProfile>>> read = new HashMap<>();

    /**
     * Prepares to look.
     *
     * @param problems what is wrong with a file goes there
     * @param scenario the file, or null for a text without a place: it has no file beside it
     */
    ProfileFolder(Problems problems, @Nullable Path scenario) {
        this.problems = problems;
        this.scenario = scenario;
    }

    /**
     * Reads a file, or says why not.
     *
     * @param block in which it is named under "file"
     * @return null with a problem noted
     */
    @Nullable TimeProfile find(Block block, String name, ProfileColumns columns) {
        return read.computeIfAbsent(name, it -> new HashMap<>())
                .computeIfAbsent(columns, it -> Optional.ofNullable(load(block, name, it)))
                .orElse(null);
    }

    private @Nullable TimeProfile load(Block block, String name, ProfileColumns columns) {
        String refusal = refusal(name);
        if (refusal != null || scenario == null) {
            block.valueProblem("file", refusal == null ? "" : refusal);
            return null;
        }
        Path file = scenario.resolveSibling(name);
        try {
            return ProfileReader.read(file, file.toString(), columns);
        } catch (LogException e) {
            for (LogProblem each : e.problems()) {
                problems.add(
                        new SourceMark(
                                each.file(), Math.max(1, each.line()), Math.max(1, each.column())),
                        each.message());
            }
            return null;
        }
    }

    /** Why a file cannot be taken, or null. */
    private @Nullable String refusal(String name) {
        if (!name.matches(NAME)) {
            return "expected the name of a CSV file in the folder of the scenario, such as"
                    + " house.csv: letters, digits and . _ - without a path";
        }
        if (scenario == null) {
            return "a scenario that is no file has no file beside it";
        }
        Path file = scenario.resolveSibling(name);
        if (!Files.isRegularFile(file)) {
            return "there is no file " + file + "; expected it beside the scenario";
        }
        try {
            Path folder = scenario.toAbsolutePath().normalize().getParent();
            boolean inside = folder != null && file.toRealPath().startsWith(folder.toRealPath());
            return inside ? null : file + " is a link that leads out of the scenario's folder";
        } catch (IOException e) {
            return file + " cannot be read";
        }
    }
}
