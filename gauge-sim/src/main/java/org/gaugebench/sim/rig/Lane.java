package org.gaugebench.sim.rig;

import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.sim.device.CoreDevice;
import org.gaugebench.sim.device.GaugeDevice;
import org.gaugebench.sim.device.exhibits.PlainCounter;
import org.gaugebench.sim.frontend.FrontEnd;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.SensorSpec;
import org.gaugebench.sim.scenario.WiringSpec;

/** One gauge under test with its own front end, fed by the rig's one truth. */
public final class Lane {
    private final GaugeSpec spec;
    private final FrontEnd frontEnd;
    private final GaugeDevice device;
    private final Sample sample = new Sample();
    private final Readout readout = new Readout();
    private final Registers registers = new Registers();
    private long digest = Registers.DIGEST_START;

    Lane(GaugeSpec spec, SensorSpec sensor, SeedTree seeds, Observer observer) {
        this.spec = spec;
        this.frontEnd = new FrontEnd(sensor, seeds, spec.name());
        this.device =
                switch (spec.kind()) {
                    case CORE ->
                            new CoreDevice(
                                    spec.settings(),
                                    StateStore.NONE,
                                    (Event event, long uptimeMillis, long value) ->
                                            observer.onEvent(this, event, value));
                    case PLAIN_COUNTER -> new PlainCounter(spec.settings());
                };
    }

    /** Power comes up: the first sample sets the clock, then the start is declared. */
    void start(Truth truth) {
        device.powerUp(0, OffTime.EXACT);
        tick(truth);
        if (spec.declaredPartsPerMillion() >= 0) {
            declare(spec.declaredPartsPerMillion());
        }
    }

    void tick(Truth truth) {
        frontEnd.sample(truth, sample);
        device.tick(sample);
    }

    void declare(long partsPerMillion) {
        device.command(Command.DECLARE_STATE_OF_CHARGE, partsPerMillion);
    }

    void setWiring(WiringSpec wiring) {
        frontEnd.setWiring(wiring);
    }

    void setSensorOffset(long nanovolts) {
        frontEnd.setOffsetNanovolts(nanovolts);
    }

    /** Folds the registers of this moment into the lane's digest. */
    void foldDigest() {
        device.inspect(registers);
        digest = registers.fold(digest);
    }

    /** The gauge's name in the scenario. */
    public String name() {
        return spec.name();
    }

    /** What the scenario says of it. */
    public GaugeSpec spec() {
        return spec;
    }

    /** The readout of this moment; the object is reused by the next call. */
    public Readout read() {
        device.read(readout);
        return readout;
    }

    /** The registers of this moment; the object is reused by the next call. */
    public Registers inspect() {
        device.inspect(registers);
        return registers;
    }

    /** The fold of the registers of every whole minute so far. */
    public long digest() {
        return digest;
    }
}
