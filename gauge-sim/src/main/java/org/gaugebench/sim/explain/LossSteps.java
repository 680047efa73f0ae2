package org.gaugebench.sim.explain;

import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** The self-discharge of a minute (arithmetic.md 16, rule G23). */
final class LossSteps {
    private static final long MONTH_MINUTES_Q8 = 43_200 * 256;

    private LossSteps() {}

    /** How much faster than at 20 °C, in 1/256. */
    static Expression warmth(long millicelsius) {
        if (millicelsius == Sample.TEMPERATURE_ABSENT) {
            return Expression.of(256);
        }
        long above = millicelsius - 20_000;
        long step = Math.floorDiv(above, 10_000L);
        if (step < -4) {
            return Expression.of(16);
        }
        if (step >= 6) {
            return Expression.of(16_384);
        }
        Expression low = Expression.of(step < 0 ? (1L << 20) >> -step : (1L << 20) << step);
        return low.plus(low.times(above - step * 10_000).over(10_000)).right(12);
    }

    private static Expression month(GaugeSettings settings) {
        return Expression.of(settings.get(Setting.CAPACITY))
                .times(3_600)
                .times(settings.get(Setting.SELF_DISCHARGE));
    }

    private static Expression rest(GaugeSettings settings, long millicelsius, long carry) {
        long rest = month(settings).value().longValueExact() % MONTH_MINUTES_Q8;
        return Expression.of(rest).times(Expression.of(warmth(millicelsius).value())).plus(carry);
    }

    /** What the division leaves for the next minute. */
    static Expression carry(GaugeSettings settings, long millicelsius, long carry) {
        return rest(settings, millicelsius, carry).mod(MONTH_MINUTES_Q8);
    }

    /** Writes the loss of a minute and answers it in nanocoulombs. */
    static long write(Sheet sheet, GaugeSettings settings, Minute minute) {
        if (settings.get(Setting.SELF_DISCHARGE) == 0) {
            sheet.words("lost inside", "nothing: the setting self-discharge is 0");
            return 0;
        }
        long celsius = minute.millicelsius();
        long carry = minute.lossCarryNanocoulombs();
        Expression warmth = sheet.step("warmth", warmth(celsius), "1/256");
        Expression month = sheet.step("lost in 30 days at 20 °C", month(settings), "nC");
        Expression whole = sheet.step("whole part", month.over(MONTH_MINUTES_Q8), "nC/256");
        Expression rest = sheet.step("the rest of it", month.mod(MONTH_MINUTES_Q8), "nC/256");
        Expression scaled = rest.times(warmth).plus(carry);
        Expression lost =
                sheet.step(
                        "lost in the minute",
                        whole.times(warmth).plus(scaled.over(MONTH_MINUTES_Q8)),
                        "nC");
        sheet.step("carried to the next", scaled.mod(MONTH_MINUTES_Q8), "nC/11059200");
        return lost.whole();
    }
}
