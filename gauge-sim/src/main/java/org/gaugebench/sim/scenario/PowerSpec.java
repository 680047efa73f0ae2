package org.gaugebench.sim.scenario;

import org.gaugebench.core.port.OffTime;
import org.gaugebench.sim.memory.CutPlan;
import org.jspecify.annotations.Nullable;

/**
 * What becomes of a gauge when its power goes: what it saves into, what it knows afterwards, and
 * what a cut in the middle of a save leaves.
 *
 * @param memory null where it has none: a restart then forgets everything
 * @param offTime how well it knows for how long it was without power
 * @param offTimeLimitMillis longest time without power that its counter can hold; it stands there
 *     for every longer one; 0 for no limit
 * @param cutLeaves what a write under way leaves behind
 * @param cutMillis for how long power is away after a cut at a write
 */
public record PowerSpec(
        @Nullable MemorySpec memory,
        OffTime offTime,
        long offTimeLimitMillis,
        CutPlan.Manner cutLeaves,
        long cutMillis) {
    /** No memory, and a clock that runs through. */
    public static final PowerSpec USUAL =
            new PowerSpec(null, OffTime.EXACT, 0, CutPlan.Manner.HALF, 10_000);
}
