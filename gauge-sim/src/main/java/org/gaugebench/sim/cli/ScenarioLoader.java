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
        return load(files, null);
    }

    /** The same, each with these seeds instead of those of its file. */
    static List<Scenario> load(List<Path> files, @Nullable SeedRange seeds) throws InputException {
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
        if (count > 0) {
            throw new InputException(
                    problems + (count == 1 ? "1 problem" : count + " problems") + "; nothing ran");
        }
        return scenarios;
    }
}
