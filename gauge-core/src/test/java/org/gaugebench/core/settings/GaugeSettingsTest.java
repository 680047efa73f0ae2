package org.gaugebench.core.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Settings are refused as a whole, with every problem at once. */
class GaugeSettingsTest {
    @Test
    void theDefaultsAreAccepted() {
        GaugeSettings settings = GaugeSettings.builder().build();
        for (Setting setting : Setting.values()) {
            assertEquals(setting.defaultValue(), settings.get(setting));
        }
    }

    @ParameterizedTest
    @EnumSource(Setting.class)
    void oneBeyondEitherEndIsRefusedByName(Setting setting) {
        for (long value : new long[] {setting.minimum() - 1, setting.maximum() + 1}) {
            List<SettingsProblem> problems = GaugeSettings.builder().set(setting, value).problems();
            assertEquals(1, problems.size());
            assertEquals(setting, problems.get(0).setting());
            assertEquals(value, problems.get(0).value());
            assertEquals(
                    setting.key()
                            + ": must be "
                            + setting.minimum()
                            + " to "
                            + setting.maximum()
                            + " "
                            + setting.unit()
                            + ": "
                            + value
                            + " "
                            + setting.unit(),
                    problems.get(0).toString());
        }
    }

    @Test
    void everyProblemComesAtOnce() {
        GaugeSettings.Builder builder =
                GaugeSettings.builder()
                        .set(Setting.HOLD, 0)
                        .set(Setting.CAPACITY, -1)
                        .set(Setting.LONGEST_TIME, Long.MAX_VALUE);
        SettingsException refused = assertThrows(SettingsException.class, builder::build);
        assertEquals(
                List.of(Setting.CAPACITY, Setting.HOLD, Setting.LONGEST_TIME),
                refused.problems().stream().map(SettingsProblem::setting).toList());
        assertTrue(refused.getMessage().contains("capacity"), refused.getMessage());
    }

    @Test
    void rulesAcrossSettingsComeTogetherToo() {
        List<SettingsProblem> problems =
                GaugeSettings.builder()
                        .set(Setting.SHUNT_RATED_DROP, 100_001)
                        .set(Setting.SHUNT_FULL_SCALE, 100_000)
                        .set(Setting.ABSORPTION, 5_000)
                        .set(Setting.ABSORPTION_MARGIN, 5_000)
                        .problems();
        assertEquals(
                List.of(Setting.SHUNT_RATED_DROP, Setting.ABSORPTION_MARGIN),
                problems.stream().map(SettingsProblem::setting).toList());
    }

    @Test
    void theBoundariesAcrossSettingsThemselvesAreAccepted() {
        GaugeSettings.Builder atTheEdge =
                GaugeSettings.builder()
                        .set(Setting.SHUNT_RATED_DROP, 100_000)
                        .set(Setting.SHUNT_FULL_SCALE, 100_000)
                        .set(Setting.ABSORPTION, 65_536)
                        .set(Setting.VOLTAGE_FULL_SCALE, 65_536);
        assertEquals(List.of(), atTheEdge.problems());
        assertEquals(1, atTheEdge.set(Setting.ABSORPTION, 65_537).problems().size());
        assertEquals(
                List.of(),
                GaugeSettings.builder()
                        .set(Setting.ABSORPTION, 0)
                        .set(Setting.ABSORPTION_MARGIN, 5_000)
                        .problems());
    }

    @Test
    void whatIsBuiltDoesNotChangeWithItsBuilder() {
        GaugeSettings.Builder builder = GaugeSettings.builder();
        GaugeSettings first = builder.build();
        builder.set(Setting.HOLD, 5);
        assertEquals(Setting.HOLD.defaultValue(), first.get(Setting.HOLD));
        assertEquals(5, builder.build().toBuilder().build().get(Setting.HOLD));
    }
}
