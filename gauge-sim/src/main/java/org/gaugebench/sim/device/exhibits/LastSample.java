package org.gaugebench.sim.device.exhibits;

import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;

/** The last sample and the time since the first one, as every gauge here shows them. */
final class LastSample {
    private final CountScale scale;
    private int clockMillis;
    private int shuntCounts;
    private int voltageCounts;
    private int temperatureMillicelsius = Sample.TEMPERATURE_ABSENT;
    private long uptimeMillis;

    LastSample(CountScale scale) {
        this.scale = scale;
    }

    void take(Sample sample) {
        clockMillis = sample.clockMillis;
        shuntCounts = sample.shuntCounts;
        voltageCounts = sample.voltageCounts;
        temperatureMillicelsius = sample.temperatureMillicelsius;
    }

    void pass(long millis) {
        uptimeMillis += millis;
    }

    int clockMillis() {
        return clockMillis;
    }

    int microvolts() {
        return scale.microvolts(voltageCounts);
    }

    long uptimeMillis() {
        return uptimeMillis;
    }

    void read(Readout readout) {
        readout.voltageMicrovolts = microvolts();
        readout.temperatureMillicelsius = temperatureMillicelsius;
    }

    void inspect(Registers registers) {
        registers.set(Register.CLOCK_MILLIS, clockMillis & 0xFFFFFFFFL);
        registers.set(Register.UPTIME_MILLIS, uptimeMillis);
        registers.set(Register.SHUNT_COUNTS, shuntCounts);
        registers.set(Register.VOLTAGE_COUNTS, voltageCounts);
        registers.set(Register.VOLTAGE_MICROVOLTS, microvolts());
    }
}
