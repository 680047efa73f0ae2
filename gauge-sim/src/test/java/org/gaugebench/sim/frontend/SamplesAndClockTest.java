package org.gaugebench.sim.frontend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.Sample;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.ClockSpec;
import org.gaugebench.sim.scenario.SampleMode;
import org.gaugebench.sim.scenario.SensorSpec;
import org.gaugebench.sim.scenario.SensorSpec.Sampling;
import org.gaugebench.sim.scenario.SensorTrait;
import org.gaugebench.sim.scenario.SensorTraits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** When samples come, what becomes of them on the way, and what time they carry. */
class SamplesAndClockTest {
    private final HandTruth truth = new HandTruth();
    private final Sample sample = new Sample();

    /** 1 mOhm; 16 bit over 131.072 mV: 4 mA a code. No noise. */
    private static FrontEnd frontEnd(Sampling sampling, SensorTraits traits) {
        SensorSpec spec =
                new SensorSpec(
                        100_000_000,
                        100_000,
                        0,
                        16,
                        131_072,
                        0,
                        0,
                        0,
                        16,
                        65_536_000,
                        0,
                        sampling,
                        true,
                        traits,
                        null);
        return new FrontEnd(spec, new SeedTree(1), "gauge");
    }

    private static FrontEnd plain() {
        return frontEnd(Sampling.INTEGRATED, SensorTraits.NONE);
    }

    /** TIM07: 5 A for the first second of each minute. */
    private double beaconAmpHoursADay(Sampling sampling, long phaseMillis) {
        FrontEnd sleeping =
                frontEnd(
                        sampling,
                        SensorTraits.NONE
                                .with(SensorTrait.SAMPLING_INTERVAL, 60_000)
                                .with(SensorTrait.AWAKE_TIME, 1_000)
                                .with(SensorTrait.SAMPLING_PHASE, phaseMillis));
        sleeping.sample(truth, sample);
        double sum = 0;
        for (int second = 1; second <= 86_400; second++) {
            truth.step(1_000);
            truth.amps = second % 60 == 1 ? -5 : 0;
            if (sleeping.sample(truth, sample)) {
                sum += sample.shuntCounts * 0.004 / 60;
            }
        }
        return sum;
    }

    /** Locked in: 5 A x 24 h = 120 Ah a day; locked out: none of the 2 Ah. True to the code. */
    @ParameterizedTest
    @CsvSource({
        "INTEGRATED, 1000, -120",
        "INTEGRATED, 2000, 0",
        "INTEGRATED, 0, 0",
        "INSTANTANEOUS, 1000, -120",
        "INSTANTANEOUS, 30000, 0"
    })
    void aLoadInStepWithTheSamplesIsSeenAlwaysOrNever(
            Sampling sampling, long phaseMillis, double ampHours) {
        assertEquals(ampHours, beaconAmpHoursADay(sampling, phaseMillis), 1e-9);
    }

    /** Awake for the whole interval, a converter that integrates sees 5 A / 60, half a code off. */
    @Test
    void aConverterThatIsAlwaysAwakeSeesTheMeanOfItsInterval() {
        FrontEnd slow =
                frontEnd(
                        Sampling.INTEGRATED,
                        SensorTraits.NONE.with(SensorTrait.SAMPLING_INTERVAL, 60_000));
        slow.sample(truth, sample);
        int samples = 0;
        for (int second = 1; second <= 600; second++) {
            truth.step(1_000);
            truth.amps = second % 60 == 7 ? -48 : 0;
            if (slow.sample(truth, sample)) {
                assertEquals(-200, sample.shuntCounts, "48 A / 60 = 0.8 A = 200 codes");
                assertEquals(second * 1_000, sample.clockMillis);
                samples++;
            }
        }
        assertEquals(10, samples);
    }

    /** Ten ticks of 100 ms and eight conversions of 125 ms in a second. */
    @Test
    void aConverterSlowerThanTheTicksShowsItsOldCode() {
        FrontEnd eightHertz =
                frontEnd(
                        Sampling.INTEGRATED,
                        SensorTraits.NONE.with(SensorTrait.CONVERSION_TIME, 125));
        int changes = 0;
        int before = 0;
        for (int tick = 1; tick <= 1_000; tick++) {
            truth.step(100);
            truth.amps = tick * 0.004;
            assertTrue(eightHertz.sample(truth, sample));
            changes += sample.shuntCounts == before ? 0 : 1;
            before = sample.shuntCounts;
            assertEquals(tick * 100, sample.clockMillis, "the time is fresh");
        }
        assertEquals(800, changes, 1, "eight a second");
    }

    @Test
    void codesThatStandStillAreThoseOfTheSampleBefore() {
        FrontEnd frontEnd = plain();
        truth.amps = 4;
        truth.step(1_000);
        frontEnd.sample(truth, sample);
        frontEnd.setMode(SampleMode.STUCK);
        truth.amps = 8;
        truth.step(1_000);
        assertTrue(frontEnd.sample(truth, sample));
        assertEquals(1_000, sample.shuntCounts);
        assertEquals(2_000, sample.clockMillis);
    }

    @Test
    void theWayOfTheSamplesCanFailForAWhile() {
        FrontEnd frontEnd = plain();
        truth.amps = 4;
        truth.step(1_000);
        frontEnd.sample(truth, sample);
        truth.amps = 8;
        truth.step(1_000);
        frontEnd.setMode(SampleMode.MISSING);
        assertFalse(frontEnd.sample(truth, sample));
        frontEnd.setMode(SampleMode.ARRIVING);
        assertTrue(frontEnd.sample(truth, sample));
        assertEquals(2_000, sample.shuntCounts);

        truth.amps = 12;
        truth.step(1_000);
        frontEnd.setMode(SampleMode.STUCK);
        assertTrue(frontEnd.sample(truth, sample));
        assertEquals(2_000, sample.shuntCounts);
        assertEquals(3_000, sample.clockMillis);

        truth.step(1_000);
        frontEnd.setMode(SampleMode.REPEATED);
        assertTrue(frontEnd.sample(truth, sample));
        assertEquals(2_000, sample.shuntCounts);
        assertEquals(3_000, sample.clockMillis, "time and all");

        frontEnd.setMode(SampleMode.BAD);
        assertTrue(frontEnd.sample(truth, sample));
        assertEquals(Frames.GARBAGE, sample.shuntCounts);
        assertEquals(4_000, sample.clockMillis);
        frontEnd.setMode(SampleMode.REPEATED);
        frontEnd.sample(truth, sample);
        assertEquals(3_000, sample.shuntCounts, "what comes again is what was sent");
    }

    /**
     * 100,000 s with a mean time of 100 s: 1000 of a kind, standard deviation 31.6; five of those.
     */
    @Test
    void chanceStrikesOnceInTheMeanTimeAndEachKindDrawsForItself() {
        long[] missing = struck(SensorTraits.NONE.with(SensorTrait.MISSING_SAMPLE_EVERY, 100_000));
        assertEquals(1_000.0, (double) missing[0], 158);
        assertEquals(0, missing[1]);
        long[] both =
                struck(
                        SensorTraits.NONE
                                .with(SensorTrait.MISSING_SAMPLE_EVERY, 100_000)
                                .with(SensorTrait.BAD_FRAME_EVERY, 100_000));
        assertEquals(missing[0], both[0], "another kind moves none of these");
        assertEquals(1_000.0, (double) both[1], 158);
    }

    private long[] struck(SensorTraits traits) {
        FrontEnd frontEnd = frontEnd(Sampling.INTEGRATED, traits);
        HandTruth quiet = new HandTruth();
        long[] counts = new long[2];
        for (int i = 0; i < 100_000; i++) {
            quiet.step(1_000);
            boolean arrived = frontEnd.sample(quiet, sample);
            counts[0] += arrived ? 0 : 1;
            counts[1] += arrived && sample.shuntCounts == Frames.GARBAGE ? 1 : 0;
        }
        return counts;
    }

    private int clockAfter(FrontEnd frontEnd, int millis) {
        truth.step(millis);
        frontEnd.sample(truth, sample);
        return sample.clockMillis;
    }

    /** TIM01: 2 % of a day are 28.8 min. */
    @Test
    void aClockThatRunsFastGains() {
        FrontEnd frontEnd = plain();
        frontEnd.setClock(new ClockSpec(20_000, 0, 0));
        assertEquals(86_400_000 + 1_728_000, clockAfter(frontEnd, 86_400_000));
        frontEnd.setClockError(0);
        assertEquals(86_400_000 + 1_728_000 + 1_000, clockAfter(frontEnd, 1_000));
    }

    /** TIM05: the counter of 2^32 ms begins ten seconds before its end. */
    @Test
    void aCounterWrapsAndBeginsAgainWhereItBeganAfterARestart() {
        FrontEnd frontEnd = plain();
        frontEnd.setClock(new ClockSpec(0, 4_294_957_296L, 0));
        frontEnd.restartClock(0);
        assertEquals(-1_000, clockAfter(frontEnd, 9_000));
        assertEquals(1_000, clockAfter(frontEnd, 2_000));
        frontEnd.restartClock(truth.timeMillis());
        assertEquals(-9_000, clockAfter(frontEnd, 1_000));
    }

    @Test
    void aClockJumpsOnceAndStandsStillForAWhile() {
        FrontEnd frontEnd = plain();
        clockAfter(frontEnd, 1_000);
        frontEnd.jumpClock(3_600_000);
        assertEquals(3_602_000, clockAfter(frontEnd, 1_000));
        frontEnd.setClockRunning(false);
        assertEquals(3_602_000, clockAfter(frontEnd, 5_000));
        frontEnd.setClockRunning(true);
        assertEquals(3_603_000, clockAfter(frontEnd, 1_000));
        frontEnd.jumpClock(-3_600_000);
        assertEquals(4_000, clockAfter(frontEnd, 1_000));
    }

    /** Uniform over -20 .. 20 ms, floored: never further, 10 ms in the mean of the magnitude. */
    @Test
    void jitterMovesEachReadingAndNoneForLong() {
        FrontEnd frontEnd = plain();
        frontEnd.setClockJitter(20);
        double sum = 0;
        for (int i = 1; i <= 10_000; i++) {
            int off = clockAfter(frontEnd, 1_000) - i * 1_000;
            assertTrue(off >= -20 && off <= 20);
            sum += Math.abs(off);
        }
        // Standard deviation of a magnitude 5.8 ms, of the mean 0.06; flooring moves by half.
        assertEquals(10, sum / 10_000, 0.3);
    }
}
