package org.gaugebench.sim.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the author of a wrong charger reads. */
class SupplyProblemTest {
    private static String file(String keys) {
        return Samples.SMALLEST + "chargers: {roof: {" + keys + "}}\n";
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "pulse-frequency: 100 | 6:36: expected a frequency such as 200 Hz, but found '100'"
                        + " without a unit",
                "pulse-frequency: 500 mHz | 6:36: 'pulse-frequency' must be 1 Hz to 100000 Hz, but"
                        + " is 500 mHz",
                "pulse-freqency: 1 Hz | 6:19: there is no key 'pulse-freqency' in charger 'roof';"
                        + " did you mean 'pulse-frequency'?"
            })
    void shouldRefuseWithPlaceAndExample(String keys, String message) {
        String found = Samples.problemsOf(file(keys));
        assertTrue(found.startsWith("hut.yaml:" + message), found);
        assertEquals(1, found.lines().filter(it -> it.startsWith("hut.yaml:")).count(), found);
    }

    @Test
    void aPulseThatDoesNotFitIntoATickIsRefused() {
        String ticks = file("pulse-frequency: 40 Hz") + "tick: 20 ms\n";
        String found = Samples.problemsOf(ticks);
        assertTrue(found.startsWith("hut.yaml:6:36: the mean of a tick holds the voltage"), found);
        assertTrue(found.contains("'tick' of 20 ms; expected a 'pulse-frequency' such as"), found);
        assertEquals("", Samples.problemsOf(ticks.replace("40 Hz", "50 Hz")));
        assertEquals("", Samples.problemsOf(ticks.replace("40 Hz", "none")));
    }
}
