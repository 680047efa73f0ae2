package org.gaugebench.core.sense;

import org.gaugebench.core.fixed.FixedMath;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * Takes offset and gain errors out of the shunt channel (the Z rules of {@code docs/rules.md}).
 *
 * <p>A zero adjustment with a load on would be worse than none: 3 A taken for zero are 72 Ah a day.
 * So it is refused unless the whole last minute lay within the zero limit and stood still. A gain
 * taken at one current would take the offset for gain: 50 mA at 1 A are 5 %. So it needs two
 * currents, a tenth of the rated current apart at least.
 */
public final class ShuntAdjustment {
    /** Largest product of all span adjustments, either way (Z3). */
    public static final int LARGEST_GAIN_PARTS_PER_MILLION = 50_000;

    /**
     * Largest sum of zero adjustments, either way: with the largest offset setting on top it still
     * fits 32 bits.
     */
    public static final int LARGEST_ZERO_COUNTS_Q8 = Integer.MAX_VALUE - 65_536;

    private static final int STEADY_DIVISOR = 50;
    private static final int LEAST_SPAN_DIVISOR = 10;

    // Parameters.
    private final long zeroLimitMicroamps;
    private final long ratedMicroamps;

    // State.
    private int zeroCountsQ8;
    private int gainPartsPerMillion;
    private boolean pointTaken;
    private long pointShownMicroamps;
    private long pointReferenceMicroamps;

    /**
     * Creates no adjustment.
     *
     * @param settings checked settings
     */
    public ShuntAdjustment(GaugeSettings settings) {
        // derived: mA x 1000 = uA; ppm of it
        ratedMicroamps = settings.get(Setting.SHUNT_RATED_CURRENT) * 1_000;
        zeroLimitMicroamps = ratedMicroamps / 1_000 * settings.get(Setting.ZERO_LIMIT) / 1_000;
    }

    /**
     * Takes the mean of a minute for zero.
     *
     * <p><b>Range:</b> the sum of adjustments stays within the zero limit on either side, else
     * several small steps would take a load for zero that one step would not.
     *
     * @param meanMicroamps the minute's mean
     * @param lowestMicroamps its lowest reading
     * @param highestMicroamps its highest reading
     * @param sense the conversion in force
     * @return DONE, or why not
     */
    public CommandOutcome zero(
            int meanMicroamps, int lowestMicroamps, int highestMicroamps, CurrentSense sense) {
        if (Math.abs((long) meanMicroamps) > zeroLimitMicroamps) {
            return CommandOutcome.REFUSED_NOT_ZERO;
        }
        if ((long) highestMicroamps - lowestMicroamps > 2 * zeroLimitMicroamps) {
            return CommandOutcome.REFUSED_UNSTABLE;
        }
        long total = (long) zeroCountsQ8 + sense.countsQ8FromMicroamps(meanMicroamps);
        long limit =
                Math.min(
                        sense.countsQ8FromMicroamps((int) zeroLimitMicroamps),
                        LARGEST_ZERO_COUNTS_Q8);
        if (Math.abs(total) > limit) {
            return CommandOutcome.REFUSED_NOT_ZERO;
        }
        zeroCountsQ8 = (int) total;
        pointTaken = false;
        return CommandOutcome.DONE;
    }

    /**
     * Takes one of two points of a span adjustment.
     *
     * <p><b>Range:</b> currents to 2^31 uA; their difference times 1e6 below 2^53. A gain far out
     * of range is refused before it is multiplied with the gain in force.
     *
     * @param meanMicroamps what the gauge showed over the minute
     * @param lowestMicroamps its lowest reading
     * @param highestMicroamps its highest reading
     * @param referenceMicroamps what the reference meter showed
     * @return FIRST_POINT_TAKEN, DONE, or why not
     */
    public CommandOutcome span(
            int meanMicroamps, int lowestMicroamps, int highestMicroamps, long referenceMicroamps) {
        // Both ends apart: the magnitude of the smallest long does not exist.
        if (referenceMicroamps > Integer.MAX_VALUE || referenceMicroamps < -Integer.MAX_VALUE) {
            return CommandOutcome.REFUSED_OUT_OF_RANGE;
        }
        if ((long) highestMicroamps - lowestMicroamps > ratedMicroamps / STEADY_DIVISOR) {
            return CommandOutcome.REFUSED_UNSTABLE;
        }
        if (!pointTaken) {
            pointTaken = true;
            pointShownMicroamps = meanMicroamps;
            pointReferenceMicroamps = referenceMicroamps;
            return CommandOutcome.FIRST_POINT_TAKEN;
        }
        pointTaken = false;
        long shownStep = meanMicroamps - pointShownMicroamps;
        long referenceStep = referenceMicroamps - pointReferenceMicroamps;
        if (Math.abs(shownStep) < ratedMicroamps / LEAST_SPAN_DIVISOR) {
            return CommandOutcome.REFUSED_POINTS_TOO_CLOSE;
        }
        long gain =
                FixedMath.divideHalfAwayFromZero(
                        (referenceStep - shownStep) * Long.signum(shownStep) * 1_000_000,
                        Math.abs(shownStep));
        if (Math.abs(gain) > 2 * LARGEST_GAIN_PARTS_PER_MILLION) {
            return CommandOutcome.REFUSED_TOO_LARGE;
        }
        // Gains multiply: (1 + g)(1 + h) - 1.
        long total = gainPartsPerMillion + gain + gainPartsPerMillion * gain / 1_000_000;
        if (Math.abs(total) > LARGEST_GAIN_PARTS_PER_MILLION) {
            return CommandOutcome.REFUSED_TOO_LARGE;
        }
        gainPartsPerMillion = (int) total;
        return CommandOutcome.DONE;
    }

    /**
     * Takes over a saved adjustment.
     *
     * @param savedZeroCountsQ8 1/256 counts, within {@link #LARGEST_ZERO_COUNTS_Q8}
     * @param savedGainPartsPerMillion ppm, clamped to its range
     */
    public void resume(int savedZeroCountsQ8, int savedGainPartsPerMillion) {
        zeroCountsQ8 = savedZeroCountsQ8;
        gainPartsPerMillion =
                (int)
                        FixedMath.clamp(
                                savedGainPartsPerMillion,
                                -LARGEST_GAIN_PARTS_PER_MILLION,
                                LARGEST_GAIN_PARTS_PER_MILLION);
    }

    /**
     * Zero adjustment on top of the offset setting.
     *
     * @return 1/256 counts
     */
    public int zeroCountsQ8() {
        return zeroCountsQ8;
    }

    /**
     * Span adjustment.
     *
     * @return ppm
     */
    public int gainPartsPerMillion() {
        return gainPartsPerMillion;
    }
}
