package org.gaugebench.sim.frontend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.Sample;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.SensorSpec;
import org.gaugebench.sim.scenario.SensorSpec.Sampling;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FrontEndTest {
    /** 100 A / 100 mV = 1 mOhm; 16 bit over 131.072 mV: 4 uV = 4 mA a code. */
    private static SensorSpec sensor(
            long shuntPpm, long gainPpm, long offsetNanovolts, long noiseNanovolts) {
        return new SensorSpec(
                100_000_000,
                100_000,
                shuntPpm,
                16,
                131_072,
                gainPpm,
                offsetNanovolts,
                noiseNanovolts,
                12,
                20_480_000,
                0,
                Sampling.INTEGRATED,
                true);
    }

    private static int shuntCounts(SensorSpec spec, double amps) {
        HandTruth truth = new HandTruth();
        truth.amps = amps;
        Sample sample = new Sample();
        new FrontEnd(spec, new SeedTree(1), "gauge").sample(truth, sample);
        return sample.shuntCounts;
    }

    /** By hand: code = floor(amps / 4 mA + 1/2), rails at -32768 and 32767. */
    @ParameterizedTest
    @CsvSource({
        "0, 0",
        "4, 1000",
        "-4, -1000",
        "0.0019, 0",
        "0.0021, 1",
        "-0.0019, 0",
        "-0.0021, -1",
        "-0.006, -1",
        "0.006, 2",
        "131.068, 32767",
        "140, 32767",
        "-131.072, -32768",
        "-140, -32768"
    })
    void codesAreRoundedToTheNearestAndClipAtTheRails(double amps, int counts) {
        assertEquals(counts, shuntCounts(sensor(0, 0, 0, 0), amps));
    }

    /** 40 A = 40 mV = 10,000 codes; +0.5 % shunt, -1 % gain, 8 uV offset. */
    @ParameterizedTest
    @CsvSource({
        "5000, 0, 0, 10050",
        "0, -10000, 0, 9900",
        "0, 0, 8000, 10002",
        "5000, -10000, 8000, 9951"
    })
    void errorsActInTheirOrder(long shuntPpm, long gainPpm, long offset, int counts) {
        assertEquals(counts, shuntCounts(sensor(shuntPpm, gainPpm, offset, 0), 40));
    }

    /**
     * Rounding error is uniform over one code: LSB / sqrt(12) (Bennett 1948). The variance of its
     * square is 1/180 LSB^4, so over 200,000 inputs the mean square has standard error 1.7e-4
     * LSB^2; a ramp is smoother still. Five of those on 1/12.
     */
    @Test
    void roundingErrorHasTheVarianceOfAUniformCode() {
        HandTruth truth = new HandTruth();
        Sample sample = new Sample();
        FrontEnd frontEnd = new FrontEnd(sensor(0, 0, 0, 0), new SeedTree(1), "gauge");
        double squares = 0;
        int inputs = 200_000;
        for (int i = 0; i < inputs; i++) {
            truth.amps = -50 + i * 0.000487123;
            frontEnd.sample(truth, sample);
            double error = sample.shuntCounts - truth.amps / 0.004;
            squares += error * error;
        }
        assertEquals(1 / 12.0, squares / inputs, 5 * 1.7e-4);
    }

    /** 10 uV of noise are 2.5 codes; 1/12 code^2 of rounding adds. Five standard errors. */
    @Test
    void noiseHasTheStandardDeviationAskedForAndNoMean() {
        HandTruth truth = new HandTruth();
        Sample sample = new Sample();
        FrontEnd frontEnd = new FrontEnd(sensor(0, 0, 0, 10_000), new SeedTree(1), "gauge");
        int draws = 500_000;
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < draws; i++) {
            frontEnd.sample(truth, sample);
            sum += sample.shuntCounts;
            squares += (double) sample.shuntCounts * sample.shuntCounts;
        }
        double variance = 2.5 * 2.5 + 1 / 12.0;
        assertEquals(0, sum / draws, 5 * Math.sqrt(variance / draws));
        assertEquals(variance, squares / draws, 5 * variance * Math.sqrt(2.0 / draws));
    }

    /**
     * An offset that reads as 1 mA makes 0.024 Ah a day. Rounding alone would hide a quarter of a
     * code; 10 uV of noise dithers it: sum of 86,400 samples of 2.52 codes, five standard errors =
     * 3,700 codes = 14.8 A s = 0.0041 Ah.
     */
    @Test
    void offsetOfAMilliampIsTwentyFourMilliampHoursADay() {
        HandTruth truth = new HandTruth();
        Sample sample = new Sample();
        FrontEnd frontEnd = new FrontEnd(sensor(0, 0, 1_000, 10_000), new SeedTree(1), "gauge");
        long codes = 0;
        for (int second = 0; second < 86_400; second++) {
            frontEnd.sample(truth, sample);
            codes += sample.shuntCounts;
        }
        assertEquals(0.024, codes * 0.004 / 3_600, 0.0041);
    }

    @Test
    void offsetCanBeSetWhileItRuns() {
        HandTruth truth = new HandTruth();
        Sample sample = new Sample();
        FrontEnd frontEnd = new FrontEnd(sensor(0, 0, 0, 0), new SeedTree(1), "gauge");
        frontEnd.setOffsetNanovolts(40_000);
        frontEnd.sample(truth, sample);
        assertEquals(10, sample.shuntCounts);
    }

    @Test
    void integratingTakesTheMeanAndTheOtherTheInstant() {
        HandTruth truth = new HandTruth();
        truth.amps = 4;
        truth.rippleAmps = 4;
        SensorSpec mean = sensor(0, 0, 0, 0);
        assertEquals(1_000, countsOf(mean, truth));
        SensorSpec instant =
                new SensorSpec(
                        mean.shuntRatedMicroamps(),
                        mean.shuntRatedMicrovolts(),
                        0,
                        16,
                        mean.fullScaleMicrovolts(),
                        0,
                        0,
                        0,
                        12,
                        20_480_000,
                        0,
                        Sampling.INSTANTANEOUS,
                        false);
        assertEquals(2_000, countsOf(instant, truth));
    }

    private static int countsOf(SensorSpec spec, Truth truth) {
        Sample sample = new Sample();
        new FrontEnd(spec, new SeedTree(1), "gauge").sample(truth, sample);
        return sample.shuntCounts;
    }

    /** 12 bit over 20.48 V: 5 mV a code, from zero to 4095. */
    @ParameterizedTest
    @CsvSource({"12.8, 2560", "12.8024, 2560", "12.8026, 2561", "0, 0", "-1, 0", "30, 4095"})
    void voltageIsConvertedFromZeroUp(double volts, int counts) {
        HandTruth truth = new HandTruth();
        truth.volts = volts;
        Sample sample = new Sample();
        new FrontEnd(sensor(0, 0, 0, 0), new SeedTree(1), "gauge").sample(truth, sample);
        assertEquals(counts, sample.voltageCounts);
    }

    @Test
    void temperatureAndClockArePassedOn() {
        HandTruth truth = new HandTruth();
        truth.celsius = -7.25;
        truth.millis = 1L << 32;
        Sample sample = new Sample();
        FrontEnd frontEnd = new FrontEnd(sensor(0, 0, 0, 0), new SeedTree(1), "gauge");
        frontEnd.setClockOffsetMillis(5);
        frontEnd.sample(truth, sample);
        assertEquals(-7_250, sample.temperatureMillicelsius);
        assertEquals(5, sample.clockMillis);
    }

    @Test
    void lanesHaveNoisesOfTheirOwnThatFollowFromTheSeed() {
        int[] first = codes(1, "gauge");
        int[] again = codes(1, "gauge");
        int[] other = codes(1, "counter");
        int same = 0;
        for (int i = 0; i < first.length; i++) {
            assertEquals(first[i], again[i]);
            same += first[i] == other[i] ? 1 : 0;
        }
        // Two independent draws of 2.5 codes agree in 1 / (2.5 x 2 sqrt(pi)) = 11 % of cases.
        assertTrue(same < 300, "equal codes: " + same);
    }

    private static int[] codes(long seed, String lane) {
        HandTruth truth = new HandTruth();
        Sample sample = new Sample();
        FrontEnd frontEnd = new FrontEnd(sensor(0, 0, 0, 10_000), new SeedTree(seed), lane);
        int[] codes = new int[1_000];
        for (int i = 0; i < codes.length; i++) {
            frontEnd.sample(truth, sample);
            codes[i] = sample.shuntCounts;
        }
        return codes;
    }
}
