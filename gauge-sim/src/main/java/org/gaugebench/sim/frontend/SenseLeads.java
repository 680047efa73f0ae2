package org.gaugebench.sim.frontend;

import org.gaugebench.sim.scenario.SensorSpec;
import org.gaugebench.sim.scenario.WiringSpec;
import org.gaugebench.sim.scenario.WiringSpec.Leads;

/**
 * The leads between shunt and converter: right, swapped, open, or screwed to the lugs of the cables
 * so that they carry the drop of the joints too. They change how much of the drop arrives, not what
 * the channel adds to it.
 */
final class SenseLeads {
    private final double shuntOhms;
    private final double railVolts;
    private double share = 1;
    private double volts;

    SenseLeads(SensorSpec spec) {
        shuntOhms = ShuntModel.ohms(spec);
        // Far enough beyond full scale that no gain error or offset brings it back.
        railVolts = 2 * spec.fullScaleMicrovolts() / 1e6;
    }

    /** Connects the leads as they really are. */
    void connect(WiringSpec wiring) {
        boolean open = wiring.senseLeads().ordinal() >= Leads.OPEN.ordinal();
        boolean swapped = wiring.senseLeads() == Leads.SWAPPED;
        double sensed = (shuntOhms + wiring.lugMicroohms() / 1e6) / shuntOhms;
        share = open ? 0 : swapped == wiring.shuntReversed() ? sensed : -sensed;
        volts =
                switch (wiring.senseLeads()) {
                    case OPEN_HIGH -> railVolts;
                    case OPEN_LOW -> -railVolts;
                    case RIGHT, SWAPPED, OPEN -> 0;
                };
    }

    /** The current whose drop across the bare shunt would be what arrives. */
    double ampsSeen(double amps) {
        return amps * share;
    }

    /** What an open lead's input drifts to, instead of a drop. */
    double volts() {
        return volts;
    }
}
