package org.gaugebench.sim.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The wiring block and its addresses in the timeline. */
class WiringReaderTest {
    private static final String PARTS =
            Samples.SMALLEST
                    + """
                    loads: {lamp: {current: 1 A}}
                    chargers: {shore: {}}
                    """;

    @Test
    void aScenarioWithoutTheBlockIsWiredAsItShouldBeAndSaysNothingOfIt() throws ScenarioException {
        Scenario plain = ScenarioReader.read("hut.yaml", PARTS);
        assertEquals(WiringSpec.RIGHT, plain.wiring());
        assertFalse(ScenarioWriter.resolved(plain).contains("wiring"));
    }

    @Test
    void aPartOfNoneIsNoPart() throws ScenarioException {
        Scenario it =
                ScenarioReader.read(
                        "hut.yaml", PARTS + "wiring: {past-shunt: {lamp: 0 %, shore: 40 %}}\n");
        assertEquals(Map.of("shore", 400_000L), it.wiring().pastShunt());
    }

    @Test
    void aWindowGoesBackToWhatTheFileGave() throws ScenarioException {
        Scenario it =
                ScenarioReader.read(
                        "hut.yaml",
                        PARTS
                                + "wiring: {sense-leads: swapped, past-shunt: {lamp: 30 %}}\n"
                                + "timeline:\n  - {from: 1 h, to: 2 h, set: {wiring.sense-leads:"
                                + " open-low, wiring.past-shunt.lamp: 100 %}}\n");
        assertEquals(
                List.of(
                        new Change(3_600_000, Change.Target.WIRING, "sense-leads", 4),
                        new Change(3_600_000, Change.Target.WIRING, "past-shunt.lamp", 1_000_000),
                        new Change(7_200_000, Change.Target.WIRING, "sense-leads", 1),
                        new Change(7_200_000, Change.Target.WIRING, "past-shunt.lamp", 300_000)),
                it.changes());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "wiring: {past-shunt: {lmap: 10 %}} | 8:23: there is no load or charger 'lmap'; did"
                        + " you mean 'lamp'?",
                "wiring: {past-shunt: {lamp: 101 %}} | 8:29: 'lamp' must be 0 % to 100 %",
                "wiring: {sense-leads: off} | 8:23: 'sense-leads' cannot be 'off'; expected one of:"
                        + " right, swapped, open, open-high, open-low",
                "wiring: {joint-resistance: 2 Ohm} | 8:28: 'joint-resistance' must be",
                "wiring: {own-supply: 12 W} | 8:22: expected a current such as 4.2 A, but found",
                "wiring: {shnut: reversed} | 8:10: there is no key 'shnut' in wiring; did you mean"
                        + " 'shunt'?",
                "timeline: [{at: 1 h, set: {wiring.shunt: open}}] | 8:42: 'wiring.shunt' cannot be",
                "timeline: [{at: 1 h, set: {wiring.past-shunt.x: 1 %}}] | 8:28: nothing here is"
            })
    void shouldRefuseWithPlaceAndExample(String line, String message) {
        String found = Samples.problemsOf(PARTS + line + "\n");
        assertTrue(found.contains("hut.yaml:" + message), found);
    }
}
