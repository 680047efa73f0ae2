package org.gaugebench.sim.plant;

import java.util.Arrays;
import java.util.List;
import org.gaugebench.sim.scenario.LoadSpec;
import org.gaugebench.sim.scenario.WiringSpec;

/**
 * Which way the currents take. At the battery's terminal
 *
 * <pre>
 * battery = chargers - loads - own supply,   shunt = (1 - parallel) x (battery - what is past it)
 * </pre>
 *
 * where past the shunt are the gauge's own supply and the stated parts of loads and chargers.
 */
final class Wiring {
    private final List<LoadSpec> loadSpecs;
    private final LoadBank loads;
    private final Charger[] chargers;
    private final Bus bus;
    private final double[] loadParts;
    private final double[] chargerParts;
    private final boolean anyUneven;
    private WiringSpec spec = WiringSpec.RIGHT;
    private double throughPart = 1;
    private double jointOhms;
    private double ownAmps;
    private boolean anyLoadPast;
    private boolean anyChargerPast;
    private boolean straight = true;
    private boolean voltageAtBattery;

    Wiring(List<LoadSpec> loadSpecs, LoadBank loads, Charger[] chargers, Bus bus) {
        this.loadSpecs = loadSpecs;
        this.loads = loads;
        this.chargers = chargers;
        this.bus = bus;
        loadParts = new double[loadSpecs.size()];
        chargerParts = new double[chargers.length];
        anyUneven = Arrays.stream(chargers).anyMatch(Charger::isUneven);
    }

    WiringSpec spec() {
        return spec;
    }

    void set(WiringSpec next) {
        spec = next;
        throughPart = 1 - next.parallelPartsPerMillion() / 1e6;
        jointOhms = next.jointMicroohms() / 1e6;
        voltageAtBattery = next.voltageAtBattery();
        ownAmps = next.ownSupplyMicroamps() / 1e6;
        Arrays.setAll(loadParts, i -> next.pastShunt(loadSpecs.get(i).name()) / 1e6);
        Arrays.setAll(chargerParts, i -> next.pastShunt(chargers[i].name()) / 1e6);
        anyLoadPast = Arrays.stream(loadParts).anyMatch(part -> part > 0);
        anyChargerPast = Arrays.stream(chargerParts).anyMatch(part -> part > 0);
        straight = !anyLoadPast && !anyChargerPast && ownAmps == 0 && throughPart == 1;
    }

    double jointOhms() {
        return jointOhms;
    }

    double ownAmps() {
        return ownAmps;
    }

    boolean isVoltageAtBattery() {
        return voltageAtBattery;
    }

    /** Whether all of the battery's current crosses the shunt and nothing else does. */
    boolean isStraight() {
        return straight;
    }

    /**
     * Battery current at an instant. It differs from the mean through uneven chargers and through
     * loads that cycle or have a shape: what these draw beyond their mean is given by the
     * regulating charger as far as it has current to spare and is not pulsed, and by the battery
     * beyond that. The voltage is taken as in the mean.
     */
    double batteryAmpsAt(long millis, double meanAmps) {
        double excess = loads.excessAmpsAt(millis, bus.volts());
        double uneven = unevenAmpsAt(millis, meanAmps);
        if ((excess == 0 && uneven == 0) || meanAmps == 0) {
            return meanAmps;
        }
        return meanAmps - (excess - regulatorExtraAmps(excess)) + uneven;
    }

    /** What uneven chargers give at an instant beyond their mean; the battery takes it all. */
    private double unevenAmpsAt(long millis, double meanAmps) {
        double amps = 0;
        if (anyUneven && meanAmps != 0) {
            for (Charger charger : chargers) {
                amps += charger.excessAmpsAt(millis);
            }
        }
        return amps;
    }

    /** How far that lifts the voltage at the gauge's leads above that of the mean. */
    double unevenVoltsAt(long millis, double meanAmps) {
        double ohms = bus.promptOhms() - (voltageAtBattery ? jointOhms : 0);
        return unevenAmpsAt(millis, meanAmps) * ohms;
    }

    /** What of the loads' excess over their mean the regulating charger gives, or gives less. */
    private double regulatorExtraAmps(double excess) {
        return bus.followsInstants() ? Math.min(excess, bus.regulatorSpareAmps()) : 0;
    }

    /** Mean current through the shunt over the step. */
    double meanShuntAmps(double batteryAmps) {
        double volts = sharingVolts();
        double asked = loads.ampsAt(volts);
        // Loads that ask more than there is share what they get.
        double given = asked > 0 ? bus.loadAmps() / asked : 0;
        double amps = batteryAmps + ownAmps * given;
        if (anyLoadPast) {
            amps += given * loads.meanPastAmps(loadParts, volts);
        }
        if (anyChargerPast) {
            amps -= pastChargerAmps(0);
        }
        return throughPart * amps;
    }

    /** Current through the shunt at an instant. */
    double shuntAmpsAt(long millis, double meanAmps) {
        if (straight) {
            return batteryAmpsAt(millis, meanAmps);
        }
        if (bus.isStarved()) {
            return meanShuntAmps(meanAmps);
        }
        double amps = batteryAmpsAt(millis, meanAmps) + ownAmps;
        if (anyLoadPast) {
            amps += loads.pastAmpsAt(loadParts, millis, sharingVolts());
        }
        if (anyChargerPast) {
            amps -= pastChargerAmps(regulatorExtraAmps(loads.excessAmpsAt(millis, bus.volts())));
            for (int i = 0; anyUneven && meanAmps != 0 && i < chargerParts.length; i++) {
                amps -= chargerParts[i] * chargers[i].excessAmpsAt(millis);
            }
        }
        return throughPart * amps;
    }

    /** What the chargers give past the shunt, the regulating one some more than its mean. */
    private double pastChargerAmps(double extraAmps) {
        double amps = 0;
        for (int i = 0; i < chargerParts.length; i++) {
            boolean extra = bus.isRegulated() && bus.isRegulator(chargers[i]);
            amps += chargerParts[i] * (chargers[i].outputAmps() + (extra ? extraAmps : 0));
        }
        return amps;
    }

    /** A dead bus has no voltage by which loads of unlike kinds could share. */
    private double sharingVolts() {
        return bus.volts() > 0 ? bus.volts() : 1;
    }
}
