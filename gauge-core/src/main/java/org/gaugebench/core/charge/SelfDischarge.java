package org.gaugebench.core.charge;

import org.gaugebench.core.port.Sample;

/**
 * Charge lost inside the battery, which no shunt sees (rule G23): a part of the capacity a month at
 * 20 °C, doubling every 10 K (common practice; two published texts agree).
 */
public final class SelfDischarge {
    /** Warmth of 1.0: 20 °C. */
    public static final int WARMTH_AT_20_CELSIUS_Q8 = 256;

    private static final int REFERENCE_MILLICELSIUS = 20_000;
    private static final int DOUBLING_MILLIKELVIN = 10_000;
    private static final int LOWEST_DOUBLING_COUNT = -4;
    private static final int HIGHEST_DOUBLING_COUNT = 6;
    private static final long MONTH_MINUTES = 43_200;
    private static final int WARMTH_BITS = 8;

    // Parameters.
    private final long lossPerMonthNanocoulombs;

    // State.
    private long remainderNanocoulombs;

    /**
     * Derives the loss.
     *
     * @param partsPerMillionPerMonth 0 to 500,000
     * @param capacityNanocoulombs full-charge capacity
     */
    public SelfDischarge(long partsPerMillionPerMonth, long capacityNanocoulombs) {
        lossPerMonthNanocoulombs =
                StateOfCharge.nanocoulombs(partsPerMillionPerMonth, capacityNanocoulombs);
    }

    /**
     * Self-discharge at a temperature over that at 20 °C.
     *
     * <p><b>Range:</b> 2^((T - 20 °C) / 10 K), linear between whole steps (at most 6.2 % high,
     * never low), limited to -20 °C and 80 °C; 1.0 where the temperature is absent.
     *
     * @param temperatureMillicelsius battery temperature, or absent
     * @return 16 to 16384, in 1/256
     */
    public static int warmthQ8(int temperatureMillicelsius) {
        if (temperatureMillicelsius == Sample.TEMPERATURE_ABSENT) {
            return WARMTH_AT_20_CELSIUS_Q8;
        }
        long above = (long) temperatureMillicelsius - REFERENCE_MILLICELSIUS;
        long step = Math.floorDiv(above, (long) DOUBLING_MILLIKELVIN);
        if (step < LOWEST_DOUBLING_COUNT) {
            return WARMTH_AT_20_CELSIUS_Q8 >> -LOWEST_DOUBLING_COUNT;
        }
        if (step >= HIGHEST_DOUBLING_COUNT) {
            return WARMTH_AT_20_CELSIUS_Q8 << HIGHEST_DOUBLING_COUNT;
        }
        // 2^12 keeps the fraction of the interpolation below the last bit of the result
        long low = step < 0 ? (1L << 20) >> -step : (1L << 20) << step;
        long part = above - step * DOUBLING_MILLIKELVIN;
        return (int) ((low + low * part / DOUBLING_MILLIKELVIN) >> (20 - WARMTH_BITS));
    }

    /**
     * The loss of one minute, remainder carried.
     *
     * <p><b>Range:</b> 1.8e16 nC a month x 16384 would exceed 2^63 only above 1.5e5 Ah a month; the
     * month's loss is divided first into minutes and the remainder carried.
     *
     * @param warmthQ8 from {@link #warmthQ8}
     * @return nanocoulombs, 0 or more
     */
    public long minuteNanocoulombs(int warmthQ8) {
        long divisor = MONTH_MINUTES << WARMTH_BITS;
        // lossPerMonth <= 1.8e16 < 2^54; split so that the product with the warmth fits
        long whole = lossPerMonthNanocoulombs / divisor;
        long rest = lossPerMonthNanocoulombs % divisor;
        long scaled = rest * warmthQ8 + remainderNanocoulombs;
        remainderNanocoulombs = scaled % divisor;
        return whole * warmthQ8 + scaled / divisor;
    }
}
