package org.gaugebench.sim.device.exhibits;

import java.util.Set;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.scenario.Mistake;

/**
 * What part of a current is counted: all of it, unless a mistake weighs it by the efficiency or by
 * Peukert's law. What a whole count-millisecond cuts off is carried, so that weighing is the only
 * mistake here.
 */
final class Weighing {
    private final CountScale scale;
    private final boolean weighs;
    private final boolean efficiencyPerSample;
    private final boolean rateAbove;
    private final boolean rateBelow;
    private final boolean rateOnCharge;
    private final double ratedMicroamps;
    private final double exponentLessOne;
    private double efficiency;
    private double carry;
    private int factorCounts;
    private double factor;

    Weighing(Set<Mistake> mistakes, GaugeSettings settings, CountScale scale) {
        this.scale = scale;
        efficiencyPerSample = mistakes.contains(Mistake.EFFICIENCY_PER_SAMPLE);
        rateAbove = mistakes.contains(Mistake.RATE_COUNTED_CHARGE);
        rateBelow = mistakes.contains(Mistake.RATE_BELOW_RATED);
        rateOnCharge = mistakes.contains(Mistake.RATE_ON_CHARGE);
        weighs = efficiencyPerSample || rateAbove || rateBelow || rateOnCharge;
        // derived: mAh x 1000 / h = uA
        ratedMicroamps = settings.get(Setting.CAPACITY) * 1e3 / settings.get(Setting.RATED_TIME);
        exponentLessOne = settings.get(Setting.PEUKERT_EXPONENT) / 1e6 - 1;
        changeEfficiency(settings.get(Setting.COULOMBIC_EFFICIENCY));
    }

    void changeEfficiency(long partsPerMillion) {
        efficiency = partsPerMillion / 1e6;
        factorCounts = 0;
        factor = 1;
    }

    /** What is counted for a stretch. */
    long countMillis(int counts, long millis) {
        long all = counts * millis;
        if (!weighs) {
            return all;
        }
        if (counts != factorCounts) {
            factorCounts = counts;
            factor = factor(scale.microamps(counts));
        }
        double weighed = all * factor + carry;
        double whole = StrictMath.floor(weighed);
        carry = weighed - whole;
        return (long) whole;
    }

    private double factor(double microamps) {
        if (microamps == 0) {
            return 1;
        }
        double ratio = Math.abs(microamps) / ratedMicroamps;
        double rate = StrictMath.pow(ratio, exponentLessOne);
        if (microamps > 0) {
            return (rateOnCharge ? rate : 1) * (efficiencyPerSample ? efficiency : 1);
        }
        boolean counted = ratio > 1 ? rateAbove : rateBelow;
        return counted ? rate : 1;
    }
}
