package org.gaugebench.sim.cli;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.scenario.Scenario;
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

    ScenarioArguments() {}

    /** Reads all of them; every problem of every file is told before anything runs. */
    List<Scenario> load() throws InputException {
        return ScenarioLoader.load(ScenarioFiles.expand(files));
    }

    /** Reads one argument. */
    static List<Scenario> of(String argument) throws InputException {
        return ScenarioLoader.load(ScenarioFiles.expand(List.of(argument)));
    }
}
