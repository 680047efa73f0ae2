package org.gaugebench.sim.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Exhibits in a scenario file. */
class MistakesReaderTest {
    private static GaugeSpec read(String gauge) throws ScenarioException {
        String text = Samples.SMALLEST + "gauge: {" + gauge + "}\n";
        Scenario scenario = ScenarioReader.read("hut.yaml", text);
        Scenario again = ScenarioReader.read("a", ScenarioWriter.resolved(scenario));
        assertEquals(Samples.withoutMarks(scenario), Samples.withoutMarks(again));
        return scenario.gauges().get(0);
    }

    /** With whatever it needs beside it. */
    @ParameterizedTest
    @EnumSource(Mistake.class)
    void everyMistakeCanBeMadeByItsName(Mistake mistake) throws ScenarioException {
        Set<Mistake> made = EnumSet.of(mistake);
        switch (mistake.family()) {
            case AFTER_FULL -> made.add(Mistake.LOOSE_FULL_RULE);
            case HOURS_SEED, SHOWN_HOURS -> made.add(Mistake.HOURS_SINGLE_POLE_3_MIN);
            default -> {
                // makes sense alone
            }
        }
        String memory = mistake == Mistake.SAVE_BY_OVERWRITE ? ", memory: {slots: 2}" : "";
        GaugeSpec gauge = read("kind: exhibit, mistakes: " + MistakesReader.text(made) + memory);
        assertEquals(GaugeSpec.Kind.EXHIBIT, gauge.kind());
        assertEquals(made, gauge.mistakes());
    }

    @Test
    void whatBelievesAtTheStartIsToldNothingAndAnyExhibitMayKnowNothing() throws ScenarioException {
        assertEquals(
                -1, read("kind: exhibit, mistakes: [start-at-full]").declaredPartsPerMillion());
        assertEquals(
                -1,
                read("kind: exhibit, mistakes: [voltage-guess-at-start], start: unknown")
                        .declaredPartsPerMillion());
        assertEquals(
                -1,
                read("kind: exhibit, mistakes: [lost-sign], start: unknown")
                        .declaredPartsPerMillion());
        assertEquals(
                800_000, read("kind: exhibit, mistakes: [lost-sign]").declaredPartsPerMillion());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "mistakes: [lost-sign]|9|only an exhibit makes mistakes by name; expected"
                        + " 'kind: exhibit' beside them",
                "kind: exhibit|8|'mistakes' is missing in gauge; expected"
                        + " 'mistakes: [float-accumulator]'",
                "'kind: exhibit, mistakes: []'|34|an exhibit makes at least one mistake; expected"
                        + " 'mistakes: [float-accumulator]', or 'kind: plain-counter'",
                "'kind: exhibit, mistakes: lost-sign'|34|expected a list such as"
                        + " '- float-accumulator', but found 'lost-sign'",
                "'kind: exhibit, mistakes: [float-acumulator]'|35|there is no mistake"
                        + " 'float-acumulator'; did you mean 'float-accumulator'?",
                "'kind: exhibit, mistakes: [{a: b}]'|35|there is no mistake ''",
                "'kind: exhibit, mistakes: [no-clamp, no-clamp]'|45|'no-clamp' stands twice",
                "'kind: exhibit, mistakes: [no-clamp, display-only-clamp]'|34|'no-clamp' and"
                        + " 'display-only-clamp' contradict each other; keep one of them",
                "'kind: exhibit, mistakes: [no-rearm]'|34|'no-rearm' does nothing alone; add one"
                        + " of 'loose-full-rule'",
                "'kind: exhibit, mistakes: [save-by-overwrite]'|24|an exhibit that saves needs"
                        + " something to save into; expected 'memory: {slots: 2}'",
                "'kind: exhibit, mistakes: [edit-keeps-charge-used, edit-keeps-charge-left]'|34|"
                        + "'edit-keeps-charge-used' and 'edit-keeps-charge-left' contradict",
                "'kind: exhibit, mistakes: [start-at-full], start: 50 %'|58|this exhibit believes"
                        + " what it wants at the start; leave 'start' out"
            })
    void shouldRefuseMistakesThatMakeNoSense(String gauge, int column, String message) {
        String problems = Samples.problemsOf(Samples.SMALLEST + "gauge: {" + gauge + "}\n");
        assertTrue(problems.contains(message), problems);
        assertTrue(problems.startsWith("hut.yaml:6:" + column + ": "), problems);
    }

    /** The step is line 7; what can be set is what the gauge does something with. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "lost-sign|capacity: 90 Ah|",
                "efficiency-on-totals|coulombic-efficiency: 98 %|",
                "efficiency-per-sample|coulombic-efficiency: 98 %|",
                "lost-sign|coulombic-efficiency: 98 %|28: while it runs this"
                        + " gauge takes a setting that it has a use for, such as",
                "lost-sign|hold: 2 h|28: while it runs this gauge takes a setting that it has a"
                        + " use for, such as 'capacity: 100 Ah @ 20 h'; expected a gauge of kind"
                        + " core for 'gauge.hold'",
                "lost-sign|holdd: 2 h|28: nothing here is called 'gauge.holdd'",
                "lost-sign|capacity: 90 A|44: expected a charge such as",
                "lost-sign|capacity: 1 mAh|44: 'gauge.capacity' must be 100 mAh"
            })
    void anExhibitTakesTheSettingsThatItUses(String mistake, String step, String message) {
        String problems =
                Samples.problemsOf(
                        Samples.SMALLEST
                                + "gauge: {kind: exhibit, mistakes: ["
                                + mistake
                                + "]}\n"
                                + "timeline: [{at: 2 h, set: {gauge."
                                + step
                                + "}}]\n");
        String expected = message == null ? "" : "hut.yaml:7:" + message;
        assertTrue(problems.startsWith(expected), problems);
        assertEquals(message == null, problems.isEmpty(), problems);
    }

    @Test
    void aPlainCounterTakesAnotherCapacityAndNothingElse() {
        String file =
                Samples.SMALLEST + "gauge: {kind: plain-counter}\ntimeline:\n  - {at: 2 h, set:";
        assertEquals("", Samples.problemsOf(file + " {gauge.capacity: 90 Ah}}\n"));
        String problems = Samples.problemsOf(file + " {gauge.taper: 3 %}}\n");
        assertTrue(problems.startsWith("hut.yaml:8:"), problems);
        assertTrue(problems.contains("expected a gauge of kind core for 'gauge.taper'"), problems);
    }
}
