package org.gaugebench.sim.scenario;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import org.gaugebench.core.settings.ChemistryPreset;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** The table of settings of the page on the format, made from the table in the core. */
final class SettingsTable {
    private static final Map<Setting, String> FROM_THE_FILE = new EnumMap<>(Setting.class);

    static {
        FROM_THE_FILE.put(Setting.CHEMISTRY, "`battery.chemistry`");
        FROM_THE_FILE.put(Setting.NOMINAL_VOLTAGE, "`battery.nominal-voltage`");
        FROM_THE_FILE.put(Setting.SHUNT_RATED_CURRENT, "`sensor.shunt`");
        FROM_THE_FILE.put(Setting.SHUNT_RATED_DROP, "`sensor.shunt`");
        FROM_THE_FILE.put(Setting.SHUNT_CONVERTER_BITS, "`sensor.converter`");
        FROM_THE_FILE.put(Setting.SHUNT_FULL_SCALE, "`sensor.converter`");
        FROM_THE_FILE.put(Setting.VOLTAGE_CONVERTER_BITS, "`sensor.voltage-converter`");
        FROM_THE_FILE.put(Setting.VOLTAGE_FULL_SCALE, "`sensor.voltage-converter`");
        FROM_THE_FILE.put(Setting.CAPACITY, "`battery.capacity`");
    }

    private SettingsTable() {}

    static String markdown() {
        StringBuilder table =
                new StringBuilder(
                        """
                        | key | range | default; of another chemistry | meaning |
                        |---|---|---|---|
                        """);
        for (Setting setting : Setting.values()) {
            String usual = usual(setting);
            table.append("| `").append(setting.key()).append("` | ").append(range(setting));
            table.append(" | ").append(FROM_THE_FILE.getOrDefault(setting, usual));
            table.append(" | ").append(meaning(setting)).append(" |\n");
        }
        return table.toString();
    }

    /** The value of {@code lead-acid-agm}, then those chemistries that have another one. */
    private static String usual(Setting setting) {
        Map<String, String> chemistriesByValue = new LinkedHashMap<>();
        chemistriesByValue.put(of(ChemistryPreset.LEAD_ACID_AGM, setting), "");
        for (ChemistryPreset preset : ChemistryPreset.values()) {
            String key = "`" + preset.key() + "`";
            chemistriesByValue.merge(of(preset, setting), key, (all, one) -> all + ", " + one);
        }
        StringBuilder text = new StringBuilder();
        chemistriesByValue.forEach(
                (value, chemistries) ->
                        text.append(text.isEmpty() ? value : "; " + chemistries + ": " + value));
        return text.toString();
    }

    private static String of(ChemistryPreset preset, Setting setting) {
        GaugeSettings settings = preset.builder(12_000).build();
        return SettingText.of(setting, settings.get(setting));
    }

    private static String range(Setting setting) {
        if (setting == Setting.CHEMISTRY) {
            StringBuilder words = new StringBuilder();
            for (ChemistryPreset preset : ChemistryPreset.values()) {
                words.append(words.isEmpty() ? "`" : ", `").append(preset.key()).append('`');
            }
            return words.toString();
        }
        if (setting.unit().equals("switch")) {
            return "`on`, `off`";
        }
        return SettingText.of(setting, setting.minimum())
                + " to "
                + SettingText.of(setting, setting.maximum())
                + ", steps of "
                + SettingText.step(setting);
    }

    /** The core speaks of codes where files have words. */
    private static String meaning(Setting setting) {
        return setting == Setting.CHEMISTRY
                ? "what the installer takes the battery for"
                : setting.meaning().replaceFirst("^1 (.*), 0 never$", "$1");
    }
}
