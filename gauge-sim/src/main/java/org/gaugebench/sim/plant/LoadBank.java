package org.gaugebench.sim.plant;

import java.util.List;
import org.gaugebench.sim.scenario.LoadSpec;
import org.jspecify.annotations.Nullable;

/** All loads as three sums, renewed only when a load switches. */
final class LoadBank {
    private final Load[] loads;
    private final double[] meanParts;
    private double ownAmps;
    private boolean anyVarying;

    // Sums of the means over the present step.
    private double currentAmps;
    private double powerWatts;
    private double conductanceSiemens;

    LoadBank(List<LoadSpec> specs) {
        loads = specs.stream().map(Load::new).toArray(Load[]::new);
        meanParts = new double[loads.length];
    }

    /** Takes over the state of another bank of the same specs. */
    void adopt(LoadBank other) {
        for (int i = 0; i < loads.length; i++) {
            loads[i].adopt(other.loads[i]);
        }
        System.arraycopy(other.meanParts, 0, meanParts, 0, meanParts.length);
        anyVarying = other.anyVarying;
        currentAmps = other.currentAmps;
        powerWatts = other.powerWatts;
        conductanceSiemens = other.conductanceSiemens;
    }

    @Nullable Load find(String name) {
        for (Load load : loads) {
            if (load.name().equals(name)) {
                return load;
            }
        }
        return null;
    }

    /**
     * Renews the sums for a step.
     *
     * @return the next instant after which they must be renewed
     */
    long renew(long fromMillis, long toMillis) {
        currentAmps = ownAmps;
        powerWatts = 0;
        conductanceSiemens = 0;
        anyVarying = false;
        long next = Long.MAX_VALUE;
        for (int i = 0; i < loads.length; i++) {
            Load load = loads[i];
            double part = load.meanOver(fromMillis, toMillis) * load.size();
            meanParts[i] = part;
            switch (load.kind()) {
                case CONSTANT_CURRENT -> currentAmps += part;
                case CONSTANT_POWER -> powerWatts += part;
                case CONSTANT_RESISTANCE -> conductanceSiemens += part;
            }
            anyVarying |= load.isVarying();
            next = Math.min(next, load.nextChangeMillis(fromMillis));
        }
        return next;
    }

    /** Current drawn at a bus voltage, mean over the step. */
    double ampsAt(double volts) {
        double amps = currentAmps;
        if (powerWatts != 0) {
            amps += powerWatts / volts;
        }
        return amps + conductanceSiemens * volts;
    }

    /**
     * Fills in what each load draws at a bus voltage, mean over the step.
     *
     * @param got part of it that the bus gives: 0 of one that broke down
     */
    void fillAmps(double[] out, double got, double volts) {
        for (int i = 0; i < out.length; i++) {
            double part = meanParts[i] * got;
            out[i] = part == 0 ? 0 : amps(loads[i].kind(), part, volts);
        }
    }

    /** How much more than the step's mean is drawn at an instant, at a bus voltage. */
    double excessAmpsAt(long millis, double volts) {
        if (!anyVarying || volts <= 0) {
            return 0;
        }
        double amps = ownAmps;
        for (Load load : loads) {
            amps += amps(load.kind(), load.at(millis) * load.size(), volts);
        }
        return amps - ampsAt(volts);
    }

    private static double amps(LoadSpec.Kind kind, double part, double volts) {
        return switch (kind) {
            case CONSTANT_CURRENT -> part;
            case CONSTANT_POWER -> part / volts;
            case CONSTANT_RESISTANCE -> part * volts;
        };
    }

    /**
     * What of the loads' current goes another way than through the shunt, mean over the step.
     *
     * @param pastParts of each load's current, in the order of the loads
     * @param volts of the bus, above 0
     */
    double meanPastAmps(double[] pastParts, double volts) {
        double amps = 0;
        for (int i = 0; i < loads.length; i++) {
            amps += pastParts[i] * amps(loads[i].kind(), meanParts[i], volts);
        }
        return amps;
    }

    /** The same at an instant. */
    double pastAmpsAt(double[] pastParts, long millis, double volts) {
        double amps = 0;
        for (int i = 0; i < loads.length; i++) {
            Load load = loads[i];
            amps += pastParts[i] * amps(load.kind(), load.at(millis) * load.size(), volts);
        }
        return amps;
    }

    /** What the gauge draws for itself; acts from the next renewal. */
    void setOwnAmps(double amps) {
        ownAmps = amps;
    }

    boolean isAsking() {
        return currentAmps > 0 || powerWatts > 0 || conductanceSiemens > 0;
    }

    boolean isConstantCurrent() {
        return powerWatts == 0 && conductanceSiemens == 0;
    }

    double currentAmps() {
        return currentAmps;
    }

    double powerWatts() {
        return powerWatts;
    }

    double conductanceSiemens() {
        return conductanceSiemens;
    }
}
