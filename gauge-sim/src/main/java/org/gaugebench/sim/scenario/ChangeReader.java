package org.gaugebench.sim.scenario;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToLongFunction;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.units.RecordUnit;
import org.gaugebench.sim.units.Texts;
import org.jspecify.annotations.Nullable;

/** Reads what a timeline step sets. Every address that a scenario can set is one row here. */
final class ChangeReader {
    private final List<Address> addresses = new ArrayList<>();
    private final List<String> settingsNotTaken = new ArrayList<>();

    /**
     * What is set, and what comes back at the end of a window.
     *
     * @param target part that owns it
     * @param name of the load, charger or gauge
     * @param value to set
     * @param after value at the end of a window
     */
    record Setter(Change.Target target, String name, long value, long after) {
        Change at(long millis, long newValue) {
            return new Change(millis, target, name, newValue);
        }
    }

    /**
     * One address.
     *
     * @param key as the file writes it
     * @param initial value that comes back after a window; unused for a switch
     */
    private record Address(
            String key,
            Change.Target target,
            String name,
            long initial,
            ToLongFunction<Block> reader) {}

    ChangeReader(Parts parts) {
        for (LoadSpec load : parts.loads()) {
            addSwitch(load.name(), Change.Target.LOAD_SWITCH, load.name(), "on", "off");
            if (load.traits().profile() != null) {
                // Its file says how much.
                continue;
            }
            String key = load.name() + "." + LoadReader.key(load.kind());
            addresses.add(
                    new Address(
                            key,
                            Change.Target.LOAD_AMOUNT,
                            load.name(),
                            load.amount(),
                            block -> LoadReader.amount(block, key, load.kind())));
        }
        for (ChargerSpec charger : parts.chargers()) {
            addSwitch(charger.name(), Change.Target.CHARGER_SWITCH, charger.name(), "on", "off");
        }
        addSwitch("isolator", Change.Target.ISOLATOR, "", "open", "closed");
        addSwitch("protection", Change.Target.PROTECTION, "", "open", "automatic");
        addQuantity(
                "battery.temperature",
                Change.Target.BATTERY_TEMPERATURE,
                parts.battery().temperatureMillicelsius(),
                RecordUnit.MILLICELSIUS,
                BatteryReader.COLDEST_MILLICELSIUS,
                BatteryReader.HOTTEST_MILLICELSIUS);
        addQuantity(
                "sensor.offset",
                Change.Target.SENSOR_OFFSET,
                parts.sensor().offsetNanovolts(),
                RecordUnit.NANOVOLTS,
                -SensorReader.LARGEST_OFFSET_NANOVOLTS,
                SensorReader.LARGEST_OFFSET_NANOVOLTS);
        addresses.add(
                new Address(
                        "sensor.samples",
                        Change.Target.SENSOR_SAMPLES,
                        "",
                        0,
                        block ->
                                block.choice(
                                                "sensor.samples",
                                                List.of(SampleMode.values()),
                                                PowerReader::key,
                                                SampleMode.ARRIVING)
                                        .ordinal()));
        for (SensorTrait trait : SensorTrait.values()) {
            String key = "sensor." + trait.key();
            addresses.add(
                    new Address(
                            key,
                            Change.Target.SENSOR_TRAIT,
                            trait.key(),
                            parts.sensor().traits().get(trait),
                            block -> SensorTraits.read(block, key, trait)));
        }
        for (String key : WiringReader.addresses(parts)) {
            String address = "wiring." + key;
            long initial = parts.wiring().get(key);
            addresses.add(
                    new Address(
                            address,
                            Change.Target.WIRING,
                            key,
                            initial,
                            block -> WiringReader.value(block, address, key, initial)));
        }
        for (GaugeSpec gauge : parts.gauges()) {
            addPower(gauge);
            addClock(gauge);
            String key = gauge.name() + ".declare";
            addresses.add(
                    new Address(
                            key,
                            Change.Target.DECLARE,
                            gauge.name(),
                            0,
                            block ->
                                    block.quantity(
                                            key,
                                            RecordUnit.PARTS_PER_MILLION,
                                            0,
                                            Defaults.WHOLE,
                                            0)));
            addSettings(gauge);
        }
    }

    private void addSettings(GaugeSpec gauge) {
        for (Setting setting : Setting.values()) {
            String key = gauge.name() + "." + setting.key();
            if (!gauge.takes(setting)) {
                settingsNotTaken.add(key);
                continue;
            }
            long initial = gauge.settings().get(setting);
            addresses.add(
                    new Address(
                            key,
                            Change.Target.SETTING,
                            key,
                            initial,
                            block -> SettingText.read(block, key, setting, initial)));
        }
    }

    private void addClock(GaugeSpec gauge) {
        String name = gauge.name();
        addSwitch(name + ".clock", Change.Target.CLOCK_SWITCH, name, "running", "stopped");
        String error = name + ".clock-error";
        long usualError = gauge.clock().errorPartsPerMillion();
        addresses.add(
                new Address(
                        error,
                        Change.Target.CLOCK_ERROR,
                        name,
                        usualError,
                        block -> ClockSpec.error(block, error, usualError)));
        String jitter = name + ".clock-jitter";
        long usualJitter = gauge.clock().jitterMillis();
        addresses.add(
                new Address(
                        jitter,
                        Change.Target.CLOCK_JITTER,
                        name,
                        usualJitter,
                        block -> ClockSpec.jitter(block, jitter, usualJitter)));
        String jump = name + ".clock-jump";
        addresses.add(
                new Address(
                        jump,
                        Change.Target.CLOCK_JUMP,
                        name,
                        0,
                        block ->
                                block.quantity(
                                        jump,
                                        RecordUnit.MILLIS,
                                        -PowerReader.LONGEST_MILLIS,
                                        PowerReader.LONGEST_MILLIS,
                                        0)));
    }

    private void addPower(GaugeSpec gauge) {
        addSwitch(gauge.name() + ".power", Change.Target.GAUGE_POWER, gauge.name(), "on", "off");
        String offTime = gauge.name() + ".off-time";
        addresses.add(
                new Address(
                        offTime,
                        Change.Target.GAUGE_OFF_TIME,
                        gauge.name(),
                        gauge.power().offTime().ordinal(),
                        block ->
                                block.choice(
                                                offTime,
                                                List.of(OffTime.values()),
                                                PowerReader::key,
                                                gauge.power().offTime())
                                        .ordinal()));
        String cut = gauge.name() + ".cut-at-write";
        addresses.add(
                new Address(
                        cut,
                        Change.Target.GAUGE_CUT,
                        gauge.name(),
                        0,
                        block -> {
                            if (gauge.power().memory() == null) {
                                block.problem(
                                        cut,
                                        "a gauge without memory never writes; expected 'memory:"
                                                + " {slots: 8}' at the gauge");
                            }
                            return block.whole(cut, 1, 1_000_000, 1, 1);
                        }));
    }

    private void addSwitch(String key, Change.Target target, String name, String one, String zero) {
        addresses.add(
                new Address(
                        key,
                        target,
                        name,
                        0,
                        block -> block.either(key, one, zero, false) ? 1 : 0));
    }

    private void addQuantity(
            String key,
            Change.Target target,
            long initial,
            RecordUnit unit,
            long minimum,
            long maximum) {
        addresses.add(
                new Address(
                        key,
                        target,
                        "",
                        initial,
                        block -> block.quantity(key, unit, minimum, maximum, initial)));
    }

    /** Reads the block under "set". */
    List<Setter> read(Block block, boolean window) {
        List<Setter> setters = new ArrayList<>();
        for (String key : block.names()) {
            Address address = find(key);
            if (address == null) {
                block.has(key);
                block.problem(key, unknown(key));
                continue;
            }
            if (window && address.target == Change.Target.DECLARE) {
                block.problem(key, "a declaration does not end; expected 'at: 2 h' for it");
            }
            if (window && address.target == Change.Target.CLOCK_JUMP) {
                block.problem(key, "a jump does not end; expected 'at: 2 h' for it");
            }
            if (window && address.target == Change.Target.GAUGE_CUT) {
                block.problem(key, "power goes once and has 'cut-for'; expected 'at: 2 h' for it");
            }
            long value = address.reader.applyAsLong(block);
            long after = isSwitch(address) ? 1 - value : address.initial;
            setters.add(new Setter(address.target, address.name, value, after));
        }
        block.finish();
        return setters;
    }

    private String unknown(String key) {
        return settingsNotTaken.contains(key)
                ? "while it runs this gauge takes a setting that it has a use for, such as"
                        + " 'capacity: 100 Ah @ 20 h'; expected a gauge of kind core for '"
                        + key
                        + "'"
                : "nothing here is called '"
                        + Texts.shortened(key)
                        + "'; "
                        + Nearest.hint(key, addresses.stream().map(Address::key).toList());
    }

    private static boolean isSwitch(Address address) {
        return switch (address.target) {
            case LOAD_SWITCH, CHARGER_SWITCH, ISOLATOR, PROTECTION, GAUGE_POWER, CLOCK_SWITCH ->
                    true;
            default -> false;
        };
    }

    private @Nullable Address find(String key) {
        for (Address address : addresses) {
            if (address.key.equals(key)) {
                return address;
            }
        }
        return null;
    }
}
