package org.gaugebench.sim.plant;

import org.gaugebench.sim.scenario.BatterySpec;

/**
 * The battery's protection circuit: one switch for each direction and a forced-open state.
 *
 * <p>The charge path opens when the terminals reach the charge stop while charge flows, and closes
 * again as soon as a discharge is asked of the battery. The discharge path opens when they reach
 * the discharge stop while a discharge flows, and closes again as soon as a charge is offered
 * (common practice, no source). Neither recloses on the voltage's own recovery, so none flaps.
 */
final class Protection {
    private final double chargeStopVolts;
    private final double dischargeStopVolts;
    private boolean forcedOpen;
    private boolean chargeOpen;
    private boolean dischargeOpen;

    Protection(BatterySpec spec) {
        long charge = spec.chargeStopMicrovolts();
        chargeStopVolts = charge > 0 ? charge / 1e6 : Double.POSITIVE_INFINITY;
        // Volts are never below zero: 0 for none needs no special value.
        dischargeStopVolts = spec.dischargeStopMicrovolts() / 1e6;
    }

    /** Takes over the state of another protection circuit of the same spec. */
    void adopt(Protection other) {
        forcedOpen = other.forcedOpen;
        chargeOpen = other.chargeOpen;
        dischargeOpen = other.dischargeOpen;
    }

    void force(boolean open) {
        forcedOpen = open;
    }

    boolean isForcedOpen() {
        return forcedOpen;
    }

    boolean allowsCharge() {
        return !chargeOpen && !forcedOpen;
    }

    boolean allowsDischarge() {
        return !dischargeOpen && !forcedOpen;
    }

    /** Closes what the wish to charge or to discharge closes. */
    void notice(boolean chargeOffered, boolean dischargeAsked) {
        chargeOpen &= !dischargeAsked;
        dischargeOpen &= !chargeOffered;
    }

    /** Whether a path stands open of itself. */
    boolean isTripped() {
        return chargeOpen || dischargeOpen;
    }

    /** Watches the terminals after a step. */
    void watch(double amps, double terminalVolts) {
        if (amps > 0 && terminalVolts >= chargeStopVolts) {
            chargeOpen = true;
        } else if (amps < 0 && terminalVolts <= dischargeStopVolts) {
            dischargeOpen = true;
        }
    }
}
