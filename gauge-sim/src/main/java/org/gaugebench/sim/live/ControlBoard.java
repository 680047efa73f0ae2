package org.gaugebench.sim.live;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.live.Control.Range;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.Change.Target;
import org.gaugebench.sim.scenario.ChargerSpec;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.LoadSpec;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.SensorTrait;
import org.jspecify.annotations.Nullable;

/** What can be moved in a scenario while it runs, and where each of it stands. */
final class ControlBoard {
    private static final String GAUGE = "gauge";
    private static final String ON_OFF_ONE = "on";
    private static final String ON_OFF_ZERO = "off";

    private final List<Control> controls = new ArrayList<>();
    private final Map<String, Long> values = new HashMap<>();

    ControlBoard(Scenario it) {
        for (LoadSpec load : it.loads()) {
            addLoad(load);
        }
        for (ChargerSpec charger : it.chargers()) {
            boolean on = charger.switchedOn();
            add("chargers", charger.name(), Target.CHARGER_SWITCH, charger.name(), on);
        }
        add(
                "isolator",
                "battery",
                "isolator",
                Target.ISOLATOR,
                "",
                0,
                Range.ofSwitch("open", "closed"));
        add(
                "battery.temperature",
                "battery",
                "temperature",
                Target.BATTERY_TEMPERATURE,
                "",
                it.battery().temperatureMillicelsius(),
                new Range(-20_000, 50_000, 1_000, 1_000, "°C"));
        addSensor(it);
        for (GaugeSpec gauge : it.gauges()) {
            addSettings(gauge);
        }
        for (GaugeSpec gauge : it.gauges()) {
            String key = gauge.name() + ".power";
            add(key, "power", "power", Target.GAUGE_POWER, gauge.name(), 1, onOff());
        }
        reset();
    }

    private static Range onOff() {
        return Range.ofSwitch(ON_OFF_ONE, ON_OFF_ZERO);
    }

    private void add(String group, String key, Target target, String name, boolean on) {
        add(key, group, "name:" + name, target, name, on ? 1 : 0, onOff());
    }

    private void add(
            String key,
            String group,
            String word,
            Target target,
            String name,
            long first,
            Range range) {
        controls.add(new Control(key, group, word, target, name, first, range));
    }

    private void addLoad(LoadSpec load) {
        add("loads", load.name(), Target.LOAD_SWITCH, load.name(), load.switchedOn());
        if (load.traits().profile() != null) {
            return;
        }
        String key =
                switch (load.kind()) {
                    case CONSTANT_CURRENT -> "current";
                    case CONSTANT_POWER -> "power";
                    case CONSTANT_RESISTANCE -> "resistance";
                };
        String unit =
                switch (load.kind()) {
                    case CONSTANT_CURRENT -> "A";
                    case CONSTANT_POWER -> "W";
                    case CONSTANT_RESISTANCE -> "Ohm";
                };
        long step = step(load.amount());
        // Of a resistance a third is three times the load; of the others a step is nearly nothing.
        boolean resistance = load.kind() == LoadSpec.Kind.CONSTANT_RESISTANCE;
        long least = resistance ? Math.max(step, load.amount() / 3 / step * step) : step;
        add(
                load.name() + "." + key,
                "loads",
                key,
                Target.LOAD_AMOUNT,
                load.name(),
                load.amount(),
                new Range(
                        least,
                        (3 * load.amount() + step - 1) / step * step,
                        step,
                        1_000_000,
                        unit));
    }

    /** A twentieth of the power of ten below the amount. */
    private static long step(long amount) {
        long power = 1;
        while (power * 10 <= amount) {
            power *= 10;
        }
        return Math.max(1, power / 20);
    }

    private void addSensor(Scenario it) {
        add(
                "sensor.offset",
                "sensor",
                "offset",
                Target.SENSOR_OFFSET,
                "",
                it.sensor().offsetNanovolts(),
                new Range(-50_000, 50_000, 500, 1_000, "uV"));
        add(
                "wiring.parallel-path",
                "sensor",
                "parallel-path",
                Target.WIRING,
                "parallel-path",
                it.wiring().get("parallel-path"),
                new Range(0, 300_000, 5_000, 10_000, "%"));
        SensorTrait asymmetry = SensorTrait.GAIN_ASYMMETRY;
        add(
                "sensor." + asymmetry.key(),
                "sensor",
                asymmetry.key(),
                Target.SENSOR_TRAIT,
                asymmetry.key(),
                it.sensor().traits().get(asymmetry),
                new Range(-50_000, 50_000, 1_000, 10_000, "%"));
        add(
                "wiring.shunt",
                "sensor",
                "reversed",
                Target.WIRING,
                "shunt",
                it.wiring().get("shunt"),
                Range.ofSwitch("reversed", "right-way"));
    }

    private void addSettings(GaugeSpec gauge) {
        long capacity = gauge.settings().get(Setting.CAPACITY);
        long step = Math.max(1, step(capacity));
        Range amps = new Range(capacity / 2, 2 * capacity, step, 1_000, "Ah");
        addSetting(gauge, Setting.CAPACITY, amps);
        if (gauge.kind() != GaugeSpec.Kind.CORE) {
            return;
        }
        addSetting(
                gauge,
                Setting.COULOMBIC_EFFICIENCY,
                new Range(700_000, 1_000_000, 5_000, 10_000, "%"));
        long rated = gauge.settings().get(Setting.SHUNT_RATED_CURRENT);
        long ratedStep = Math.max(1, rated / 50);
        addSetting(
                gauge,
                Setting.SHUNT_RATED_CURRENT,
                new Range(rated / 2, 2 * rated, ratedStep, 1_000, "A"));
        long volts = gauge.settings().get(Setting.ABSORPTION);
        if (volts > 0) {
            // A charger floats lower than it absorbs; so much the settings ask for.
            long least = Math.max(volts * 9 / 10, gauge.settings().get(Setting.FLOAT_VOLTAGE));
            addSetting(
                    gauge,
                    Setting.ABSORPTION,
                    new Range((least + 99) / 100 * 100, volts * 11 / 10, 100, 1_000, "V"));
        }
        addSetting(gauge, Setting.OWN_SUPPLY, new Range(0, 100_000, 1_000, 1_000, "mA"));
    }

    private void addSetting(GaugeSpec gauge, Setting setting, Range range) {
        String key = gauge.name() + "." + setting.key();
        long first = gauge.settings().get(setting);
        String group = gauge.name().equals(GAUGE) ? "settings" : "settings-beside";
        add(key, group, setting.key(), Target.SETTING, key, first, range);
    }

    /** Back to the start. */
    void reset() {
        values.clear();
        controls.forEach(control -> values.put(control.key(), control.first()));
    }

    /** A change takes effect, or is about to. */
    void took(Change change) {
        for (Control control : controls) {
            if (control.target() == change.target() && control.name().equals(change.name())) {
                values.put(control.key(), change.value());
            }
        }
    }

    List<Control> controls() {
        return controls;
    }

    /** Where a control stands. */
    long value(Control control) {
        return values.getOrDefault(control.key(), control.first());
    }

    /** The control that a change moves; null where none does. */
    @Nullable Control controlOf(Change change) {
        for (Control control : controls) {
            if (control.target() == change.target() && control.name().equals(change.name())) {
                return control;
            }
        }
        return null;
    }
}
