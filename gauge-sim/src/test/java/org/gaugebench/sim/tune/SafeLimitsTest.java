package org.gaugebench.sim.tune;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.gaugebench.core.settings.ChemistryPreset;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.PageSection;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.scenario.SettingText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What may be recommended lies where battery and charger allow it. */
class SafeLimitsTest {
    private static final Path PAGE = Path.of("docs", "tuning.md");

    private static GaugeSettings usual(String key, long volts) {
        for (ChemistryPreset each : ChemistryPreset.values()) {
            if (each.key().equals(key)) {
                return each.builder(volts * 1_000).build();
            }
        }
        throw new AssertionError(key);
    }

    private static Chemistry chemistry(String key) {
        for (Chemistry each : Chemistry.values()) {
            if (each.key().equals(key)) {
                return each;
            }
        }
        throw new AssertionError(key);
    }

    @ParameterizedTest
    @CsvSource({
        "lead-acid-flooded, 12",
        "lead-acid-agm, 12",
        "lead-acid-agm, 48",
        "lead-acid-gel, 24",
        "lifepo4, 12",
        "lifepo4, 36",
        "nmc, 12",
        "nmc, 48"
    })
    void aThresholdLiesUnderTheChargerAndAboveWhatAFloatOrARestShows(String key, int volts) {
        GaugeSettings usual = usual(key, volts);
        TunedSetting margin = SafeLimits.of(chemistry(key), volts).get(0);
        assertEquals(Setting.ABSORPTION_MARGIN, margin.setting());
        long absorption = usual.get(Setting.ABSORPTION);
        long highest = absorption - margin.lowest();
        long lowest = absorption - margin.highest();
        // 50 mV of 12 V for a cable and a coarse meter; 150 mV above the float.
        assertTrue(highest <= absorption - 50L * volts / 12, key + " " + highest);
        long floating = usual.get(Setting.FLOAT_VOLTAGE);
        if (floating > 0) {
            assertTrue(lowest >= floating + 150L * volts / 12, key + " " + lowest);
        } else {
            assertTrue(lowest >= usual.get(Setting.REST_VOLTAGE_90), key + " " + lowest);
        }
    }

    @ParameterizedTest
    @CsvSource({"lead-acid-flooded", "lead-acid-agm", "lead-acid-gel", "lifepo4", "nmc"})
    void everyPresetIsSafeAndEveryLoosestIsNot(String key) {
        for (int volts : new int[] {12, 24, 36, 48}) {
            List<TunedSetting> settings = SafeLimits.of(chemistry(key), volts);
            assertTrue(TuneTask.preset(settings).isSafe(settings), key + " " + volts);
            for (TunedSetting each : settings) {
                assertTrue(!each.isSafe(each.loosest()), key + " " + each.setting());
                assertTrue(each.loosest() >= each.setting().minimum(), key + each.setting());
                assertTrue(each.loosest() <= each.setting().maximum(), key + each.setting());
                assertTrue(each.lowest() >= each.setting().minimum(), key + each.setting());
                assertTrue(each.highest() <= each.setting().maximum(), key + each.setting());
                // Makers' figures end at 5 % of the capacity an hour.
                if (each.setting() == Setting.TAPER) {
                    assertTrue(each.highest() <= 50_000, key);
                }
            }
        }
    }

    @Test
    void thePageHasEveryLimitWithItsReason() throws IOException {
        Map<String, List<String>> rows = new LinkedHashMap<>();
        for (Chemistry chemistry : Chemistry.values()) {
            for (TunedSetting it : SafeLimits.of(chemistry, 12)) {
                String row =
                        "%s | %s | %s | %s"
                                .formatted(
                                        SettingText.of(it.setting(), it.lowest()),
                                        SettingText.of(it.setting(), it.highest()),
                                        it.lowerReason(),
                                        it.upperReason());
                rows.computeIfAbsent(
                                "| `" + it.setting().key() + "` | %s | " + row + " |",
                                all -> new ArrayList<>())
                        .add("`" + chemistry.key() + "`");
            }
        }
        StringBuilder table =
                new StringBuilder(
                        """
                        | setting | battery | from | to | why not lower | why not higher |
                        |---|---|---|---|---|---|
                        """);
        rows.entrySet().stream()
                .sorted(
                        java.util.Comparator.comparing(
                                it -> it.getKey().substring(0, it.getKey().indexOf('%'))))
                .forEach(
                        it ->
                                table.append(
                                        it.getKey()
                                                        .replaceFirst(
                                                                "%s",
                                                                String.join(", ", it.getValue()))
                                                + "\n"));
        PageSection.check(PAGE, "limits", table.toString());
    }
}
