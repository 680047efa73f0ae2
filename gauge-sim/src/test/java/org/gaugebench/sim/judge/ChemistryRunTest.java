package org.gaugebench.sim.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.Collectors;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.scenario.ScenarioException;
import org.gaugebench.sim.scenario.ScenarioReader;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Battery, charger and gauge of one chemistry, each at its defaults, go together. */
class ChemistryRunTest {
    private static final String HUT =
            """
            format: 1
            title: A full charge and a discharge
            duration: 3 d
            tick: 10 s
            battery: {chemistry: %s, capacity: 100 Ah, nominal-voltage: %d V, start: 40 %%, %s}
            sensor: {shunt: 100 A / 75 mV}
            chargers: {shore: {current-limit: 20 A, switched: off}}
            loads: {lamp: {current: 5 A}}
            timeline:
              - {at: 1 h, set: {shore: on}}
              - {at: 26 h, set: {shore: off}}
            expect:
              - {event: set-to-full, times: 1, true-state-at-least: 97 %%,
                 because: full-residual}
              - {throughout: true, from: 12 h, reading: state-of-charge, within: band, of: truth}
            """;

    /** At 36 and 48 V too: voltages scale with the nominal one, so cells have to. */
    @ParameterizedTest
    @EnumSource(Chemistry.class)
    void fullIsProvenOnceAndTheBandHoldsTheTruth(Chemistry chemistry) throws ScenarioException {
        for (int volts = 12; volts <= 48; volts += 12) {
            assertPasses(HUT.formatted(chemistry.key(), volts, "temperature: 20 °C"));
        }
    }

    /** The traits leave the gauge a battery that it can follow, from the file to the verdict. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "lead-acid-agm|kinetic: {capacity-10-h: 93 Ah, capacity-1-h: 60 Ah}",
                "lead-acid-gel|slow-polarization: {resistance: 2 mOhm, time-constant: 30 min}",
                "nmc|hysteresis: 8 mV",
                "lifepo4|surroundings: {mean: 15 °C, swing: 5 K, rise: 0.5 K/W, time-constant: 6 h}"
            })
    void aBatteryBeyondThePlainModelRunsFromAFile(String chemistry, String trait)
            throws ScenarioException {
        assertPasses(HUT.formatted(chemistry, 12, trait));
    }

    private static void assertPasses(String text) throws ScenarioException {
        RunResult result = RunRecorder.run(ScenarioReader.read("hut.yaml", text), 1, Observer.NONE);
        assertEquals(
                Verdict.PASSED,
                result.verdict(),
                () ->
                        text
                                + result.expectations().stream()
                                        .map(it -> it.expectation().text() + ": " + it.found())
                                        .collect(Collectors.joining("\n")));
    }
}
