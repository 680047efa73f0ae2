package org.gaugebench.core.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;
import java.util.zip.CRC32;
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
                        .set(Setting.FLOAT_VOLTAGE, 5_001)
                        .set(Setting.USABLE_AT_0, 840_001)
                        .problems();
        assertEquals(
                List.of(
                        Setting.SHUNT_RATED_DROP,
                        Setting.ABSORPTION_MARGIN,
                        Setting.FLOAT_VOLTAGE,
                        Setting.USABLE_AT_0),
                problems.stream().map(SettingsProblem::setting).toList());
        assertEquals(
                "shunt-rated-drop: must be at most shunt-full-scale (100000 uV), else the rated"
                        + " current cannot be read: 100001 uV",
                problems.get(0).toString());
    }

    /** The value at the edge is accepted, the next one is refused by the name of its setting. */
    private static void assertEdge(Setting setting, long accepted, long refused) {
        assertEquals(List.of(), GaugeSettings.builder().set(setting, accepted).problems());
        List<SettingsProblem> problems = GaugeSettings.builder().set(setting, refused).problems();
        assertEquals(List.of(setting), problems.stream().map(SettingsProblem::setting).toList());
    }

    @Test
    void aRatedDropFitsTheConverter() {
        assertEdge(Setting.SHUNT_RATED_DROP, 100_000, 100_001);
    }

    @Test
    void absorptionLiesWithinWhatCanBeSeen() {
        assertEdge(Setting.ABSORPTION, 65_536, 65_537);
    }

    @Test
    void aThresholdLiesAboveZero() {
        GaugeSettings.Builder low =
                GaugeSettings.builder()
                        .set(Setting.ABSORPTION, 5_000)
                        .set(Setting.FLOAT_VOLTAGE, 0)
                        .set(Setting.EMPTY_VOLTAGE, 0)
                        .set(Setting.ABSORPTION_MARGIN, 4_999);
        assertEquals(List.of(), low.problems());
        assertEquals(1, low.set(Setting.ABSORPTION_MARGIN, 5_000).problems().size());
    }

    @Test
    void aFloatIsNotAboveAbsorption() {
        assertEdge(Setting.FLOAT_VOLTAGE, 14_400, 14_401);
        assertEdge(Setting.FLOAT_VOLTAGE, 0, 14_401);
    }

    @Test
    void emptyLiesUnderTheFullThreshold() {
        assertEdge(Setting.EMPTY_VOLTAGE, 14_199, 14_200);
    }

    @Test
    void withTheFullChargeRuleOffItsVoltagesAreFree() {
        assertEquals(
                List.of(),
                GaugeSettings.builder()
                        .set(Setting.ABSORPTION, 0)
                        .set(Setting.ABSORPTION_MARGIN, 5_000)
                        .set(Setting.FLOAT_VOLTAGE, 50_000)
                        .set(Setting.EMPTY_VOLTAGE, 50_000)
                        .problems());
    }

    @Test
    void restedVoltagesRiseWithTheStateOfCharge() {
        assertEdge(Setting.REST_VOLTAGE_10, 11_801, 11_800);
        assertEdge(Setting.REST_VOLTAGE_25, 11_881, 11_880);
        assertEdge(Setting.REST_VOLTAGE_50, 12_001, 12_000);
        assertEdge(Setting.REST_VOLTAGE_75, 12_401, 12_400);
        assertEdge(Setting.REST_VOLTAGE_90, 12_601, 12_600);
        assertEdge(Setting.REST_VOLTAGE_100, 12_721, 12_720);
    }

    @Test
    void coldLeavesNoMore() {
        assertEdge(Setting.USABLE_AT_0, 840_000, 840_001);
        assertEdge(Setting.USABLE_AT_MINUS_20, 710_000, 710_001);
    }

    @Test
    void whatIsBuiltDoesNotChangeWithItsBuilder() {
        GaugeSettings.Builder builder = GaugeSettings.builder();
        GaugeSettings first = builder.build();
        builder.set(Setting.HOLD, 5);
        assertEquals(Setting.HOLD.defaultValue(), first.get(Setting.HOLD));
        assertEquals(5, builder.build().toBuilder().build().get(Setting.HOLD));
    }

    /** The documented fingerprint, by the JDK's CRC-32 over the JDK's little-endian longs. */
    @Test
    void theFingerprintIsTheCheckOfAllValuesInTableOrder() {
        for (long zero : new long[] {-65_536, 0, 65_536}) {
            GaugeSettings settings =
                    GaugeSettings.builder().set(Setting.SHUNT_OFFSET, zero).build();
            ByteBuffer bytes = ByteBuffer.allocate(8 * Setting.values().length);
            bytes.order(ByteOrder.LITTLE_ENDIAN);
            for (Setting setting : Setting.values()) {
                bytes.putLong(settings.get(setting));
            }
            CRC32 check = new CRC32();
            check.update(bytes.array());
            assertEquals((int) check.getValue(), settings.fingerprint());
        }
    }

    /** Two readings of one file are equal; one other value of any setting makes them differ. */
    @Test
    void equalMeansEverySetting() {
        GaugeSettings settings = GaugeSettings.builder().build();
        GaugeSettings same = GaugeSettings.builder().build();
        assertEquals(settings, same);
        assertEquals(settings.hashCode(), same.hashCode());
        for (Setting setting : Setting.values()) {
            for (long step : new long[] {-1, 1}) {
                GaugeSettings.Builder builder = settings.toBuilder();
                builder.set(setting, settings.get(setting) + step);
                if (builder.problems().isEmpty()) {
                    assertNotEquals(settings, builder.build(), setting.key());
                }
            }
        }
    }
}
