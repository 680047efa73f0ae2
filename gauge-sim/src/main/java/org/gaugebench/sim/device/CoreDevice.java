package org.gaugebench.sim.device;

import org.gaugebench.core.Gauge;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.EventSink;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.settings.GaugeSettings;

/** The core of this project as a gauge under test. */
public final class CoreDevice implements GaugeDevice {
    private final Gauge gauge;

    /** Builds the core on a store and a sink. */
    public CoreDevice(GaugeSettings settings, StateStore store, EventSink events) {
        gauge = new Gauge(settings, store, events);
    }

    @Override
    public void powerUp(long offMillis, OffTime offTime) {
        gauge.powerUp(offMillis, offTime);
    }

    @Override
    public void tick(Sample sample) {
        gauge.tick(sample);
    }

    @Override
    public CommandOutcome command(Command command, long argument) {
        return gauge.command(command, argument);
    }

    @Override
    public CommandOutcome changeSettings(GaugeSettings settings) {
        gauge.changeSettings(settings);
        return CommandOutcome.DONE;
    }

    @Override
    public void read(Readout readout) {
        gauge.read(readout);
    }

    @Override
    public void readSample(Readout readout) {
        gauge.readSample(readout);
    }

    @Override
    public boolean readBus(int[] words) {
        for (int i = 0; i < BusWords.COUNT; i++) {
            words[i] = gauge.readBus(BusWords.code(i));
        }
        return true;
    }

    @Override
    public void inspect(Registers registers) {
        gauge.inspect(registers);
    }
}
