package org.gaugebench.sim.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.device.exhibits.PlainCounter;
import org.gaugebench.sim.report.Samples;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Errors of counting alone, from the file to the figure: a plain counter on a truth without losses.
 *
 * <p>The four sources of error are those of Movassagh, Raihan, Balasingam and Pattipati, "A
 * Critical Look at Coulomb Counting Approach for State of Charge Estimation in Batteries", Energies
 * 14 (2021) 4074. The closed forms are own, elementary ones.
 */
class CoulombCountingReferenceTest {
    /**
     * Rounding of the converter: 24 bits over 100 mV across 0.75 mOhm are 16 uA, and half of that
     * for the longest of these runs, 30 days, are 6 mAh.
     */
    private static final double CONVERTER_AMP_HOURS = 0.006;

    private static final double MICRO = 1e-6;

    private static String hut(String days, String battery, String sensor, String rest) {
        return """
        format: 1
        title: Counting
        duration: %s
        tick: 10 s
        battery: {chemistry: lifepo4, capacity: 100 Ah, coulombic-efficiency: 100 %%,
          self-discharge: 0 %%/month, charge-stop: none, discharge-stop: none, %s}
        sensor: {shunt: 100 A / 75 mV, converter: "24 bit, 100 mV", noise: 0 V, %s}
        """
                        .formatted(days, battery, sensor)
                + rest;
    }

    private static RunResult run(String text) {
        return Samples.run(text);
    }

    private static double errorAmpHours(RunResult result) {
        return (result.lanes().get(0).finalMicroampHours() - result.finalTrueMicroampHours())
                * MICRO;
    }

    /** E1: an offset of I counts I t. 7.5 uV across 0.75 mOhm are 10 mA. */
    @ParameterizedTest
    @CsvSource({
        "0.75 uV, 1 d, 0.024",
        "7.5 uV, 1 d, 0.24",
        "7.5 uV, 30 d, 7.2",
        "37.5 uV, 30 d, 36",
        "75 uV, 30 d, 72",
        "-7.5 uV, 30 d, -7.2"
    })
    void anOffsetCountsItsCurrentTimesTime(String offset, String days, double ampHours) {
        String start = ampHours > 0 ? "start: 20 %" : "start: 50 %";
        RunResult result =
                run(hut(days, start, "offset: " + offset, "gauge: {kind: plain-counter}\n"));
        assertEquals(ampHours, errorAmpHours(result), CONVERTER_AMP_HOURS);
    }

    /** E2: a gain error takes its part of what flows; a closed cycle cancels it. */
    @Test
    void aGainErrorTakesItsPartOfTheThroughputAndAClosedCycleCancelsIt() {
        String out =
                hut(
                        "5 h",
                        "start: 80 %",
                        "gain-error: 0.5 %",
                        "gauge: {kind: plain-counter}\nloads: {lamp: {current: 10 A}}\n");
        assertEquals(-0.25, errorAmpHours(run(out)), CONVERTER_AMP_HOURS);
        String cycle =
                out.replace("duration: 5 h", "duration: 10 h")
                        + "chargers: {shore: {absorption: 14.4 V, current-limit: 20 A,"
                        + " switched: off}}\n"
                        + "timeline: [{at: 5 h, set: {shore: on}}]\n";
        RunResult closed = run(cycle);
        // The charger gives 20 A, of which the lamp takes 10 A: what went out comes back.
        assertEquals(80, closed.finalTruePartsPerMillion() / 1e4, 0.01);
        assertEquals(0, errorAmpHours(closed), CONVERTER_AMP_HOURS);
    }

    /**
     * E3: white noise of sigma a sample spreads the count by sigma dt sqrt(n): 0.1 A, 1 s, 6 h give
     * 4.082 mAh (8.165 mAh in 24 h). The spread of 48 runs has itself a spread of one part in
     * sqrt(96), 10 %; three of those.
     */
    @Test
    void whiteNoiseSpreadsTheCountByTheRootOfTheSamples() {
        String text =
                hut("6 h", "start: 50 %", "", "gauge: {kind: plain-counter}\n")
                        .replace("noise: 0 V", "noise: 75 uV")
                        .replace("tick: 10 s", "tick: 1 s");
        Scenario scenario = Samples.read(text);
        int runs = 48;
        double squares = 0;
        for (int seed = 1; seed <= runs; seed++) {
            double error = errorAmpHours(RunRecorder.run(scenario, seed, Observer.NONE));
            squares += error * error;
        }
        double expected = 0.1 * StrictMath.sqrt(6 * 3600) / 3600;
        assertEquals(0.008165, 2 * expected, 5e-7);
        assertEquals(expected, StrictMath.sqrt(squares / runs), 0.3 * expected);
    }

    /** Counts of a plain counter fed by hand; one count is 1 mA. */
    private static final class Hand {
        private final PlainCounter counter;
        private final Sample sample = new Sample();
        private final Readout readout = new Readout();

        Hand() {
            // 2^19 counts over 524.288 mV across 1 mOhm: a microvolt, and so a milliamp, a count.
            GaugeSettings settings =
                    GaugeSettings.builder()
                            .set(Setting.SHUNT_RATED_CURRENT, 100_000)
                            .set(Setting.SHUNT_RATED_DROP, 100_000)
                            .set(Setting.SHUNT_CONVERTER_BITS, 20)
                            .set(Setting.SHUNT_FULL_SCALE, 524_288)
                            .set(Setting.CAPACITY, 100_000)
                            .build();
            counter = new PlainCounter(settings);
            counter.powerUp(0, OffTime.EXACT);
            counter.tick(sample);
            counter.command(Command.DECLARE_STATE_OF_CHARGE, 0);
        }

        void amps(double amps, int millis) {
            sample.clockMillis += millis;
            sample.shuntCounts = (int) StrictMath.round(amps * 1_000);
            counter.tick(sample);
        }

        double ampHours() {
            counter.read(readout);
            return readout.remainingNanocoulombs / 3.6e12;
        }
    }

    /** E4: a fast clock counts its part too much. 50 ppm of 50 Ah are 2.5 mAh; 1 % are 0.5 Ah. */
    @ParameterizedTest
    @CsvSource({"20001, 0.0025", "20200, 0.5", "19800, -0.5", "20000, 0"})
    void aClockErrorTakesItsPartOfTheThroughput(int shownMillis, double ampHours) {
        Hand hand = new Hand();
        for (int i = 0; i < 900; i++) {
            hand.amps(10, shownMillis);
        }
        assertEquals(50 + ampHours, hand.ampHours(), 1e-9);
    }

    /**
     * E5: a rectangle over the last interval on a ramp of 0 to 10 A in an hour is dI dt / 2 too
     * much: 5 Ah and half a step of charge. (From the sample before it would be as much too little:
     * 4.998611, 4.986111, 4.916667.)
     */
    @ParameterizedTest
    @CsvSource({"1, 5.001389", "10, 5.013889", "60, 5.083333"})
    void aRectangleOnARampIsHalfAStepOff(int seconds, double ampHours) {
        Hand hand = new Hand();
        int samples = 3600 / seconds;
        for (int i = 1; i <= samples; i++) {
            hand.amps(10.0 * i / samples, seconds * 1_000);
        }
        // Six digits printed, half of the last; a sample is rounded by at most half a milliamp.
        assertEquals(ampHours, hand.ampHours(), 5e-7 + 1e-6);
    }

    /** The integrating converter of the front end sees the mean: the ramp's error is not there. */
    @Test
    void anIntegratingConverterHasNoErrorOfTheRectangle() {
        String text =
                hut(
                        "1 h",
                        "start: 80 %",
                        "",
                        "gauge: {kind: plain-counter}\nloads: {pump: {current: 10 A, on-for: 7 s,"
                                + " every: 13 s}}\n");
        assertEquals(0, errorAmpHours(run(text)), 1e-5);
    }

    /**
     * E6: a capacity taken 5 % too high shows 1 - DoD / 1.05: at a true depth of 80 % it reads 3.81
     * points high (4 to first order).
     */
    @Test
    void aCapacityErrorGrowsWithTheDepthOfDischarge() {
        String text =
                hut(
                        "8 h",
                        "start: 100 %",
                        "",
                        """
                        gauge: {kind: plain-counter, start: 100 %, capacity: 105 Ah}
                        loads: {lamp: {current: 10 A}}
                        """);
        RunResult result = run(text);
        assertEquals(20, result.finalTruePartsPerMillion() / 1e4, 0.01);
        double points =
                (result.lanes().get(0).finalPartsPerMillion() - result.finalTruePartsPerMillion())
                        / 1e4;
        assertEquals(3.81, points, 0.01);
    }

    /** E7: a wrong start stays as wrong as it was; only a rule that sets the count ends it. */
    @Test
    void aWrongStartStaysAsWrongUntilTheCountIsSet() {
        String text =
                hut(
                        "1 d",
                        "start: 80 %",
                        "",
                        """
                        gauge: {kind: plain-counter, start: 70 %}
                        beside: [{name: core, start: 70 %}]
                        loads: {lamp: {current: 2 A}}
                        chargers: {shore: {current-limit: 20 A, switched: off}}
                        timeline: [{at: 9 h, set: {shore: on}}]
                        """);
        RunResult before = run(text.replace("duration: 1 d", "duration: 9 h"));
        for (LaneResult lane : before.lanes()) {
            assertEquals(-10, lane.worstErrorPartsPerMillion() / 1e4, 0.02, lane.gauge());
            long last = lane.finalPartsPerMillion() - before.finalTruePartsPerMillion();
            assertEquals(-10, last / 1e4, 0.02, lane.gauge());
        }
        RunResult after = run(text);
        long core = after.lanes().get(1).finalPartsPerMillion() - after.finalTruePartsPerMillion();
        assertEquals(0, core / 1e4, 1, "the core is within the residual of full");
        long plain = after.lanes().get(0).finalPartsPerMillion() - after.finalTruePartsPerMillion();
        assertEquals(-10, plain / 1e4, 0.02, "the plain counter is not");
    }

    /** E8: 85 % stored, 100 % counted: 50 Ah put in are counted 7.5 Ah too high. */
    @Test
    void anEfficiencyThatIsNotModelledOvercountsItsPartOfTheCharge() {
        String text =
                hut(
                                "5 h",
                                "start: 20 %",
                                "",
                                """
                                gauge: {kind: plain-counter}
                                chargers: {shore: {current-limit: 10 A}}
                                """)
                        .replace("coulombic-efficiency: 100 %", "coulombic-efficiency: 85 %");
        RunResult result = run(text);
        assertEquals(62.5, result.finalTruePartsPerMillion() / 1e4, 0.01);
        assertEquals(7.5, errorAmpHours(result), CONVERTER_AMP_HOURS);
    }
}
