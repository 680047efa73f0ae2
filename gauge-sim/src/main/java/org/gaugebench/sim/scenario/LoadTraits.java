package org.gaugebench.sim.scenario;

import org.jspecify.annotations.Nullable;

/**
 * What a scenario may ask of a load beyond on, off and a cycle. Everything is off in {@link #NONE},
 * and off costs nothing in a run.
 *
 * @param startsAfterMillis how long after being switched on (or after the start of the run) the
 *     load begins
 * @param shape how the draw moves within the on part; null for constant
 * @param profile file that it follows; null for none
 */
public record LoadTraits(
        long startsAfterMillis, @Nullable LoadShape shape, @Nullable ProfileSpec profile) {
    /** A load that begins at once and draws evenly. */
    public static final LoadTraits NONE = new LoadTraits(0, null);

    /** A load that follows no file. */
    public LoadTraits(long startsAfterMillis, @Nullable LoadShape shape) {
        this(startsAfterMillis, shape, null);
    }
}
