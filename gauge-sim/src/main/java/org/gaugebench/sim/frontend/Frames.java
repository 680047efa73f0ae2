package org.gaugebench.sim.frontend;

import org.gaugebench.core.port.Sample;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.random.SplitMix64;
import org.gaugebench.sim.scenario.SampleMode;
import org.gaugebench.sim.scenario.SensorTrait;
import org.gaugebench.sim.scenario.SensorTraits;

/**
 * The way from the converters to the gauge, on which samples get lost, come twice, stand still or
 * are garbage: for a while, or now and then by chance. Each kind of chance draws from a stream of
 * its own.
 */
final class Frames {
    /** Every bit but the sign: a line that nobody drives. */
    static final int GARBAGE = Integer.MAX_VALUE;

    private final Chance missing;
    private final Chance repeated;
    private final Chance bad;
    private final Sample last = new Sample();
    private SampleMode mode = SampleMode.ARRIVING;
    private long conversionMillis;
    private long freshMillis = Long.MIN_VALUE;
    private long lastMillis;

    /**
     * A way on which nothing is wrong yet.
     *
     * @param latest the sample before, which may have to come again
     */
    Frames(SeedTree seeds, String lane, Sample latest, long nowMillis) {
        copy(latest, last);
        missing = new Chance(seeds.seedOf("front-end/" + lane + "/missing-samples"));
        repeated = new Chance(seeds.seedOf("front-end/" + lane + "/repeated-samples"));
        bad = new Chance(seeds.seedOf("front-end/" + lane + "/bad-frames"));
        lastMillis = nowMillis;
    }

    static boolean isNeeded(SensorTraits traits) {
        return traits.hasAny(
                SensorTrait.CONVERSION_TIME,
                SensorTrait.MISSING_SAMPLE_EVERY,
                SensorTrait.REPEATED_SAMPLE_EVERY,
                SensorTrait.BAD_FRAME_EVERY);
    }

    void configure(SensorTraits traits) {
        missing.meanMillis = traits.get(SensorTrait.MISSING_SAMPLE_EVERY);
        repeated.meanMillis = traits.get(SensorTrait.REPEATED_SAMPLE_EVERY);
        bad.meanMillis = traits.get(SensorTrait.BAD_FRAME_EVERY);
        conversionMillis = traits.get(SensorTrait.CONVERSION_TIME);
    }

    void setMode(SampleMode newMode) {
        mode = newMode;
    }

    /**
     * Lets a sample through, changes it, or swallows it.
     *
     * @param sample fresh from the converters
     * @return false where nothing arrives
     */
    boolean pass(Sample sample, long nowMillis) {
        long passed = nowMillis - lastMillis;
        lastMillis = nowMillis;
        boolean isMissing = missing.strikes(passed);
        boolean isRepeated = repeated.strikes(passed);
        boolean isBad = bad.strikes(passed);
        hold(sample, nowMillis);
        if (mode == SampleMode.MISSING || isMissing) {
            return false;
        }
        if (mode == SampleMode.REPEATED || isRepeated) {
            copy(last, sample);
            return true;
        }
        copy(sample, last);
        if (mode == SampleMode.BAD || isBad) {
            sample.shuntCounts = GARBAGE;
        }
        return true;
    }

    /** A converter that is not ready yet shows the codes that it had. */
    private void hold(Sample sample, long nowMillis) {
        boolean ready = nowMillis >= freshMillis;
        if (mode == SampleMode.STUCK || !ready) {
            sample.shuntCounts = last.shuntCounts;
            sample.voltageCounts = last.voltageCounts;
            sample.temperatureMillicelsius = last.temperatureMillicelsius;
        } else if (conversionMillis > 0) {
            freshMillis = (nowMillis / conversionMillis + 1) * conversionMillis;
        }
    }

    private static void copy(Sample from, Sample to) {
        to.shuntCounts = from.shuntCounts;
        to.voltageCounts = from.voltageCounts;
        to.temperatureMillicelsius = from.temperatureMillicelsius;
        to.clockMillis = from.clockMillis;
    }

    /** Something that happens once in a mean time, at most once a sample. */
    private static final class Chance {
        private final SplitMix64 random;
        private long meanMillis;

        Chance(long seed) {
            random = new SplitMix64(seed);
        }

        boolean strikes(long passedMillis) {
            return meanMillis > 0 && random.nextDouble() * meanMillis < passedMillis;
        }
    }
}
