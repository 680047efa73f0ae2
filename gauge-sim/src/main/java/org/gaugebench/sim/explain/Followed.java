package org.gaugebench.sim.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.jspecify.annotations.Nullable;

/** A gauge followed from outside: what its registers do not hold and a later step needs. */
final class Followed {
    private static final int SPOILING =
            Fault.SHUNT_CLIPPED.bit()
                    | Fault.VOLTAGE_CLIPPED.bit()
                    | Fault.COUNTS_IMPLAUSIBLE.bit();

    private GaugeSettings settings;
    private FollowedRules rules;
    private FollowedLoad load;
    private Minute underWay = Minute.EMPTY;
    private @Nullable Minute lastWhole;
    private long underWayMillis;
    private long lossCarry;
    private boolean first = true;
    private boolean proven;
    private HoursInput hours = new HoursInput(false, 0, -1, -1, false, 0, 0, 0);
    private long inCarryPicojoules;
    private long outCarryPicojoules;

    Followed(GaugeSettings settings) {
        this.settings = settings;
        rules = new FollowedRules(settings);
        load = new FollowedLoad(settings);
    }

    /** Power came up: what no memory holds starts anew. */
    void powerUp(GaugeSettings now, Seen after) {
        settings = now;
        boolean armed = rules.emptyArmed;
        rules = new FollowedRules(now);
        rules.emptyArmed = armed;
        load = new FollowedLoad(now);
        lastWhole = null;
        lossCarry = 0;
        first = true;
        dropEnergy();
        dropMinute();
        if (now.get(Setting.ABSORPTION) > 0) {
            proven = RuleState.values()[state(after)] == RuleState.NOT_ARMED;
        }
        lookAtHours(after, true);
    }

    /** The core works the hours out now. */
    private void lookAtHours(Seen after, boolean edgesAreOfNow) {
        long charge = after.get(Register.SETTLED_NANOCOULOMBS);
        hours =
                new HoursInput(
                        after.get(Register.STATE_OF_CHARGE_PARTS_PER_MILLION) >= 0,
                        charge,
                        edgesAreOfNow ? after.get(Register.LOWER_EDGE_PARTS_PER_MILLION) : -1,
                        edgesAreOfNow ? after.get(Register.UPPER_EDGE_PARTS_PER_MILLION) : -1,
                        load.isSeeded(),
                        load.mean().whole(),
                        after.get(Register.CURRENT_MICROAMPS),
                        after.get(Register.TEMPERATURE_MILLICELSIUS));
    }

    private static int state(Seen registers) {
        return (int) registers.get(Register.RULE_STATE);
    }

    private void dropEnergy() {
        inCarryPicojoules = 0;
        outCarryPicojoules = 0;
    }

    private void dropMinute() {
        underWay = Minute.EMPTY;
        underWayMillis = 0;
        load.dropSlot();
    }

    /** Other settings are in force. */
    void settings(GaugeSettings now, Set<Event> events, Seen after) {
        settings = now;
        rules = rules.under(now);
        load = new FollowedLoad(now);
        lastWhole = null;
        lossCarry = 0;
        dropMinute();
        prove(events);
        if (events.contains(Event.NEW_BATTERY)) {
            rules.newBattery();
            dropEnergy();
        }
        lookAtHours(after, true);
    }

    /** A command was carried out. */
    void command(Set<Event> events, Seen after) {
        prove(events);
        if (events.contains(Event.DECLARED)) {
            // A declared full lifts the limit; the count stands at the capacity then.
            proven =
                    after.get(Register.CHARGE_NANOCOULOMBS)
                            == after.get(Register.CAPACITY_NANOCOULOMBS);
            rules.floatHeld = 0;
            rules.plateauMinutes = 0;
        }
        if (events.contains(Event.NEW_BATTERY)) {
            rules.newBattery();
            dropEnergy();
            dropMinute();
        }
        if (events.contains(Event.ADJUSTED)) {
            rules.beginQuietTime();
            dropMinute();
        }
        if (!events.isEmpty()) {
            lookAtHours(after, true);
        }
    }

    private void prove(Set<Event> events) {
        if (events.contains(Event.SET_TO_FULL)) {
            proven = true;
        } else if (events.contains(Event.FULL_RULE_ARMED)
                || events.contains(Event.SET_TO_EMPTY)
                || events.contains(Event.NEW_BATTERY)) {
            proven = false;
        }
    }

    /** Takes a sample, and hands back all that belongs to it. */
    Tick tick(long atMillis, Sample sample, Seen before, Seen after, Set<Event> events) {
        List<Minute> whole = new ArrayList<>();
        Tick tick =
                new Tick(
                        atMillis,
                        settings,
                        sample.shuntCounts,
                        sample.voltageCounts,
                        sample.temperatureMillicelsius,
                        sample.clockMillis,
                        first,
                        before,
                        after,
                        Set.copyOf(events),
                        whole,
                        underWay,
                        proven,
                        inCarryPicojoules,
                        outCarryPicojoules);
        first = false;
        if (tick.isMissed()) {
            dropMinute();
            rules.samplesMissing();
            lookAtHours(after, true);
        } else if (tick.isCounted()) {
            count(tick, whole);
        }
        prove(events);
        return tick;
    }

    private void count(Tick tick, List<Minute> whole) {
        long microamps = tick.after(Register.CURRENT_MICROAMPS);
        long microvolts = tick.after(Register.VOLTAGE_MICROVOLTS);
        boolean spoilt = (tick.after(Register.FAULT_BITS) & SPOILING) != 0;
        Expression energy = ChargeSteps.picojoules(microvolts, microamps, tick.elapsedMillis());
        if (energy.value().signum() > 0) {
            inCarryPicojoules = energy.plus(inCarryPicojoules).mod(1_000_000).whole();
        } else {
            outCarryPicojoules = energy.negative().plus(outCarryPicojoules).mod(1_000_000).whole();
        }
        long left = tick.elapsedMillis();
        while (left > 0) {
            long part = Math.min(left, Minute.MILLIS - underWayMillis);
            underWay = underWay.with(microamps, microvolts, part, spoilt);
            underWayMillis += part;
            left -= part;
            load.add(microamps, part);
            if (underWayMillis == Minute.MILLIS) {
                close(tick, left, whole);
            }
        }
    }

    private void close(Tick tick, long left, List<Minute> whole) {
        long temperature = tick.after(Register.TEMPERATURE_MILLICELSIUS);
        Minute minute =
                underWay.ended(tick.after(Register.UPTIME_MILLIS) - left, temperature, lossCarry);
        lossCarry = LossSteps.carry(settings, temperature, lossCarry).whole();
        underWay = Minute.EMPTY;
        underWayMillis = 0;
        whole.add(minute);
        lastWhole = minute;
        rules.minute(minute, tick.after(), tick.events());
        load.closeMinute(minute.mean().whole());
        lookAtHours(tick.after(), left == 0);
    }

    GaugeSettings settings() {
        return settings;
    }

    HoursInput hours() {
        return hours;
    }

    FollowedRules rules() {
        return rules;
    }

    FollowedLoad load() {
        return load;
    }

    @Nullable Minute lastWhole() {
        return lastWhole;
    }

    boolean isProven() {
        return proven;
    }
}
