package org.gaugebench.sim.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.gaugebench.sim.judge.Attribution.Split;
import org.gaugebench.sim.report.Samples;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.Test;

/** The moments at which an error steps. */
class AttributionStepsTest {
    private static final double NANOCOULOMBS_PER_AMP_HOUR = 3.6e12;

    /** A line between two moments would climb where the count was set. */
    @Test
    void aSetHasItsTickAndTheOneBefore() {
        Scenario day =
                Samples.read(
                        """
                        format: 1
                        title: A day that is full twice
                        duration: 1 d
                        tick: 10 s
                        battery: {chemistry: lifepo4, capacity: 50 Ah, start: 60 %}
                        sensor: {shunt: 50 A / 75 mV}
                        gauge: {start: 40 %}
                        chargers: {shore: {current-limit: 20 A}}
                        loads: {lamp: {current: 2 A}}
                        timeline:
                          - {at: 6 h, set: {shore: off}}
                          - {at: 14 h, set: {shore: on}}
                        beside: [{name: other, kind: exhibit, mistakes: [full-by-voltage-only]}]
                        """);
        RunResult result = RunRecorder.run(day, 1, Observer.NONE);
        long[] steps = AttributionRun.steps(result, "gauge");
        assertEquals(4, steps.length);
        assertEquals(10_000, steps[1] - steps[0]);
        assertEquals(10_000, steps[3] - steps[2]);
        List<Split> splits = AttributionRun.of(day, 1, steps).splits();
        assertEquals(4, splits.size());
        // 20 points of 50 Ah were declared too little, and the rule takes them back at once.
        double before = splits.get(0).errorNanocoulombs() / NANOCOULOMBS_PER_AMP_HOUR;
        double after = splits.get(1).errorNanocoulombs() / NANOCOULOMBS_PER_AMP_HOUR;
        assertEquals(-10, before, 0.5);
        assertEquals(0, after, 0.5);
    }
}
