package org.gaugebench.sim.cli;

import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The option of every command that runs a scenario. */
final class SeedOption {
    @Option(
            names = "--seed",
            paramLabel = "N",
            converter = SeedText.class,
            description = "Seed of all noise and clouds, instead of the file's own.")
    private @Nullable Long seed;

    SeedOption() {}

    boolean isGiven() {
        return seed != null;
    }

    /** The seed asked for, else the scenario's own. */
    long of(Scenario scenario) {
        Long chosen = seed;
        return chosen == null ? scenario.seed() : chosen;
    }
}
