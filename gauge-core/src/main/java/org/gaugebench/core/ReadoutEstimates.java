package org.gaugebench.core;

import org.gaugebench.core.port.Readout;

/** Copies the estimates into a readout. */
final class ReadoutEstimates {
    private ReadoutEstimates() {}

    static void fill(Stages s, Readout readout) {
        readout.timeToEmptyState = s.timeToEmpty.state();
        readout.timeToEmptyMinutes = s.timeToEmpty.minutes();
        readout.timeToEmptyLowMinutes = s.timeToEmpty.low().minutes();
        readout.timeToEmptyHighMinutes = s.timeToEmpty.high().minutes();
        readout.timeAtThisLoadState = s.timeToEmpty.atThisLoad().state();
        readout.timeAtThisLoadMinutes = s.timeToEmpty.atThisLoad().minutes();
        readout.timeAtUsualUseState = s.timeToEmpty.atUsualUse().state();
        readout.timeAtUsualUseMinutes = s.timeToEmpty.atUsualUse().minutes();
        readout.timeToFullState = s.timeToFull.state();
        readout.timeToFullMinutes = s.timeToFull.minutes();
        readout.lowCharge = s.lowChargeAlarm.isOn();
    }
}
