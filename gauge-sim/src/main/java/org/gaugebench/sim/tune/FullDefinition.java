package org.gaugebench.sim.tune;

import org.gaugebench.sim.judge.FullCharge;

/**
 * What is called a false full, and what a missed one.
 *
 * @param falseBelowParts a full announced below this true state is false; millionths
 * @param heldMinutes so long a charger has to hold a full battery at its absorption voltage before
 *     a gauge must have seen it
 * @param floatedMinutes the same at float voltage
 */
public record FullDefinition(long falseBelowParts, long heldMinutes, long floatedMinutes) {
    /**
     * Two hours: the usual hold, its quiet time, and pauses that cost as much again; chargers for
     * lithium rarely hold longer. Two days at float: twice the usual hold there.
     */
    public static final FullDefinition USUAL =
            new FullDefinition(FullCharge.FALSE_BELOW_PARTS, 120, 2_880);
}
