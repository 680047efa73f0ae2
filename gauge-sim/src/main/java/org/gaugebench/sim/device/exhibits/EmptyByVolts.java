package org.gaugebench.sim.device.exhibits;

/** Takes the empty voltage for empty, whatever flows; once each time the voltage falls to it. */
final class EmptyByVolts {
    private final boolean used;
    private final long emptyMicrovolts;
    private boolean below;

    /** A setting of 0 switches it off. */
    EmptyByVolts(boolean used, long emptyMillivolts) {
        this.used = used;
        emptyMicrovolts = emptyMillivolts * 1_000;
    }

    /** Takes a sample; tells whether the count is to be set to empty. */
    boolean fires(int microvolts) {
        boolean wasBelow = below;
        below = used && emptyMicrovolts > 0 && microvolts <= emptyMicrovolts;
        return below && !wasBelow;
    }
}
