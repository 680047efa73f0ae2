package org.gaugebench.sim.rig;

import org.gaugebench.core.port.EventSink;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.sim.device.GaugeDevice;
import org.gaugebench.sim.device.PipeCommand;
import org.gaugebench.sim.device.PipeDevice;
import org.gaugebench.sim.device.PipeHello;
import org.gaugebench.sim.device.PipeProgram;
import org.gaugebench.sim.plant.Truth;

/**
 * A program in a gauge's place. It may work through its ticks long after they were taken, and what
 * it then says of one of them is held against the truth of that tick.
 */
final class ProgramSeat {
    private final PipeProgram program;
    private final StateStore store;
    private final LookBack lookBack;
    private final PastTruth past = new PastTruth(PipeHello.MOST_BATCH);

    ProgramSeat(PipeCommand command, StateStore store, LookBack lookBack, Observer observer) {
        program = new PipeProgram(command, store, observer.wantsTickDigest());
        this.store = store;
        this.lookBack = lookBack;
    }

    /** A gauge for the life to come. */
    GaugeDevice build(GaugeSettings settings, EventSink events) {
        return new PipeDevice(program, settings, store, events);
    }

    /** The gauge is about to be given a tick. */
    void feed(GaugeDevice device, Truth truth) {
        if (!device.holdsTicks()) {
            past.clear();
        }
        past.add(truth);
    }

    /** Lets the gauge tell something, at the moment of which it tells. */
    void tell(GaugeDevice device, Runnable telling) {
        if (!device.holdsTicks()) {
            telling.run();
            return;
        }
        lookBack.begin(past.lookAt(device.ticksBehind()));
        try {
            telling.run();
        } finally {
            lookBack.end();
        }
    }

    /** The time of the tick that the gauge works on. */
    long timeMillis(GaugeDevice device, long nowMillis) {
        return device.holdsTicks() ? past.lookAt(device.ticksBehind()).timeMillis() : nowMillis;
    }

    PipeProgram program() {
        return program;
    }
}
