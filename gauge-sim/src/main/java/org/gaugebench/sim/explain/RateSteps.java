package org.gaugebench.sim.explain;

import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** What rate and cold leave in the battery (arithmetic.md 12 and its logarithm). */
final class RateSteps {
    private static final int TABLE_BITS = 30;
    private static final int STEP_BITS = 22;
    private static final int FRACTION_BITS = 24;
    private static final long STEP = 1L << STEP_BITS;
    private static final long ONE_Q24 = 1L << FRACTION_BITS;

    private final Sheet sheet;
    private final GaugeSettings settings;

    RateSteps(Sheet sheet, GaugeSettings settings) {
        this.sheet = sheet;
        this.settings = settings;
    }

    private long setting(Setting setting) {
        return settings.get(setting);
    }

    /** Nanocoulombs that stay behind at a current that flows out. */
    Expression behind(long microamps, long millicelsius) {
        long capacity = new RuleLimits(settings).capacity().whole();
        Expression factor = factor(-microamps, capacity);
        Expression warm = sheet.step("to be had at this warmth", warm(millicelsius), "ppm");
        Expression part =
                sheet.step(
                        "part that comes out",
                        Expression.twoTo(TABLE_BITS + FRACTION_BITS)
                                .over(factor)
                                .times(warm)
                                .over(1_000_000),
                        "1/2^30");
        Expression low = Expression.of(capacity).mod(1L << TABLE_BITS).times(part);
        return sheet.step(
                "left behind",
                Expression.of(capacity)
                        .minus(Expression.of(capacity).right(TABLE_BITS).times(part))
                        .minus(low.right(TABLE_BITS)),
                "nC");
    }

    /** Peukert's factor in 1/2^24: never under 1. */
    private Expression factor(long out, long capacity) {
        long exponent = setting(Setting.PEUKERT_EXPONENT) - 1_000_000;
        if (exponent == 0) {
            return sheet.step("factor of the rate", Expression.of(ONE_Q24), "1/2^24");
        }
        Expression current = log2("the current", out);
        Expression full = log2("the capacity", capacity);
        Expression hours = log2("the rated time", setting(Setting.RATED_TIME) * 3_600_000);
        Expression ratio =
                sheet.step("current over rated", current.minus(full.minus(hours)), "log2, 1/2^24");
        if (!sheet.holds("above the rated one", ratio, ">", Expression.of(0))) {
            return sheet.step("factor of the rate", Expression.of(ONE_Q24), "1/2^24");
        }
        Expression x =
                sheet.step(
                        "times exponent less 1",
                        ratio.times(exponent).over(1_000_000),
                        "log2, 1/2^24");
        return powerOfTwo(x.whole());
    }

    private Expression powerOfTwo(long x) {
        long whole = x >> FRACTION_BITS;
        long place = (x & (ONE_Q24 - 1)) << (TABLE_BITS - FRACTION_BITS);
        Expression mantissa =
                sheet.step(
                        "2 to its fraction",
                        Expression.twoTo(TABLE_BITS)
                                .plus(
                                        between(
                                                power(place >> STEP_BITS),
                                                power((place >> STEP_BITS) + 1),
                                                place)),
                        "1/2^30");
        int shift = (int) whole - (TABLE_BITS - FRACTION_BITS);
        Expression factor = shift >= 0 ? mantissa.times(1L << shift) : mantissa.right(-shift);
        return sheet.step("factor of the rate", factor, "1/2^24");
    }

    private Expression log2(String of, long value) {
        int top = 63 - Long.numberOfLeadingZeros(value);
        Expression bits =
                sheet.step(
                        "bits of " + of,
                        Expression.of(value)
                                .minus(Expression.twoTo(top))
                                .times(Expression.twoTo(TABLE_BITS))
                                .over(Expression.twoTo(top)),
                        "1/2^30");
        long place = bits.whole();
        Expression at =
                between(logarithm(place >> STEP_BITS), logarithm((place >> STEP_BITS) + 1), place);
        return sheet.step(
                "log2 of " + of,
                Expression.of(top)
                        .times(Expression.twoTo(FRACTION_BITS))
                        .plus(at.right(TABLE_BITS - FRACTION_BITS)),
                "1/2^24");
    }

    private static Expression between(long low, long high, long place) {
        Expression rise = Expression.of(high).minus(low);
        return Expression.of(low).plus(rise.times(Expression.of(place).mod(STEP)).right(STEP_BITS));
    }

    /** Entry of the table of logarithms, 30 fraction bits, to the nearest. */
    private static long logarithm(long index) {
        double log2 = StrictMath.log(1 + index / 256.0) / StrictMath.log(2);
        return StrictMath.round(log2 * (1L << TABLE_BITS));
    }

    /** Entry of the table of powers, likewise. */
    private static long power(long index) {
        return StrictMath.round((StrictMath.pow(2, index / 256.0) - 1) * (1L << TABLE_BITS));
    }

    private Expression warm(long millicelsius) {
        long cool = setting(Setting.USABLE_AT_10);
        long cold = Math.min(setting(Setting.USABLE_AT_0), cool);
        long frost = Math.min(setting(Setting.USABLE_AT_MINUS_20), cold);
        if (millicelsius == Sample.TEMPERATURE_ABSENT
                || millicelsius <= -40_000
                || millicelsius >= 25_000) {
            return Expression.of(1_000_000);
        }
        if (millicelsius >= 10_000) {
            return line(millicelsius - 10_000, 15_000, cool, 1_000_000);
        }
        if (millicelsius >= 0) {
            return line(millicelsius, 10_000, cold, cool);
        }
        return line(Math.max(millicelsius, -20_000) + 20_000, 20_000, frost, cold);
    }

    private static Expression line(long place, long length, long from, long to) {
        Expression rise = Expression.of(to).minus(from);
        return Expression.of(from).plus(rise.times(place).over(length));
    }
}
