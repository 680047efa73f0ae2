package org.gaugebench.sim.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.Map;
import org.gaugebench.core.settings.ChemistryPreset;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** Every setting of the core can be written in a scenario and comes back as it was. */
class SettingTextTest {
    private static GaugeSettings settings(String gauge) throws ScenarioException {
        return ScenarioReader.read("hut.yaml", Samples.SMALLEST + gauge + "\n")
                .gauges()
                .get(0)
                .settings();
    }

    @Test
    void everySettingReadsBackAtBothEndsOfItsRange() throws ScenarioException {
        for (Setting setting : Setting.values()) {
            for (long value : new long[] {setting.minimum(), setting.maximum()}) {
                String line = setting.key() + ": " + SettingText.of(setting, value);
                String problems = Samples.problemsOf(Samples.SMALLEST + "gauge: {" + line + "}\n");
                // Some ends contradict another setting: then the rule speaks, never the reader.
                if (problems.isEmpty()) {
                    assertEquals(value, settings("gauge: {" + line + "}").get(setting), line);
                } else {
                    assertTrue(
                            problems.contains("gauge's")
                                    || problems.contains("no charging voltages"),
                            problems);
                }
            }
        }
    }

    @Test
    void aChemistryIsAWordAndBringsItsPreset() throws ScenarioException {
        GaugeSettings lithium = ChemistryPreset.LIFEPO4.builder(12_000).build();
        GaugeSettings read = settings("gauge: {chemistry: lifepo4}");
        Map<Setting, Long> sensed = new EnumMap<>(Setting.class);
        for (Setting setting : Setting.values()) {
            if (read.get(setting) != lithium.get(setting)) {
                sensed.put(setting, read.get(setting));
            }
        }
        assertEquals(Map.of(Setting.CAPACITY, 60_000L), sensed, "the rest is the preset's");
    }

    @Test
    void aNominalVoltageBringsTheVoltagesThatGoWithIt() throws ScenarioException {
        GaugeSettings read = settings("gauge: {nominal-voltage: 24 V, hold: 30 min}");
        assertEquals(28_800, read.get(Setting.ABSORPTION));
        assertEquals(30, read.get(Setting.HOLD));
    }

    @Test
    void aGaugeBesideKeepsTheFirstOnesSettingsUntilItChoosesAnotherChemistry()
            throws ScenarioException {
        Scenario scenario =
                ScenarioReader.read(
                        "hut.yaml",
                        Samples.SMALLEST
                                + """
                                gauge: {hold: 30 min}
                                beside:
                                  - {name: same, taper: 3 %}
                                  - {name: other, chemistry: lifepo4}
                                """);
        assertEquals(30, scenario.gauges().get(1).settings().get(Setting.HOLD));
        assertEquals(5, scenario.gauges().get(2).settings().get(Setting.HOLD));
        assertEquals(40_000, scenario.gauges().get(2).settings().get(Setting.TAPER));
    }

    @Test
    void shouldRefuseAnUnknownChemistryAndASwitchThatIsANumber() {
        String chemistry = Samples.problemsOf(Samples.SMALLEST + "gauge: {chemistry: lifepo5}\n");
        assertTrue(chemistry.contains("lifepo4"), chemistry);
        String number = Samples.problemsOf(Samples.SMALLEST + "gauge: {chemistry: 4}\n");
        assertTrue(number.contains("'chemistry' cannot be '4'"), number);
        String measure = Samples.problemsOf(Samples.SMALLEST + "gauge: {measure-capacity: 1}\n");
        assertTrue(measure.contains("on"), measure);
    }

    @Test
    void shouldRefuseANominalVoltageWhoseChargerNoSettingCanHold() {
        String problems = Samples.problemsOf(Samples.SMALLEST + "gauge: {nominal-voltage: 96 V}\n");
        assertTrue(problems.contains("no charging voltages"), problems);
        assertTrue(problems.contains("hut.yaml:6:26"), problems);
    }
}
