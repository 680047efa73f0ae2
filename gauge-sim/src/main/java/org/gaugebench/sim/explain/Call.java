package org.gaugebench.sim.explain;

import org.gaugebench.core.port.Command;
import org.jspecify.annotations.Nullable;

/**
 * Something that was asked of a gauge beside its samples.
 *
 * @param atMillis simulated time
 * @param words what, and what it answered
 * @param command the command, or null for power and settings
 * @param argument the command's figure
 * @param before registers before, by ordinal
 * @param after registers after, by ordinal
 */
record Call(
        long atMillis,
        String words,
        @Nullable Command command,
        long argument,
        Seen before,
        Seen after) {}
