package org.gaugebench.core.rules;

import org.gaugebench.core.charge.MinuteMean;

/**
 * The way to full of a system that never reaches absorption (rule F11): a long time at the float
 * voltage with next to no current.
 *
 * <p>The current must not run out of the battery either. A battery that was nearly filled and then
 * left alone stays near its float voltage for hours while a small load drains it; only a charger
 * holds it there at no current.
 */
final class FloatPath {
    // Parameters.
    private final FullChargeLimits limits;

    // State.
    private final HoldTimer hold = new HoldTimer();

    FloatPath(FullChargeLimits limits) {
        this.limits = limits;
    }

    /** Takes one minute and answers whether it speaks for a full battery on float. */
    boolean judge(MinuteMean minute, int temperatureMillicelsius, FlowWatch flow) {
        boolean runs =
                limits.floatMinutes > 0
                        && !minute.isDoubtful()
                        && flow.flowSeen()
                        && minute.meanMicroamps() <= limits.floatMicroamps
                        && minute.meanMicroamps() >= -limits.noFlowMicroamps
                        && minute.lowestMicrovolts()
                                >= limits.floatThresholdMicrovolts(temperatureMillicelsius);
        if (runs) {
            hold.inside();
        } else {
            hold.outside();
        }
        return runs;
    }

    boolean isProven() {
        return limits.floatMinutes > 0 && hold.heldMinutes() >= limits.floatMinutes;
    }

    void reset() {
        hold.reset();
    }
}
