package org.gaugebench.core.estimate;

import org.gaugebench.core.port.Sample;

/**
 * What part of the charge can be had at a temperature: straight lines through three declared
 * points, one at 25 °C and above. Used for hours only.
 *
 * <p>Above 25 °C no more than the rated charge is credited. Below -20 °C the last point holds. A
 * temperature outside -40 to 100 °C is what an open or shorted sensor reads, not a battery's; it
 * counts as absent, and absent counts as 25 °C: a broken sensor must not shorten the hours.
 */
public final class TemperatureCurve {
    /** The whole. */
    public static final int FULL_PARTS_PER_MILLION = 1_000_000;

    /** No dependence on temperature. */
    public static final TemperatureCurve FLAT =
            new TemperatureCurve(
                    FULL_PARTS_PER_MILLION, FULL_PARTS_PER_MILLION, FULL_PARTS_PER_MILLION);

    private static final int RATED_MILLICELSIUS = 25_000;
    private static final int COOL_MILLICELSIUS = 10_000;
    private static final int COLD_MILLICELSIUS = -20_000;
    private static final int COLDEST_PLAUSIBLE_MILLICELSIUS = -40_000;

    // Parameters.
    private final int at10PartsPerMillion;
    private final int at0PartsPerMillion;
    private final int atMinus20PartsPerMillion;

    /**
     * Declares the three points. Each is held to 1 to 1,000,000 and to at most its warmer
     * neighbour, so that the curve never falls as the temperature rises.
     *
     * @param at10PartsPerMillion part of the charge that can be had at 10 °C
     * @param at0PartsPerMillion the same at 0 °C
     * @param atMinus20PartsPerMillion the same at -20 °C
     */
    public TemperatureCurve(
            int at10PartsPerMillion, int at0PartsPerMillion, int atMinus20PartsPerMillion) {
        this.at10PartsPerMillion = held(at10PartsPerMillion, FULL_PARTS_PER_MILLION);
        this.at0PartsPerMillion = held(at0PartsPerMillion, this.at10PartsPerMillion);
        this.atMinus20PartsPerMillion = held(atMinus20PartsPerMillion, this.at0PartsPerMillion);
    }

    private static int held(int partsPerMillion, int limit) {
        return Math.max(1, Math.min(partsPerMillion, limit));
    }

    /**
     * The part that can be had.
     *
     * <p><b>Range:</b> any temperature; 1e6 x 2e4 below 2^35. Rounded down; 1 to 1,000,000.
     *
     * @param millicelsius battery temperature, or {@link Sample#TEMPERATURE_ABSENT}
     * @return parts per million of the charge
     */
    public int partsPerMillion(int millicelsius) {
        if (millicelsius == Sample.TEMPERATURE_ABSENT
                || millicelsius <= COLDEST_PLAUSIBLE_MILLICELSIUS
                || millicelsius >= RATED_MILLICELSIUS) {
            return FULL_PARTS_PER_MILLION;
        }
        if (millicelsius >= COOL_MILLICELSIUS) {
            return line(
                    millicelsius - COOL_MILLICELSIUS,
                    RATED_MILLICELSIUS - COOL_MILLICELSIUS,
                    at10PartsPerMillion,
                    FULL_PARTS_PER_MILLION);
        }
        if (millicelsius >= 0) {
            return line(millicelsius, COOL_MILLICELSIUS, at0PartsPerMillion, at10PartsPerMillion);
        }
        return line(
                Math.max(millicelsius, COLD_MILLICELSIUS) - COLD_MILLICELSIUS,
                -COLD_MILLICELSIUS,
                atMinus20PartsPerMillion,
                at0PartsPerMillion);
    }

    private static int line(int place, int length, int from, int to) {
        return from + (int) ((long) (to - from) * place / length);
    }
}
