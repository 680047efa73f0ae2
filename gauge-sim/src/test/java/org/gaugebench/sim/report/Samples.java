package org.gaugebench.sim.report;

import java.util.List;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioException;
import org.gaugebench.sim.scenario.ScenarioReader;

/** Small scenarios for tests. */
public final class Samples {
    private static final List<String> HUT =
            List.of(
                    "format: 1",
                    "title: A day at the pier",
                    "duration: 1 d",
                    "battery: {chemistry: lifepo4, capacity: 50 Ah, start: 60 %}",
                    "sensor: {shunt: 50 A / 75 mV, noise: 2 uV}",
                    "loads:",
                    "  lamp: {current: 1 A}",
                    "timeline:",
                    "  - {at: 12 h, set: {lamp: off}}",
                    "");

    private Samples() {}

    /** A day of which the first half draws 1 A from 30 Ah. */
    public static String hut() {
        return String.join("\n", HUT);
    }

    /** The day with expectations, each a line of YAML without the dash. */
    public static String expecting(String... expectations) {
        StringBuilder text = new StringBuilder(hut()).append("expect:\n");
        for (String expectation : expectations) {
            text.append("  - {").append(expectation).append("}\n");
        }
        return text.toString();
    }

    /** Reads a text as hut.yaml. */
    public static Scenario read(String text) {
        return scenario("hut.yaml", text);
    }

    /** The same from a file of another name. */
    public static Scenario scenario(String file, String text) {
        try {
            return ScenarioReader.read(file, text);
        } catch (ScenarioException e) {
            throw new AssertionError(e.render(), e);
        }
    }

    /** What is wrong with a text; empty if nothing is. */
    public static String problems(String text) {
        try {
            ScenarioReader.read("hut.yaml", text);
            return "";
        } catch (ScenarioException e) {
            return e.render();
        }
    }

    /** Reads and runs a text. */
    public static RunResult run(String text) {
        Scenario scenario = read(text);
        return RunRecorder.run(scenario, scenario.seed(), Observer.NONE);
    }
}
