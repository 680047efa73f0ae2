package org.gaugebench.sim.tune;

import java.util.List;
import org.gaugebench.core.settings.Setting;

/**
 * A setting that is searched, and where a search may go.
 *
 * @param setting which
 * @param preset what the battery's chemistry gives it
 * @param loosest the value that lets a full through most easily; may lie outside the safe range
 * @param steps values to try, rising; the first and the last are the ends of the safe range
 * @param lowerReason why nothing lower is recommended
 * @param upperReason why nothing higher is recommended
 */
public record TunedSetting(
        Setting setting,
        long preset,
        long loosest,
        List<Long> steps,
        String lowerReason,
        String upperReason) {

    /** The lower end of the safe range. */
    public long lowest() {
        return steps.get(0);
    }

    /** The upper end of the safe range. */
    public long highest() {
        return steps.get(steps.size() - 1);
    }

    /** Whether a value may be recommended. */
    public boolean isSafe(long value) {
        return value >= lowest() && value <= highest();
    }

    /** How far a value lies from the preset, in thousandths of the safe range. */
    long distance(long value) {
        long range = Math.max(1, highest() - lowest());
        return Math.abs(value - preset) * 1_000 / range;
    }
}
