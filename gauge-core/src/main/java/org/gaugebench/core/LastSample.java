package org.gaugebench.core;

import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;

/** The last plausible sample, in counts and converted. */
final class LastSample {
    int shuntCounts;
    int voltageCounts;
    int currentMicroamps;
    int voltageMicrovolts;
    int temperatureMillicelsius = Sample.TEMPERATURE_ABSENT;

    LastSample() {}

    /**
     * Takes a sample with which nothing is wrong, as nearly all are.
     *
     * @return false where something is; nothing is taken then
     */
    boolean takeInRange(Sample sample, Stages s) {
        int shunt = sample.shuntCounts;
        int voltage = sample.voltageCounts;
        if (!s.currentSense.isInRange(shunt) || !s.voltageSense.isInRange(voltage)) {
            return false;
        }
        shuntCounts = shunt;
        currentMicroamps = s.currentSense.microampsInRange(shunt);
        voltageCounts = voltage;
        voltageMicrovolts = s.voltageSense.microvoltsInRange(voltage);
        temperatureMillicelsius = sample.temperatureMillicelsius;
        return true;
    }

    /**
     * Takes a sample, and says what is wrong with it.
     *
     * @return false where the sample is garbage: the last plausible figures stand then, because a
     *     garbage frame must become neither amps nor the volts that prove full
     */
    boolean take(Sample sample, Stages s, FaultLog faults, long uptimeMillis) {
        if (s.currentSense.isImplausible(sample.shuntCounts)
                || s.voltageSense.isImplausible(sample.voltageCounts)) {
            faults.raise(Fault.COUNTS_IMPLAUSIBLE, uptimeMillis);
            return false;
        }
        shuntCounts = sample.shuntCounts;
        currentMicroamps = s.currentSense.microampsFromCounts(shuntCounts);
        if (s.currentSense.isClipped(shuntCounts)) {
            faults.raise(Fault.SHUNT_CLIPPED, uptimeMillis);
        }
        voltageCounts = sample.voltageCounts;
        voltageMicrovolts = s.voltageSense.microvoltsFromCounts(voltageCounts);
        if (s.voltageSense.isClipped(voltageCounts)) {
            faults.raise(Fault.VOLTAGE_CLIPPED, uptimeMillis);
        }
        temperatureMillicelsius = sample.temperatureMillicelsius;
        return true;
    }

    void read(Readout readout) {
        readout.currentMicroamps = currentMicroamps;
        readout.voltageMicrovolts = voltageMicrovolts;
        readout.temperatureMillicelsius = temperatureMillicelsius;
    }

    void inspect(Registers r) {
        r.set(Register.SHUNT_COUNTS, shuntCounts);
        r.set(Register.VOLTAGE_COUNTS, voltageCounts);
        r.set(Register.CURRENT_MICROAMPS, currentMicroamps);
        r.set(Register.VOLTAGE_MICROVOLTS, voltageMicrovolts);
        r.set(Register.TEMPERATURE_MILLICELSIUS, temperatureMillicelsius);
    }
}
