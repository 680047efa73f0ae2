package org.gaugebench.sim.judge;

/**
 * One gauge's run against the truth.
 *
 * @param gauge its name
 * @param finalPartsPerMillion state of charge shown at the end, or -1 when unknown
 * @param finalMicroampHours charge shown at the end; 0 when unknown
 * @param worstErrorPartsPerMillion shown minus true state of charge, the largest by magnitude of
 *     all whole minutes at which it was known
 * @param worstAtMillis when; -1 if it never was known
 * @param shownPercent state of charge shown, one value a minute
 */
public record LaneResult(
        String gauge,
        long finalPartsPerMillion,
        long finalMicroampHours,
        long worstErrorPartsPerMillion,
        long worstAtMillis,
        Track shownPercent) {}
