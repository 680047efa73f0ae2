package org.gaugebench.sim.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.gaugebench.core.port.Event;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Observers;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.Test;

/** A count that is set is drawn as a step, though nobody looked in the tick before. */
class ReportStepTest {
    private static final int FULL = 1_000_000;

    /** 20 A for a second are 5.6 mAh of 50 Ah, 111 ppm; the line itself counts in steps of 10. */
    private static final int A_TICK_OF_FLOW = 120;

    private static final String DAY =
            """
            format: 1
            title: A day that is full twice
            duration: 1 d
            battery: {chemistry: lifepo4, capacity: 50 Ah, start: 60 %}
            sensor: {shunt: 50 A / 75 mV, noise: 2 uV}
            gauge: {start: 40 %}
            chargers: {shore: {current-limit: 20 A}}
            loads: {lamp: {current: 2 A}}
            timeline:
              - {at: 6 h, set: {shore: off}}
              - {at: 14 h, set: {shore: on}}
            beside:
              - {name: hasty, kind: exhibit, mistakes: [full-by-voltage-only], start: 30 %}
              - {name: high, kind: exhibit, mistakes: [loose-full-rule, no-clamp], start: 90 %}
              - name: hidden
                kind: exhibit
                mistakes: [loose-full-rule, display-only-clamp]
                start: 90 %
            """;

    /** What each gauge shows in every tick, and where it was set. */
    private static final class EveryTick implements Observer {
        private final List<Map<Long, Integer>> shown = new ArrayList<>();
        private final List<Map<Long, Long>> steps = new ArrayList<>();
        private final Map<Long, Integer> lower = new TreeMap<>();
        private long ticks;

        @Override
        public Observer forTicks() {
            return this;
        }

        @Override
        public void onStart(Rig rig) {
            for (int i = 0; i < rig.lanes().size(); i++) {
                shown.add(new TreeMap<>());
                steps.add(new TreeMap<>());
            }
        }

        @Override
        public void onTick(Rig rig) {
            ticks = rig.ticks();
            lower.put(ticks, rig.lanes().get(0).read().lowerEdgePartsPerMillion);
            for (int i = 0; i < shown.size(); i++) {
                int parts = rig.lanes().get(i).read().stateOfChargePartsPerMillion;
                shown.get(i).put(ticks, parts);
            }
        }

        @Override
        public void onEvent(Lane lane, Event event, long value) {
            List<String> names = List.of("gauge", "hasty", "high", "hidden");
            if (event == Event.SET_TO_FULL) {
                steps.get(names.indexOf(lane.name())).put(ticks + 1, value);
            }
        }
    }

    @Test
    void theTickBeforeAStepShowsWhatWasShown() {
        Scenario read = Samples.read(DAY);
        ReportTrace trace = new ReportTrace();
        EveryTick every = new EveryTick();
        RunResult result = RunRecorder.run(read, read.seed(), Observers.both(trace, every));
        JsonNode data = ReportLines.data(ReportPage.of(result, trace, null, "test"));
        for (int gauge = 0; gauge < every.shown.size(); gauge++) {
            JsonNode packed = data.get("readings").get(gauge).get("state");
            // Of points with the same value only the first and the last one stand in a page.
            TreeMap<Long, Long> drawn = new TreeMap<>(ReportLines.line(packed));
            Map<Long, Integer> shown = every.shown.get(gauge);
            assertEquals(2, every.steps.get(gauge).size(), "gauge " + gauge);
            for (long tick : every.steps.get(gauge).keySet()) {
                long before = drawn.floorEntry(tick - 1).getValue();
                String where = "gauge " + gauge + " before tick " + tick + ": " + drawn;
                long off = Math.abs(before - shown.get(tick - 1));
                assertTrue(off <= A_TICK_OF_FLOW, where);
                assertTrue(before == FULL || drawn.containsKey(tick - 1), where);
                assertEquals(FULL, drawn.floorEntry(tick).getValue(), where);
            }
        }
    }

    /** A reading outside its own band would be a defect of the gauge, and is none. */
    @Test
    void theBandStepsWithTheCount() {
        Scenario read = Samples.read(DAY);
        ReportTrace trace = new ReportTrace();
        EveryTick every = new EveryTick();
        RunResult result = RunRecorder.run(read, read.seed(), Observers.both(trace, every));
        JsonNode data = ReportLines.data(ReportPage.of(result, trace, null, "test"));
        TreeMap<Long, Long> drawn =
                new TreeMap<>(ReportLines.line(data.get("readings").get(0).get("lower")));
        long tick = every.steps.get(0).keySet().iterator().next();
        // What a minute moves the edge, 3 ppm here, and a step of the line of 10 ppm.
        assertEquals(every.lower.get(tick - 1), drawn.get(tick - 1), 20.0);
        assertTrue(drawn.get(tick) > drawn.get(tick - 1) + 100_000, drawn.toString());
    }
}
