package org.gaugebench.sim.frontend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.Sample;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.SensorSpec;
import org.gaugebench.sim.scenario.SensorSpec.Sampling;
import org.gaugebench.sim.scenario.SensorTrait;
import org.gaugebench.sim.scenario.SensorTraits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Closed forms of what can be wrong with a sensor. */
class SensorTraitReferenceTest {
    private static final int MINUTE = 60_000;
    private final HandTruth truth = new HandTruth();
    private final Sample sample = new Sample();

    /** 500 A / 50 mV = 100 uOhm; 24 bit over 131.072 mV: 15.625 nV = 156.25 uA a code. */
    private static SensorSpec van(SensorTraits traits) {
        return new SensorSpec(
                500_000_000,
                50_000,
                0,
                24,
                131_072,
                0,
                0,
                0,
                16,
                65_536_000,
                0,
                Sampling.INTEGRATED,
                true,
                traits,
                null);
    }

    private static FrontEnd frontEnd(SensorTraits traits) {
        return new FrontEnd(van(traits), new SeedTree(1), "gauge");
    }

    private double shownAmps(FrontEnd frontEnd) {
        frontEnd.sample(truth, sample);
        return sample.shuntCounts * 156.25e-6;
    }

    /** Ampere-hours shown while a time passes. */
    private double shownAmpHours(FrontEnd frontEnd, double hours, int stepMillis) {
        double sum = 0;
        long steps = Math.round(hours * 3.6e6 / stepMillis);
        for (long i = 0; i < steps; i++) {
            truth.step(stepMillis);
            sum += shownAmps(frontEnd) * stepMillis / 3.6e6;
        }
        return sum;
    }

    /**
     * E1 of the catalogue of closed forms, offset times time, at the drift of SEN02: 50 nV/K x 30 K
     * = 1.5 uV = 15 mA = 10.8 Ah in 30 days. Half a code is 78 uA = 0.06 Ah.
     */
    @Test
    void driftOfFiftyNanovoltsAtThirtyKelvinIsElevenAmpHoursAMonth() {
        truth.celsius = 55;
        FrontEnd drifting = frontEnd(SensorTraits.NONE.with(SensorTrait.OFFSET_DRIFT, 50));
        assertEquals(10.8, shownAmpHours(drifting, 30 * 24, MINUTE), 0.06);
        truth.celsius = 25;
        assertEquals(0, shownAmps(drifting), 0);
    }

    /** 0.00393 /K x 40 K = 15.7 % (copper, IEC 60028, from memory of the standard's figure). */
    @Test
    void copperFortyKelvinWarmerReadsSixteenPercentHigh() {
        FrontEnd copper =
                frontEnd(SensorTraits.NONE.with(SensorTrait.SHUNT_TEMPERATURE_COEFFICIENT, 3_930));
        truth.amps = -100;
        truth.celsius = 65;
        assertEquals(-115.72, shownAmps(copper), 0.0002);
    }

    /**
     * Joule's law: 200 A in 100 uOhm are 4 W; at 10 K/W the shunt settles 40 K above, and at
     * 0.00393 /K its own growth feeds back: r = 40 K (1 + a r), r = 40 / (1 - 0.1572) = 47.46 K. A
     * steel of no coefficient stays at 40 K and reads right.
     */
    @Test
    void selfHeatingSettlesWhereItsOwnGrowthIsPaidFor() {
        FrontEnd copper =
                frontEnd(
                        SensorTraits.NONE
                                .with(SensorTrait.SHUNT_TEMPERATURE_COEFFICIENT, 3_930)
                                .with(SensorTrait.SHUNT_HEATING, 10_000)
                                .with(SensorTrait.SHUNT_HEATING_TIME, 5 * MINUTE));
        truth.amps = 200;
        shownAmpHours(copper, 3, 1_000);
        double rise = 40 / (1 - 0.00393 * 40);
        assertEquals(200 * (1 + 0.00393 * rise), shownAmps(copper), 0.001);
    }

    /** A small coefficient leaves the exponential: after one time constant 1 - 1/e of the rise. */
    @Test
    void selfHeatingRisesWithItsTimeConstant() {
        FrontEnd manganin =
                frontEnd(
                        SensorTraits.NONE
                                .with(SensorTrait.SHUNT_TEMPERATURE_COEFFICIENT, 20)
                                .with(SensorTrait.SHUNT_HEATING, 10_000)
                                .with(SensorTrait.SHUNT_HEATING_TIME, 5 * MINUTE));
        truth.amps = 400;
        // The first step warms for a second: the lag begins at the front end's own beginning.
        shownAmpHours(manganin, 5 / 60.0, 1_000);
        double settled = 400 * 400 * 100e-6 * 10;
        // The feedback is 20 ppm/K x 160 K = 0.3 % of the rise: 0.013 A of 400 A x 20e-6 x 101 K.
        double rise = settled * (1 - Math.exp(-1));
        assertEquals(400 * (1 + 20e-6 * rise), shownAmps(manganin), 0.004);
    }

    /**
     * SEN03: 15 uV after the load are 150 mA at 100 uOhm; decaying with 1 h they count 0.15 Ah.
     * Exact: E tau / R = 15 uV x 1 h / 100 uOhm. The sum of samples at the ends of seconds is that
     * within half a second's part, 0.15 x 0.5 / 3600; rounding adds 78 uA x 12 h at the very worst.
     */
    @Test
    void thermalVoltageCountsAfterTheLoadIsGone() {
        FrontEnd joints = frontEnd(SensorTraits.NONE.with(SensorTrait.THERMAL_EMF, 15_000));
        truth.amps = 500;
        shownAmpHours(joints, 20, 10_000);
        assertEquals(500.15, shownAmps(joints), 0.0002);
        truth.amps = -500;
        assertEquals(-499.85, shownAmps(joints), 0.0002, "always the same sign");
        truth.amps = 0;
        assertEquals(0.15, shownAmpHours(joints, 12, 1_000), 0.001);
    }

    /** SEN03 again: a quarter of the rated current makes a sixteenth of the voltage. */
    @Test
    void thermalVoltageGoesWithTheSquareOfTheCurrent() {
        FrontEnd joints = frontEnd(SensorTraits.NONE.with(SensorTrait.THERMAL_EMF, 16_000));
        truth.amps = 125;
        shownAmpHours(joints, 20, 10_000);
        truth.amps = 0;
        assertEquals(0.010, shownAmps(joints), 0.0001);
    }

    /** SEN05: 0.5 % between charge and discharge at 100 Ah a day are 15 Ah in 30 days. */
    @Test
    void asymmetryDoesNotCancelOverACycle() {
        FrontEnd uneven = frontEnd(SensorTraits.NONE.with(SensorTrait.GAIN_ASYMMETRY, 2_500));
        double sum = 0;
        for (int day = 0; day < 30; day++) {
            truth.amps = 10;
            sum += shownAmpHours(uneven, 10, MINUTE);
            truth.amps = -10;
            sum += shownAmpHours(uneven, 10, MINUTE);
        }
        // Half a code for 600 h each way is 0.05 Ah.
        assertEquals(15.0, sum, 0.1);
    }

    /**
     * An end-point deviation p 4 x (1 - x): p at half scale, nothing at the ends, and 2/3 p in the
     * mean over the range (integral of the parabola).
     */
    @ParameterizedTest
    @CsvSource({"NONLINEARITY_BOW, 1", "NONLINEARITY_S, -1"})
    void deviationFromAStraightLineIsLargestAtHalfScale(SensorTrait shape, int belowZero) {
        FrontEnd bent = frontEnd(SensorTraits.NONE.with(shape, 100));
        double fullScaleAmps = 1_310.72;
        double most = fullScaleAmps * 100e-6;
        double sum = 0;
        int inputs = 10_000;
        for (int i = 0; i < inputs; i++) {
            truth.amps = fullScaleAmps * (i + 0.5) / inputs;
            sum += shownAmps(bent) - truth.amps;
        }
        assertEquals(most * 2 / 3, sum / inputs, 0.0002);
        truth.amps = fullScaleAmps / 2;
        assertEquals(most, shownAmps(bent) - truth.amps, 0.0002);
        truth.amps = -fullScaleAmps / 2;
        assertEquals(most * belowZero, shownAmps(bent) - truth.amps, 0.0002);
        truth.amps = 0;
        assertEquals(0, shownAmps(bent), 0);
    }

    /** Of sixteen codes one never comes, on either side of zero, and nothing else moves. */
    @Test
    void missingCodesNeverCome() {
        FrontEnd holed = frontEnd(SensorTraits.NONE.with(SensorTrait.MISSING_CODES, 16 * 256));
        for (int code = -40; code <= 40; code++) {
            truth.amps = code * 156.25e-6;
            holed.sample(truth, sample);
            assertEquals(code % 16 == 0 ? code - 1 : code, sample.shuntCounts);
        }
    }

    /** SEN13: 60 mA under a dead band of 70 mA (7 uV at 100 uOhm) are not seen at all. */
    @Test
    void aDeadBandSwallowsWhatIsUnderIt() {
        FrontEnd deaf = frontEnd(SensorTraits.NONE.with(SensorTrait.DEAD_BAND, 7_000));
        truth.amps = -0.06;
        assertEquals(0, shownAmps(deaf), 0);
        truth.amps = -0.08;
        assertEquals(-0.08, shownAmps(deaf), 0.0001);
    }

    /** ADC09: up beyond 5 mV = 50 A, down under 90 % of it, 0.5 uV = 5 mA between the two. */
    @Test
    void theWideRangeHoldsOnUntilTheInputIsWellUnderTheLimit() {
        FrontEnd twoRanges =
                frontEnd(
                        SensorTraits.NONE
                                .with(SensorTrait.RANGE_LIMIT, 5_000_000)
                                .with(SensorTrait.RANGE_OFFSET, 500));
        double[] amps = {49, 51, 46, 44, 46, -51, -46, -44};
        double[] extra = {0, 0.005, 0.005, 0, 0, 0.005, 0.005, 0};
        for (int i = 0; i < amps.length; i++) {
            truth.amps = amps[i];
            assertEquals(amps[i] + extra[i], shownAmps(twoRanges), 0.0001, "step " + i);
        }
    }

    /** SEN14: 30 A x 5 mOhm = 150 mV, high on charge and low on discharge; 1 mV a code. */
    @Test
    void voltageTakenAwayFromTheBatteryFollowsTheCurrent() {
        FrontEnd away =
                frontEnd(SensorTraits.NONE.with(SensorTrait.VOLTAGE_SENSE_RESISTANCE, 5_000));
        truth.amps = 30;
        away.sample(truth, sample);
        assertEquals(12_950, sample.voltageCounts);
        truth.amps = -30;
        away.sample(truth, sample);
        assertEquals(12_650, sample.voltageCounts);
    }

    @Test
    void voltageHasAGainErrorAndAnOffset() {
        FrontEnd wrong =
                frontEnd(
                        SensorTraits.NONE
                                .with(SensorTrait.VOLTAGE_GAIN_ERROR, 10_000)
                                .with(SensorTrait.VOLTAGE_OFFSET, -20_000));
        wrong.sample(truth, sample);
        assertEquals(12_908, sample.voltageCounts);
    }

    /** What is set and taken back leaves the plain sensor's codes, bit by bit. */
    @Test
    void aTraitThatIsTakenBackLeavesNothing() {
        FrontEnd plain = frontEnd(SensorTraits.NONE);
        FrontEnd healed = frontEnd(SensorTraits.NONE);
        for (SensorTrait trait : SensorTrait.values()) {
            healed.set(trait, trait.maximum());
        }
        for (SensorTrait trait : SensorTrait.values()) {
            healed.set(trait, trait.usual());
        }
        int codes = 0;
        for (int i = -500; i < 500; i++) {
            truth.amps = i * 1.37;
            plain.sample(truth, sample);
            int code = sample.shuntCounts;
            int volts = sample.voltageCounts;
            healed.sample(truth, sample);
            assertEquals(code, sample.shuntCounts);
            assertEquals(volts, sample.voltageCounts);
            codes += code == 0 ? 0 : 1;
        }
        assertTrue(codes > 900);
    }
}
