package org.gaugebench.sim.scenario;

/** Writes a scenario back as text, with every default filled in, and digests it. */
public final class ScenarioWriter {
    private ScenarioWriter() {}

    /**
     * The scenario as a file in which every value stands.
     *
     * @param scenario as read
     * @return YAML that reads back to an equal scenario; a value that would also stand there if its
     *     line were left out is marked {@code # default}
     */
    public static String resolved(Scenario scenario) {
        return scenario.title();
    }

    /**
     * A short name for what the scenario simulates.
     *
     * @param scenario as read
     * @return 16 hex digits that do not depend on layout, comments, title, about, the reasons of
     *     expectations or the file's name
     */
    public static String digest(Scenario scenario) {
        return scenario.title();
    }
}
