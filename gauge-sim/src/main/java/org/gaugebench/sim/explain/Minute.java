package org.gaugebench.sim.explain;

/**
 * A whole minute as the rules see it, gathered tick by tick outside the core.
 *
 * @param uptimeMillis of its end
 * @param nanocoulombs through the shunt: the sum of microamps times milliseconds
 * @param microvoltMillis the same of the voltage
 * @param lowestMicrovolts of its samples
 * @param highestMicrovolts of its samples
 * @param lowestMicroamps of its samples
 * @param highestMicroamps of its samples
 * @param doubtful whether any stretch stands on a clipped or implausible sample
 * @param millicelsius of the sample that ends it
 * @param lossCarryNanocoulombs what the division of the self-discharge had left before it
 * @param inNanocoulombs into the battery through the shunt, stretch by stretch
 * @param outNanocoulombs out of it
 */
record Minute(
        long uptimeMillis,
        long nanocoulombs,
        long microvoltMillis,
        long lowestMicrovolts,
        long highestMicrovolts,
        long lowestMicroamps,
        long highestMicroamps,
        boolean doubtful,
        long millicelsius,
        long lossCarryNanocoulombs,
        long inNanocoulombs,
        long outNanocoulombs) {
    static final int MILLIS = 60_000;

    static final Minute EMPTY =
            new Minute(
                    0,
                    0,
                    0,
                    Integer.MAX_VALUE,
                    Integer.MIN_VALUE,
                    Integer.MAX_VALUE,
                    Integer.MIN_VALUE,
                    false,
                    0,
                    0,
                    0,
                    0);

    /** With a stretch of one current and one voltage more. */
    Minute with(long microamps, long microvolts, long millis, boolean spoilt) {
        long part = microamps * millis;
        return new Minute(
                uptimeMillis,
                nanocoulombs + part,
                microvoltMillis + microvolts * millis,
                Math.min(lowestMicrovolts, microvolts),
                Math.max(highestMicrovolts, microvolts),
                Math.min(lowestMicroamps, microamps),
                Math.max(highestMicroamps, microamps),
                doubtful || spoilt,
                millicelsius,
                lossCarryNanocoulombs,
                inNanocoulombs + Math.max(part, 0),
                outNanocoulombs + Math.max(-part, 0));
    }

    /** As it ends. */
    Minute ended(long uptime, long temperature, long lossCarry) {
        return new Minute(
                uptime,
                nanocoulombs,
                microvoltMillis,
                lowestMicrovolts,
                highestMicrovolts,
                lowestMicroamps,
                highestMicroamps,
                doubtful,
                temperature,
                lossCarry,
                inNanocoulombs,
                outNanocoulombs);
    }

    Expression mean() {
        return Expression.of(nanocoulombs).half(MILLIS);
    }

    Expression meanMicrovolts() {
        return Expression.of(microvoltMillis).over(MILLIS);
    }
}
