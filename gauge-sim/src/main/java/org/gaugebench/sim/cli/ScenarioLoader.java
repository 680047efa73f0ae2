package org.gaugebench.sim.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioException;
import org.gaugebench.sim.scenario.SeedRange;
import org.gaugebench.sim.scenario.Variants;
import org.jspecify.annotations.Nullable;

/** Reads many scenario files and tells all problems of all of them before anything runs. */
final class ScenarioLoader {
    private ScenarioLoader() {}

    static List<Scenario> load(List<Path> files) throws InputException {
        return load(files, null, List.of());
    }

    /**
     * Reads what was named, with all problems of names and of files.
     *
     * @param arguments files, folders or patterns
     * @param seeds instead of those of each file, or null
     * @throws InputException with every problem
     */
    static List<Scenario> load(List<String> arguments, @Nullable SeedRange seeds)
            throws InputException {
        List<String> missing = new ArrayList<>();
        return load(ScenarioFiles.expand(arguments, missing), seeds, missing);
    }

    private static List<Scenario> load(
            List<Path> files, @Nullable SeedRange seeds, List<String> missing)
            throws InputException {
        List<Scenario> scenarios = new ArrayList<>();
        StringBuilder problems = new StringBuilder();
        int count = 0;
        for (Path file : files) {
            try {
                scenarios.addAll(Variants.read(file, seeds));
            } catch (ScenarioException e) {
                problems.append(e.render());
                count += e.problems().size();
            }
        }
        String unnamed = String.join(System.lineSeparator(), missing);
        if (count > 0) {
            int all = count + missing.size();
            String before = missing.isEmpty() ? "" : unnamed + System.lineSeparator();
            throw new InputException(
                    before
                            + problems
                            + (all == 1 ? "1 problem" : all + " problems")
                            + "; nothing ran");
        }
        if (!missing.isEmpty()) {
            throw new InputException(unnamed);
        }
        return scenarios;
    }
}
