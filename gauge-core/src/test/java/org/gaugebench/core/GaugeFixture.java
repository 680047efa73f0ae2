package org.gaugebench.core;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.port.StateStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * A gauge whose converters make round numbers: one shunt count is exactly 125 uA (8,000 counts to
 * the ampere), one voltage count exactly 1 mV. Drives it and keeps its events.
 */
final class GaugeFixture {
    static final int MICROAMPS_PER_COUNT = 125;
    static final int COUNTS_PER_AMP = 8_000;
    static final long NANOCOULOMBS_PER_AMP_HOUR = 3_600_000_000_000L;

    /** An event with its figures. */
    record Heard(Event event, long uptimeMillis, long value) {}

    final GaugeSettings settings;
    final Gauge gauge;
    final Sample sample = new Sample();
    final Readout readout = new Readout();
    final Registers registers = new Registers();
    final List<Heard> heard = new ArrayList<>();

    GaugeFixture(GaugeSettings settings) {
        this(settings, StateStore.NONE, 0, OffTime.UNKNOWN);
    }

    /** A machine that comes up on what a memory holds, and sees its first sample. */
    GaugeFixture(GaugeSettings settings, StateStore store, long offMillis, OffTime offTime) {
        this.settings = settings;
        gauge =
                new Gauge(
                        settings,
                        store,
                        (event, uptime, value) -> heard.add(new Heard(event, uptime, value)));
        gauge.powerUp(offMillis, offTime);
        sample.voltageCounts = 12_800;
        gauge.tick(sample);
    }

    /** 1,048,576 mA x 1000 / 2^23 = 125 uA a count; the other settings stay at their defaults. */
    static GaugeSettings.Builder roundNumbers() {
        return GaugeSettings.builder()
                .set(Setting.SHUNT_CONVERTER_BITS, 24)
                .set(Setting.SHUNT_RATED_CURRENT, 1_048_576)
                .set(Setting.SHUNT_RATED_DROP, 100_000)
                .set(Setting.SHUNT_FULL_SCALE, 100_000)
                .set(Setting.VOLTAGE_CONVERTER_BITS, 16)
                .set(Setting.VOLTAGE_FULL_SCALE, 65_536);
    }

    GaugeFixture tick(int counts, int millis) {
        sample.shuntCounts = counts;
        sample.clockMillis += millis;
        gauge.tick(sample);
        return this;
    }

    GaugeFixture ticks(int number, int counts, int millis) {
        for (int i = 0; i < number; i++) {
            tick(counts, millis);
        }
        return this;
    }

    GaugeFixture minutes(int number, int counts) {
        return ticks(number, counts, 60_000);
    }

    GaugeFixture volts(int millivolts) {
        sample.voltageCounts = millivolts;
        return this;
    }

    CommandOutcome declare(int partsPerMillion) {
        return gauge.command(Command.DECLARE_STATE_OF_CHARGE, partsPerMillion);
    }

    Readout read() {
        gauge.read(readout);
        return readout;
    }

    long register(Register register) {
        gauge.inspect(registers);
        return registers.get(register);
    }

    long charge() {
        return register(Register.CHARGE_NANOCOULOMBS);
    }

    /** The figure of the newest event of a kind; fails where it never came. */
    long lastValue(Event event) {
        return heard.stream()
                .filter(h -> h.event() == event)
                .reduce((before, after) -> after)
                .orElseThrow(() -> new AssertionError(event + " never came: " + heard))
                .value();
    }

    long times(Event event) {
        return heard.stream().filter(h -> h.event() == event).count();
    }
}
