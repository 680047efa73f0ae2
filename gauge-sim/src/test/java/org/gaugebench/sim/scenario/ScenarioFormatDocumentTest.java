package org.gaugebench.sim.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.PageSection;
import org.junit.jupiter.api.Test;

/** The page on the format says what the reader does. */
class ScenarioFormatDocumentTest {
    private static final Path PAGE = Path.of("docs", "scenario-format.md");

    @Test
    void theAnnotatedExampleIsAScenario() throws IOException, ScenarioException {
        Matcher fence =
                Pattern.compile("```yaml\n(.*?)```", Pattern.DOTALL)
                        .matcher(Files.readString(PAGE));
        assertTrue(fence.find());
        Scenario example = ScenarioReader.read("example", fence.group(1));
        assertEquals(2, example.gauges().size());
        assertEquals(4, example.expectations().size());
    }

    @Test
    void theTableOfSettingsIsTheCoresOwn() throws IOException {
        PageSection.check(PAGE, "settings", SettingsTable.markdown());
    }

    @Test
    void theTableOfMistakesIsTheExhibitsOwn() throws IOException {
        PageSection.check(PAGE, "mistakes", MistakesTable.markdown());
    }

    @Test
    void theTablesOfReadingsAndRegistersAreComplete() throws IOException {
        PageSection.check(PAGE, "readings", ReadingTables.readings());
        PageSection.check(PAGE, "registers", ReadingTables.registers());
    }

    @Test
    void everyKeyOfTheFullSampleAndEverySettingAndEventIsExplained()
            throws IOException, ScenarioException {
        String page = Files.readString(PAGE);
        for (Setting setting : Setting.values()) {
            assertTrue(page.contains("`" + setting.key() + "`"), setting.key());
        }
        for (Event event : Event.values()) {
            assertTrue(page.contains("`" + SettingUnits.key(event) + "`"), event.name());
        }
        for (Fault fault : Fault.values()) {
            assertTrue(page.contains("`" + SettingUnits.key(fault) + "`"), fault.name());
        }
        for (SensorTrait trait : SensorTrait.values()) {
            assertTrue(page.contains("| `" + trait.key() + "` |"), trait.key());
        }
        for (Expectation.Reading reading : Expectation.Reading.values()) {
            assertTrue(page.contains("`" + reading.key() + "`"), reading.name());
        }
        String resolved =
                ScenarioWriter.resolved(ScenarioReader.read("hut.yaml", Samples.EVERYTHING));
        Matcher key = Pattern.compile("(?m)^[ -]*([a-z-]+):").matcher(resolved);
        while (key.find()) {
            boolean name =
                    key.group(1)
                            .matches("shore|turbine|lamp|radio|heater|pump|hoist|dimmer|inverter");
            assertTrue(name || page.matches("(?s).*[`.]" + key.group(1) + "[`:].*"), key.group(1));
        }
    }
}
