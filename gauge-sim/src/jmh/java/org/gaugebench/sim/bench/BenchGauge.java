package org.gaugebench.sim.bench;

import org.gaugebench.core.port.Sample;

/** What the bench asks of the core and of each peer. */
interface BenchGauge {
    /** Declares 70 % so that every gauge starts alike. */
    void start();

    /** One sample. */
    void tick(Sample sample);

    /** Charge, in ampere-hours, for the check that all do the same work. */
    double chargeAmpHours();

    /** Energy out, in watt-hours, for the same check. */
    double energyOutWattHours();

    /** Full anchors so far, for the same check. */
    int fullCount();

    /** Minutes to empty; 0 where there is no estimate. */
    int timeToEmptyMinutes();
}
