package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.browser.Browser;
import org.gaugebench.sim.live.lessons.Lesson;
import org.gaugebench.sim.live.lessons.Lessons;
import org.junit.jupiter.api.Test;

/** What a lesson asks to look at is there to look at, in a browser. */
class LiveLessonInBrowserTest extends ServedPage {
    private static final String MILLIS = "return gaugebenchLive.frame.millis";

    private void lesson(Browser browser, int number) {
        browser.open(URI.create("about:blank"));
        browser.open(page.resolve("#lesson=" + number));
        held(browser, number);
    }

    private static void held(Browser browser, int number) {
        browser.until(
                "return window.gaugebenchLive !== undefined && gaugebenchLive.setup !== null"
                        + " && gaugebenchLive.setup.lesson === "
                        + number
                        + " && benchLesson.lesson !== null");
    }

    private static void runTo(Browser browser, String at, long millis) {
        browser.ask("gaugebenchLive.act({act: 'run-to', at: arguments[0]})", at);
        browser.until(MILLIS + " === " + millis + " && !gaugebenchLive.frame.running");
    }

    private static void reveal(Browser browser) {
        browser.ask("gaugebenchLive.act({act: 'reveal', value: true})");
        browser.until("return gaugebenchLive.frame.truth !== undefined");
    }

    private static String text(Browser browser, String id) {
        return browser.text("return document.getElementById(arguments[0]).textContent", id);
    }

    /** Highest value drawn of a gauge in the upper strip. */
    private static double highest(Browser browser, int gauge) {
        return browser.number(
                "return Math.max(...benchChart.drawn()[4 + arguments[0]].filter(it => it !=="
                        + " null))",
                gauge);
    }

    /** Lesson 14 says to look at the numbers of the upright axis: they reach as far as the line. */
    @Test
    void theStripShowsTheAmpHoursThatALessonAsksAbout(Browser browser) {
        lesson(browser, 14);
        assertEquals("Charge left, Ah", text(browser, "chart-head"));
        runTo(browser, "1 h 4 min", 64 * 60_000);
        browser.until("return benchChart.drawn()[5].some(it => it > 6000)");
        assertEquals(84.7, highest(browser, 0), 25, "the good gauge stays within its battery");
        assertTrue(browser.number("return benchChart.scale()[1]") >= 6_000);
    }

    /** Lesson 11 asks which line jumps and which one stands still: lines of hours. */
    @Test
    void theStripShowsTheHoursThatALessonAsksAbout(Browser browser) {
        lesson(browser, 11);
        assertEquals("Hours left, h", text(browser, "chart-head"));
        runTo(browser, "4 h 20 min", 260 * 60_000);
        browser.until("return benchChart.drawn()[5].some(it => it > 90)");
        double last =
                browser.number("return benchChart.drawn()[4].filter(it => it !== null).at(-1)");
        double minutes = browser.number("return gaugebenchLive.frame.gauges[0].minutes");
        assertEquals(minutes / 60, last, 0.6, "within what half an hour of a steady use makes");
    }

    /** Lesson 4 is about errors, and an error is a part of the truth. */
    @Test
    void theStripOfErrorsIsEmptyUntilTheTruthIsShown(Browser browser) {
        lesson(browser, 4);
        assertEquals("How far off the truth, points", text(browser, "chart-head"));
        runTo(browser, "10 d", 864_000_000);
        browser.until("return benchChart.points() > 100");
        assertEquals(
                true,
                browser.ask(
                        "return benchChart.drawn().slice(3).every("
                                + "line => line.every(it => it === null))"));
        reveal(browser);
        browser.until("return benchChart.drawn()[5].some(it => it > 4)");
        // The wrong zero: 20 mA for 240 h are 4.8 Ah of 100 Ah; a tenth for the gauge's own noise.
        assertEquals(4.8, highest(browser, 1), 0.1);
        assertEquals(0, highest(browser, 0), 0.1, "the gauge without a fault");
    }

    /** Three shapes over ten days are only seen on ten days. */
    @Test
    void theChartHoldsAllOfALesson(Browser browser) {
        List<String> cut = new ArrayList<>();
        for (int number : List.of(3, 4, 6, 12)) {
            lesson(browser, number);
            browser.ask("gaugebenchLive.act({act: 'to-end'})");
            browser.until("return gaugebenchLive.frame.ended");
            browser.until("return benchChart.drawn()[0].length > 0");
            browser.until(
                    "return gaugebenchLive.frame.history.level === gaugebenchLive.level"
                            + " && benchChart.points() > 1");
            double first = browser.number("return benchChart.drawn()[0][0]");
            double points = browser.number("return benchChart.points()");
            if (first > 0 || points < 60) {
                cut.add("lesson %d begins at %s s with %s points".formatted(number, first, points));
            }
        }
        assertEquals(List.of(), cut);
    }

    /** The pupils' sheet and the page have one upright axis. */
    @Test
    void theAxisIsThatOfThePupilsSheet(Browser browser) {
        lesson(browser, 5);
        browser.until("return benchChart.scale()[0] !== null");
        assertEquals(196, browser.number("return benchChart.scale()[0]"), 0.001);
        assertEquals(200, browser.number("return benchChart.scale()[1]"), 0.001);
    }

    /** Lessons 3 and 12 look into the ledger of a gauge that is not the first. */
    @Test
    void everyGaugeHasALedgerToLookInto(Browser browser) {
        lesson(browser, 12);
        reveal(browser);
        runTo(browser, "1 d", 86_400_000);
        browser.ask(
                "const it = document.getElementById('ledger-whose'); it.selectedIndex = 1;"
                        + " it.dispatchEvent(new Event('change'))");
        String shown = "document.querySelector('#ledger-rows tr.open td:nth-child(5)').textContent";
        // The ledger shows two places, a frame three; the gauges are half a percent apart.
        browser.until(
                "return document.querySelector('#ledger-rows tr.open') !== null && Math.abs("
                        + shown
                        + " - gaugebenchLive.frame.gauges[1].ampHours) < 0.006");
        assertEquals(
                List.of(
                        "the gauge that takes its own current off",
                        "the gauge that is blind to it"),
                browser.ask(
                        "return [...document.querySelectorAll('#ledger-whose option')]"
                                + ".map(it => it.textContent)"));
        double misread =
                browser.number(
                        "return [...document.querySelectorAll("
                                + "'#ledger-rows tr[data-cause=misread] td:nth-child(3)')]"
                                + ".reduce((sum, it) => sum + Number(it.textContent), 0)");
        // 12 mA for 24 h; each of some 30 lines is rounded to four places.
        assertEquals(0.288, misread, 0.003);
        assertEquals(
                false,
                browser.ask(
                        "return [...document.querySelectorAll('#ledger-rows td')]"
                                + ".some(it => it.textContent === '0.0000')"),
                "a line that tells nothing");
    }

    /** A class that wrote its prediction on paper hears too which choice the run gave. */
    @Test
    void theAnswerNamesTheChoiceAndWhatToTryIsTried(Browser browser) {
        lesson(browser, 3);
        reveal(browser);
        runTo(browser, "30 d", 30L * 86_400_000);
        for (int i = 0; i < Lessons.of(3).steps().size(); i++) {
            browser.click("#lesson-next");
        }
        browser.until("return document.getElementById('lesson-answer').textContent !== ''");
        assertTrue(
                text(browser, "lesson-answer")
                        .startsWith("With the lesson's set-up unchanged it is D."),
                text(browser, "lesson-answer"));
        assertEquals("lesson-back", browser.text("return document.activeElement.id"));
        assertEquals("Reset and try it", text(browser, "lesson-do"));
        browser.click("#lesson-do");
        browser.until("return gaugebenchLive.frame.set['sensor.offset'] === 2");
        assertEquals(0, browser.number(MILLIS));
        assertFalse(Boolean.TRUE.equals(browser.ask("return gaugebenchLive.frame.revealed")));
    }

    /** What one class guessed, predicted and was answered is gone for the next one. */
    @Test
    void theNextClassFindsNothingOfTheLastOne(Browser browser) {
        lesson(browser, 3);
        browser.click("#lesson-choices li:nth-child(4) input");
        browser.find("#guess").sendKeys("51");
        reveal(browser);
        runTo(browser, "30 d", 30L * 86_400_000);
        for (int i = 0; i < Lessons.of(3).steps().size(); i++) {
            browser.click("#lesson-next");
        }
        browser.until("return document.getElementById('lesson-answer').textContent !== ''");
        browser.click("#reset");
        browser.until(MILLIS + " === 0 && document.getElementById('guess').value === ''");
        assertTrue(text(browser, "lesson-step").startsWith("1/6"), text(browser, "lesson-step"));
        assertEquals("", text(browser, "lesson-answer"));
        assertEquals(
                "0/4",
                browser.text(
                        "const all = [...document.querySelectorAll('#lesson-choices input')];"
                                + " return all.filter(it => it.checked).length + '/' +"
                                + " all.filter(it => !it.disabled).length"));
        assertEquals("hidden", text(browser, "truth-percent"));
    }

    @Test
    void theButtonOfAStepSaysWhatItDoes(Browser browser) {
        lesson(browser, 1);
        List<String> said = new ArrayList<>();
        for (int i = 1; i < Lessons.of(1).steps().size(); i++) {
            browser.click("#lesson-next");
            said.add(text(browser, "lesson-do"));
        }
        assertEquals(List.of("Run to 4 h", "Run to 6 h", "Show the truth", "Go there"), said);
    }

    /** Somebody who opens the same lesson in a second window does not take it from the class. */
    @Test
    void aSecondWindowJoinsTheLessonThatRuns(Browser browser) {
        lesson(browser, 3);
        runTo(browser, "10 d", 864_000_000);
        browser.openSecondWindow(page.resolve("#lesson=3"));
        held(browser, 3);
        assertEquals(864_000_000, browser.number(MILLIS));
        browser.openSecondWindow(page);
        browser.until("return window.gaugebenchLive !== undefined && gaugebenchLive.updates > 0");
        assertTrue(text(browser, "gauges").contains("the gauge without its zero"));
        assertEquals(true, browser.ask("return document.getElementById('lesson-panel').hidden"));
        browser.ask("location.hash = '#lesson=1'");
        held(browser, 1);
        browser.toFirstWindow();
        browser.until("return document.getElementById('lesson-panel').hidden");
        assertTrue(text(browser, "gauges").contains("the gauge that drops fractions"));
    }

    /** The longest run and its end stand in the row of the clock, and cover nothing. */
    @Test
    void theEndIsToldWithoutCoveringAnything(Browser browser) {
        lesson(browser, 14);
        browser.ask("gaugebenchLive.act({act: 'to-end'})");
        browser.until("return gaugebenchLive.frame.ended");
        browser.until("return document.getElementById('clock').textContent.endsWith('· end')");
        assertEquals("", text(browser, "status"));
    }

    /** Two gauges of a lesson may differ in the last word of their names. */
    @Test
    void theNamesOfGaugesStandThereWhole(Browser browser) {
        browser.size(1280, 720);
        List<String> cut = new ArrayList<>();
        lesson(browser, 4);
        for (String size : List.of("", "large")) {
            browser.ask("document.documentElement.dataset.size = arguments[0]", size);
            for (Lesson each : List.of(Lessons.of(2), Lessons.of(4), Lessons.of(11))) {
                browser.ask("location.hash = '#lesson=" + each.number() + "'");
                held(browser, each.number());
                browser.until(
                        "return document.querySelectorAll('#gauges h2').length === "
                                + each.gauges().size());
                Object found =
                        browser.ask(
                                "return [...document.querySelectorAll('#gauges h2')].filter(it =>"
                                        + " it.scrollWidth > it.clientWidth || it.scrollHeight >"
                                        + " it.clientHeight + 1).map(it => it.textContent)");
                if (found instanceof List<?> names) {
                    names.forEach(name -> cut.add(size + " " + each.number() + ": " + name));
                }
            }
        }
        assertEquals(List.of(), cut);
    }
}
