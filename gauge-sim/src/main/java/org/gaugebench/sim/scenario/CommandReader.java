package org.gaugebench.sim.scenario;

import java.util.List;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.units.RecordUnit;

/** Reads and writes what a timeline step tells a gauge: a command, or another setting. */
final class CommandReader {
    private static final List<Change.Target> COMMANDS =
            List.of(
                    Change.Target.NEW_BATTERY,
                    Change.Target.FORGET_MEASURED,
                    Change.Target.ZERO_ADJUSTMENT,
                    Change.Target.SPAN_ADJUSTMENT);

    private CommandReader() {}

    /**
     * Reads a step that carries a command instead of a set.
     *
     * @param step has the key "command"
     * @param gauges in file order
     * @param window whether the step has a beginning and an end
     */
    static List<ChangeReader.Setter> read(Block step, List<GaugeSpec> gauges, boolean window) {
        Change.Target command =
                step.choice("command", COMMANDS, SettingUnits::key, Change.Target.NEW_BATTERY);
        GaugeSpec gauge = step.choice("gauge", gauges, GaugeSpec::name, gauges.get(0));
        if (gauge.kind() != GaugeSpec.Kind.CORE) {
            step.problem(
                    step.has("gauge") ? "gauge" : "command",
                    "'"
                            + gauge.name()
                            + "' takes no commands but a declaration; expected 'set: {"
                            + gauge.name()
                            + ".declare: 80 %}' or a gauge of kind core");
        }
        boolean span = command == Change.Target.SPAN_ADJUSTMENT;
        if (span) {
            step.require("meter", "meter: -10 A");
        } else if (step.has("meter")) {
            step.problem("meter", "'meter' goes with 'command: span-adjustment' only");
        }
        long meter =
                step.quantity(
                        "meter",
                        RecordUnit.MICROAMPS,
                        -ChargerReader.LARGEST_MICROAMPS,
                        ChargerReader.LARGEST_MICROAMPS,
                        0);
        if (window) {
            step.problem("command", "a command does not end; expected 'at: 2 h' for it");
        }
        return List.of(new ChangeReader.Setter(command, gauge.name(), span ? meter : 0, 0));
    }

    /** The gauge and the setting of a change of a setting. */
    record Address(String gauge, Setting setting) {}

    /** Takes apart what {@link Change#name()} holds for a setting. */
    static Address address(Change change) {
        int dot = change.name().indexOf('.');
        String key = change.name().substring(dot + 1);
        for (Setting setting : Setting.values()) {
            if (setting.key().equals(key)) {
                return new Address(change.name().substring(0, dot), setting);
            }
        }
        throw new IllegalArgumentException("no setting is called " + key);
    }

    /** The step of a command as the file writes it, without its time. */
    static String text(Change change) {
        String gauge = change.name().equals(GaugeReader.FIRST) ? "" : ", gauge: " + change.name();
        String meter =
                change.target() == Change.Target.SPAN_ADJUSTMENT
                        ? ", meter: " + SettingUnits.microamps(change.value())
                        : "";
        return "command: " + SettingUnits.key(change.target()) + gauge + meter;
    }
}
