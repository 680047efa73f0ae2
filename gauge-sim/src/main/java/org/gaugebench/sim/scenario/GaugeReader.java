package org.gaugebench.sim.scenario;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
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

    GaugeSpec read(String name, Map<Setting, Long> usual, long usualStart) {
        GaugeSpec.Kind kind =
                block.choice(
                        "kind",
                        List.of(GaugeSpec.Kind.values()),
                        GaugeSpec.Kind::key,
                        GaugeSpec.Kind.CORE);
        long declared =
                block.isWord("start", "unknown")
                        ? UNKNOWN
                        : block.quantity(
                                "start",
                                RecordUnit.PARTS_PER_MILLION,
                                0,
                                Defaults.WHOLE,
                                usualStart);
        if (kind == GaugeSpec.Kind.PLAIN_COUNTER && declared == UNKNOWN) {
            block.problem(
                    "start",
                    "a plain counter counts from what is declared; expected 'start: 80 %'");
        }
        Map<Setting, Long> values = new EnumMap<>(Setting.class);
        for (Setting setting : Setting.values()) {
            values.put(setting, value(setting, usual.getOrDefault(setting, 0L)));
        }
        block.finish();
        return new GaugeSpec(name, kind, build(values), declared);
    }

    private long value(Setting setting, long usual) {
        RecordUnit unit = SettingUnits.of(setting);
        return setting == Setting.CAPACITY
                ? block.capacity(setting.key(), unit, setting.minimum(), setting.maximum(), usual)
                : block.quantity(setting.key(), unit, setting.minimum(), setting.maximum(), usual);
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
        RecordUnit unit = SettingUnits.of(setting);
        boolean outside =
                problem.value() < setting.minimum() || problem.value() > setting.maximum();
        String rule =
                outside
                        ? "must be "
                                + QuantityFormat.format(setting.minimum(), unit)
                                + " to "
                                + QuantityFormat.format(setting.maximum(), unit)
                        : problem.rule();
        String text =
                "the gauge's '"
                        + setting.key()
                        + "' "
                        + rule
                        + ", but is "
                        + QuantityFormat.format(problem.value(), unit);
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
                            + SettingUnits.of(setting).step()
                            + ", the step of the gauge's '"
                            + setting.key()
                            + "'; write that one under 'gauge'");
        }
    }
}
