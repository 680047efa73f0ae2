package org.gaugebench.sim.device.exhibits;

/**
 * Works out a capacity whenever the voltage says that the state of charge moved by a fifth: the
 * charge that flowed since, divided by that part. Nothing asks whether the battery rested.
 */
final class CapacityByVolts {
    private static final double LEAST_PART = 0.2;

    /** A capacity of nothing cannot be divided by; a hundredth of the declared one can. */
    private static final double LEAST_OF_DECLARED = 0.01;

    private final boolean used;
    private final VoltageTable table;
    private final long leastCountMillis;
    private boolean begun;
    private double partThen;
    private long movedCountMillis;

    CapacityByVolts(boolean used, VoltageTable table, long declaredCountMillis) {
        this.used = used;
        this.table = table;
        leastCountMillis = StrictMath.round(declaredCountMillis * LEAST_OF_DECLARED);
    }

    /** Another capacity in count-milliseconds, or 0 while there is nothing new. */
    long learned(int microvolts, long countMillis) {
        if (!used) {
            return 0;
        }
        double part = table.partAt(microvolts);
        if (!begun) {
            begun = true;
            partThen = part;
            return 0;
        }
        movedCountMillis += countMillis;
        double moved = Math.abs(part - partThen);
        if (moved < LEAST_PART) {
            return 0;
        }
        long capacity = StrictMath.round(Math.abs(movedCountMillis) / moved);
        partThen = part;
        movedCountMillis = 0;
        return Math.max(capacity, leastCountMillis);
    }
}
