package org.gaugebench.sim.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.Map;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.sim.device.GaugeDevice;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Observers;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.Test;

/** How often a report looks at each gauge: what a report costs, counted and not timed. */
class ReportLooksTest {
    private static final int TICKS = 86_400;
    private static final int MINUTES = 1_440;

    /** The start, and the lamp that goes off at noon: each may be looked at once more. */
    private static final int CHANGES = 2;

    private static final String BESIDE =
            """
            beside:
              - {name: plain, kind: plain-counter, start: 60 %}
              - {name: wrong, kind: exhibit, mistakes: [no-clamp], start: 60 %}
              - {name: hasty, kind: exhibit, mistakes: [hours-instant], start: 60 %}
            """;

    /** Whole readings and readings of a sample, by the gauge's name. */
    private static final class Counter implements Observer {
        private final Map<String, Integer> whole = new LinkedHashMap<>();
        private final Map<String, Integer> samples = new LinkedHashMap<>();

        @Override
        public GaugeDevice watch(Lane lane, GaugeDevice device) {
            return new Counted(device, lane.name(), this);
        }
    }

    private record Counted(GaugeDevice device, String name, Counter counter)
            implements GaugeDevice {
        @Override
        public void powerUp(long offMillis, OffTime offTime) {
            device.powerUp(offMillis, offTime);
        }

        @Override
        public void tick(Sample sample) {
            device.tick(sample);
        }

        @Override
        public CommandOutcome command(Command command, long argument) {
            return device.command(command, argument);
        }

        @Override
        public CommandOutcome changeSettings(GaugeSettings settings) {
            return device.changeSettings(settings);
        }

        @Override
        public void read(Readout readout) {
            counter.whole.merge(name, 1, Integer::sum);
            device.read(readout);
        }

        @Override
        public void readSample(Readout readout) {
            counter.samples.merge(name, 1, Integer::sum);
            device.readSample(readout);
        }

        @Override
        public void inspect(Registers registers) {
            device.inspect(registers);
        }
    }

    private static Counter counted() {
        Scenario read = Samples.read(Samples.hut() + BESIDE);
        Counter counter = new Counter();
        new Rig(read, read.seed(), Observers.both(counter, new ReportTrace())).run();
        assertEquals(4, counter.samples.size(), counter.samples.toString());
        return counter;
    }

    @Test
    void noGaugeIsReadWholeMoreThanOnceAMinuteWhateverStandsBesideIt() {
        // And in the ticks of the one window, which the start opens.
        int most = MINUTES + CHANGES + ReportWindows.REACH_TICKS;
        counted()
                .whole
                .forEach(
                        (name, count) -> {
                            assertTrue(count <= most, name + " read " + count + " times");
                            assertTrue(count >= MINUTES, name + " read " + count + " times");
                        });
    }

    @Test
    void eachGaugesSampleIsReadOnceInEachTick() {
        // Once more at the start.
        counted().samples.forEach((name, count) -> assertEquals(TICKS + 1, count, name));
    }

    /** A beacon flashes by itself, and no change of the timeline tells when. */
    @Test
    void hoursThatJumpForOneTickAreSeenWhereTheyDid() {
        String flash = "  beacon: {current: 1 A, on-for: 1 s, every: 7 h}\ntimeline:";
        Scenario read = Samples.read(Samples.hut().replace("timeline:", flash) + BESIDE);
        ReportTrace trace = new ReportTrace();
        RunResult result = RunRecorder.run(read, read.seed(), trace);
        String page = ReportPage.of(result, trace, null, "test");
        Map<Long, Long> hours =
                ReportLines.line(ReportLines.data(page).get("readings").get(3).get("hours"));
        // 50 Ah at 60 % less 12 Ah are 18 Ah at 1 A: 1080 minutes; noise of 1.3 mA on 1 A and the
        // converter's step are half a percent.
        assertEquals(1_080, hours.get(14 * 3_600 + 1L), 6, hours.toString());
    }

    /** At its end the load of 3 h 17 s leaves the charger alone, and no event tells of that. */
    @Test
    void aCountThatJumpsUntoldIsSeenToTheTick() {
        String day =
                """
                format: 1
                title: A day of net charge by turns
                duration: 1 d
                battery: {chemistry: lifepo4, capacity: 50 Ah, start: 60 %}
                sensor: {shunt: 50 A / 75 mV, noise: 2 uV}
                chargers: {shore: {current-limit: 1 A}}
                loads: {heater: {current: 3 A, on-for: 3 h 17 s, every: 7 h}}
                beside:
                  - {name: lost, kind: exhibit, mistakes: [lost-sign], start: 60 %}
                """;
        Scenario read = Samples.read(day);
        ReportTrace trace = new ReportTrace();
        RunResult result = RunRecorder.run(read, read.seed(), trace);
        Map<Long, Long> shown =
                ReportLines.line(
                        ReportLines.data(ReportPage.of(result, trace, null, "test"))
                                .get("readings")
                                .get(1)
                                .get("state"));
        long lastOfLoad = 3 * 3_600 + 17;
        assertTrue(shown.containsKey(lastOfLoad), shown.toString());
        // 2 A of 50 Ah: 60 % less 12.02 %, and then as much more; noise is far below 0.1 %.
        assertEquals(479_800, shown.get(lastOfLoad), 1_000, shown.toString());
        assertTrue(shown.keySet().stream().anyMatch(it -> it > lastOfLoad && it < lastOfLoad + 36));
    }
}
