package org.gaugebench.sim.scenario;

import org.jspecify.annotations.Nullable;

/**
 * What a scenario may ask of a load beyond on, off and a cycle. Everything is off in {@link #NONE},
 * and off costs nothing in a run.
 *
 * @param startsAfterMillis how long after being switched on (or after the start of the run) the
 *     load begins
 * @param shape how the draw moves within the on part; null for constant
 * @param returning what it gives back in a part of its cycle; null for nothing
 * @param profile file that it follows; null for none
 */
public record LoadTraits(
        long startsAfterMillis,
        @Nullable LoadShape shape,
        @Nullable Returning returning,
        @Nullable ProfileSpec profile) {
    /** A load that begins at once and draws evenly. */
    public static final LoadTraits NONE = new LoadTraits(0, null);

    /** A load that gives nothing back and follows no file. */
    public LoadTraits(long startsAfterMillis, @Nullable LoadShape shape) {
        this(startsAfterMillis, shape, null, null);
    }

    /**
     * Charge that comes back: a hoist that lowers, a drive that brakes.
     *
     * @param microamps that it gives, above 0
     * @param forMillis how long, in each cycle
     * @param afterMillis from the beginning of the cycle
     * @param limitMicrovolts voltage at the bus above which it gives less
     */
    public record Returning(
            long microamps, long forMillis, long afterMillis, long limitMicrovolts) {}
}
