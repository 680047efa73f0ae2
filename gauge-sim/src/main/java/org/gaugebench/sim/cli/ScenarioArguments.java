package org.gaugebench.sim.cli;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.scenario.Nearest;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.SeedRange;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The scenarios that a command is to look at. */
final class ScenarioArguments {
    @Parameters(
            paramLabel = "FILE",
            arity = "1..*",
            description =
                    "Scenario files, folders (every .yaml file below, without parts/) or patterns"
                            + " such as 'scenarios/**/*.yaml'.")
    private List<String> files = new ArrayList<>();

    @Option(
            names = "--variant",
            paramLabel = "NAME",
            description = "Of files that make several runs, only the runs that reports call so.")
    private @Nullable String variant;

    ScenarioArguments() {}

    /** Reads all of them; every problem of every file is told before anything runs. */
    List<Scenario> load() throws InputException {
        return load(null);
    }

    /** The same, each with these seeds instead of those of its file. */
    List<Scenario> load(@Nullable SeedRange seeds) throws InputException {
        return load(files, variant, seeds);
    }

    /** The same for files that were named in another way. */
    static List<Scenario> load(
            List<String> files, @Nullable String wanted, @Nullable SeedRange seeds)
            throws InputException {
        List<Scenario> all = ScenarioLoader.load(files, seeds);
        if (wanted == null) {
            return all;
        }
        List<Scenario> chosen = all.stream().filter(it -> it.variant().equals(wanted)).toList();
        if (chosen.isEmpty()) {
            throw new InputException(
                    "--variant: no run is called '%s'; %s".formatted(wanted, known(all, wanted)));
        }
        return chosen;
    }

    private static String known(List<Scenario> all, String wanted) {
        List<String> names =
                all.stream().map(Scenario::variant).filter(it -> !it.isEmpty()).toList();
        if (names.isEmpty()) {
            return "none of these files makes several runs";
        }
        String nearest = Nearest.of(wanted, names);
        return nearest == null
                ? "the first one is '" + names.get(0) + "'"
                : "did you mean '" + nearest + "'?";
    }

    /** Reads one argument. */
    static List<Scenario> of(String argument) throws InputException {
        return ScenarioLoader.load(ScenarioFiles.expand(List.of(argument)));
    }
}
