package org.gaugebench.sim.bench;

import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioException;
import org.gaugebench.sim.scenario.ScenarioReader;

/**
 * The frozen whole-loop scenario: one day at 1 Hz of plant, front end with noise on current and
 * voltage, and the core. Never change it; a new one gets a new name.
 */
final class FrozenLoop {
    private static final String TEXT =
            """
            format: 1
            title: Frozen loop
            seed: 20261125
            duration: 1 d
            tick: 1 s
            battery: {chemistry: lead-acid-agm, capacity: 100 Ah @ 20 h, start: 70 %}
            sensor: {shunt: 100 A / 75 mV, offset: 1.5 uV, noise: 2 uV, voltage-noise: 1 mV}
            gauge: {start: 70 %}
            chargers:
              shore: {absorption: 14.4 V, float: 13.6 V, current-limit: 25 A, switched: off}
            loads:
              logger: {current: 1.2 A}
              pump: {current: 8 A, on-for: 2 min, every: 15 min}
            timeline:
              - {from: 9 h, to: 18 h, set: {shore: on}}
            """;

    private final Scenario scenario;

    FrozenLoop() {
        try {
            scenario = ScenarioReader.read("frozen-loop.yaml", TEXT);
        } catch (ScenarioException problem) {
            throw new IllegalStateException(problem.render(), problem);
        }
    }

    /** Ticks of a run. */
    static int ticks() {
        return 86_400;
    }

    /** Runs the day and answers its digest, so that the work is not dropped. */
    long run() {
        Rig rig = new Rig(scenario, scenario.seed(), Observer.NONE);
        rig.run();
        return rig.digest();
    }
}
