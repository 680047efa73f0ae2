package org.gaugebench.sim.scenario;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.sim.scenario.Expectation.Kind;
import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;

/** Writes the timeline, as single changes, and the expectations. */
final class StepWriter {
    private final Lines lines;
    private final Scenario scenario;

    StepWriter(Lines lines, Scenario scenario) {
        this.lines = lines;
        this.scenario = scenario;
    }

    void timeline() {
        if (scenario.changes().isEmpty()) {
            return;
        }
        lines.open("timeline");
        long at = -1;
        Map<String, String> set = new LinkedHashMap<>();
        for (Change change : scenario.changes()) {
            if (isCommand(change)) {
                step(at, set);
                at = -1;
                lines.item(
                        "{at: "
                                + ScenarioWriter.time(change.atMillis())
                                + ", "
                                + CommandReader.text(change)
                                + "}");
                continue;
            }
            String key = key(change);
            if (change.atMillis() != at || set.containsKey(key)) {
                step(at, set);
                at = change.atMillis();
            }
            set.put(key, value(scenario, change));
        }
        step(at, set);
        lines.close();
    }

    private static boolean isCommand(Change change) {
        return change.target() != Change.Target.DECLARE && change.target().command() != null;
    }

    private void step(long at, Map<String, String> set) {
        if (!set.isEmpty()) {
            List<String> pairs = new ArrayList<>();
            set.forEach((key, value) -> pairs.add(key + ": " + value));
            lines.item(
                    "{at: "
                            + ScenarioWriter.time(at)
                            + ", set: {"
                            + String.join(", ", pairs)
                            + "}}");
        }
        set.clear();
    }

    private String key(Change change) {
        return switch (change.target()) {
            case LOAD_SWITCH, CHARGER_SWITCH -> change.name();
            case LOAD_AMOUNT ->
                    change.name() + "." + LoadReader.key(kindOf(scenario, change.name()));
            case ISOLATOR -> "isolator";
            case PROTECTION -> "protection";
            case BATTERY_TEMPERATURE -> "battery.temperature";
            case SENSOR_OFFSET -> "sensor.offset";
            case SENSOR_TRAIT -> "sensor." + change.name();
            case SENSOR_SAMPLES -> "sensor.samples";
            case CLOCK_ERROR -> change.name() + ".clock-error";
            case CLOCK_JITTER -> change.name() + ".clock-jitter";
            case CLOCK_JUMP -> change.name() + ".clock-jump";
            case CLOCK_SWITCH -> change.name() + ".clock";
            case WIRING -> "wiring." + change.name();
            case GAUGE_POWER -> change.name() + ".power";
            case GAUGE_OFF_TIME -> change.name() + ".off-time";
            case GAUGE_CUT -> change.name() + ".cut-at-write";
            case DECLARE -> change.name() + ".declare";
            case SETTING -> change.name();
            default -> throw new IllegalStateException("a command has a step of its own");
        };
    }

    /** The new value of a change that is no command, as files write it. */
    static String value(Scenario scenario, Change change) {
        boolean one = change.value() == 1;
        return switch (change.target()) {
            case LOAD_SWITCH, CHARGER_SWITCH, GAUGE_POWER -> one ? "on" : "off";
            case LOAD_AMOUNT ->
                    QuantityFormat.format(
                            change.value(), LoadReader.unit(kindOf(scenario, change.name())));
            case ISOLATOR -> one ? "open" : "closed";
            case PROTECTION -> one ? "open" : "automatic";
            case BATTERY_TEMPERATURE ->
                    QuantityFormat.format(change.value(), RecordUnit.MILLICELSIUS);
            case WIRING -> WiringReader.text(change.name(), change.value());
            case SENSOR_OFFSET -> QuantityFormat.format(change.value(), RecordUnit.NANOVOLTS);
            case SENSOR_SAMPLES -> PowerReader.key(SampleMode.values()[(int) change.value()]);
            case CLOCK_ERROR -> QuantityFormat.format(change.value(), RecordUnit.PARTS_PER_MILLION);
            case CLOCK_JITTER, CLOCK_JUMP -> ScenarioWriter.time(change.value());
            case CLOCK_SWITCH -> one ? "running" : "stopped";
            case SENSOR_TRAIT ->
                    QuantityFormat.format(change.value(), SensorTrait.of(change.name()).unit());
            case GAUGE_OFF_TIME -> PowerReader.key(OffTime.values()[(int) change.value()]);
            case GAUGE_CUT -> Long.toString(change.value());
            case DECLARE -> QuantityFormat.format(change.value(), RecordUnit.PARTS_PER_MILLION);
            case SETTING -> SettingText.of(CommandReader.address(change).setting(), change.value());
            default -> throw new IllegalStateException("a command has a step of its own");
        };
    }

    private static LoadSpec.Kind kindOf(Scenario scenario, String name) {
        for (LoadSpec load : scenario.loads()) {
            if (load.name().equals(name)) {
                return load.kind();
            }
        }
        return LoadSpec.Kind.CONSTANT_CURRENT;
    }

    void expectations() {
        if (scenario.expectations().isEmpty()) {
            return;
        }
        lines.open("expect");
        scenario.expectations().forEach(this::expectation);
        lines.close();
    }

    private void expectation(Expectation it) {
        String to = ScenarioWriter.time(it.toMillis());
        switch (it.kind()) {
            case AT -> lines.openItem("at", ScenarioWriter.time(it.fromMillis()));
            case BY -> lines.openItem("by", to);
            case THROUGHOUT, NEVER, ONCE -> lines.openItem(SettingUnits.key(it.kind()), "true");
            case EVENTS -> event(it);
        }
        if (it.kind() != Kind.AT) {
            lines.value("from", ScenarioWriter.time(it.fromMillis()), ScenarioWriter.time(0));
        }
        if (it.kind() != Kind.AT && it.kind() != Kind.BY) {
            lines.value("to", to, ScenarioWriter.time(scenario.durationMillis()));
        }
        if (it.register() != null) {
            lines.value("register", SettingUnits.key(it.register()));
        }
        if (it.reading() != null) {
            lines.value("reading", it.reading().key());
        }
        lines.value("gauge", it.gauge(), GaugeReader.FIRST);
        comparison(it);
        if (it.trueStateAtLeastPartsPerMillion() >= 0) {
            lines.value(
                    "true-state-at-least",
                    QuantityFormat.format(
                            it.trueStateAtLeastPartsPerMillion(), RecordUnit.PARTS_PER_MILLION));
        }
        if (!it.because().isEmpty()) {
            lines.prose("because", it.because());
        }
        if (!it.expectedToFail().isEmpty()) {
            // The reason is for people; that there is one decides the verdict.
            lines.value(
                    "expected-to-fail",
                    lines.isCanonical() ? "yes" : Lines.quoted(it.expectedToFail()));
        }
        lines.close();
    }

    private void event(Expectation it) {
        lines.openItem("event", it.event() == null ? "" : SettingUnits.key(it.event()));
        if (it.fault() != null) {
            lines.value("fault", SettingUnits.key(it.fault()));
        }
        span("first", it.times().firstFromMillis(), it.times().firstToMillis());
        span("last", it.times().lastFromMillis(), it.times().lastToMillis());
    }

    private void span(String key, long from, long to) {
        List<String> ends = new ArrayList<>();
        if (from > 0) {
            ends.add("from: " + ScenarioWriter.time(from));
        }
        if (to < Long.MAX_VALUE) {
            ends.add("to: " + ScenarioWriter.time(to));
        }
        if (!ends.isEmpty()) {
            lines.value(key, "{" + String.join(", ", ends) + "}");
        }
    }

    private void comparison(Expectation it) {
        switch (it.comparison()) {
            case WITHIN_OF_TRUTH -> {
                lines.value("within", figure(it, it.tolerance()));
                lines.value("of", "truth");
            }
            case BAND_HOLDS_TRUTH -> {
                lines.value("within", "band");
                lines.value("of", "truth");
            }
            case WITHIN_OF_VALUE -> {
                lines.value("within", figure(it, it.tolerance()));
                lines.value("of", figure(it, it.value()));
            }
            case AT_LEAST -> lines.value("at-least", figure(it, it.value()));
            case AT_MOST -> lines.value("at-most", figure(it, it.value()));
            case EXACTLY ->
                    lines.value(it.event() == null ? "is" : "times", figure(it, it.value()));
            case NOT_KNOWN -> lines.value("is", "not-known");
            case MORE_THAN -> lines.value("is", "more than " + figure(it, it.value()));
        }
    }

    private static String figure(Expectation it, long value) {
        return it.reading() == null ? Long.toString(value) : ExpectationText.value(it, value);
    }
}
