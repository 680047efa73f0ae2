package org.gaugebench.sim.frontend;

import org.gaugebench.sim.scenario.SensorSpec;
import org.gaugebench.sim.scenario.WiringSpec;
import org.gaugebench.sim.scenario.WiringSpec.Leads;

/**
 * The shunt as it really is: rated resistance, tolerance, its leads and the channel's input offset.
 */
final class ShuntModel {
    private final double ownOhms;
    private final double railVolts;
    private double ohms;
    private double leadVolts;
    private double offsetVolts;
    private double inputVolts;

    ShuntModel(SensorSpec spec) {
        double ratedOhms = (double) spec.shuntRatedMicrovolts() / spec.shuntRatedMicroamps();
        ownOhms = ratedOhms * (1 + spec.shuntErrorPartsPerMillion() / 1e6);
        // Far enough beyond full scale that no gain error or offset brings it back.
        railVolts = 2 * spec.fullScaleMicrovolts() / 1e6;
        ohms = ownOhms;
        setOffsetNanovolts(spec.offsetNanovolts());
    }

    void setOffsetNanovolts(long nanovolts) {
        offsetVolts = nanovolts / 1e9;
        inputVolts = leadVolts + offsetVolts;
    }

    /** Connects the leads as they really are. */
    void setWiring(WiringSpec wiring) {
        boolean open = wiring.senseLeads().ordinal() >= Leads.OPEN.ordinal();
        boolean swapped = wiring.senseLeads() == Leads.SWAPPED;
        double sensed = ownOhms + wiring.lugMicroohms() / 1e6;
        ohms = open ? 0 : swapped == wiring.shuntReversed() ? sensed : -sensed;
        leadVolts =
                switch (wiring.senseLeads()) {
                    case OPEN_HIGH -> railVolts;
                    case OPEN_LOW -> -railVolts;
                    case RIGHT, SWAPPED, OPEN -> 0;
                };
        inputVolts = leadVolts + offsetVolts;
    }

    /** Voltage at the converter's input. */
    double voltsAt(double amps) {
        return amps * ohms + inputVolts;
    }
}
