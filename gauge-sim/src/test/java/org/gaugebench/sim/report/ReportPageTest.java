package org.gaugebench.sim.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.sim.judge.Attribution;
import org.gaugebench.sim.judge.AttributionRun;
import org.gaugebench.sim.judge.LaneResult;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.rig.Cause;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** The page of a run: it needs nobody, tells what happened, and lies about nothing. */
class ReportPageTest {
    /** "Under 1.5 MB for a year's run": what the page promises. */
    private static final int MOST_BYTES = 1_500_000;

    private static String page(String scenario) {
        Scenario read = Samples.read(scenario);
        ReportTrace trace = new ReportTrace();
        RunResult result = RunRecorder.run(read, read.seed(), trace);
        return ReportPage.of(result, trace, null, "test");
    }

    private static Map<Long, Long> reading(String page, int gauge, String name) {
        return ReportLines.line(ReportLines.data(page).get("readings").get(gauge).get(name));
    }

    private static Map<Long, Long> truth(String page, String name) {
        return ReportLines.line(ReportLines.data(page).get("truth").get(name));
    }

    @Test
    void theSameRunGivesTheSameBytes() {
        String noisy = Samples.hut() + "  - {at: 4 h, set: {gauge.declare: 30 %}}\n";
        assertEquals(page(noisy), page(noisy));
    }

    @Test
    void thePageAsksNobody() {
        String page = page(Samples.hut());
        // The one address is in the first comment of the chart script, which nobody follows.
        String rest = page.replace("/*! https://github.com/leeoniya/uPlot (v1.6.30) */", "");
        for (String foreign : List.of("http:", "https:", " src=", "url(", "@import", "fetch(")) {
            assertFalse(rest.replace("http://www.w3.org/2000/svg", "").contains(foreign), foreign);
        }
        assertTrue(page.contains("content=\"default-src 'none';"));
        assertFalse(page.contains("'unsafe-"), "a policy with a hole");
        assertFalse(Pattern.compile("<[^>]+ style=").matcher(page).find(), "needs a hole");
    }

    /** A browser runs the script and takes the style only if the policy names these very bytes. */
    @Test
    void thePolicyNamesTheScriptAndTheStyleOfThePage() {
        String page = page(Samples.hut());
        assertEquals(HtmlText.source(between(page, "<style>", "</style>")), policy(page, "style"));
        assertEquals(
                HtmlText.source(between(page, "<script>", "</script>")), policy(page, "script"));
    }

    private static String policy(String page, String kind) {
        Matcher matcher = Pattern.compile(kind + "-src ('[^']+')").matcher(page);
        assertTrue(matcher.find());
        return matcher.group(1);
    }

    private static String between(String page, String from, String to) {
        int begin = page.indexOf(from) + from.length();
        return page.substring(begin, page.indexOf(to, begin));
    }

    @Test
    void wordsOfAFileStayWords() {
        String odd = "</script><script>alert(1)</script><!-- & \\\" ' ]]>";
        String page =
                page(
                        Samples.hut().replace("A day at the pier", "\"" + odd + "\"")
                                + "about: \"<img src=x onerror=alert(2)>\"\n"
                                + "beside:\n"
                                + "  - {name: plain, kind: plain-counter, start: 40 %}\n"
                                + "expect:\n"
                                + "  - {at: 1 d, reading: state-of-charge, at-least: 1 %,\n"
                                + "     because: \"</td><b>x\"}\n");
        assertEquals(2, count(page, "<script"), "scripts");
        assertEquals(2, count(page, "</script>"), "ends of scripts");
        assertFalse(page.contains("<img"));
        assertFalse(page.contains("<b>x"));
        assertTrue(page.contains("<h1>&lt;/script&gt;&lt;script&gt;alert(1)"));
        assertEquals(2, ReportLines.data(page).get("gauges").size());
    }

    private static int count(String text, String part) {
        return text.split(Pattern.quote(part), -1).length - 1;
    }

    @Test
    void noDataEndsItsElement() {
        String name = "a</script>b";
        Scenario read = Samples.scenario(name, Samples.hut());
        ReportTrace trace = new ReportTrace();
        RunResult result = RunRecorder.run(read, read.seed(), trace);
        // No scenario may call a gauge so; the page does not rely on it.
        String page = ReportPage.of(called(result, "x</script>"), trace, null, "<b>");
        assertEquals("x</script>", ReportLines.data(page).get("gauges").get(0).asText());
        assertEquals(2, count(page, "</script>"));
        assertFalse(page.contains("<b>"));
    }

    private static RunResult called(RunResult it, String gauge) {
        LaneResult lane = it.lanes().get(0);
        return new RunResult(
                it.scenario(),
                it.seed(),
                it.ticks(),
                it.simulatedMillis(),
                it.digest(),
                it.verdict(),
                it.expectations(),
                it.events(),
                it.eventsDropped(),
                it.refused(),
                List.of(
                        new LaneResult(
                                gauge,
                                lane.finalPartsPerMillion(),
                                lane.finalMicroampHours(),
                                lane.worstErrorPartsPerMillion(),
                                lane.worstAtMillis(),
                                lane.shownPercent(),
                                lane.belief(),
                                lane.rule())),
                it.finalTruePartsPerMillion(),
                it.finalTrueMicroampHours(),
                it.truePercent(),
                it.program());
    }

    @Test
    void aLoadOfOneTickInADayIsSeenWhereItWas() {
        String spike = "  - {from: 17 h, to: 61201 s, set: {lamp: on}}\n";
        String page = page(Samples.hut() + spike);
        Map<Long, Long> current = truth(page, "current");
        assertEquals(-1_000_000, current.get(61_201L), 1_000, "micro-amps of one tick");
        current.forEach(
                (tick, value) ->
                        assertTrue(
                                tick == 61_201 || tick <= 43_200 || value > -1_000, "at " + tick));
        // Noise of 2 uV on 1.5 mOhm is 1.3 mA; five of that.
        assertEquals(-1_000_000, reading(page, 0, "current").get(61_201L), 7_000);
    }

    @Test
    void everyTickAroundAnAnchorIsThere() {
        String page = page(Samples.hut() + "  - {at: 4 h, set: {gauge.declare: 30 %}}\n");
        int reach = ReportLines.data(page).get("windowTicks").asInt();
        assertEquals(ReportWindows.REACH_TICKS, reach, "a short run has room for all");
        Map<Long, Long> voltage = truth(page, "voltage");
        Map<Long, Long> current = reading(page, 0, "current");
        int missing = 0;
        for (long tick = 4L * 3_600 - reach + 1; tick <= 4L * 3_600 + reach; tick++) {
            missing += current.containsKey(tick) ? 0 : 1;
        }
        // A value between two equal ones says nothing, and noise makes few of them equal.
        assertTrue(missing < reach / 10, missing + " missing");
        assertTrue(voltage.size() > 2, "truth too");
        Map<Long, Long> state = reading(page, 0, "state");
        assertEquals(300_000, state.get(4 * 3_600 + 1L), 100, "declared");
        assertTrue(state.get(4 * 3_600L) > 500_000, "and not a tick earlier");
    }

    @Test
    void aFailureHasItsWindow() {
        String failing =
                Samples.hut()
                        + "expect:\n  - {throughout: true, reading: state-of-charge,"
                        + " at-least: 50 %}\n";
        String page = page(failing);
        JsonNode data = ReportLines.data(page);
        long at = data.get("failures").get(0).asLong();
        assertTrue(page.contains("data-at=\"" + at + "\""), "a reader can go there");
        Map<Long, Long> current = reading(page, 0, "current");
        int found = 0;
        for (long tick = at / 1_000 - 100; tick < at / 1_000 + 100; tick++) {
            found += current.containsKey(tick) ? 1 : 0;
        }
        assertTrue(found > 180, found + " of 200");
    }

    @Test
    void withoutPowerThereIsAGapAndNoZero() {
        String page = page(Samples.hut() + "  - {from: 2 h, to: 3 h, set: {gauge.power: off}}\n");
        for (String name : List.of("state", "current", "voltage", "lower")) {
            Map<Long, Long> line = reading(page, 0, name);
            List<Long> within =
                    line.keySet().stream().filter(it -> it > 7_200 && it < 10_800).toList();
            assertFalse(within.isEmpty(), name);
            within.forEach(it -> assertEquals(ReportLines.GAP, line.get(it), name + " at " + it));
        }
        Map<Long, Long> truth = truth(page, "state");
        assertFalse(truth.containsValue(ReportLines.GAP), "what is true goes on");
    }

    /** Nobody declares anything, and the rest of the last hour is too short to prove anything. */
    @Test
    void aGaugeThatKnowsNothingShowsNothing() {
        String page =
                page(Samples.hut().replace("at: 12 h", "at: 23 h") + "gauge: {start: unknown}\n");
        assertEquals(
                List.of(ReportLines.GAP),
                reading(page, 0, "state").values().stream().distinct().toList());
        assertTrue(page.contains("gauge never known"), "told to a screen reader too");
    }

    @Test
    void theTrueEndIsWhereTheLoadsAreNotMet() {
        String flat = Samples.hut().replace("lamp: {current: 1 A}", "lamp: {current: 10 A}");
        JsonNode starved = ReportLines.data(page(flat)).get("starved");
        // 30 Ah at 10 A are three hours; resistance and the 20 h rate cost a part of it.
        assertEquals(3 * 3.6e6, starved.get(0).asDouble(), 0.3 * 3.6e6);
        assertEquals(0, ReportLines.data(page(Samples.hut())).get("starved").size());
    }

    @Test
    void theErrorByCauseIsThereWhereItWasAskedFor() {
        Scenario read = Samples.read(Samples.hut());
        ReportTrace trace = new ReportTrace();
        RunResult result = RunRecorder.run(read, read.seed(), trace);
        String page =
                ReportPage.of(
                        result,
                        trace,
                        AttributionRun.of(read, read.seed(), 0, 43_200_000, 86_400_000),
                        "test");
        JsonNode moments = ReportLines.data(page).get("attribution").get("moments");
        assertEquals(3, moments.size());
        for (JsonNode moment : moments) {
            long sum = 0;
            for (int i = 1; i <= 6; i++) {
                sum += moment.get(i).asLong();
            }
            // Six parts rounded to a microampere-hour, and the sum too.
            assertEquals((double) moment.get(7).asLong(), (double) sum, 4);
        }
        assertTrue(page.contains("data-chart=\"attribution\""));
        String plain = page(Samples.hut());
        assertFalse(plain.contains("data-chart=\"attribution\""));
        String all = between(page, "id=\"causes\"", "</details>");
        for (Cause cause : Cause.values()) {
            String words = cause.words().replace("'", "&#39;");
            assertTrue(all.contains("<th scope=\"row\">" + words + "</th>"), words);
        }
        assertTrue(page.contains("is split by cause at 3 moments"), "how many");
        assertFalse(plain.contains("is split by cause"), "none");
    }

    /** Whoever runs the printed command has the same page, its causes too. */
    @Test
    void theCommandAsksForTheCausesThatThePageHas() {
        String beside = "beside: [{name: second, kind: core, start: 75 %}]\n";
        Scenario read = Samples.read(Samples.hut() + beside);
        RunResult result = RunRecorder.run(read, read.seed(), new ReportTrace());
        assertEquals(" --report report.html hut.yaml", options(result, null));
        assertEquals(
                " --report report.html --attribution hut.yaml",
                options(result, AttributionRun.of(result)));
        Attribution second =
                AttributionRun.of(read, read.seed(), "second", Observer.NONE, 86_400_000);
        assertEquals(
                " --report report.html --attribution --attribution-gauge second hut.yaml",
                options(result, second));
    }

    private static String options(RunResult result, @Nullable Attribution attribution) {
        ReportTrace trace = new ReportTrace();
        RunRecorder.run(result.scenario(), result.seed(), trace);
        String page = ReportPage.of(result, trace, attribution, "test");
        String command = between(page, "id=\"command\">", "</code>").replace("&#39;", "'");
        return command.substring(command.indexOf(" --report"));
    }

    @Test
    void aPageOfEveryTickDoesNotSpeakOfStretches() {
        String words = "Away from events and failures a strip keeps";
        assertTrue(page(Samples.hut()).contains(words + " the lowest and the highest value of"));
        String brief = Samples.hut().replace("duration: 1 d", "duration: 13 h\ntick: 1 min");
        assertFalse(page(brief).contains(words));
    }

    @Test
    void aYearFitsAndSoDoSixNoisyGauges() {
        String year =
                Samples.hut()
                                .replace("duration: 1 d", "duration: 365 d\ntick: 30 s")
                                .replace("noise: 2 uV", "noise: 200 uV")
                        + "  - {from: 13 h, to: 14 h, every: 1 d, set: {lamp: on}}\n"
                        + "  - {at: 1 h, every: 1 d, set: {gauge.declare: 60 %}}\n";
        String page = page(year);
        assertTrue(page.length() < MOST_BYTES, "bytes: " + page.length());
        assertTrue(ReportLines.data(page).get("windowTicks").asInt() >= 10, "but not by nothing");
        StringBuilder six = new StringBuilder(year.replace("365 d", "30 d")).append("beside:\n");
        for (int i = 2; i <= 7; i++) {
            six.append("  - {name: gauge-%s, kind: plain-counter, start: 60 %%}\n".formatted(i));
        }
        String many = page(six.toString());
        assertTrue(many.length() < MOST_BYTES, "bytes: " + many.length());
        assertTrue(many.contains("The first 6 of 7 gauges are drawn"));
    }
}
