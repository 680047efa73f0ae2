package org.gaugebench.sim.device.exhibits;

/** Holds the count in a form of its own; whatever that form cannot hold is lost. */
interface Accumulator {
    /** Adds a stretch, positive into the battery. */
    void add(long countMillis);

    /** Sets the count. */
    void set(long countMillis);

    /** The count as this form gives it back. */
    long countMillis();

    /** Another coulombic efficiency is in force; most forms do not care. */
    default void changeEfficiency(long partsPerMillion) {}
}
