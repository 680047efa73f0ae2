package org.gaugebench.sim.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.units.QuantityException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** One file, many runs. */
class VariantsTest {
    private static List<Scenario> runs(String added) throws ScenarioException {
        return Variants.read("hut.yaml", Samples.SMALLEST + added);
    }

    @Test
    void aFileWithoutVariationIsOneRunAndTheOneThatTheReaderReads() throws ScenarioException {
        assertEquals(List.of(ScenarioReader.read("hut.yaml", Samples.SMALLEST)), runs(""));
    }

    @Test
    void everyCombinationIsARunOfItsOwnWithItsOwnName() throws ScenarioException {
        List<Scenario> runs =
                runs(
                        """
                        loads: {lamp: {current: 1 A}}
                        vary:
                          battery.temperature: [-10 °C, 20 °C]
                          loads.lamp.current: [2 A, 3 A, 4 A]
                        """);
        assertEquals(6, runs.size());
        assertEquals("battery.temperature=-10 °C, loads.lamp.current=2 A", runs.get(0).variant());
        assertEquals("battery.temperature=-10 °C, loads.lamp.current=3 A", runs.get(1).variant());
        assertEquals(
                "hut.yaml [battery.temperature=20 °C, loads.lamp.current=4 A]", runs.get(5).name());
        assertEquals(-10_000, runs.get(2).battery().temperatureMillicelsius());
        assertEquals(20_000, runs.get(3).battery().temperatureMillicelsius());
        assertEquals(
                List.of(2_000_000L, 3_000_000L, 4_000_000L, 2_000_000L, 3_000_000L, 4_000_000L),
                runs.stream().map(run -> run.loads().get(0).amount()).toList());
        assertEquals(6, new HashSet<>(runs.stream().map(Scenario::name).toList()).size());
    }

    @Test
    void aRunHasTheDefaultsOfWhatItVaries() throws ScenarioException {
        List<Scenario> runs = runs("vary: {battery.chemistry: [lead-acid-agm, lifepo4]}\n");
        for (Scenario run : runs) {
            String chemistry = run.battery().chemistry().key();
            Scenario alone =
                    ScenarioReader.read(
                            "hut.yaml", Samples.SMALLEST.replace("lead-acid-agm", chemistry));
            assertEquals(alone, run.asVariant("", run.seed()));
        }
        assertEquals(
                2,
                runs.stream()
                        .map(run -> run.gauges().get(0).settings().get(Setting.ABSORPTION))
                        .distinct()
                        .count());
    }

    @Test
    void eachRunRunsWithEachSeed() throws ScenarioException {
        List<Scenario> runs = runs("vary: {gauge.taper: [2 %, 3 %]}\nseeds: 5..7\n");
        assertEquals(List.of(5L, 6L, 7L, 5L, 6L, 7L), runs.stream().map(Scenario::seed).toList());
        assertEquals("gauge.taper=3 %, seed=6", runs.get(4).variant());
        assertEquals("seed=9", Variants.withSeeds(runs(""), new SeedRange(9, 9)).get(0).variant());
    }

    @ParameterizedTest
    @CsvSource({"1..100,1,100", "7,7,7", "-3..-1,-3,-1", "0..9999,0,9999"})
    void seedsAreReadFromFirstToLast(String text, long first, long last) throws QuantityException {
        assertEquals(new SeedRange(first, last), SeedRange.parse(text));
        assertEquals(last - first + 1, new SeedRange(first, last).size());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "1..", "1...2", "2..1", "0..10000", "a..b", "1..999999999999999999999"})
    void shouldRefuseSeedsThatAreNoRange(String text) {
        QuantityException refusal =
                assertThrows(QuantityException.class, () -> SeedRange.parse(text));
        assertTrue(refusal.explanation().contains("such as 1..100"), refusal.explanation());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "vary: {battery.temprature: [1 °C]}|6:8: there is no key 'temprature' in battery;"
                        + " did you mean 'temperature'?",
                "vary: {battery.start: [1 %, 101 %]}|6:29: 'start' must be 0 % to 100 %, but is"
                        + " 101 %",
                "vary: {battery.start: []}|6:23: expected a list of values such as 'battery.start:"
                        + " [10 A, 20 A]', but found a list",
                "vary: {battery.start: [{a: 1}]}|6:24: only a single value can vary, but found"
                        + " keys and values",
                "vary: {battery.start: [1 %, 1 %]}|6:29: '1 %' stands twice",
                "vary: {loads.lamp.current: [1 A]}|6:8: there are no loads",
                "vary: {battery.capacity.rate: [1 A]}|6:8: 'capacity' holds no keys and values",
                "vary: {title: [a]}|6:8: expected a key of the scenario with dots between its"
                        + " blocks, such as 'battery.temperature' or 'loads.lamp.current'",
                "vary: {a..b: [a]}|6:8: expected a key of the scenario with dots between its"
                        + " blocks, such as 'battery.temperature' or 'loads.lamp.current'",
                "vary: 4|6:7: expected keys and values under vary, but found '4'",
                "seeds: 1-3|6:8: expected seeds from first to last such as 1..100, but found '1-3'"
            })
    void shouldReportOneProblemWithItsPlace(String line, String message) {
        ScenarioException refusal = assertThrows(ScenarioException.class, () -> runs(line + "\n"));
        assertEquals("hut.yaml:" + message, refusal.render().lines().findFirst().orElse(""));
        assertEquals(1, refusal.problems().size(), refusal.render());
    }

    private static void assertRefused(String words, String added) {
        ScenarioException refusal = assertThrows(ScenarioException.class, () -> runs(added));
        assertTrue(refusal.render().contains(words), refusal.render());
    }

    private static String percents(String key, int count) {
        StringBuilder text = new StringBuilder("  " + key + ": [0 %");
        for (int i = 1; i < count; i++) {
            text.append(", ").append(i).append(" %");
        }
        return text.append("]\n").toString();
    }

    @Test
    void shouldRefuseALoadThatIsNotThere() {
        assertRefused(
                "nothing under 'loads' is called 'lmap'",
                "loads: {lamp: {current: 1 A}}\nvary: {loads.lmap.current: [1 A]}\n");
    }

    @Test
    void shouldRefuseMoreThanAMachineShouldKeep() {
        String often = "timeline: [{at: 0 s, every: 10 s, set: {isolator: closed}}]\n";
        assertRefused(
                "more than 500000 changes and expectations",
                often + "vary:\n" + percents("battery.start", 80));
        assertRefused(
                "more than 2000 expectations",
                "expect:\n" + "  - {event: declared, times: 1}\n".repeat(2_001));
    }

    @Test
    void shouldRefuseMoreRunsThanAMachineShouldBeAskedFor() throws ScenarioException {
        String most = "vary:\n" + percents("battery.start", 16) + percents("gauge.start", 16);
        assertEquals(256, runs(most).size());
        assertRefused("more than 256 combinations", most.replace("[0 %", "[99 %, 0 %"));
        assertRefused("25600 runs; expected at most 10000", most + "seeds: 1..100\n");
        assertRefused("ticks; take fewer of them", "seeds: 1..10000\n".concat("tick: 1 ms\n"));
        assertRefused(
                "the seed varies in 'vary' and in 'seeds'", "seeds: 1..2\nvary: {seed: [4]}\n");
        assertEquals(
                List.of(1L, 2L),
                runs("seeds: 1..2\nseed: 4\n").stream().map(Scenario::seed).toList());
    }
}
