package org.gaugebench.sim.agree;

import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.EventSink;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.sim.device.GaugeDevice;
import org.gaugebench.sim.memory.PowerCut;
import org.gaugebench.sim.memory.SimulatedStore;
import org.gaugebench.sim.random.SplitMix64;

/**
 * Plays a script to one gauge, and keeps marks of all that it did: of what it announced, of what it
 * answered and of what it asked its memory. Two gauges that behave alike leave the same marks.
 */
final class Player {
    /** Makes the gauge of a life. */
    interface Seat {
        /** A gauge that has not been powered yet. */
        GaugeDevice build(GaugeSettings settings, StateStore store, EventSink events);
    }

    private final Seat seat;
    private final SimulatedStore memory;
    private final MarkedStore watched;
    private final Sample sample = new Sample();
    private final Registers registers = new Registers();
    private GaugeSettings settings;
    private GaugeDevice device;
    private boolean hasPower;
    private boolean hasLived;
    private long toldMark;
    private String lastEvent = "none";
    private String lastOutcome = "none";
    private long eventCount;

    Player(Script script, SimulatedStore memory, Seat seat) {
        this.seat = seat;
        this.memory = memory;
        this.watched = new MarkedStore(memory);
        this.settings = script.settings();
        this.device = seat.build(settings, watched, this::take);
    }

    private void take(Event event, long uptimeMillis, long value) {
        eventCount++;
        toldMark = SplitMix64.mix(toldMark ^ (event.ordinal() + 1));
        toldMark = SplitMix64.mix(toldMark ^ uptimeMillis);
        toldMark = SplitMix64.mix(toldMark ^ value);
        lastEvent = event + " at uptime " + uptimeMillis + " ms, figure " + value;
    }

    /** Plays one step; a gauge without power hears nothing but power. */
    void play(Step step) {
        try {
            if (step instanceof Step.Power power) {
                settle();
                memory.powerUp();
                // The first life is that of the gauge which stands there already: building another
                // would ask the memory for its size twice, which vectors then tell.
                if (hasLived) {
                    device = seat.build(settings, watched, this::take);
                }
                hasLived = true;
                hasPower = true;
                device.powerUp(power.offMillis(), power.known());
            } else if (step instanceof Step.Forge forge) {
                settle();
                Forger.put(forge, memory, settings);
            } else if (hasPower) {
                playPowered(step);
            } else if (step instanceof Step.Change change) {
                settings = change.settings();
            }
        } catch (PowerCut cut) {
            hasPower = false;
        }
    }

    private void playPowered(Step step) {
        if (step instanceof Step.Tick tick) {
            sample.shuntCounts = tick.shuntCounts();
            sample.voltageCounts = tick.voltageCounts();
            sample.temperatureMillicelsius = tick.temperatureMillicelsius();
            sample.clockMillis = tick.clockMillis();
            device.tick(sample);
            if (memory.isCutDue()) {
                device.settle();
            }
        } else if (step instanceof Step.Tell tell) {
            answered(device.command(tell.command(), tell.argument()));
        } else if (step instanceof Step.Change change) {
            settings = change.settings();
            answered(device.changeSettings(settings));
        } else if (step instanceof Step.CutAt cut) {
            device.settle();
            memory.cutAtWrite(cut.writesFromNow(), cut.manner());
        }
    }

    private void answered(CommandOutcome outcome) {
        toldMark = SplitMix64.mix(toldMark ^ (100 + outcome.ordinal()));
        lastOutcome = outcome.name();
    }

    /** Lets it work through what it was given. */
    void settle() {
        if (hasPower) {
            try {
                device.settle();
            } catch (PowerCut cut) {
                hasPower = false;
            }
        }
    }

    GaugeDevice device() {
        return device;
    }

    boolean hasPower() {
        return hasPower;
    }

    /** Of all events and answers. */
    long toldMark() {
        return toldMark;
    }

    /** Of all that was asked of the memory and what it answered. */
    long memoryMark() {
        return watched.mark();
    }

    String lastEvent() {
        return lastEvent + " (" + eventCount + " in all)";
    }

    String lastOutcome() {
        return lastOutcome;
    }

    /** Registers as they are; zero without power. */
    Registers registers() {
        if (hasPower) {
            device.inspect(registers);
            return registers;
        }
        return new Registers();
    }
}
