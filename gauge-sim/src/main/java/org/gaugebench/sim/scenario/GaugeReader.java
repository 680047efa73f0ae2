package org.gaugebench.sim.scenario;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.core.settings.SettingsProblem;
import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;

/** Reads a gauge: its kind, what is declared at the start, and every setting of the core. */
final class GaugeReader {
    static final String FIRST = "gauge";
    static final long UNKNOWN = -1;

    private final Problems problems;
    private final Block block;
    private final Function<Setting, SourceMark> origin;

    /**
     * Prepares to read.
     *
     * @param origin where the default of a setting comes from, for settings the block leaves out
     */
    GaugeReader(Problems problems, Block block, Function<Setting, SourceMark> origin) {
        this.problems = problems;
        this.block = block;
        this.origin = origin;
    }

    /**
     * Reads the gauge.
     *
     * @param usual settings where the block says nothing; a block that chooses another chemistry or
     *     nominal voltage gets those of that choice
     * @param battery the truth's, whose state of charge is declared where the block says nothing
     * @param sensor the real one
     * @param usualPower memory and supply where the block says nothing
     * @param usualClock its clock where the block says nothing
     */
    GaugeSpec read(
            String name,
            Map<Setting, Long> usual,
            BatterySpec battery,
            SensorSpec sensor,
            PowerSpec usualPower,
            ClockSpec usualClock) {
        GaugeSpec.Kind kind =
                block.choice(
                        "kind",
                        List.of(GaugeSpec.Kind.values()),
                        GaugeSpec.Kind::key,
                        GaugeSpec.Kind.CORE);
        Set<Mistake> mistakes = new MistakesReader(problems, block).read(kind);
        boolean believes = MistakesReader.believesAtStart(mistakes);
        if (believes && block.has("start") && !block.isWord("start", "unknown")) {
            block.valueProblem(
                    "start",
                    "this exhibit believes what it wants at the start; leave 'start' out, or"
                            + " expected 'start: unknown'");
        }
        long declared =
                believes || block.isWord("start", "unknown")
                        ? UNKNOWN
                        : block.quantity(
                                "start",
                                RecordUnit.PARTS_PER_MILLION,
                                0,
                                Defaults.WHOLE,
                                battery.startPartsPerMillion());
        if (kind == GaugeSpec.Kind.PLAIN_COUNTER && declared == UNKNOWN) {
            block.problem(
                    "start",
                    "a plain counter counts from what is declared; expected 'start: 80 %'");
        }
        PowerSpec power = new PowerReader(problems, block).read(usualPower);
        if (mistakes.contains(Mistake.SAVE_BY_OVERWRITE) && power.memory() == null) {
            block.problem(
                    "mistakes",
                    "an exhibit that saves needs something to save into; expected 'memory:"
                            + " {slots: 2}' beside its mistakes");
        }
        ClockSpec clock = ClockSpec.read(block, usualClock);
        Map<Setting, Long> values = new EnumMap<>(Setting.class);
        long chemistry = value(Setting.CHEMISTRY, usual);
        long nominal = value(Setting.NOMINAL_VOLTAGE, usual);
        Map<Setting, Long> rest = Defaults.chosen(chemistry, nominal, usual, battery, sensor);
        if (rest.isEmpty()) {
            block.valueProblem(
                    Setting.NOMINAL_VOLTAGE.key(),
                    "no charging voltages that a setting can hold go with this nominal voltage;"
                            + " expected one such as 'nominal-voltage: 24 V'");
            rest = usual;
        }
        for (Setting setting : Setting.values()) {
            values.put(setting, value(setting, rest));
        }
        block.finish();
        return new GaugeSpec(name, kind, build(values), declared, power, clock, mistakes);
    }

    private long value(Setting setting, Map<Setting, Long> usual) {
        return SettingText.read(
                block, setting, usual.getOrDefault(setting, setting.defaultValue()));
    }

    private GaugeSettings build(Map<Setting, Long> values) {
        GaugeSettings.Builder builder = GaugeSettings.builder();
        values.forEach(builder::set);
        List<SettingsProblem> broken = builder.problems();
        for (SettingsProblem problem : broken) {
            add(problem);
        }
        return broken.isEmpty() ? builder.build() : GaugeSettings.builder().build();
    }

    private void add(SettingsProblem problem) {
        Setting setting = problem.setting();
        boolean outside =
                problem.value() < setting.minimum() || problem.value() > setting.maximum();
        String rule =
                outside
                        ? "must be "
                                + SettingText.of(setting, setting.minimum())
                                + " to "
                                + SettingText.of(setting, setting.maximum())
                        : problem.rule();
        String text =
                "the gauge's '"
                        + setting.key()
                        + "' "
                        + rule
                        + ", but is "
                        + SettingText.of(setting, problem.value());
        if (block.has(setting.key())) {
            block.valueProblem(setting.key(), text);
        } else {
            problems.add(
                    origin.apply(setting),
                    text + ", which follows from this; write it under 'gauge' to change it");
        }
    }

    /**
     * Refuses a default that a setting can hold only roughly.
     *
     * @param setting whose default is cut
     * @param exact the value it comes from
     * @param exactUnit its unit, 1000 times finer than the setting's
     */
    void refuseCut(Setting setting, long exact, RecordUnit exactUnit) {
        if (exact % 1_000 != 0 && !block.has(setting.key())) {
            problems.add(
                    origin.apply(setting),
                    QuantityFormat.format(exact, exactUnit)
                            + " is finer than "
                            + SettingText.step(setting)
                            + ", the step of the gauge's '"
                            + setting.key()
                            + "'; write that one under 'gauge'");
        }
    }
}
