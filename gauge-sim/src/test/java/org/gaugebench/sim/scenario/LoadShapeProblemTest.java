package org.gaugebench.sim.scenario;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the author of a wrong load reads. */
class LoadShapeProblemTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "pulse-width: {duty: 50 %} | 6:43: 'frequency' is missing in pulse-width;"
                        + " expected 'frequency: 200 Hz'",
                "pulse-width: {frequency: 200} | 6:55: expected a frequency such as 200 Hz, but"
                        + " found '200' without a unit",
                "pulse-width: {frequency: 1 MHz} | 6:55: expected a frequency such as 200 Hz, but"
                        + " found '1 MHz'; there is no unit 'MHz' here, did you mean 'mHz'?",
                "pulse-width: {frequency: 101 kHz} | 6:55: 'frequency' must be 1 mHz to 100000 Hz",
                "pulse-width: {frequency: 1 Hz, duty: 100 %} | 6:67: 'duty' must be",
                "ripple: {depth: 101 %} | 6:46: 'depth' must be",
                "ripple: {frequency: 50 Hz} | 6:39: there is no key 'frequency' in ripple;"
                        + " expected one of: line-frequency",
                "inrush: {peak: 100 %} | 6:45: 'peak' must be",
                "ripple: {}, inrush: {} | 6:42: a load has at most one of",
                "starts-after: -1 s | 6:44: 'starts-after' must be"
            })
    void shouldRefuseWithPlaceAndExample(String keys, String message) {
        String found =
                Samples.problemsOf(
                        Samples.SMALLEST + "loads: {lamp: {current: 1 A, " + keys + "}}\n");
        assertTrue(found.contains("hut.yaml:" + message), found);
    }
}
