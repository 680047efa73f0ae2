package org.gaugebench.sim.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.sim.scenario.BatteryTraits.Ageing;
import org.gaugebench.sim.scenario.BatteryTraits.Kinetic;
import org.gaugebench.sim.scenario.BatteryTraits.Thermal;
import org.gaugebench.sim.scenario.BatteryTraits.WeakCell;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a file says of a battery beyond the plain model. */
class TraitsReaderTest {
    private static final String CAPACITY = "capacity: 60 Ah";

    private static String file(String trait) {
        return Samples.SMALLEST.replace(CAPACITY, CAPACITY + ", " + trait);
    }

    private static BatteryTraits read(String trait) throws ScenarioException {
        return ScenarioReader.read("hut.yaml", file(trait)).battery().traits();
    }

    @Test
    void eachKeyMovesItsOwnTraitAndNothingElse() throws ScenarioException {
        BatteryTraits none = BatteryTraits.NONE;
        assertEquals(none, ScenarioReader.read("hut.yaml", Samples.SMALLEST).battery().traits());
        assertEquals(
                none.withKinetic(new Kinetic(55_800_000, 36_000_000)),
                read("kinetic: {capacity-10-h: 55.8 Ah, capacity-1-h: 36 Ah}"));
        assertEquals(
                none.withSlowPolarization(4_000, 1_800_000),
                read("slow-polarization: {resistance: 4 mOhm, time-constant: 30 min}"));
        assertEquals(none.withHysteresis(8_000), read("hysteresis: 8 mV"));
        assertEquals(none.withCapacityFollowingTemperature(), read("capacity-by-temperature: on"));
        assertEquals(none.withEfficiencyFallingNearFull(), read("efficiency-near-full: falls"));
        assertEquals(
                none.withThermal(new Thermal(12_000, 8_000, 50_400_000, 1_500, 21_600_000)),
                read(
                        "surroundings: {mean: 12 °C, swing: 8 K, warmest: 14 h, rise: 1.5 K/W,"
                                + " time-constant: 6 h}"));
        assertEquals(
                none.withAgeing(new Ageing(200_000, 1_500_000, 300_000)),
                read(
                        "ageing: {capacity-loss: 20 %, resistance-growth: 150 %,"
                                + " acceptance-loss: 30 %}"));
        assertEquals(
                none.withWeakCell(new WeakCell(900_000, 20_000)),
                read("weak-cell: {capacity: 90 %, lag: 2 %}"));
    }

    /** These keys leave the text without them as it was; it moves when a preset does. */
    @Test
    void aFileFromBeforeTheKeysKeepsItsDigest() throws ScenarioException {
        assertEquals(
                "48477f0d9ea993db",
                ScenarioWriter.digest(ScenarioReader.read("a", Samples.SMALLEST)));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "kinetic: none",
                "slow-polarization: none",
                "hysteresis: none",
                "hysteresis: 0 mV",
                "capacity-by-temperature: off",
                "efficiency-near-full: constant",
                "surroundings: none",
                "ageing: none",
                "weak-cell: none"
            })
    void whatIsOffIsAsIfItWereNotThereAndLeavesTheDigestAlone(String trait)
            throws ScenarioException {
        Scenario without = ScenarioReader.read("hut.yaml", Samples.SMALLEST);
        Scenario with = ScenarioReader.read("hut.yaml", file(trait));
        assertEquals(BatteryTraits.NONE, with.battery().traits());
        assertEquals(ScenarioWriter.digest(without), ScenarioWriter.digest(with));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "'kinetic: {capacity-10-h: 55.8 Ah, capacity-1-h: 36 Ah}'",
                "'slow-polarization: {resistance: 4 mOhm, time-constant: 30 min}'",
                "'hysteresis: 8 mV'",
                "'capacity-by-temperature: on'",
                "'efficiency-near-full: falls'",
                "'surroundings: {mean: 12 °C, time-constant: 6 h}'",
                "'ageing: {capacity-loss: 20 %}'",
                "'weak-cell: {capacity: 90 %}'"
            })
    void whatIsOnComesBackFromTheResolvedTextAndMovesTheDigest(String quoted)
            throws ScenarioException {
        Scenario with = ScenarioReader.read("hut.yaml", file(quoted.replace("'", "")));
        Scenario again = ScenarioReader.read("again.yaml", ScenarioWriter.resolved(with));
        assertNotEquals(BatteryTraits.NONE, with.battery().traits());
        assertEquals(Samples.withoutMarks(with), Samples.withoutMarks(again));
        Scenario without = ScenarioReader.read("hut.yaml", Samples.SMALLEST);
        assertNotEquals(ScenarioWriter.digest(without), ScenarioWriter.digest(with));
    }

    /** The battery's line is line 4; the columns are those of the wrong value or key. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "kinetic: {capacity-10-h: 55 Ah}|63|'capacity-1-h' is missing in kinetic; expected"
                        + " 'capacity-1-h: 36 Ah'",
                "kinetic: {capacity-10-h: 61 Ah, capacity-1-h: 36 Ah}|63|no battery of available"
                        + " and bound charge gives 60 Ah in 20 h, 61 Ah in 10 h and 36 Ah in 1 h;"
                        + " expected less from each faster discharge, such as"
                        + " '{capacity-10-h: 55.8 Ah, capacity-1-h: 36 Ah}'",
                "kinetic: on|63|expected keys and values under kinetic, but found 'on'",
                "slow-polarization: {resistance: 4 mOhm}|73|'time-constant' is missing",
                "hysteresis: 101 mV|66|'hysteresis' must be 0 V to 100 mV, but is 101 mV",
                "efficiency-near-full: drops|76|'efficiency-near-full' cannot be 'drops'; expected",
                "'surroundings: {mean: 70 °C, swing: 20 K, time-constant: 1 h}'|89|surroundings go"
                        + " from 50 °C to 90 °C; expected -40 °C to 80 °C, such as 'swing: 8 K'",
                "'surroundings: {mean: 70 K, time-constant: 1 h}'|75|expected a temperature such"
                        + " as -10 °C, but found '70 K', which is a difference of temperature",
                "ageing: {capacity-loss: 81 %}|78|'capacity-loss' must be 0 % to 80 %",
                "ageing: {capacity-los: 20 %}|63|there is no key 'capacity-los' in ageing; did you"
                        + " mean 'capacity-loss'?",
                "weak-cell: {capacity: 90 %, lag: 86 %}|87|a weak cell has to give at least 5 %",
                "weak-cell: {lag: 5 %}|65|'capacity' is missing in weak-cell"
            })
    void shouldRefuseAWrongTraitWithAnExample(String trait, int column, String message) {
        String problems = Samples.problemsOf(file(trait));
        assertTrue(problems.contains(message), problems);
        assertTrue(problems.startsWith("hut.yaml:4:" + column + ": "), problems);
        assertFalse(problems.lines().skip(1).anyMatch(it -> it.startsWith("hut.yaml:")), problems);
    }

    @ParameterizedTest
    @EnumSource(Chemistry.class)
    void everyChemistryIsAWholeScenario(Chemistry chemistry) throws ScenarioException {
        for (String volts : new String[] {"12 V", "24 V", "36 V", "48 V"}) {
            Scenario scenario =
                    ScenarioReader.read(
                            "hut.yaml",
                            file("nominal-voltage: " + volts)
                                            .replace("lead-acid-agm", chemistry.key())
                                    + "chargers: {shore: {}}\n");
            assertEquals(chemistry, scenario.battery().chemistry());
            Scenario again = ScenarioReader.read("a", ScenarioWriter.resolved(scenario));
            assertEquals(Samples.withoutMarks(scenario), Samples.withoutMarks(again));
        }
    }

    @Test
    void shouldRefuseTheEfficiencyOfLeadInLithium() {
        String problems =
                Samples.problemsOf(
                        file("efficiency-near-full: falls").replace("lead-acid-agm", "nmc"));
        assertTrue(
                problems.contains(
                        "the efficiency of 'nmc' does not fall near full; expected"
                                + " 'efficiency-near-full: constant'"),
                problems);
    }
}
