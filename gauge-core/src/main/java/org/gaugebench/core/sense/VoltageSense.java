package org.gaugebench.core.sense;

import org.gaugebench.core.fixed.FixedMath;
import org.gaugebench.core.fixed.ScaleFactor;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** Voltage counts become microvolts: {@code counts x fullScale / 2^bits}. */
public final class VoltageSense {
    // Parameters.
    private final ScaleFactor microvoltsPerCount;
    private final int highestCounts;

    /**
     * Derives the factor.
     *
     * @param settings checked settings
     */
    public VoltageSense(GaugeSettings settings) {
        int bits = (int) settings.get(Setting.VOLTAGE_CONVERTER_BITS);
        highestCounts = (1 << bits) - 1;
        microvoltsPerCount =
                new ScaleFactor(
                        settings.get(Setting.VOLTAGE_FULL_SCALE) * 1_000,
                        1L << bits,
                        highestCounts);
    }

    /**
     * Converts one reading.
     *
     * <p><b>Range:</b> counts 0 to 2^bits-1, clipped to that; result 0 to 1e8 uV, error at most 1
     * uV.
     *
     * @param voltageCounts raw counts
     * @return microvolts
     */
    public int microvoltsFromCounts(int voltageCounts) {
        return FixedMath.clampToInt(microvoltsPerCount.apply(Math.max(voltageCounts, 0)));
    }

    /**
     * Whether a reading is neither clipped nor implausible.
     *
     * @param voltageCounts raw counts
     * @return true from 0 to below the largest code
     */
    public boolean isInRange(int voltageCounts) {
        return voltageCounts >= 0 && voltageCounts < highestCounts;
    }

    /**
     * {@link #microvoltsFromCounts} of a reading that {@link #isInRange}: nothing is clipped.
     *
     * @param voltageCounts raw counts
     * @return microvolts, 0 to 1e8
     */
    public int microvoltsInRange(int voltageCounts) {
        return (int) microvoltsPerCount.applyToMagnitude(voltageCounts);
    }

    /**
     * Whether a reading stands at or beyond the upper rail.
     *
     * @param voltageCounts raw counts
     * @return true at the largest code
     */
    public boolean isClipped(int voltageCounts) {
        return voltageCounts >= highestCounts;
    }

    /**
     * Whether no converter of the configured width can have sent this.
     *
     * @param voltageCounts raw counts
     * @return true outside the code range
     */
    public boolean isImplausible(int voltageCounts) {
        return voltageCounts < 0 || voltageCounts > highestCounts;
    }
}
