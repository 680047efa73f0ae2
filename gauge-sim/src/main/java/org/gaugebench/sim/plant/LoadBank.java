package org.gaugebench.sim.plant;

import java.util.List;
import org.gaugebench.sim.scenario.LoadSpec;
import org.jspecify.annotations.Nullable;

/** All loads as three sums, renewed only when a load switches. */
final class LoadBank {
    private final Load[] loads;
    private boolean anyVarying;

    // Sums of the means over the present step.
    private double currentAmps;
    private double powerWatts;
    private double conductanceSiemens;

    LoadBank(List<LoadSpec> specs) {
        loads = specs.stream().map(Load::new).toArray(Load[]::new);
    }

    /** Takes over the state of another bank of the same specs. */
    void adopt(LoadBank other) {
        for (int i = 0; i < loads.length; i++) {
            loads[i].adopt(other.loads[i]);
        }
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
        currentAmps = 0;
        powerWatts = 0;
        conductanceSiemens = 0;
        anyVarying = false;
        long next = Long.MAX_VALUE;
        for (Load load : loads) {
            double part = load.meanOver(fromMillis, toMillis) * load.size();
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
        if (powerWatts > 0) {
            amps += powerWatts / volts;
        }
        return amps + conductanceSiemens * volts;
    }

    /** How much more than the step's mean is drawn at an instant, at a bus voltage. */
    double excessAmpsAt(long millis, double volts) {
        if (!anyVarying || volts <= 0) {
            return 0;
        }
        double amps = 0;
        for (Load load : loads) {
            double part = load.at(millis) * load.size();
            amps +=
                    switch (load.kind()) {
                        case CONSTANT_CURRENT -> part;
                        case CONSTANT_POWER -> part / volts;
                        case CONSTANT_RESISTANCE -> part * volts;
                    };
        }
        return amps - ampsAt(volts);
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
