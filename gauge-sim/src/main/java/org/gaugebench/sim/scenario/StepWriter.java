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
            String key = key(change);
            if (change.atMillis() != at || set.containsKey(key)) {
                step(at, set);
                at = change.atMillis();
            }
            set.put(key, value(change));
        }
        step(at, set);
        lines.close();
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
            case LOAD_AMOUNT -> change.name() + "." + LoadReader.key(kindOf(change.name()));
            case ISOLATOR -> "isolator";
            case PROTECTION -> "protection";
            case BATTERY_TEMPERATURE -> "battery.temperature";
            case SENSOR_OFFSET -> "sensor.offset";
            case WIRING -> "wiring." + change.name();
            case GAUGE_POWER -> change.name() + ".power";
            case GAUGE_OFF_TIME -> change.name() + ".off-time";
            case GAUGE_CUT -> change.name() + ".cut-at-write";
            case DECLARE -> change.name() + ".declare";
        };
    }

    private String value(Change change) {
        boolean one = change.value() == 1;
        return switch (change.target()) {
            case LOAD_SWITCH, CHARGER_SWITCH, GAUGE_POWER -> one ? "on" : "off";
            case LOAD_AMOUNT ->
                    QuantityFormat.format(change.value(), LoadReader.unit(kindOf(change.name())));
            case ISOLATOR -> one ? "open" : "closed";
            case PROTECTION -> one ? "open" : "automatic";
            case BATTERY_TEMPERATURE ->
                    QuantityFormat.format(change.value(), RecordUnit.MILLICELSIUS);
            case WIRING -> WiringReader.text(change.name(), change.value());
            case SENSOR_OFFSET -> QuantityFormat.format(change.value(), RecordUnit.NANOVOLTS);
            case GAUGE_OFF_TIME -> PowerReader.key(OffTime.values()[(int) change.value()]);
            case GAUGE_CUT -> Long.toString(change.value());
            case DECLARE -> QuantityFormat.format(change.value(), RecordUnit.PARTS_PER_MILLION);
        };
    }

    private LoadSpec.Kind kindOf(String name) {
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
        if (it.kind() == Kind.AT) {
            lines.openItem("at", ScenarioWriter.time(it.fromMillis()));
        } else {
            if (it.event() != null) {
                lines.openItem("event", SettingUnits.key(it.event()));
                if (it.fault() != null) {
                    lines.value("fault", SettingUnits.key(it.fault()));
                }
            } else {
                lines.openItem("throughout", "true");
            }
            lines.value("from", ScenarioWriter.time(it.fromMillis()), ScenarioWriter.time(0));
            lines.value(
                    "to",
                    ScenarioWriter.time(it.toMillis()),
                    ScenarioWriter.time(scenario.durationMillis()));
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
        return it.event() == null ? ExpectationText.value(it, value) : Long.toString(value);
    }
}
