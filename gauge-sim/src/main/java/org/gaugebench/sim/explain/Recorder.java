package org.gaugebench.sim.explain;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.LongSupplier;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.sim.device.GaugeDevice;
import org.gaugebench.sim.rig.Lane;
import org.jspecify.annotations.Nullable;

/**
 * Stands in front of a gauge, hands every call on unchanged, and keeps the last sample, and what
 * was asked, with the registers on both sides. Looking at registers changes nothing in a core.
 */
final class Recorder {
    private final String gauge;
    private final LongSupplier clock;
    private final Set<Event> events = EnumSet.noneOf(Event.class);
    private final List<Call> calls = new ArrayList<>();
    private final Registers registers = new Registers();
    private Seen present = Seen.NOTHING;
    private @Nullable Followed followed;
    private @Nullable Tick tick;

    /**
     * Begins with nothing.
     *
     * @param gauge whose calls are kept
     * @param clock simulated time
     */
    Recorder(String gauge, LongSupplier clock) {
        this.gauge = gauge;
        this.clock = clock;
    }

    GaugeDevice watch(Lane lane, GaugeDevice device) {
        return lane.name().equals(gauge) ? new Watched(lane, device) : device;
    }

    void event(Lane lane, Event event) {
        if (lane.name().equals(gauge)) {
            events.add(event);
        }
    }

    /** The last sample that the gauge took, or null. */
    @Nullable Tick tick() {
        return tick;
    }

    @Nullable Followed followed() {
        return followed;
    }

    /** What was asked at a moment. */
    List<Call> callsAt(long millis) {
        return calls.stream().filter(call -> call.atMillis() == millis).toList();
    }

    private Seen look(GaugeDevice device) {
        device.inspect(registers);
        return new Seen(registers);
    }

    private void keep(GaugeDevice device, String words, @Nullable Command command, long argument) {
        Seen before = present;
        present = look(device);
        calls.add(new Call(clock.getAsLong(), words, command, argument, before, present));
    }

    private final class Watched implements GaugeDevice {
        private final Lane lane;
        private final GaugeDevice device;
        private final Followed following;

        Watched(Lane lane, GaugeDevice device) {
            this.lane = lane;
            this.device = device;
            Followed earlier = followed;
            following = earlier == null ? new Followed(lane.settings()) : earlier;
            followed = following;
        }

        @Override
        public void powerUp(long offMillis, OffTime offTime) {
            events.clear();
            device.powerUp(offMillis, offTime);
            boolean restored = events.contains(Event.RESTORED);
            keep(
                    device,
                    "power comes up; "
                            + (restored ? "a saved record is taken over" : "nothing is known"),
                    null,
                    0);
            following.powerUp(lane.settings(), present);
            tick = null;
        }

        @Override
        public void tick(Sample sample) {
            events.clear();
            Seen before = present;
            device.tick(sample);
            present = look(device);
            tick = following.tick(clock.getAsLong(), sample, before, present, events);
        }

        @Override
        public CommandOutcome command(Command command, long argument) {
            events.clear();
            CommandOutcome outcome = device.command(command, argument);
            String asked = command.name().toLowerCase(Locale.ROOT).replace('_', '-');
            String answer = outcome.name().toLowerCase(Locale.ROOT).replace('_', ' ');
            keep(device, asked + " " + argument + ": " + answer, command, argument);
            following.command(events, present);
            return outcome;
        }

        @Override
        public CommandOutcome changeSettings(GaugeSettings settings) {
            events.clear();
            CommandOutcome outcome = device.changeSettings(settings);
            keep(device, "other settings; the stages are built anew", null, 0);
            following.settings(settings, events, present);
            return outcome;
        }

        @Override
        public void read(Readout readout) {
            device.read(readout);
        }

        @Override
        public void inspect(Registers into) {
            device.inspect(into);
        }
    }
}
