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
                        + " did you mean 'pulse-frequency'?",
                "wind: {peak: 20} | 6:32: expected a current such as 4.2 A, but found '20' without"
                        + " a unit",
                "wind: {mean: 0 %} | 6:32: 'mean' must be 0.0001 % to 100 %, but is 0 %",
                "wind: {gustiness: 51 %} | 6:37: 'gustiness' must be 0 % to 50 %, but is 51 %",
                "wind: {gust-time: 10 ms} | 6:37: 'gust-time' must be 1 s to 1 h, but is 10 ms",
                "wind: {gusts: 1 s} | 6:26: there is no key 'gusts' in wind; expected one of: peak",
                "'sun: {}, wind: {}' | 6:28: a charger has 'sun' or 'wind' behind it; expected"
            })
    void shouldRefuseWithPlaceAndExample(String keys, String message) {
        String found = Samples.problemsOf(file(keys));
        assertTrue(found.startsWith("hut.yaml:" + message), found);
        assertEquals(1, found.lines().filter(it -> it.startsWith("hut.yaml:")).count(), found);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "for: 3 s | 6:67: 'current' is missing in returns; expected 'current: 40 A'",
                "current: 40 A | 6:67: 'for' is missing in returns; expected 'for: 3 s'",
                "'current: 40 Ah, for: 3 s' | 6:77: expected a current such as 4.2 A, but found"
                        + " '40 Ah', which is a charge",
                "'current: 40 A, for: 55 s' | 6:83: what comes back has to end within the cycle",
                "'current: 4 A, for: 5 s, after: 56 s' | 6:92: what comes back has to end within",
                "'current: 4 A, for: 5 s, voltage-limit: 0 V' | 6:107: 'voltage-limit' must be 1 V"
            })
    void aWrongReturnIsRefusedWithPlaceAndExample(String keys, String message) {
        String cycle = "loads: {hoist: {current: 1 A, on-for: 6 s, every: 1 min, ";
        String found = Samples.problemsOf(Samples.SMALLEST + cycle + "returns: {" + keys + "}}}\n");
        assertTrue(found.startsWith("hut.yaml:" + message), found);
        assertEquals(1, found.lines().filter(it -> it.startsWith("hut.yaml:")).count(), found);
    }

    @Test
    void aReturnWithoutACycleIsRefused() {
        String steady = "loads: {hoist: {current: 1 A, returns: {current: 4 A, for: 3 s}}}\n";
        String found = Samples.problemsOf(Samples.SMALLEST + steady);
        assertTrue(found.startsWith("hut.yaml:6:31: charge comes back in a part of"), found);
        assertTrue(found.contains("expected 'on-for: 6 s' and 'every: 1 min' beside it"), found);
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
