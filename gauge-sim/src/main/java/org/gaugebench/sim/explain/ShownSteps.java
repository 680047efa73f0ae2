package org.gaugebench.sim.explain;

import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** What a display rounds the figures to (arithmetic.md 19, rules V1 to V3 and T8). */
final class ShownSteps {
    private static final long PERCENT = 10_000;
    private static final long FULL = 1_000_000;

    private final Sheet sheet;
    private final GaugeSettings settings;

    ShownSteps(Sheet sheet, GaugeSettings settings) {
        this.sheet = sheet;
        this.settings = settings;
    }

    /**
     * Writes current, percent and hours.
     *
     * @param proven whether full is proven
     * @param before what the display showed before, where a minute ended in this moment, or -2
     */
    void write(boolean proven, long before) {
        sheet.section("What a display shows", "arithmetic 19; V1 to V3, T8");
        current();
        percent(proven, before);
        hours();
    }

    private void current() {
        long microamps = sheet.register(Register.CURRENT_MICROAMPS);
        Expression magnitude = Expression.of(microamps).abs();
        boolean none =
                sheet.holds(
                        "too small to be shown",
                        magnitude,
                        "<",
                        Expression.of(settings.get(Setting.SHOWN_AS_ZERO_BELOW)).times(1_000));
        Expression tenths = magnitude.plus(50_000).over(100_000).times(100);
        Expression signed = microamps < 0 ? tenths.negative() : tenths;
        sheet.step("current", none ? Expression.of(0) : signed, Register.SHOWN_MILLIAMPS);
    }

    private void percent(boolean proven, long before) {
        Register register = Register.SHOWN_PERCENT;
        long shown = sheet.register(register);
        if (before < -1) {
            sheet.words(
                    "percent",
                    shown < 0
                            ? "not known"
                            : shown + ", as the last whole minute or command left it");
            return;
        }
        if (sheet.register(Register.STATE_OF_CHARGE_PARTS_PER_MILLION) < 0) {
            sheet.words("percent", "not known");
            return;
        }
        long part = settings.get(Setting.CAPACITY) * 3_600;
        Expression state =
                sheet.step(
                        "state at the minute's end",
                        Expression.of(sheet.register(Register.SETTLED_NANOCOULOMBS)).over(part),
                        "ppm");
        long least = before == 100 ? FULL - PERCENT / 2 : FULL;
        if (proven && sheet.holds("full is shown", state, ">=", Expression.of(least))) {
            sheet.step("percent", Expression.of(100), register);
            return;
        }
        if (state.value().signum() == 0) {
            sheet.step("percent", Expression.of(0), register);
            return;
        }
        Expression held = state.over(PERCENT).min(99).max(1);
        if (before > 0 && held.whole() == before + 1) {
            Expression edge = Expression.of(before + 1).times(PERCENT).plus(PERCENT / 2);
            if (sheet.holds("not half a percent beyond", state, "<", edge)) {
                held = Expression.of(before);
            }
        }
        sheet.step("percent", held, register);
    }

    private void hours() {
        EstimateState state =
                EstimateState.values()[(int) sheet.register(Register.TIME_TO_EMPTY_STATE)];
        if (state != EstimateState.ESTIMATE) {
            sheet.words("hours", "none");
            return;
        }
        long minutes = sheet.register(Register.TIME_TO_EMPTY_MINUTES);
        Expression exact = Expression.of(minutes);
        Expression rounded = exact;
        if (minutes >= 1_440) {
            rounded = exact.minus(exact.mod(60));
        } else if (minutes >= 600) {
            rounded = exact.minus(exact.mod(5));
        }
        sheet.step("hours, in minutes", rounded, Register.SHOWN_TIME_TO_EMPTY_MINUTES);
    }
}
