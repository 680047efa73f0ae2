package org.gaugebench.sim.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.judge.Attribution.Split;
import org.gaugebench.sim.report.Samples;
import org.gaugebench.sim.rig.Cause;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Each cause alone comes out as its closed form, and no other cause takes anything of it. The forms
 * are those of {@link CoulombCountingReferenceTest}.
 */
class AttributionTest {
    private static final double NANOCOULOMBS_PER_AMP_HOUR = 3.6e12;

    /**
     * What a cause that is not there may come to: the converter's rounding, half of 16 uA for the
     * longest of these runs, 10 days, is 2 mAh.
     */
    private static final double NOTHING_AMP_HOURS = 0.002;

    /**
     * The core's own arithmetic: a microamp is its smallest current, and half of that for 10 days
     * is 0.12 mAh; the ideal converter owes at most half a code of 1.2 mA for a tick of 10 s.
     */
    private static final double ARITHMETIC_AMP_HOURS = 0.00013;

    private static String hut(String days, String battery, String sensor, String rest) {
        return """
        format: 1
        title: Split
        duration: %s
        tick: 10 s
        battery: {chemistry: lifepo4, capacity: 100 Ah, charge-stop: none, discharge-stop: none,
          %s}
        sensor: {shunt: 100 A / 75 mV, converter: "24 bit, 100 mV", noise: 0 V, %s}
        """
                        .formatted(days, battery, sensor)
                + rest;
    }

    private static final String NO_LOSS =
            ", coulombic-efficiency: 100 %, self-discharge: 0 %/month";

    private static Split last(String text) {
        return last(Samples.read(text));
    }

    private static Split last(Scenario scenario) {
        RunResult result = RunRecorder.run(scenario, scenario.seed(), Observer.NONE);
        List<Split> splits = AttributionRun.of(result).splits();
        splits.forEach(AttributionTest::addsUp);
        return splits.get(splits.size() - 1);
    }

    /** To the nanocoulomb, and the shown error is what the run itself shows. */
    private static void addsUp(Split split) {
        assertEquals(EnumSet.allOf(Cause.class), split.parts().keySet());
        assertEquals(
                split.shownNanocoulombs() - split.trueNanocoulombs(),
                split.parts().values().stream().mapToLong(Long::longValue).sum());
        long plain = Attribution.PLAIN.stream().mapToLong(split::nanocoulombs).sum();
        assertEquals(split.errorNanocoulombs(), plain + split.elseNanocoulombs());
    }

    private static double ampHours(Split split, Cause cause) {
        return split.nanocoulombs(cause) / NANOCOULOMBS_PER_AMP_HOUR;
    }

    /** The cause has its closed form within 1 %, all others have nothing. */
    private static void only(Cause cause, double ampHours, Split split) {
        only(cause, ampHours, split, Set.of());
    }

    private static void only(Cause cause, double ampHours, Split split, Set<Cause> notLooked) {
        assertEquals(ampHours, ampHours(split, cause), Math.abs(ampHours) / 100, split.toString());
        for (Cause other : Cause.values()) {
            if (other != cause && !notLooked.contains(other)) {
                double most = other == Cause.ARITHMETIC ? ARITHMETIC_AMP_HOURS : NOTHING_AMP_HOURS;
                assertEquals(0, ampHours(split, other), most, other + " of " + split);
            }
        }
    }

    /**
     * The gauge knows efficiency and self-discharge where the battery has none, and no rule acts.
     */
    private static String gauge(String more) {
        return "gauge: {coulombic-efficiency: 100 %, self-discharge: 0 %/month" + more + "}\n";
    }

    /** 7.5 uV across 0.75 mOhm are 10 mA. */
    @ParameterizedTest
    @CsvSource({"7.5 uV, 10 d, 2.4", "-7.5 uV, 10 d, -2.4", "75 uV, 1 d, 2.4"})
    void anOffsetIsItsCurrentTimesTime(String offset, String days, double ampHours) {
        Split split = last(hut(days, "start: 50 %" + NO_LOSS, "offset: " + offset, gauge("")));
        only(Cause.OFFSET, ampHours, split);
    }

    /** 10 A for 5 h are 50 Ah; 0.5 % of that, from the converter or from the shunt. */
    @ParameterizedTest
    @CsvSource({"gain-error: 0.5 %", "shunt-error: 0.5 %"})
    void aGainErrorIsItsPartOfTheNetCharge(String error) {
        String load = "loads: {lamp: {current: 10 A}}\n";
        Split split = last(hut("5 h", "start: 80 %" + NO_LOSS, error, gauge("") + load));
        only(Cause.GAIN, -0.25, split);
    }

    /** 50 mA past the shunt for 10 days are 12 Ah that the gauge does not see go. */
    @Test
    void ownSupplyIsItsCurrentTimesTime() {
        String wiring = "wiring: {own-supply: 50 mA}\n";
        Split split = last(hut("10 d", "start: 80 %" + NO_LOSS, "offset: 0 V", gauge("") + wiring));
        only(Cause.PAST_SHUNT, 12, split);
    }

    /** 10 A for 5 h put 50 Ah in, of which 15 % are lost; the gauge takes all of it for stored. */
    @Test
    void anEfficiencyIsItsPartOfTheChargePutIn() {
        String charger = "chargers: {shore: {current-limit: 10 A}}\n";
        String battery = "start: 20 %, coulombic-efficiency: 85 %, self-discharge: 0 %/month";
        Split split = last(hut("5 h", battery, "offset: 0 V", gauge("") + charger));
        only(Cause.LOSSES, 7.5, split);
    }

    /** Declared 10 % too low: 10 Ah of 100 Ah, whatever flows. */
    @Test
    void aDeclaredStartStaysAsWrongAsItWas() {
        String load = "loads: {lamp: {current: 2 A}}\n";
        String text =
                hut("5 h", "start: 80 %" + NO_LOSS, "offset: 0 V", gauge(", start: 70 %") + load);
        only(Cause.START, -10, last(text));
        // Declared again, right this time: then nothing is left of it.
        Split split = last(text + "timeline: [{at: 4 h, set: {gauge.declare: 72 %}}]\n");
        assertEquals(0, ampHours(split, Cause.START), NOTHING_AMP_HOURS);
    }

    /**
     * A capacity of 105 Ah for 100 Ah: full is declared as 5 Ah too many. 25 of 105 Ah are shown as
     * 23.81 % where 20 % are true, and the capacity's part of that is all 3.81 points.
     */
    @Test
    void aCapacityHasAPartInChargeAndAnotherInPercent() {
        Split split =
                last(
                        hut(
                                "8 h",
                                "start: 100 %" + NO_LOSS,
                                "offset: 0 V",
                                gauge(", start: 100 %, capacity: 105 Ah, empty-voltage: 0 V")
                                        + "loads: {lamp: {current: 10 A}}\n"));
        only(Cause.CAPACITY, 5, split);
        assertEquals(3.81, split.partsPerMillion(Cause.CAPACITY) / 1e4, 0.01);
        assertEquals(3.81, split.errorPartsPerMillion() / 1e4, 0.01);
    }

    /** What noise adds to a run is its part: the twins have the noise of the tested gauge. */
    @Test
    void theNoiseIsThatOfTheTestedGauge() {
        String quiet =
                hut(
                        "1 d",
                        "start: 80 %" + NO_LOSS,
                        "offset: 0 V",
                        gauge("") + "loads: {lamp: {current: 1 A}}\n");
        Split without = last(quiet);
        Split with = last(quiet.replace("noise: 0 V", "noise: 75 uV"));
        double added =
                (with.shownNanocoulombs() - without.shownNanocoulombs())
                        / NANOCOULOMBS_PER_AMP_HOUR;
        // 0.1 A, 10 s, a day: 26 mAh of spread. Two runs round each of 8640 samples apart: at most
        // 8 uA each, 0.2 mAh in all.
        assertTrue(Math.abs(added) > 0.002, "a seed with next to no noise shows nothing");
        assertEquals(added, ampHours(with, Cause.NOISE), 0.0002);
    }

    /** 1 % fast: 50 Ah out are counted as 50.5 Ah. */
    @Test
    void aClockIsItsPartOfTheNetCharge() {
        String load = "loads: {lamp: {current: 10 A}}\n";
        String clock = gauge(", clock: {error: 1 %}");
        Split split = last(hut("5 h", "start: 80 %" + NO_LOSS, "offset: 0 V", clock + load));
        only(Cause.CLOCK, -0.5, split);
    }

    /** 10 A are not counted for the two hours without power; the memory keeps the rest. */
    @Test
    void timeWithoutPowerIsWhatFlowedThen() {
        String rest =
                gauge(", memory: {slots: 8}")
                        + """
                        loads: {lamp: {current: 10 A, switched: off}}
                        timeline:
                          - {from: 2 h, to: 4 h, set: {gauge.power: off}}
                          - {from: 2 h, to: 4 h, set: {lamp: on}}
                        """;
        Split split = last(hut("5 h", "start: 80 %" + NO_LOSS, "offset: 0 V", rest));
        only(Cause.POWER, 20, split);
    }

    /** A dead band of 75 uV hides 50 mA: 12 Ah in 10 days. */
    @Test
    void aDeadBandIsTheConvertersPart() {
        String load = "loads: {lamp: {current: 50 mA}}\n";
        Split split =
                last(hut("10 d", "start: 80 %" + NO_LOSS, "dead-band: 75 uV", gauge("") + load));
        only(Cause.CONVERTER, 12, split);
    }

    /** A count of 98 % that an offset would lift to 100.4 % stops at 99 %: the limit's part. */
    @Test
    void aLimitTakesBackWhatTheOffsetMade() {
        Split split = last(hut("10 d", "start: 98 %" + NO_LOSS, "offset: 7.5 uV", gauge("")));
        assertEquals(2.4, ampHours(split, Cause.OFFSET), 0.024);
        // 2.4 Ah over 98 Ah less the Ah that fits under 99 Ah.
        assertEquals(-1.4, ampHours(split, Cause.CLAMP), 0.014);
    }

    /**
     * Every kind of change on one timeline, each of a cause that the last twin knows nothing of.
     */
    @Test
    void aTwinHearsOfEveryChangeWhatConcernsIt() {
        String rest =
                gauge(", memory: {slots: 8}")
                        + """
                        loads: {lamp: {current: 3 A}, radio: {current: 1 A}}
                        timeline:
                          - {at: 10 min, command: new-battery}
                          - {at: 20 min, set: {gauge.declare: 40 %}}
                          - {at: 1 h, set: {sensor.offset: 20 uV, wiring.own-supply: 100 mA}}
                          - {at: 2 h, set: {sensor.gain-asymmetry: 1 %, sensor.dead-band: 2 mV}}
                          - {at: 3 h, set: {gauge.clock-error: 2 %, gauge.clock-jump: 10 s}}
                          - {at: 4 h, set: {wiring.past-shunt.radio: 50 %, wiring.shunt: reversed}}
                          - {at: 5 h, set: {gauge.capacity: 90 Ah, gauge.own-supply-current: 20 mA}}
                          - {at: 6 h, set: {gauge.coulombic-efficiency: 90 %}}
                          - {at: 7 h, set: {gauge.self-discharge: 9 %/month}}
                          - {at: 8 h, set: {gauge.shunt-offset: 3 counts}}
                          - {from: 9 h, to: 10 h, set: {gauge.power: off}}
                          - {from: 11 h, to: 12 h, set: {sensor.samples: stuck}}
                          - {at: 690 min, set: {radio.current: 2 A}}
                          - {at: 14 h, set: {lamp: off, radio: off}}
                          - {at: 15 h, command: zero-adjustment}
                          - {at: 16 h, set: {lamp: on}}
                          - {at: 961 min, command: span-adjustment, meter: -3.1 A}
                          - {at: 970 min, set: {lamp.current: 30 A}}
                          - {at: 980 min, command: span-adjustment, meter: -31 A}
                          - {at: 981 min, set: {lamp.current: 1 A}}
                        """;
        Split split = last(hut("20 h", "start: 90 %", "offset: 7 uV", rest));
        assertTrue(split.known());
        // Half a microamp for 20 h; a declaration's steps of a ppm would be 0.05 mAh already.
        assertEquals(0, ampHours(split, Cause.ARITHMETIC), 1e-5);
    }

    /** 200 counts taken off for nothing are 200 x 15.8946 uA; told at half time, half of that. */
    @ParameterizedTest
    @CsvSource({"0 s, -0.76294", "5 d, -0.38147"})
    void anOffsetThatIsToldWrongIsAZeroError(String at, double ampHours) {
        String told = "timeline: [{at: %s, set: {gauge.shunt-offset: 200 counts}}]\n".formatted(at);
        only(
                Cause.OFFSET,
                ampHours,
                last(hut("10 d", "start: 50 %" + NO_LOSS, "offset: 0 V", gauge("") + told)));
    }

    /** A shunt told 1 % larger than it is counts 50 Ah as 50.5 Ah. */
    @Test
    void aShuntThatIsToldWrongIsAMatterOfScale() {
        String rest = gauge(", shunt-rated-current: 101 A") + "loads: {lamp: {current: 10 A}}\n";
        only(Cause.GAIN, -0.5, last(hut("5 h", "start: 80 %" + NO_LOSS, "offset: 0 V", rest)));
    }

    /** Told at time 0 it comes after the start: 75 % for 80 %. */
    @Test
    void whatIsDeclaredAtTimeZeroCounts() {
        String rest =
                gauge(", start: 60 %") + "timeline: [{at: 0 s, set: {gauge.declare: 75 %}}]\n";
        only(Cause.START, -5, last(hut("1 h", "start: 80 %" + NO_LOSS, "offset: 0 V", rest)));
    }

    /** The full-charge rule puts a wrong start right: both stand there, and cancel. */
    @Test
    void whatARuleAnsweredStandsThereAllTheSame() {
        String rest =
                gauge(", start: 70 %")
                        + "chargers: {shore: {current-limit: 20 A}}\n"
                        + "expect: [{event: set-to-full, from: 0 s, times: 1}]\n";
        Split split = last(hut("10 h", "start: 80 %" + NO_LOSS, "offset: 0 V", rest));
        assertEquals(-10, ampHours(split, Cause.START), 0.1);
        double corrected = ampHours(split, Cause.RULES) + ampHours(split, Cause.CLAMP);
        // A point of full is missing when full is proven.
        assertEquals(10, corrected, 1);
        assertEquals(0, split.errorNanocoulombs() / NANOCOULOMBS_PER_AMP_HOUR, 1);
    }

    /** An empty count stays at 0: 1 Ah, and an offset of -2.4 Ah. */
    @Test
    void aLimitAtEmptyTakesBackToo() {
        Split split =
                last(
                        hut(
                                "10 d",
                                "start: 1 %" + NO_LOSS,
                                "offset: -7.5 uV",
                                gauge(", empty-voltage: 0 V")));
        assertEquals(-2.4, ampHours(split, Cause.OFFSET), 0.024);
        assertEquals(1.4, ampHours(split, Cause.CLAMP), 0.014);
    }

    /** Instants that never meet the hoist as it is: nothing but the sampling is wrong there. */
    @Test
    void instantsAreTheConvertersPart() throws IOException {
        String file = "edge-cases/a-hoist-at-instants.yaml";
        Split split = last(Samples.scenario(file, Files.readString(Path.of("../scenarios", file))));
        assertEquals(37.333, ampHours(split, Cause.CONVERTER), 0.37);
    }

    @Test
    void aGaugeThatShowsNothingHasNothingToSplit() {
        String text = hut("5 h", "start: 80 %" + NO_LOSS, "offset: 0 V", gauge(", start: unknown"));
        Split split = AttributionRun.of(Samples.read(text), 1, 3_600_000).splits().get(0);
        assertFalse(split.known());
        assertTrue(split.parts().isEmpty());
    }

    @Test
    void onlyACoreHasTwins() {
        Scenario plain = Samples.read(Samples.hut() + "gauge: {kind: plain-counter}\n");
        assertFalse(AttributionRun.fits(plain));
        assertThrows(IllegalArgumentException.class, () -> AttributionRun.of(plain, 1, 0));
    }

    /**
     * What nothing explains is the core's rounding, whatever the timeline does: a twin that missed
     * a change, or took one that belongs to a cause taken away, would leave much more.
     */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "first-steps/a-week-in-the-hut.yaml",
                "teaching/03-microvolts-become-amp-hours.yaml",
                "edge-cases/two-days-without-power.yaml",
                "edge-cases/a-clock-that-jumps.yaml",
                "edge-cases/a-surge-beyond-the-range.yaml"
            })
    void nothingIsLeftOnTheShelf(String file) throws IOException {
        Path path = Path.of("../scenarios").resolve(file);
        Split split = last(Samples.scenario(file, Files.readString(path)));
        assertEquals(0, ampHours(split, Cause.ARITHMETIC), ARITHMETIC_AMP_HOURS);
    }

    /** 1 uV across 1.5 mOhm for 168 h, though rule and limits have corrected the count since. */
    @Test
    void theWeeksOffsetIsWholeThoughTheCountWasCorrected() throws IOException {
        String file = "first-steps/a-week-in-the-hut.yaml";
        Path path = Path.of("../scenarios").resolve(file);
        Scenario scenario = Samples.scenario(file, Files.readString(path));
        // A minute of charge counts by the gauge's efficiency, and its part of the offset too.
        double efficiency =
                scenario.gauges().get(0).settings().get(Setting.COULOMBIC_EFFICIENCY) / 1e6;
        double offset = ampHours(last(scenario), Cause.OFFSET);
        assertTrue(offset < 0.112 && offset > 0.112 * efficiency, offset + " Ah");
    }
}
