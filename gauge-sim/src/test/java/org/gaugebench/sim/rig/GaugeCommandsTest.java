package org.gaugebench.sim.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Register;
import org.gaugebench.sim.judge.RefusedCommand;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.report.Ink;
import org.gaugebench.sim.report.RunJson;
import org.gaugebench.sim.report.Samples;
import org.gaugebench.sim.report.TextReport;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.Test;

/** What the timeline tells a gauge while it runs. */
class GaugeCommandsTest {
    /** The capacity that the gauge works with, at each whole minute. */
    private static final class CapacityWatcher implements Observer {
        private static final double NANOCOULOMBS_PER_AMP_HOUR = 3.6e12;

        final List<Double> ampHours = new ArrayList<>();

        @Override
        public void onMoment(Rig rig) {
            long capacity = rig.lanes().get(0).inspect().get(Register.CAPACITY_NANOCOULOMBS);
            ampHours.add(capacity / NANOCOULOMBS_PER_AMP_HOUR);
        }
    }

    private static RunResult run(Observer observer, String... steps) {
        String text =
                Samples.hut()
                        .replace(
                                "  - {at: 12 h, set: {lamp: off}}",
                                "  - {" + String.join("}\n  - {", steps) + "}");
        Scenario scenario = Samples.read(text);
        return RunRecorder.run(scenario, scenario.seed(), observer);
    }

    private static long count(RunResult result, Event event) {
        return result.events().stream().filter(it -> it.event() == event).count();
    }

    @Test
    void aSettingChangesForAWindowAndComesBack() {
        CapacityWatcher watcher = new CapacityWatcher();
        RunResult result = run(watcher, "from: 2 h, to: 3 h, set: {gauge.capacity: 200 Ah}");
        double usual = watcher.ampHours.get(118);
        assertEquals(200.0, watcher.ampHours.get(120), 1e-6, "the minute after the change");
        assertEquals(200.0, watcher.ampHours.get(178), 1e-6);
        assertEquals(usual, watcher.ampHours.get(180), 1e-6);
        assertEquals(2, count(result, Event.SETTINGS_CHANGED));
    }

    @Test
    void settingsOfOneStepChangeTogether() {
        // 13.2 V alone would lie under the preset's float voltage of 13.5 V and be refused.
        RunResult result =
                run(
                        Observer.NONE,
                        "at: 2 h, set: {gauge.absorption: 13.2 V, gauge.float-voltage: 13.1 V}");
        assertEquals(1, count(result, Event.SETTINGS_CHANGED));
    }

    @Test
    void aNewBatteryIsOneOfWhichNothingIsKnown() {
        RunResult result = run(Observer.NONE, "at: 23 h, command: new-battery");
        assertEquals(1, count(result, Event.NEW_BATTERY));
        assertEquals(-1, result.lanes().get(0).finalPartsPerMillion());
    }

    @Test
    void aRefusedCommandIsToldAndFailsNothing() {
        // The lamp draws 1 A: that is not zero.
        RunResult result = run(Observer.NONE, "at: 6 h, command: zero-adjustment");
        assertEquals(
                List.of(
                        new RefusedCommand(
                                "gauge",
                                6 * 3_600_000L,
                                org.gaugebench.core.port.Command.ZERO_ADJUSTMENT,
                                CommandOutcome.REFUSED_NOT_ZERO)),
                result.refused());
        String text = TextReport.of(result, "1", Ink.PLAIN);
        assertTrue(text.contains("gauge: zero-adjustment: not zero"), text);
        String json = RunJson.of(result, "1");
        assertTrue(json.contains("\"outcome\":\"REFUSED_NOT_ZERO\""), json);
    }

    @Test
    void anAdjustmentWithoutCurrentIsTaken() {
        RunResult result =
                run(
                        Observer.NONE,
                        "at: 1 h, set: {lamp: off, sensor.offset: 5 uV}",
                        "at: 6 h, command: zero-adjustment");
        assertEquals(List.of(), result.refused());
        assertEquals(1, count(result, Event.ADJUSTED));
    }

    @Test
    void spanIsAdjustedAtTwoCurrents() {
        RunResult result =
                run(
                        Observer.NONE,
                        "at: 1 h, command: span-adjustment, meter: -1 A",
                        "at: 2 h, set: {lamp.current: 15 A}",
                        "at: 2 h 10 min, command: span-adjustment, meter: -15.1 A",
                        "at: 3 h, set: {lamp: off}");
        assertEquals(List.of(), result.refused());
        assertEquals(1, count(result, Event.ADJUSTED));
    }

    @Test
    void whatIsToldAtTheStartComesAfterPowerUp() {
        RunResult result = run(Observer.NONE, "at: 0 s, command: new-battery");
        assertEquals(Event.POWERED_UP, result.events().get(0).event());
        assertEquals(1, count(result, Event.NEW_BATTERY));
    }
}
