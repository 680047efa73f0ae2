package org.gaugebench.sim.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.scenario.Expectation.Comparison;
import org.junit.jupiter.api.Test;

/** What a right file means, its defaults included. */
class ScenarioReaderTest {
    @Test
    void theSmallestFileGetsItsDefaults() throws ScenarioException {
        Scenario it = ScenarioReader.read("hut.yaml", Samples.SMALLEST);
        assertEquals(1, it.seed());
        assertEquals(1_000, it.tickMillis());
        assertEquals(86_400_000, it.durationMillis());
        BatterySpec battery =
                new BatterySpec(
                        Chemistry.LEAD_ACID_AGM,
                        12,
                        60_000_000,
                        800_000,
                        6_000,
                        8_000,
                        120_000,
                        920_000,
                        40_000,
                        20_000,
                        7_200_000,
                        3_000,
                        0,
                        0);
        assertEquals(battery, it.battery());
        assertEquals(
                new SensorSpec(
                        100_000_000,
                        75_000,
                        0,
                        20,
                        100_000,
                        0,
                        0,
                        1_000,
                        16,
                        65_536_000,
                        1_000,
                        SensorSpec.Sampling.INTEGRATED,
                        true),
                it.sensor());
        GaugeSpec gauge = it.gauges().get(0);
        assertEquals("gauge", gauge.name());
        assertEquals(800_000, gauge.declaredPartsPerMillion());
        assertEquals(60_000, gauge.settings().get(Setting.CAPACITY));
        assertEquals(14_400, gauge.settings().get(Setting.ABSORPTION));
        assertEquals(List.of(), it.expectations());
    }

    @Test
    void theSettingsFollowBatteryAndSensor() throws ScenarioException {
        GaugeSpec gauge =
                ScenarioReader.read(
                                "hut.yaml",
                                Samples.SMALLEST
                                        .replace("60 Ah", "60 Ah, nominal-voltage: 48 V")
                                        .replace("100 A / 75 mV", "50 A / 60 mV"))
                        .gauges()
                        .get(0);
        assertEquals(57_600, gauge.settings().get(Setting.ABSORPTION));
        assertEquals(800, gauge.settings().get(Setting.ABSORPTION_MARGIN));
        assertEquals(-96_000, gauge.settings().get(Setting.TEMPERATURE_COEFFICIENT));
        assertEquals(50_000, gauge.settings().get(Setting.SHUNT_RATED_CURRENT));
        assertEquals(60_000, gauge.settings().get(Setting.SHUNT_RATED_DROP));
    }

    @Test
    void theTimelineIsSpreadOutInOrderOfTime() throws ScenarioException {
        List<Change> changes = ScenarioReader.read("hut.yaml", Samples.EVERYTHING).changes();
        for (int i = 1; i < changes.size(); i++) {
            assertTrue(changes.get(i - 1).atMillis() <= changes.get(i).atMillis());
        }
        List<Change> lamp =
                changes.stream()
                        .filter(it -> it.name().equals("lamp"))
                        .filter(it -> it.target() == Change.Target.LOAD_SWITCH)
                        .toList();
        long hour = 3_600_000;
        assertEquals(
                List.of(2L, 2L, 18L, 23L, 42L, 47L, 66L, 71L),
                lamp.stream().map(it -> it.atMillis() / hour).toList());
        assertEquals(
                List.of(1L, 0L, 1L, 0L, 1L, 0L, 1L, 0L), lamp.stream().map(Change::value).toList());
        List<Long> temperatures =
                changes.stream()
                        .filter(it -> it.target() == Change.Target.BATTERY_TEMPERATURE)
                        .map(Change::value)
                        .toList();
        assertEquals(List.of(3_000L, -5_000L, 3_000L, -5_000L, 3_000L, -5_000L), temperatures);
        // 6 h and 18 h; the repeat ends at 1 d.
        assertEquals(
                2,
                changes.stream().filter(it -> it.target() == Change.Target.SENSOR_OFFSET).count());
    }

    @Test
    void expectationsSayInOneLineWhatTheyClaim() throws ScenarioException {
        List<Expectation> all = ScenarioReader.read("hut.yaml", Samples.EVERYTHING).expectations();
        assertEquals(
                List.of(
                        "state-of-charge at 3 d: within 2 % of the truth",
                        "plain remaining-charge at 3 d: within 1 Ah of 40 Ah",
                        "voltage from 1 d to 2 d: at least 20 V",
                        "voltage from 1 d to 2 d: at most 29 V",
                        "current from 0 s to 3 d: at most 15 A",
                        "'set-to-full' from 1 h to 3 d: 1 time, each with the true state at least"
                                + " 97 %",
                        "'powered-up' from 0 s to 3 d: at least 1 time",
                        "'powered-up' from 0 s to 3 d: at most 2 times",
                        "'fault-raised' of 'samples-missing' from 0 s to 3 d: 0 times",
                        "core-gauge state-of-charge at 2 d: the truth within the gauge's own band",
                        "core-gauge lower-edge at 2 d: not known",
                        "core-gauge upper-edge at 2 d: at most 99 %",
                        "time-to-empty at 1 d: more than 99 h",
                        "time-to-empty at 1 d: not known",
                        "true-state-of-charge at 9 d: exactly 50 %"),
                all.stream().map(Expectation::text).toList());
        assertEquals(Comparison.MORE_THAN, all.get(12).comparison());
        assertEquals(99 * 60, all.get(12).value());
        assertEquals("a: b", all.get(0).because());
        long line = Samples.EVERYTHING.lines().takeWhile(it -> !it.equals("expect:")).count() + 2;
        assertEquals("hut.yaml:" + line + ":5", all.get(0).mark().toString());
    }

    @Test
    void aByteOrderMarkAndWindowsLineEndsAreNoMatter() throws ScenarioException {
        String text = '\ufeff' + Samples.EVERYTHING.replace("\n", "\r\n");
        Map<String, Scenario> both =
                Map.of(
                        "plain", ScenarioReader.read("hut.yaml", Samples.EVERYTHING),
                        "windows", ScenarioReader.read("hut.yaml", text));
        assertEquals(both.get("plain"), both.get("windows"));
    }
}
