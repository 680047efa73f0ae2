package org.gaugebench.sim.bench;

import org.gaugebench.core.Gauge;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.EventSink;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.port.StateStore;

/** The core of this project, as a firmware would call it. */
final class CoreGauge implements BenchGauge {
    private static final double NANOCOULOMBS_PER_AMP_HOUR = 3.6e12;
    private static final double MICROJOULES_PER_WATT_HOUR = 3.6e9;

    private final Gauge gauge =
            new Gauge(FrozenDay.settings(), StateStore.NONE, EventSink.NONE);
    private final Registers registers = new Registers();
    private final Readout readout = new Readout();

    @Override
    public void start() {
        gauge.powerUp(0, OffTime.UNKNOWN);
        gauge.command(Command.DECLARE_STATE_OF_CHARGE, 700_000);
    }

    @Override
    public void tick(Sample sample) {
        gauge.tick(sample);
    }

    private long register(Register register) {
        gauge.inspect(registers);
        return registers.get(register);
    }

    @Override
    public double chargeAmpHours() {
        return register(Register.CHARGE_NANOCOULOMBS) / NANOCOULOMBS_PER_AMP_HOUR;
    }

    @Override
    public double energyOutWattHours() {
        return register(Register.OUT_MICROJOULES) / MICROJOULES_PER_WATT_HOUR;
    }

    @Override
    public int fullCount() {
        return (int) register(Register.FULL_COUNT);
    }

    @Override
    public int timeToEmptyMinutes() {
        gauge.read(readout);
        return readout.timeToEmptyMinutes;
    }
}
