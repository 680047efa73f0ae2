package org.gaugebench.sim.device.exhibits;

import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * What a count is worth, by the settings. The unit of every sum here is the count-millisecond: one
 * code of the shunt converter for one millisecond, a whole number whatever the shunt is.
 */
final class CountScale {
    static final double NANOCOULOMBS_PER_MILLIAMP_HOUR = 3.6e9;
    static final double NANOCOULOMBS_PER_AMP_SECOND = 1e9;
    static final double NANOCOULOMBS_PER_MILLIAMP_SECOND = 1e6;

    private final double microampsPerCount;
    private final long fullScaleMillivolts;
    private final int voltageBits;

    CountScale(GaugeSettings settings) {
        microampsPerCount =
                (double) settings.get(Setting.SHUNT_FULL_SCALE)
                        * settings.get(Setting.SHUNT_RATED_CURRENT)
                        * 1_000
                        / settings.get(Setting.SHUNT_RATED_DROP)
                        / (1L << (settings.get(Setting.SHUNT_CONVERTER_BITS) - 1));
        fullScaleMillivolts = settings.get(Setting.VOLTAGE_FULL_SCALE);
        voltageBits = (int) settings.get(Setting.VOLTAGE_CONVERTER_BITS);
    }

    /** Microamps for a millisecond are nanocoulombs. */
    double nanocoulombs(long countMillis) {
        return countMillis * microampsPerCount;
    }

    long countMillis(double nanocoulombs) {
        return StrictMath.round(nanocoulombs / microampsPerCount);
    }

    double microamps(double counts) {
        return counts * microampsPerCount;
    }

    /** The whole microamps; saturates at the ends of 32 bits. */
    int wholeMicroamps(double microamps) {
        return whole(microamps, Integer.MAX_VALUE);
    }

    /**
     * The nearest whole number, halves upwards, within a limit on both sides: what rounding in the
     * library gives, at a third of its price. Somebody may look in every tick.
     *
     * @param limit at most 2^31 - 1, so that a figure less its floor is exact
     */
    static int whole(double figure, int limit) {
        if (figure >= limit) {
            return limit;
        }
        if (figure <= -limit) {
            return -limit;
        }
        double floor = Math.floor(figure);
        return (int) floor + (figure - floor >= 0.5 ? 1 : 0);
    }

    int microvolts(int voltageCounts) {
        return (int) ((fullScaleMillivolts * 1_000L * voltageCounts) >> voltageBits);
    }
}
