package org.gaugebench.sim.plant;

import org.gaugebench.sim.random.SplitMix64;
import org.gaugebench.sim.scenario.ChargerSpec.SunSpec;

/**
 * A half-sine sun with clouds that come and go, as the exact mean current over each minute.
 *
 * <p>Clouds are spells of exponential length; the shorter of cloudy and clear spells lasts 10
 * minutes on average and the other as much longer as the part of the day under cloud asks. The
 * spells follow from the seed alone, whatever the tick.
 */
final class Sun {
    static final int MINUTE_MILLIS = 60_000;
    private static final long DAY_MILLIS = 86_400_000;
    private static final double SHORTER_SPELL_MILLIS = 600_000;

    private final double peakAmps;
    private final long sunriseMillis;
    private final long sunsetMillis;
    private final double cloudyPart;
    private final double cloudFactor;
    private SplitMix64 random;

    private boolean cloudy;
    private long spellEndMillis;

    Sun(SunSpec spec, long seed) {
        peakAmps = spec.peakMicroamps() / 1e6;
        sunriseMillis = spec.sunriseMillis();
        sunsetMillis = spec.sunsetMillis();
        cloudyPart = spec.cloudsPartsPerMillion() / 1e6;
        cloudFactor = 1 - spec.cloudDepthPartsPerMillion() / 1e6;
        random = new SplitMix64(seed);
        cloudy = random.nextDouble() < cloudyPart;
        spellEndMillis = spellMillis();
    }

    /** Takes over the clouds of another sun of the same scenario. */
    void adopt(Sun other) {
        random = other.random.copy();
        cloudy = other.cloudy;
        spellEndMillis = other.spellEndMillis;
    }

    private long spellMillis() {
        if (cloudyPart <= 0 || cloudyPart >= 1) {
            return Long.MAX_VALUE;
        }
        double shorterPart = Math.min(cloudyPart, 1 - cloudyPart);
        double mean = SHORTER_SPELL_MILLIS * (cloudy ? cloudyPart : 1 - cloudyPart) / shorterPart;
        return 1 + (long) (-StrictMath.log(1 - random.nextDouble()) * mean);
    }

    /**
     * Mean current over one minute.
     *
     * @param minuteStartMillis a whole minute, not before the last one asked for
     */
    double meanAmps(long minuteStartMillis) {
        long end = minuteStartMillis + MINUTE_MILLIS;
        long from = minuteStartMillis;
        double sum = 0;
        while (from < end) {
            while (spellEndMillis <= from) {
                cloudy = !cloudy;
                spellEndMillis += spellMillis();
            }
            long to = Math.min(end, spellEndMillis);
            sum += clearAmpMillis(from, to) * (cloudy ? cloudFactor : 1);
            from = to;
        }
        return sum / MINUTE_MILLIS;
    }

    /** Integral of the clear sky's current between two instants of one day. */
    private double clearAmpMillis(long fromMillis, long toMillis) {
        long dayStart = fromMillis - fromMillis % DAY_MILLIS;
        long from = Math.max(fromMillis - dayStart, sunriseMillis);
        long to = Math.min(toMillis - dayStart, sunsetMillis);
        if (from >= to) {
            return 0;
        }
        double length = sunsetMillis - sunriseMillis;
        double radiansPerMilli = Math.PI / length;
        return peakAmps
                / radiansPerMilli
                * (StrictMath.cos((from - sunriseMillis) * radiansPerMilli)
                        - StrictMath.cos((to - sunriseMillis) * radiansPerMilli));
    }
}
