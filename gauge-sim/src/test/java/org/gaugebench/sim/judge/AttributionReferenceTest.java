package org.gaugebench.sim.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.gaugebench.sim.judge.Attribution.Split;
import org.gaugebench.sim.report.Samples;
import org.gaugebench.sim.rig.Cause;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioException;
import org.gaugebench.sim.scenario.Variants;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The split over time, of any core gauge, and with causes that act at once. The closed forms are
 * the time-cumulative and charge-proportional errors of Movassagh, Raihan, Balasingam and
 * Pattipati, "A Critical Look at Coulomb Counting Approach", Energies 14 (2021) 4074, as in {@link
 * CoulombCountingReferenceTest}; each of them alone is in {@link AttributionTest}.
 */
class AttributionReferenceTest {
    private static final double NANOCOULOMBS_PER_AMP_HOUR = 3.6e12;

    @TempDir Path folder;

    private static double ampHours(Split split, Cause cause) {
        return split.nanocoulombs(cause) / NANOCOULOMBS_PER_AMP_HOUR;
    }

    private static void addsUp(Split split) {
        long sum = split.parts().values().stream().mapToLong(Long::longValue).sum();
        assertEquals(split.errorNanocoulombs(), sum);
    }

    /** A hundredth of what is expected. */
    private static void isWithinOnePercent(double expected, Split split, Cause cause) {
        double found = ampHours(split, cause);
        assertEquals(expected, found, Math.abs(expected) / 100, cause + " of " + split);
    }

    /** Five causes at once, of known size; a second gauge that only begins wrong. */
    private static Scenario five() {
        return Samples.read(
                """
                format: 1
                title: Five at once
                duration: 1 d
                tick: 10 s
                battery: {chemistry: lifepo4, capacity: 100 Ah, start: 60 %,
                  charge-stop: none, discharge-stop: none,
                  coulombic-efficiency: 85 %, self-discharge: 0 %/month}
                sensor: {shunt: 100 A / 75 mV, converter: "24 bit, 100 mV", noise: 0 V,
                  offset: 7.5 uV}
                wiring: {own-supply: 50 mA}
                gauge: {start: 50 %, capacity: 110 Ah, coulombic-efficiency: 100 %,
                  self-discharge: 0 %/month}
                beside:
                  - {name: plain, kind: plain-counter}
                  - {name: second, kind: core, start: 75 %, capacity: 100 Ah}
                loads: {lamp: {current: 1 A}}
                chargers: {shore: {current-limit: 6 A, switched: off}}
                timeline:
                  - {from: 12 h, to: 16 h, set: {shore: on}}
                """);
    }

    /**
     * E1: 10 mA for a day. E6 and E7: 50 for 60 % of 110 Ah, and 60 % of the 10 Ah too many. E8: 15
     * % of what goes in, (6 - 1 - 0.05) A for 4 h. Past the shunt: 50 mA for a day.
     */
    @Test
    void fiveCausesAtOnceKeepTheirClosedForms() {
        Split split = AttributionRun.of(five(), 1, 86_400_000).splits().get(0);
        addsUp(split);
        isWithinOnePercent(0.24, split, Cause.OFFSET);
        isWithinOnePercent(1.2, split, Cause.PAST_SHUNT);
        isWithinOnePercent(0.15 * 4.95 * 4, split, Cause.LOSSES);
        isWithinOnePercent(-11, split, Cause.START);
        isWithinOnePercent(6, split, Cause.CAPACITY);
        // The converter's rounding, half of 16 uA for a day.
        assertEquals(0, split.elseNanocoulombs() / NANOCOULOMBS_PER_AMP_HOUR, 2e-4);
    }

    @Test
    void anyCoreGaugeCanBeSplit() {
        Scenario scenario = five();
        assertEquals(List.of("gauge", "second"), AttributionRun.gauges(scenario));
        Attribution second = AttributionRun.of(scenario, 1, "second", Observer.NONE, 86_400_000);
        assertEquals("second", second.gauge());
        Split split = second.splits().get(0);
        addsUp(split);
        isWithinOnePercent(15, split, Cause.START);
        isWithinOnePercent(0.24, split, Cause.OFFSET);
        assertEquals(0, ampHours(split, Cause.CAPACITY), 1e-9);
        assertThrows(
                IllegalArgumentException.class,
                () -> AttributionRun.of(scenario, 1, "plain", Observer.NONE, 0));
    }

    /**
     * Its twins have its noise, hear what the timeline tells it, and nothing that is told another:
     * 20 of 100 Ah too low since it was declared, 30 too high for the main one.
     */
    @Test
    void theTwinsOfASecondGaugeAreItsOwn() {
        Scenario scenario =
                Samples.read(
                        """
                        format: 1
                        title: Told apart
                        duration: 1 d
                        tick: 10 s
                        battery: {chemistry: lifepo4, capacity: 100 Ah, start: 60 %,
                          coulombic-efficiency: 100 %, self-discharge: 0 %/month}
                        sensor: {shunt: 100 A / 75 mV, converter: "24 bit, 100 mV", noise: 75 uV,
                          offset: 0 V}
                        gauge: {coulombic-efficiency: 100 %, self-discharge: 0 %/month}
                        beside: [{name: second, kind: core, start: 60 %}]
                        timeline:
                          - {at: 6 h, set: {second.declare: 40 %, gauge.declare: 90 %}}
                        """);
        Split split =
                AttributionRun.of(scenario, 1, "second", Observer.NONE, 86_400_000).splits().get(0);
        addsUp(split);
        isWithinOnePercent(-20, split, Cause.START);
        // Another stream of noise would differ by 26 mAh in a day (0.1 A, 10 s).
        assertEquals(0, ampHours(split, Cause.RULES), 2e-4);
        isWithinOnePercent(
                30, AttributionRun.of(scenario, 1, 86_400_000).splits().get(0), Cause.START);
    }

    /**
     * E5: the sample at the end of each step of a ramp stands for the step: half a step's charge
     * more than 5 Ah went out, so the count is that much too low.
     */
    @ParameterizedTest
    @CsvSource({"10 s, -0.013889", "60 s, -0.083333"})
    void aRectangleOnARampIsTheConvertersPart(String tick, double ampHours)
            throws IOException, ScenarioException {
        Files.writeString(folder.resolve("ramp.csv"), "time_s,pump_A\n0,0\n7200,20\n");
        String text =
                """
                format: 1
                title: A ramp
                duration: 1 h
                tick: %s
                battery: {chemistry: lifepo4, capacity: 100 Ah, start: 60 %%,
                  charge-stop: none, discharge-stop: none,
                  coulombic-efficiency: 100 %%, self-discharge: 0 %%/month}
                sensor: {shunt: 100 A / 75 mV, converter: "24 bit, 100 mV", noise: 0 V,
                  offset: 0 V, sampling: instantaneous}
                gauge: {coulombic-efficiency: 100 %%, self-discharge: 0 %%/month}
                loads:
                  pump:
                    profile: {file: ramp.csv, time: time_s, current: pump_A, unit: A,
                      positive: discharge, between-rows: straight-line}
                """
                        .formatted(tick);
        Path file = Files.writeString(folder.resolve("ramp.yaml"), text);
        Scenario scenario = Variants.read(file, null).get(0);
        Split split = AttributionRun.of(scenario, 1, 3_600_000).splits().get(0);
        addsUp(split);
        isWithinOnePercent(ampHours, split, Cause.CONVERTER);
    }

    /**
     * The series that a picture draws: every point adds up, and its end is the split at the end.
     */
    @Test
    void overTimeEveryPointAddsUp() {
        Scenario scenario = five();
        Attribution series = AttributionRun.overTime(scenario, 1);
        assertEquals(AttributionRun.MOST_MOMENTS, series.splits().size());
        series.splits().forEach(AttributionReferenceTest::addsUp);
        Split last = series.splits().get(AttributionRun.MOST_MOMENTS - 1);
        assertEquals(AttributionRun.of(scenario, 1, 86_400_000).splits(), List.of(last));
        assertEquals(List.of(last), series.at(86_400_000).splits());
    }

    @ParameterizedTest
    @CsvSource({"400, 400", "2, 2", "8641, 8641", "9000, 8641"})
    void momentsAreSpreadEvenlyOnWholeTicks(int most, int count) {
        Scenario scenario = five();
        long[] moments = AttributionRun.evenly(scenario, most);
        assertEquals(count, moments.length);
        assertEquals(0, moments[0]);
        assertEquals(86_400_000, moments[count - 1]);
        assertTrue(Arrays.stream(moments).allMatch(moment -> moment % 10_000 == 0));
        long even = 86_400_000 / (count - 1);
        for (int i = 1; i < count; i++) {
            // A moment is moved to a tick: two of them by less than one tick of 10 s.
            assertTrue(Math.abs(moments[i] - moments[i - 1] - even) <= 10_000);
        }
    }

    /** Whoever looks on can end the second run as the first one. */
    @Test
    void aGuestSeesTheRunAndMayEndIt() {
        Observer impatient =
                new Observer() {
                    @Override
                    public void onMoment(Rig rig) {
                        if (rig.timeMillis() >= 3_600_000) {
                            throw new IllegalStateException("enough");
                        }
                    }
                };
        Scenario scenario = five();
        assertThrows(
                IllegalStateException.class,
                () -> AttributionRun.of(scenario, 1, "gauge", impatient, 86_400_000));
    }
}
