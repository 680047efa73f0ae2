package org.gaugebench.core.sense;

import org.gaugebench.core.fixed.FixedMath;
import org.gaugebench.core.fixed.ScaleFactor;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * Shunt counts become microamps by one multiplication.
 *
 * <p>{@code microamps = (counts x 256 - offset) x fullScale / (2^(bits-1) x 256) x ratedCurrent /
 * ratedDrop}. Gain of the converter and value of the shunt are one combined factor: a single
 * rounding instead of two, and no 128-bit product.
 */
public final class CurrentSense {
    /**
     * Largest current that is read. A little under 2^31, so that the factor keeps at least 32
     * fraction bits: its own rounding then moves a result by at most 0.251 uA beside the 0.5 uA of
     * the last rounding. With 31 fraction bits the sum could pass 1 uA.
     */
    static final long LARGEST_MICROAMPS = (1L << 31) - 3;

    private static final long PARTS_PER_MILLION = 1_000_000;

    // Parameters.
    private final ScaleFactor microampsPerCountQ8;
    private final int lowestCounts;
    private final int highestCounts;
    private final int offsetCountsQ8;
    private final int lowestInRangeCounts;
    private final int highestInRangeCounts;

    /**
     * Derives the factor, without any adjustment.
     *
     * @param settings checked settings
     */
    public CurrentSense(GaugeSettings settings) {
        this(settings, 0, 0);
    }

    /**
     * Derives the factor.
     *
     * @param settings checked settings
     * @param zeroCountsQ8 zero adjustment on top of the offset setting, in 1/256 counts
     * @param gainPartsPerMillion span adjustment, -50,000 to 50,000
     */
    public CurrentSense(GaugeSettings settings, int zeroCountsQ8, int gainPartsPerMillion) {
        int bits = (int) settings.get(Setting.SHUNT_CONVERTER_BITS);
        highestCounts = (1 << (bits - 1)) - 1;
        lowestCounts = -highestCounts - 1;
        offsetCountsQ8 = (int) settings.get(Setting.SHUNT_OFFSET) + zeroCountsQ8;
        // derived: uA per count/256 = fullScale_uV x rated_mA x 1000 / (rated_uV x 2^(bits-1) x
        // 256), times the span adjustment; numerator and denominator stay below 2^62
        long numerator =
                settings.get(Setting.SHUNT_FULL_SCALE)
                        * settings.get(Setting.SHUNT_RATED_CURRENT)
                        * (PARTS_PER_MILLION + gainPartsPerMillion);
        long denominator = (settings.get(Setting.SHUNT_RATED_DROP) << (bits - 1 + 8)) * 1_000;
        // derived: the largest input is the lower rail with the offset against it, or the input
        // whose current is just below the largest one, whichever is smaller.
        long rail = (-(long) lowestCounts << 8) + Math.abs((long) offsetCountsQ8);
        long fitting = multiplyDivideFloor(denominator, LARGEST_MICROAMPS, numerator);
        long inputLimitQ8 = Math.min(rail, fitting);
        microampsPerCountQ8 = new ScaleFactor(numerator, denominator, inputLimitQ8);
        // derived: between the rails, and |counts x 256 - offset| below the limit
        lowestInRangeCounts =
                (int) Math.max(lowestCounts + 1, ((offsetCountsQ8 - inputLimitQ8) >> 8) + 1);
        highestInRangeCounts =
                (int) Math.min(highestCounts - 1, (offsetCountsQ8 + inputLimitQ8 - 1) >> 8);
    }

    /**
     * floor(a x b / c) without overflow, saturating: cold, bit by bit. Only for the constructor.
     */
    private static long multiplyDivideFloor(long a, long b, long c) {
        long quotient = 0;
        long remainder = 0;
        for (int bit = 62; bit >= 0; bit--) {
            remainder <<= 1;
            quotient <<= 1;
            if (((b >> bit) & 1) == 1) {
                remainder += a;
            }
            quotient += remainder / c;
            remainder %= c;
            if (quotient > 1L << 40) {
                return 1L << 40;
            }
        }
        return quotient;
    }

    /**
     * Converts one reading.
     *
     * <p><b>Range:</b> counts any 32-bit value; the input is clipped at the converter's rails or at
     * {@link #LARGEST_MICROAMPS}, whichever comes first. Error against the exact rational at most 1
     * uA for every reading that is not clipped; symmetric about zero when the offset is zero;
     * halves away from zero.
     *
     * @param shuntCounts raw counts
     * @return current in microamps, positive into the battery
     */
    public int microampsFromCounts(int shuntCounts) {
        long inputQ8 = ((long) shuntCounts << 8) - offsetCountsQ8;
        return FixedMath.clampToInt(microampsPerCountQ8.apply(inputQ8));
    }

    /**
     * Whether a reading is neither clipped nor implausible.
     *
     * @param shuntCounts raw counts
     * @return true between the rails and below the largest current
     */
    public boolean isInRange(int shuntCounts) {
        return shuntCounts >= lowestInRangeCounts && shuntCounts <= highestInRangeCounts;
    }

    /**
     * {@link #microampsFromCounts} of a reading that {@link #isInRange}: nothing is clipped.
     *
     * <p><b>Range:</b> at most {@link #LARGEST_MICROAMPS} and the rounding, below 2^31.
     *
     * @param shuntCounts raw counts
     * @return current in microamps, positive into the battery
     */
    public int microampsInRange(int shuntCounts) {
        return (int) microampsPerCountQ8.applyInRange(((long) shuntCounts << 8) - offsetCountsQ8);
    }

    /**
     * How many counts a current is worth; for adjustments, never in a tick.
     *
     * <p><b>Range:</b> any current; the result saturates at 2^31-1. Rounds to nearest by searching
     * the inverse of {@link #microampsFromCounts} in 1/256 counts.
     *
     * @param microamps a current
     * @return 1/256 counts
     */
    public int countsQ8FromMicroamps(int microamps) {
        long low = -(1L << 31);
        long high = 1L << 31;
        while (high - low > 1) {
            long middle = (low + high) >> 1;
            if (microampsPerCountQ8.apply(middle) < microamps) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return FixedMath.clampToInt(high);
    }

    /**
     * Whether a reading stands at or beyond what can be measured.
     *
     * @param shuntCounts raw counts
     * @return true at a rail of the converter or at the largest current
     */
    public boolean isClipped(int shuntCounts) {
        return !isInRange(shuntCounts);
    }

    /**
     * Whether no converter of the configured width can have sent this.
     *
     * @param shuntCounts raw counts
     * @return true outside the code range
     */
    public boolean isImplausible(int shuntCounts) {
        return shuntCounts < lowestCounts || shuntCounts > highestCounts;
    }
}
