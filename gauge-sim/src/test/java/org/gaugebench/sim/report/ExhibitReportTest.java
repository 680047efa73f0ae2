package org.gaugebench.sim.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.gaugebench.core.port.Event;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.judge.Verdict;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Exhibits on the truth of a scenario, in every report. */
class ExhibitReportTest {
    /** 60 Ah at 50 %, 5 A out for half a day: 30 Ah in the gauge, 60 Ah drawn by the count. */
    private static String day(String mistakes, String loads) {
        return """
        format: 1
        title: Exhibits on one truth
        duration: 1 d
        battery: {chemistry: lead-acid-agm, capacity: 600 Ah, start: 50 %%}
        sensor: {shunt: 100 A / 75 mV, noise: 0 V}
        gauge: {capacity: 60 Ah, start: 50 %%}
        beside:
          - {name: wrong, kind: exhibit, mistakes: [%s], capacity: 60 Ah, start: 50 %%}
        loads: {%s}
        expect:
          - {at: 1 d, gauge: wrong, reading: state-of-charge, at-most: -40 %%}
          - {at: 1 d, gauge: gauge, reading: state-of-charge, at-least: 0 %%}
        """
                .formatted(mistakes, loads);
    }

    private static final String BELOW_EMPTY = day("no-clamp", "lamp: {current: 2.5 A}");

    @Test
    void aCountBelowEmptyIsShownInTextAndChartAndJson() {
        RunResult result = Samples.run(BELOW_EMPTY);
        assertEquals(Verdict.PASSED, result.verdict());
        // 30 Ah less 60 Ah of 60 Ah; the shunt's converter rounds to 5 mA or so of 2.5 A.
        assertEquals(-50, result.lanes().get(1).finalPartsPerMillion() / 1e4, 0.2);
        String text = TextReport.of(result, "v", Ink.PLAIN);
        assertTrue(text.lines().anyMatch(it -> it.matches("  wrong +-50\\.\\d\\d %.*")), text);
        assertTrue(text.contains(" -50% |"), text);
        assertTrue(text.lines().allMatch(it -> it.length() <= Page.WIDTH), text);
        String json = RunJson.of(result, "v");
        assertTrue(json.matches("(?s).*\"socPercent\":-(50\\.0|49\\.9)\\d+,.*"), json);
        assertTrue(json.matches("(?s).*\"chargeAh\":-(30\\.0|29\\.9)\\d+,.*"), json);
    }

    @Test
    void aCountBelowEmptyIsAFigureInTheTrace(@TempDir Path folder) throws IOException {
        Scenario scenario = Samples.read(BELOW_EMPTY);
        Path place = folder.resolve("t.csv");
        try (TraceCsv csv = new TraceCsv(place, 3_600_000)) {
            RunRecorder.run(scenario, 1, csv);
            csv.keep();
        }
        List<String> rows = Files.readAllLines(place);
        List<String> names = List.of(rows.get(0).split(",", -1));
        List<String> last = List.of(rows.get(rows.size() - 1).split(",", -1));
        String soc = last.get(names.indexOf("wrong_soc_percent"));
        assertTrue(soc.matches("-50\\.\\d{4}|-49\\.9\\d{3}"), soc);
    }

    /** 4700 Ah out of 10 Ah, until the tick over the wrap counts 49.7 days back. */
    @Test
    void aCountThousandsOfTimesTooLargeStillHasAChart() {
        String text =
                day("millisecond-wrap, no-clamp", "lamp: {current: 4 A}")
                        .replace("duration: 1 d", "duration: 50 d")
                        .replace("600 Ah", "10000 Ah")
                        .replace("capacity: 60 Ah", "capacity: 10 Ah")
                        .replace("at: 1 d", "at: 49 d")
                        .replace("title:", "tick: 1 min\ntitle:")
                        .replace("at-most: -40 %", "at-most: -40000 %");
        RunResult result = Samples.run(text);
        assertEquals(Verdict.PASSED, result.verdict(), () -> result.expectations().toString());
        String report = TextReport.of(result, "v", Ink.PLAIN);
        assertTrue(report.lines().count() < 80, report);
        assertTrue(report.contains(" 0% |") && report.contains("-45000% |"), report);
    }

    /** 12 Ah out of 60 Ah: 30 % left. At an assumed second a tick it would be 47 %. */
    @Test
    void anExhibitTakesTheScenariosTickForTheNominalOne() {
        String text =
                day("assumed-tick", "lamp: {current: 0.5 A}")
                        .replace("title:", "tick: 7 s\ntitle:")
                        .replace("duration: 1 d", "duration: 86401 s")
                        .replaceAll("(?s)expect:.*", "");
        RunResult result = Samples.run(text);
        assertEquals(30, result.lanes().get(1).finalPartsPerMillion() / 1e4, 0.2);
    }

    @Test
    void anExhibitsEventsAreJudged() {
        String text =
                day("loose-full-rule", "lamp: {current: 1 A, switched: off}")
                                .replace("600 Ah", "60 Ah")
                                .replaceAll("(?s)expect:.*", "")
                        + "chargers: {shore: {current-limit: 10 A}}\n"
                        + "expect: [{event: set-to-full, gauge: wrong, times: 1}]\n";
        RunResult result = Samples.run(text);
        assertEquals(Verdict.PASSED, result.verdict(), () -> result.expectations().toString());
        assertTrue(
                result.events().stream()
                        .anyMatch(
                                it ->
                                        it.gauge().equals("wrong")
                                                && it.event() == Event.SET_TO_FULL));
    }
}
