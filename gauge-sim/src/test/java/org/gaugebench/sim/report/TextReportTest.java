package org.gaugebench.sim.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.sim.judge.RunResult;
import org.junit.jupiter.api.Test;

/** What a person sees. */
class TextReportTest {
    private static final String[] CLAIMS = {
        "at: 1 d, reading: state-of-charge, within: 1 %, of: truth",
        "throughout: true, reading: state-of-charge, at-least: 50 %, because: \"a wish\"",
        "at: 9 d, reading: voltage, at-least: 1 V",
        "event: set-to-full, at-least: 1"
    };

    private static String report(String... claims) {
        return TextReport.of(Samples.run(Samples.expecting(claims)), "1.2.3", Ink.PLAIN);
    }

    @Test
    void verdictAndWhatFailedComeFirst() {
        String[] lines = report(CLAIMS).split("\n", -1);
        assertEquals("FAILED: 1 of 4 expectations hold", lines[0]);
        assertEquals("A day at the pier", lines[1]);
        assertEquals("hut.yaml", lines[2]);
        assertTrue(lines[4].startsWith("  - state-of-charge from 0 s to 1 d"), lines[4]);
        assertTrue(lines[5].startsWith("    found 49.9"), lines[5]);
        String text = String.join("\n", lines);
        int told = text.indexOf("never evaluated: its time lies outside");
        int never = text.indexOf("found never until 1 d 00:00:00");
        assertTrue(0 < told && told < never, text);
        assertTrue(never < text.indexOf("Reading against truth"), text);
    }

    @Test
    void aLongCommandIsBrokenBetweenItsWordsAndStaysOneCommand() {
        String command =
                "java -jar gauge-sim/target/gauge-sim.jar run --seed 1"
                        + " --variant 'battery.temperature=-10 °C, loads.lamp.current=1 A'"
                        + " --at '0 d 02:00:00' 'my huts/hut.yaml'";
        Page page = new Page();
        FailureText.command(page, 6, command);
        String[] lines = page.toString().split("\n", -1);
        for (String line : lines) {
            assertTrue(line.length() <= Page.WIDTH, line);
        }
        assertTrue(lines.length > 3, page.toString());
        assertEquals("      " + command + "\n", page.toString().replaceAll(" \\\\\n +", " "));
    }

    @Test
    void everyFailureGivesTheCommandThatShowsItsMoment() {
        RunResult result = Samples.run(Samples.expecting(CLAIMS));
        String command =
                FailureText.command(
                        result.expectations().get(1),
                        Samples.scenario("my huts/hut.yaml", Samples.expecting(CLAIMS)),
                        42);
        assertTrue(
                command.matches(".* run --seed 42 --at '0 d 05:0\\d:00' 'my huts/hut.yaml'"),
                command);
        String report = report(CLAIMS);
        assertTrue(
                report.replaceAll(" \\\\\n +", " ")
                        .contains("run --seed 1 --at '1 d 00:00:00' hut.yaml"),
                report);
        String whole = FailureText.command(result.expectations().get(2), result.scenario(), 1);
        assertTrue(whole.endsWith(" run --seed 1 hut.yaml"), "its time never came");
    }

    @Test
    void whatNeverCameIsToldWithTheRulesReasonWhenTheWindowCloses() {
        String text = report("event: set-to-full, to: 6 h, at-least: 1").replaceAll("\\s+", " ");
        assertTrue(text.contains("gauge set to full never; at 0 d 06:00:00 gauge shows 4"), text);
        assertTrue(text.contains("rule waiting (voltage under the threshold)"), text);
    }

    @Test
    void ofTooManyEventsTheFirstTooManyIsShown() {
        String declared =
                Samples.expecting("event: declared, times: 2")
                        .replace(
                                "at: 12 h, set: {lamp: off}",
                                "at: 1 h, every: 1 h, until: 10 h, set: {gauge.declare: 50 %}");
        long millis = Samples.run(declared).expectations().get(0).atMillis();
        assertTrue(Math.abs(millis - 2 * 3_600_000L) <= 1_000, "at " + millis);
    }

    @Test
    void theFirstFailureIsToldWithReadingTruthRuleAndReason() {
        String text = report(CLAIMS).replaceAll("\\s+", " ");
        // 10 % of 50 Ah at 1 A: the fifth hour ends at 50 %
        assertTrue(text.contains("at 0 d 05:0"), text);
        assertTrue(text.contains("gauge shows 49.9"), text);
        assertTrue(text.contains("full-charge rule waiting (voltage under the threshold)"), text);
        assertTrue(text.contains("expected because a wish"), text);
        assertTrue(text.contains("written at hut.yaml:12:5"), text);
    }

    @Test
    void theGaugeSaysItsBandAndWhyItMayBeBelieved() {
        String overdue = "gauge: {rest-time: 0 h, full-overdue: 1 d}\n";
        String beside = "beside:\n  - {name: plain, kind: plain-counter}\n";
        String text =
                TextReport.of(Samples.run(Samples.hut() + overdue + beside), "1", Ink.PLAIN)
                        .replaceAll("\\s+", " ");
        // A declared figure is known to 10 % only, and a day adds little.
        String says =
                "gauge says 36 %, 2\\d to 4\\d: full charge overdue; fault: full charge overdue";
        assertTrue(text.matches(".*" + says + " Charge left.*"), text);
        assertTrue(text.contains("fault raised (full charge overdue); shown 36"), text);
        assertFalse(text.contains("plain says"), "a plain counter knows no band");
        String unknown =
                TextReport.of(
                        Samples.run(Samples.hut() + "gauge: {start: unknown, rest-time: 0 h}\n"),
                        "1",
                        Ink.PLAIN);
        assertTrue(unknown.contains("gauge says not known: nothing is known yet"), unknown);
    }

    @Test
    void aGaugeWithoutPowerSaysNothingOfItself() {
        String steps =
                """
                timeline:
                  - {at: 6 h, set: {gauge.power: off, plain.power: off}}
                  - {at: 18 h, set: {plain.power: on}}
                """;
        String scenario =
                Samples.hut().replace("timeline:\n", steps)
                        + "beside:\n  - {name: plain, kind: plain-counter}\n";
        String text = TextReport.of(Samples.run(scenario), "1", Ink.PLAIN);
        assertTrue(text.contains("\n  gauge has no power at the end\n"), text);
        assertFalse(text.contains("nothing is known yet"), text);
        assertFalse(text.contains("plain has no power"), text);
        String noon = MomentPage.of(Samples.read(scenario), 1, 12 * 3_600_000);
        assertTrue(noon.matches("(?s).*gauge\n  power +none, so nothing is shown\n.*"), noon);
        assertFalse(noon.contains("REGISTER") || noon.contains("0.000 V"), noon);
        assertTrue(MomentPage.of(Samples.read(scenario), 1, 3_600_000).contains("SAVES"));
    }

    @Test
    void noLineIsWiderThan80Columns() {
        report(CLAIMS).lines().forEach(line -> assertTrue(line.length() <= 80, line));
        RunResult wide =
                Samples.run(
                        Samples.hut()
                                        .replace(
                                                "title: A day",
                                                "title: A " + "very ".repeat(30) + "day")
                                + "beside:\n  - {name: a-name-of-thirty-one-characters, kind:"
                                + " plain-counter}\n");
        TextReport.of(wide, "1.2.3", Ink.PLAIN)
                .lines()
                .forEach(line -> assertTrue(line.length() <= 80, line));
    }

    @Test
    void colourChangesNoWord() {
        RunResult result = Samples.run(Samples.expecting(CLAIMS));
        String coloured = TextReport.of(result, "1.2.3", Ink.COLOUR);
        assertTrue(coloured.contains("\u001b[1;31mFAILED\u001b[0m"), coloured);
        assertEquals(
                TextReport.of(result, "1.2.3", Ink.PLAIN),
                coloured.replaceAll("\u001b\\[[0-9;]*m", ""));
    }

    @Test
    void theSameRunGivesTheSameText() {
        assertEquals(report(CLAIMS), report(CLAIMS));
    }

    @Test
    void controlCharactersOfAFileNeverReachTheTerminal() {
        String text = Samples.hut().replace("A day at the pier", "\"A \\e[31mred\\e[0m day\"");
        String report = TextReport.of(Samples.run(text), "1.2.3", Ink.PLAIN);
        assertFalse(report.contains("\u001b"), report);
    }

    @Test
    void aFailureThatIsExpectedSaysWhyAndIsNoFailure() {
        String report =
                TextReport.of(
                        Samples.run(
                                Samples.expecting(
                                        "event: declared, at-least: 9, expected-to-fail: the sign",
                                        "event: declared, times: 1, expected-to-fail: the gain")),
                        "1.2.3",
                        Ink.PLAIN);
        assertTrue(report.startsWith("FAILED: 1 of 2 expectations hold"), report);
        assertTrue(report.contains("  fails "), report);
        assertTrue(report.contains("as expected, because the sign"), report);
        String words = report.replaceAll("\\s+", " ");
        assertTrue(words.contains("holds, though expected to fail because the gain"), report);
    }

    @Test
    void likeEventsInARowAreToldOnce() {
        String text =
                Samples.hut()
                        .replace(
                                "at: 12 h, set: {lamp: off}",
                                "at: 1 h, every: 1 min, set: {gauge.declare: 50 %}");
        String report = TextReport.of(Samples.run(text), "1.2.3", Ink.PLAIN);
        assertTrue(report.contains("more of these until"), report);
        assertTrue(report.lines().count() < 60, report);
    }

    @Test
    void theChartShowsASpikeOfASingleMinute() {
        String text =
                Samples.hut()
                        .replace(
                                "  - {at: 12 h, set: {lamp: off}}",
                                "  - {at: 6 h 30 s, set: {gauge.declare: 90 %}}\n"
                                        + "  - {at: 6 h 90 s, set: {gauge.declare: 48 %}}");
        String report = TextReport.of(Samples.run(text), "1.2.3", Ink.PLAIN);
        assertTrue(report.contains("90% |"), report);
        String top = report.lines().filter(l -> l.contains("90% |")).findFirst().orElseThrow();
        assertTrue(top.contains("o"), report);
    }
}
