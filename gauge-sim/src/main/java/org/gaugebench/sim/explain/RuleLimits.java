package org.gaugebench.sim.explain;

import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** The limits of the rules, worked out from the settings (arithmetic.md 10 and 18). */
final class RuleLimits {
    private final GaugeSettings settings;

    RuleLimits(GaugeSettings settings) {
        this.settings = settings;
    }

    private Expression of(Setting setting) {
        return Expression.of(settings.get(setting));
    }

    boolean fullIsOff() {
        return settings.get(Setting.ABSORPTION) == 0;
    }

    boolean floatIsOff() {
        return settings.get(Setting.FLOAT_VOLTAGE) == 0;
    }

    /** By temperature, in uV; 0 without one. */
    Expression compensation(long millicelsius) {
        if (millicelsius == Sample.TEMPERATURE_ABSENT) {
            return Expression.of(0);
        }
        long most = settings.get(Setting.COMPENSATION_LIMIT) * 1_000;
        return of(Setting.TEMPERATURE_COEFFICIENT)
                .times(Expression.of(millicelsius).minus(25_000))
                .half(1_000)
                .min(most)
                .max(-most);
    }

    Expression threshold(long compensation) {
        return of(Setting.ABSORPTION)
                .minus(of(Setting.ABSORPTION_MARGIN))
                .times(1_000)
                .plus(compensation);
    }

    Expression floatThreshold(long compensation) {
        Expression set = of(Setting.FLOAT_VOLTAGE);
        return set.minus(set.over(120)).times(1_000).plus(compensation);
    }

    /** The lowest voltage that a charger holds (rule F8). */
    Expression charging(long compensation) {
        Expression other =
                floatIsOff()
                        ? of(Setting.REST_VOLTAGE_100)
                                .plus(of(Setting.REST_VOLTAGE_BOUND))
                                .times(1_000)
                                .plus(1)
                        : Expression.of(floatThreshold(compensation).value());
        return Expression.of(threshold(compensation).value()).min(other);
    }

    Expression taper() {
        return of(Setting.CAPACITY).times(of(Setting.TAPER)).over(1_000);
    }

    Expression noFlow() {
        return of(Setting.CAPACITY).over(2).max(of(Setting.OFFSET_BOUND));
    }

    Expression someFlow() {
        return of(Setting.CAPACITY).times(2).max(of(Setting.OFFSET_BOUND).times(2));
    }

    Expression floatCurrent() {
        return of(Setting.CAPACITY).times(5);
    }

    Expression rearm() {
        return of(Setting.CAPACITY).times(3_600).times(of(Setting.REARM_DISCHARGE));
    }

    Expression emptyCurrent() {
        return of(Setting.CAPACITY).times(of(Setting.EMPTY_CURRENT)).over(1_000);
    }

    Expression heavyCurrent() {
        return of(Setting.CAPACITY).times(250).min(Expression.of(emptyCurrent().value()));
    }

    Expression restCurrent() {
        return of(Setting.CAPACITY).max(of(Setting.OFFSET_BOUND).times(2));
    }

    /** 1 mAh is 3.6e9 nC. */
    Expression capacity() {
        return of(Setting.CAPACITY).times(3_600_000_000L);
    }
}
