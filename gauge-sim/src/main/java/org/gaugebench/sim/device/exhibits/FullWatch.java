package org.gaugebench.sim.device.exhibits;

/** Looks for full, and after finding it waits for a discharge before it looks again. */
final class FullWatch {
    private final FullRule rule;
    private final boolean waitsForDischarge;
    private final long rearmCountMillis;
    private long dischargedCountMillis;
    private boolean armed = true;

    FullWatch(FullRule rule, boolean waitsForDischarge, long rearmCountMillis) {
        this.rule = rule;
        this.waitsForDischarge = waitsForDischarge;
        this.rearmCountMillis = rearmCountMillis;
    }

    /** Takes a sample and what was counted for it; tells whether the count is to be set to full. */
    boolean fires(int microvolts, double microamps, long millis, long countMillis) {
        if (!armed) {
            dischargedCountMillis = Math.max(0, dischargedCountMillis - countMillis);
            armed = dischargedCountMillis >= rearmCountMillis;
        }
        if (!armed || !rule.says(microvolts, microamps, millis)) {
            return false;
        }
        armed = !waitsForDischarge;
        dischargedCountMillis = 0;
        rule.restart();
        return true;
    }
}
