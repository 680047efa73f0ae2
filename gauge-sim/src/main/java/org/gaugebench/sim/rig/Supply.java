package org.gaugebench.sim.rig;

import org.gaugebench.core.port.OffTime;
import org.gaugebench.sim.scenario.PowerSpec;

/** Whether a gauge has power, since when it has none, and what it will know of that. */
final class Supply {
    private static final long NEVER = Long.MAX_VALUE;

    private final PowerSpec spec;
    private OffTime offTime;
    private boolean on;
    private long offSinceMillis;
    private long backAtMillis;

    /** No power yet: it comes with the first tick. */
    Supply(PowerSpec spec) {
        this.spec = spec;
        offTime = spec.offTime();
    }

    boolean isOn() {
        return on;
    }

    void switchOn() {
        on = true;
    }

    /** Power goes and stays away until somebody switches it on. */
    void switchOff(long nowMillis) {
        if (on) {
            offSinceMillis = nowMillis;
        }
        on = false;
        backAtMillis = NEVER;
    }

    /** Power goes and comes back by itself. */
    void cut(long nowMillis) {
        switchOff(nowMillis);
        backAtMillis = nowMillis + spec.cutMillis();
    }

    boolean isDue(long nowMillis) {
        return nowMillis >= backAtMillis;
    }

    void setOffTime(OffTime known) {
        offTime = known;
    }

    OffTime offTime() {
        return offTime;
    }

    /** What the gauge's own counter of the time without power shows. */
    long shownOffMillis(long nowMillis) {
        if (offTime == OffTime.UNKNOWN) {
            return 0;
        }
        long passed = nowMillis - offSinceMillis;
        long limit = spec.offTimeLimitMillis();
        return limit == 0 ? passed : Math.min(passed, limit);
    }
}
