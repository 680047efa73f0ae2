package org.gaugebench.sim.scenario;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.EnumMap;
import java.util.HexFormat;
import java.util.Map;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;

/** Writes a scenario back as text, with every default filled in, and digests it. */
public final class ScenarioWriter {
    private static final int DIGEST_BYTES = 8;

    private ScenarioWriter() {}

    /**
     * The scenario as a file in which every value stands.
     *
     * @param scenario as read
     * @return YAML that reads back to an equal scenario; a value that would also stand there if its
     *     line were left out is marked {@code # default}
     */
    public static String resolved(Scenario scenario) {
        Lines lines = new Lines(false);
        write(scenario, lines);
        return lines.toString();
    }

    /**
     * A short name for what the scenario simulates: the first 64 bits of the SHA-256 of its
     * resolved text without words for people.
     *
     * @param scenario as read
     * @return 16 hex digits that do not depend on layout, comments, title, about, marks, the
     *     reasons of expectations or the file's name
     */
    public static String digest(Scenario scenario) {
        Lines lines = new Lines(true);
        write(scenario, lines);
        try {
            byte[] hash =
                    MessageDigest.getInstance("SHA-256")
                            .digest(lines.toString().getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(hash, 0, DIGEST_BYTES);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    static String time(long millis) {
        return QuantityFormat.format(millis, RecordUnit.MILLIS);
    }

    private static void write(Scenario it, Lines lines) {
        lines.value("format", "1");
        lines.prose("title", it.title());
        if (!it.about().isEmpty()) {
            lines.prose("about", it.about());
        }
        MarksReader.write(it.marks(), lines);
        lines.value("seed", Long.toString(it.seed()), Long.toString(Defaults.SEED));
        lines.value("duration", time(it.durationMillis()));
        lines.quantity("tick", RecordUnit.MILLIS, it.tickMillis(), Defaults.TICK_MILLIS);
        PartWriter parts = new PartWriter(lines);
        parts.battery(it.battery());
        parts.sensor(it.sensor());
        writeGauges(it, lines);
        if (!it.chargers().isEmpty()) {
            lines.open("chargers");
            it.chargers().forEach(charger -> parts.charger(charger, it.battery()));
            lines.close();
        }
        if (!it.loads().isEmpty()) {
            lines.open("loads");
            it.loads().forEach(load -> parts.load(load, it.battery()));
            lines.close();
        }
        WiringReader.write(it.wiring(), lines);
        StepWriter steps = new StepWriter(lines, it);
        steps.timeline();
        steps.expectations();
    }

    private static void writeGauges(Scenario it, Lines lines) {
        GaugeSpec first = it.gauges().get(0);
        lines.open("gauge");
        writeGauge(first, Defaults.settings(it.battery(), it.sensor()), it, lines);
        new PowerWriter(lines).write(first.power(), PowerSpec.USUAL);
        first.clock().write(lines, ClockSpec.USUAL);
        lines.close();
        if (it.gauges().size() == 1) {
            return;
        }
        Map<Setting, Long> usual = new EnumMap<>(Setting.class);
        for (Setting setting : Setting.values()) {
            usual.put(setting, first.settings().get(setting));
        }
        lines.open("beside");
        for (GaugeSpec gauge : it.gauges().subList(1, it.gauges().size())) {
            lines.openItem("name", gauge.name());
            writeGauge(gauge, usual, it, lines);
            new PowerWriter(lines).write(gauge.power(), first.power());
            gauge.clock().write(lines, first.clock());
            lines.close();
        }
        lines.close();
    }

    private static void writeGauge(
            GaugeSpec it, Map<Setting, Long> usual, Scenario scenario, Lines lines) {
        lines.value("kind", it.kind().key(), GaugeSpec.Kind.CORE.key());
        if (it.kind() == GaugeSpec.Kind.EXHIBIT) {
            lines.value("mistakes", MistakesReader.text(it.mistakes()));
        }
        lines.value(
                "start",
                start(it.declaredPartsPerMillion()),
                start(
                        MistakesReader.believesAtStart(it.mistakes())
                                ? GaugeReader.UNKNOWN
                                : scenario.battery().startPartsPerMillion()));
        Map<Setting, Long> chosen =
                Defaults.chosen(
                        it.settings().get(Setting.CHEMISTRY),
                        it.settings().get(Setting.NOMINAL_VOLTAGE),
                        usual,
                        scenario.battery(),
                        scenario.sensor());
        for (Setting setting : Setting.values()) {
            boolean choice = setting == Setting.CHEMISTRY || setting == Setting.NOMINAL_VOLTAGE;
            Map<Setting, Long> defaults = choice ? usual : chosen;
            lines.value(
                    setting.key(),
                    SettingText.of(setting, it.settings().get(setting)),
                    SettingText.of(
                            setting, defaults.getOrDefault(setting, setting.defaultValue())));
        }
    }

    private static String start(long partsPerMillion) {
        return partsPerMillion == GaugeReader.UNKNOWN
                ? "unknown"
                : QuantityFormat.format(partsPerMillion, RecordUnit.PARTS_PER_MILLION);
    }
}
