package org.gaugebench.sim.plant;

/** A supply that has what it has, and not the same at every instant of a step. */
interface UnsteadySupply {
    /**
     * Mean current on offer over a step, in amps.
     *
     * @param fromMillis not before the end of the step asked for last
     * @param toMillis after it
     */
    double meanAmps(long fromMillis, long toMillis);

    /**
     * What flows at the end of that step.
     *
     * @param millis its end
     * @param outputAmps mean output over the step, at most the mean on offer
     */
    double ampsAt(long millis, double outputAmps);

    /** First instant at or after the given one from which the mean over a step changes. */
    long nextChangeMillis(long atMillis);

    /** What hangs on it was switched. */
    default void switchTo(boolean on, long nowMillis) {}

    /** Takes over the state of another one of the same spec. */
    void adopt(UnsteadySupply other);
}
