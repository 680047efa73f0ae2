package org.gaugebench.sim.rig;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.sim.report.Samples;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A gauge whose power goes and comes, and what its memory makes of that. */
class LanePowerTest {
    /** Keeps what each gauge announced, with its figure and its moment. */
    private static final class Watcher implements Observer {
        record Heard(long atMillis, Event event, long value) {}

        final List<Heard> heard = new ArrayList<>();
        private final List<Long> fixes = new ArrayList<>();
        private long nowMillis;

        @Override
        public Observer forTicks() {
            return this;
        }

        @Override
        public void onTick(Rig rig) {
            nowMillis = rig.timeMillis();
            Lane lane = rig.lanes().get(0);
            fixes.add(lane.hasPower() ? lane.inspect().get(Register.CLOCK_MILLIS) : -1);
        }

        @Override
        public void onEvent(Lane lane, Event event, long value) {
            heard.add(new Heard(nowMillis, event, value));
        }

        long times(Event event) {
            return heard.stream().filter(it -> it.event() == event).count();
        }

        Heard last(Event event) {
            return heard.stream().filter(it -> it.event() == event).reduce((a, b) -> b).get();
        }
    }

    private final Watcher watcher = new Watcher();

    /** A day at 1 A of 50 Ah from 60 %, with these gauge keys and timeline steps. */
    private Rig run(String gauge, String... steps) {
        StringBuilder text =
                new StringBuilder(
                        """
                        format: 1
                        title: A day at the pier
                        duration: 1 d
                        battery: {chemistry: lifepo4, capacity: 50 Ah, start: 60 %,
                                  self-discharge: 0 %/month}
                        sensor: {shunt: 50 A / 75 mV, noise: 0 V}
                        loads: {lamp: {current: 1 A}}
                        timeline:
                          - {at: 0 s, set: {lamp: on}}
                        """);
        for (String step : steps) {
            text.append("  - {").append(step).append("}\n");
        }
        text.append("gauge: {").append(gauge).append("}\n");
        Scenario scenario = Samples.read(text.toString());
        Rig rig = new Rig(scenario, 1, watcher);
        rig.run();
        return rig;
    }

    private static double shownAmpHours(Rig rig) {
        return rig.lanes().get(0).read().remainingNanocoulombs / 3.6e12;
    }

    /**
     * 30 Ah less 24 h x 1 A is true; the counter misses the hour without power. Half a count of 75
     * mV / 50 A over 2^19 x 100 mV is 0.064 mA, so 23 h of rounding are at most 1.5 mAh.
     */
    @Test
    void aPlainCounterMissesExactlyWhatFlowedWithoutPower() {
        Rig rig = run("kind: plain-counter", "from: 10 h, to: 11 h, set: {gauge.power: off}");
        assertEquals(6.0, rig.truth().chargeAmpHours(), 1e-6);
        assertEquals(7.0, shownAmpHours(rig), 0.0015);
        assertTrue(rig.lanes().get(0).hasPower());
    }

    @Test
    void withoutPowerThereIsNoFigureAndTheClockBeginsAgainAtZero() {
        Rig rig = run("memory: {slots: 4}", "at: 23 h, set: {gauge.power: off}");
        Lane lane = rig.lanes().get(0);
        assertFalse(lane.hasPower());
        assertEquals(Readout.NOT_KNOWN, lane.read().stateOfChargePartsPerMillion);
        assertTrue(lane.read().bandUnknown);
        assertEquals(0, lane.inspect().get(Register.CHARGE_NANOCOULOMBS));

        run("memory: {slots: 4}", "from: 2 s, to: 4 s, set: {gauge.power: off}");
        List<Long> clocks = watcher.fixes.subList(86_400, 86_406);
        assertEquals(List.of(1_000L, 2_000L, -1L, -1L, 1_000L, 2_000L), clocks);
    }

    /** Off and on at one moment: nothing flows unseen, at most a save step of 0.5 % is lost. */
    @Test
    void aRestartWithoutAPauseLosesNoMoreThanASaveStep() {
        Rig rig =
                run(
                        "memory: {slots: 4}",
                        "at: 10 h, set: {gauge.power: off}",
                        "at: 10 h, set: {gauge.power: on}");
        assertEquals(2, watcher.times(Event.POWERED_UP));
        assertEquals(1, watcher.times(Event.RESTORED));
        assertEquals(0, watcher.last(Event.POWERED_UP).value());
        assertEquals(6.0, shownAmpHours(rig), 0.25 + 0.0015);
    }

    @Test
    void withoutAMemoryARestartForgetsAndNothingIsDeclaredAgain() {
        Rig rig = run("kind: core", "from: 10 h, to: 11 h, set: {gauge.power: off}");
        assertEquals(0, watcher.times(Event.RESTORED));
        assertEquals(1, watcher.times(Event.DECLARED));
        assertEquals(Readout.NOT_KNOWN, rig.lanes().get(0).read().stateOfChargePartsPerMillion);
    }

    @ParameterizedTest
    @CsvSource({
        "exact, none, 7200000, false",
        "exact, 30 min, 1800000, false",
        "at-least, 30 min, 1800000, true",
        "unknown, none, 0, true"
    })
    void theGaugeIsToldOfItsTimeWithoutPowerWhatItsCounterKnows(
            String offTime, String limit, long toldMillis, boolean bandUnknown) {
        Rig rig =
                run(
                        "memory: {slots: 4}, off-time: %s, off-time-limit: %s"
                                .formatted(offTime, limit),
                        "from: 10 h, to: 12 h, set: {gauge.power: off}");
        assertEquals(toldMillis, watcher.last(Event.POWERED_UP).value());
        assertEquals(bandUnknown, rig.lanes().get(0).read().bandUnknown);
    }

    @Test
    void whatIsKnownOfTheTimeCanChangeOnTheWay() {
        run(
                "memory: {slots: 4}",
                "at: 9 h, set: {gauge.off-time: unknown}",
                "from: 10 h, to: 12 h, set: {gauge.power: off}");
        assertEquals(0, watcher.last(Event.POWERED_UP).value());
    }

    @Test
    void aGaugeThatHasNoPowerAtTheStartIsDeclaredWhenItGetsIt() {
        run(
                "start: 60 %",
                "at: 0 s, set: {gauge.power: off}",
                "at: 1 h, set: {gauge.declare: 10 %}",
                "at: 2 h, set: {gauge.power: on}");
        assertEquals(1, watcher.times(Event.POWERED_UP));
        assertEquals(1, watcher.times(Event.DECLARED), "one without power hears nothing");
        assertEquals(7_200_000, watcher.last(Event.DECLARED).atMillis());
    }

    @Test
    void powerThatIsSwitchedOnAtTheStartComesUpOnce() {
        run("start: 60 %", "at: 0 s, set: {gauge.power: on}");
        assertEquals(1, watcher.times(Event.POWERED_UP));
        assertEquals(1, watcher.times(Event.DECLARED));
    }

    /** Whatever the write leaves: the record before it comes back, ten seconds later. */
    @ParameterizedTest
    @CsvSource({
        "nothing, 1",
        "half, 1",
        "garbage, 1",
        "silently-not-written, 1",
        "nothing, 2",
        "half, 2",
        "garbage, 2",
        "silently-not-written, 2",
        "half, 3"
    })
    void aCutAtAWriteCostsASaveStepWhateverItLeaves(String leaves, int write) {
        Rig rig =
                run(
                        "memory: {slots: 2}, cut-leaves: " + leaves,
                        "at: 10 h, set: {gauge.cut-at-write: " + write + "}");
        assertEquals(2, watcher.times(Event.POWERED_UP), "one cut");
        assertEquals(1, watcher.times(Event.RESTORED));
        assertEquals(10_000, watcher.last(Event.POWERED_UP).value());
        assertEquals(0, watcher.times(Event.FAULT_RAISED));
        assertEquals(6.0, shownAmpHours(rig), 0.25 + 10 / 3_600.0 + 0.0015);
    }

    @Test
    void aCutThatWasLaidDownIsForgottenWhenPowerGoesBefore() {
        run(
                "memory: {slots: 2}",
                "at: 10 h, set: {gauge.cut-at-write: 1}",
                "at: 10 h, set: {gauge.power: off}",
                "at: 11 h, set: {gauge.power: on}");
        assertEquals(2, watcher.times(Event.POWERED_UP));
    }

    @Test
    void aFaultOfTheMemoryIsSeenWhileItLastsAndGoesWithIt() {
        Rig rig =
                run(
                        "memory: {slots: 2, faults: [{kind: program-error, slot: all, from: 5 h,"
                                + " to: 6 h}]}",
                        "at: 23 h, set: {gauge.declare: 14 %}");
        assertEquals(1, watcher.times(Event.FAULT_RAISED));
        assertTrue(watcher.last(Event.FAULT_RAISED).atMillis() >= 5 * 3_600_000);
        assertTrue(watcher.last(Event.FAULT_RAISED).atMillis() < 6 * 3_600_000);
        assertEquals(0, rig.lanes().get(0).read().faultBits, "a later save went well");
    }

    /** A save moves 0.25 Ah, two slots take turns: 96 saves in 24 Ah, ten erases each are 20. */
    @Test
    void cellsThatWearOutAreNoticedAtTheFirstRecordThatIsWrong() {
        run("memory: {slots: 2, endurance: 10}");
        long at = watcher.last(Event.FAULT_RAISED).atMillis();
        assertEquals(1, watcher.times(Event.FAULT_RAISED));
        long quarterMillis = 15 * 60_000;
        assertTrue(Math.abs(at - 20 * quarterMillis) <= 2 * quarterMillis, "a save each quarter");
    }

    /** What is told to a gauge without power is found when power comes back. */
    @ParameterizedTest
    @CsvSource({"plain-counter, ''", "exhibit, ', mistakes: [lost-sign]'", "core, ''"})
    void aCapacityEditedWithoutPowerIsInForceAfterIt(String kind, String mistakes) {
        Rig rig =
                run(
                        "kind: " + kind + mistakes + ", memory: {slots: 4}",
                        "from: 10 h, to: 12 h, set: {gauge.power: off}",
                        "at: 11 h, set: {gauge.capacity: 100 Ah @ 20 h}");
        Readout readout = rig.lanes().get(0).read();
        assertEquals(100 * 3_600_000_000_000L, readout.fullChargeNanocoulombs);
        // 60 % less 10 h of 1 A of 50 Ah are 40 %, or 40 Ah of 100; 12 h more are 28 %. A save
        // step of 0.5 % may be lost.
        assertEquals(280_000, readout.stateOfChargePartsPerMillion, 5_100);
    }
}
