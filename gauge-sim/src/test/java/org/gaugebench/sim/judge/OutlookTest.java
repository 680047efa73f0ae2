package org.gaugebench.sim.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.gaugebench.sim.judge.ExpectationResult.Outcome;
import org.gaugebench.sim.report.Samples;
import org.gaugebench.sim.report.TraceCsv;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is really left, as expectations and traces read it: 30 Ah, 1 A for 6 h and then 2 A. */
class OutlookTest {
    private static final String DAY =
            """
            format: 1
            title: A lamp, and then two
            duration: 1 d
            battery: {chemistry: lead-acid-agm, capacity: 50 Ah, start: 60 %,
              self-discharge: 0 %/month, temperature: 25 °C}
            sensor: {shunt: 50 A / 75 mV}
            loads: {lamp: {current: 1 A}}
            timeline:
              - {at: 6 h, set: {lamp.current: 2 A}}
              - {at: 8 h, set: {isolator: open}}
              - {at: 9 h, set: {isolator: closed}}
              - {at: 23 h, set: {lamp: off}}
            expect:
            """;

    private static List<ExpectationResult> judge(String... claims) {
        StringBuilder text = new StringBuilder(DAY);
        for (String claim : claims) {
            text.append("  - {").append(claim).append("}\n");
        }
        return Samples.run(text.toString()).expectations();
    }

    private static void assertHeld(String... claims) {
        for (ExpectationResult each : judge(claims)) {
            assertEquals(
                    Outcome.HELD,
                    each.outcome(),
                    each.expectation().text() + ": " + each.found() + each.detail());
        }
    }

    /** 30 Ah less 1 Ah an hour; a minute for the whole minutes in which it is told. */
    @Test
    void theLoadThatIsHeldIsThatOfTheMomentBeforeAChange() {
        assertHeld(
                "at: 1 h, reading: true-time-to-empty-load-held, within: 1 min, of: 29 h",
                "at: 6 h, reading: true-time-to-empty-load-held, within: 1 min, of: 24 h",
                "at: 7 h, reading: true-time-to-empty-load-held, within: 1 min, of: 11 h",
                "at: 23 h 30 min, reading: true-time-to-empty-load-held, is: never");
    }

    /** The lamps go out at 8 h, when the isolator opens; after 9 h 20 Ah last 10 h at 2 A. */
    @Test
    void asTheScenarioGoesOnEveryChangeStillToComeCounts() {
        assertHeld(
                "at: 1 h, reading: true-time-to-empty-as-it-goes, is: 7 h",
                "at: 6 h, reading: true-time-to-empty-as-it-goes, is: 2 h",
                "at: 8 h 30 min, reading: true-time-to-empty-as-it-goes, is: 0 h",
                "at: 9 h, reading: true-time-to-empty-as-it-goes, within: 1 min, of: 10 h",
                "at: 10 h, reading: true-time-to-empty-as-it-goes, within: 1 min, of: 9 h",
                "at: 23 h, reading: true-time-to-empty-as-it-goes, is: never");
    }

    @Test
    void whatIsAvailableIsWhatCanBeDrawnNow() {
        assertHeld(
                "at: 2 h, reading: available-charge, within: 0.001 Ah, of: 28 Ah",
                "at: 8 h 30 min, reading: available-charge, is: 0 Ah",
                "at: 8 h 30 min, reading: true-state-of-charge, at-least: 39 %");
    }

    /** A minute after a step of the load the gauge's mean is not quite there. */
    @Test
    void aGaugesHoursAreHeldAgainstTheLoadHeld() {
        assertHeld("at: 5 h, reading: time-to-empty, of: truth, within: 10 min");
        ExpectationResult late =
                judge("at: 6 h 1 min, reading: time-to-empty, of: truth, within: 0 min").get(0);
        assertEquals(Outcome.FAILED, late.outcome());
        assertTrue(late.found().endsWith("(true 11 h 59 min)"), late.found());
    }

    @Test
    void aTraceTellsThemWhereItIsAskedToAndNothingElseMoves(@TempDir Path folder)
            throws IOException {
        Scenario scenario = Samples.read(DAY.replace("expect:\n", ""));
        List<String> with = trace(scenario, folder.resolve("with.csv"), true);
        List<String> without = trace(scenario, folder.resolve("without.csv"), false);
        assertTrue(
                with.get(0)
                        .contains(
                                "temperature_C,true_available_Ah,true_time_to_empty_load_held_min,"
                                        + "true_time_to_empty_as_it_goes_min,gauge_counts"),
                with.get(0));
        // Row 0 is the header and row 1 time 0: nothing has flowed, nothing is held.
        assertTrue(with.get(1).contains(",25.000,30.000000,,480,"), with.get(1));
        assertTrue(with.get(3).contains(",25.000,28.000000,1680,360,"), with.get(3));
        for (int row = 0; row < with.size(); row++) {
            List<String> cells = new java.util.ArrayList<>(List.of(with.get(row).split(",", -1)));
            cells.subList(6, 9).clear();
            assertEquals(without.get(row), String.join(",", cells));
        }
    }

    private static List<String> trace(Scenario scenario, Path place, boolean ahead)
            throws IOException {
        try (TraceCsv csv = new TraceCsv(place, 3_600_000, ahead)) {
            RunRecorder.run(scenario, 1, csv);
            csv.keep();
        }
        return Files.readAllLines(place);
    }

    @Test
    void shouldRefuseToLookAheadAtEveryMinuteOrWithoutEnd() {
        String throughout =
                Samples.problems(
                        DAY
                                + "  - {throughout: true, reading: true-time-to-empty-load-held,"
                                + " at-least: 1 h}\n");
        assertTrue(throughout.contains("expected 'at: 2 h' in place of 'throughout'"), throughout);
        String often =
                "  - {at: 2 h, reading: true-time-to-empty-as-it-goes, is: never}\n".repeat(201);
        String many = Samples.problems(DAY + often);
        assertTrue(many.contains("more than 200 looks ahead"), many);
        assertEquals(1, many.lines().filter(it -> it.startsWith("hut.yaml:")).count(), many);
    }
}
