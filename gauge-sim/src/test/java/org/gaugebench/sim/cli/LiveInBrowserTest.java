package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.sim.browser.Browser;
import org.gaugebench.sim.browser.Wire;
import org.gaugebench.sim.live.lessons.Lesson;
import org.gaugebench.sim.live.lessons.Lessons;
import org.gaugebench.sim.live.lessons.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** The live page as a class meets it, in a browser. */
class LiveInBrowserTest extends ServedPage {
    private static final String READY =
            "return window.gaugebenchLive !== undefined && gaugebenchLive.setup !== null"
                    + " && gaugebenchLive.updates > 0";
    private static final String MILLIS = "return gaugebenchLive.frame.millis";

    private static final String STATUS = "return document.getElementById('status').textContent";

    @TempDir Path folder;

    @Test
    void opensWithoutAComplaintAndAsksOnlyThisServer(Browser browser) {
        look(browser);
        assertEquals(List.of(), browser.complaints());
        assertEquals(
                List.of(),
                browser.requests().stream()
                        .filter(address -> !address.startsWith(server.address()))
                        .toList());
        browser.wholePicture("live");
    }

    @Test
    void whatWasDoneWithMouseAndSliderIsSavedAndRunsAgain(Browser browser) throws IOException {
        look(browser);
        browser.click("#set-heater");
        browser.until("return gaugebenchLive.frame.set.heater === 1");
        browser.click("#play");
        browser.until(MILLIS + " > 60000");
        browser.click("#play");
        browser.until("return document.body.dataset.state === 'paused'");
        String before = browser.text("return gaugebenchLive.frame.set['sensor.offset']");
        browser.drag("#set-sensor-offset", 0.5, 0.8);
        browser.until(
                "return String(gaugebenchLive.frame.set['sensor.offset']) !== '" + before + "'");
        browser.click("#next-event");
        browser.until(
                "return gaugebenchLive.frame.millis > 120000 && !gaugebenchLive.frame.running");
        if (!browser.text("return gaugebenchLive.frame.revealed").equals("true")) {
            browser.click("#reveal");
        }
        browser.until("return gaugebenchLive.frame.truth !== undefined");
        double truth = browser.number("return gaugebenchLive.frame.truth.ampHours");
        double gauge = browser.number("return gaugebenchLive.frame.gauges[0].ampHours");
        browser.downloadTo(folder);
        browser.click("#save");
        Path saved = folder.resolve("what-happened.yaml");
        for (int i = 0; i < 200 && !Files.exists(saved); i++) {
            browser.until("return new Promise(done => setTimeout(() => done(true), 50))");
        }
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(0, terminal.run("run", saved.toString()), terminal.err());
        String report = terminal.out();
        Matcher left =
                Pattern.compile("Charge left at the end: true (\\S+) Ah, gauge (\\S+) Ah")
                        .matcher(report);
        assertTrue(left.find(), report);
        // The report shows hundredths of an amp-hour, the page sends ten-thousandths.
        assertEquals(truth, Double.parseDouble(left.group(1)), 0.00506, report);
        assertEquals(gauge, Double.parseDouble(left.group(2)), 0.00506, report);
    }

    @Test
    void aSecondWindowSeesAndMovesTheSameRun(Browser browser) {
        look(browser);
        browser.click("#next-event");
        browser.until("return gaugebenchLive.frame.millis > 0 && !gaugebenchLive.frame.running");
        String first = browser.text(MILLIS);
        browser.openSecondWindow(page);
        browser.until(READY);
        assertEquals(first, browser.text(MILLIS));
        browser.click("#step");
        browser.until(MILLIS + " > " + first);
        String second = browser.text(MILLIS);
        browser.toFirstWindow();
        browser.until(MILLIS + " === " + second);
    }

    @Test
    void aLostConnectionIsToldAndComesBackByItself(Browser browser) throws IOException {
        try (Wire wire = new Wire(page.getPort())) {
            browser.open(URI.create("http://127.0.0.1:" + wire.port() + "/"));
            browser.until(READY);
            browser.click("#play");
            browser.until(MILLIS + " > 1000");
            wire.cut();
            browser.until("return !gaugebenchLive.connected");
            browser.until(STATUS + ".includes('lost')");
            double lost = browser.number(MILLIS);
            wire.mend();
            browser.until("return gaugebenchLive.connected");
            browser.until(MILLIS + " > " + lost);
            browser.until(STATUS + " === ''");
        }
    }

    @Test
    void axeFindsNothingInLightAndDarkAndInALesson(Browser browser) {
        look(browser);
        browser.click("#next-event");
        browser.until("return gaugebenchLive.frame.millis > 0 && !gaugebenchLive.frame.running");
        assertEquals(List.of(), browser.violations(), "light");
        browser.scheme("dark");
        assertEquals(List.of(), browser.violations(), "dark");
        browser.wholePicture("live-dark");
        lesson(browser);
        assertEquals(List.of(), browser.violations(), "dark, in a lesson");
        browser.click("#large");
        assertEquals(List.of(), browser.violations(), "dark, in a lesson, large");
    }

    @Test
    void noWidthMakesThePageScrollSideways(Browser browser) {
        for (int width : List.of(390, 1024, 1600)) {
            browser.size(width, 844);
            look(browser);
            browser.assertNoSidewaysScroll("at " + width);
            browser.wholePicture("live-" + width);
            lesson(browser);
            browser.assertNoSidewaysScroll("in a lesson at " + width);
            browser.click("#large");
            browser.assertNoSidewaysScroll("in a lesson, large, at " + width);
        }
    }

    @Test
    void keysAloneRunPauseStepAndSet(Browser browser) {
        look(browser);
        browser.press(" ");
        browser.until("return gaugebenchLive.frame.running && gaugebenchLive.frame.millis > 0");
        browser.press(" ");
        browser.until("return !gaugebenchLive.frame.running");
        String paused = browser.text(MILLIS);
        browser.press("s");
        browser.until(MILLIS + " === " + (Long.parseLong(paused) + 1000));
        browser.press("t");
        browser.until("return gaugebenchLive.frame.revealed");
        for (int i = 0; i < 60 && !isOn(browser, "set-sensor-offset"); i++) {
            browser.press(Keys.TAB);
        }
        assertTrue(isOn(browser, "set-sensor-offset"), "the tabulator does not reach the slider");
        String before = browser.text("return gaugebenchLive.frame.set['sensor.offset']");
        browser.press(Keys.ARROW_RIGHT);
        browser.until(
                "return String(gaugebenchLive.frame.set['sensor.offset']) !== '" + before + "'");
    }

    @Test
    void aLessonIsHeldFromTheFirstStepToTheAnswerOfTheRun(Browser browser) {
        lesson(browser);
        assertEquals(
                "Lesson 3: Microvolts become amp-hours",
                browser.text("return document.getElementById('lesson-title').textContent"));
        assertFalse(isShown(browser, "lesson-do"), "a prediction is no button");
        browser.until(
                "return document.getElementById('gauges').textContent"
                        + ".includes('the gauge without its zero')");
        browser.click("#lesson-choices li:nth-child(1) input");
        for (int i = 1; i < Lessons.of(3).steps().size(); i++) {
            browser.click("#lesson-next");
            Step step = Lessons.of(3).steps().get(i);
            browser.click("#lesson-do");
            if (step.action() == Step.Action.RUN_TO) {
                browser.until("return gaugebenchLive.frame.millis === " + step.atMillis());
            } else if (step.action() == Step.Action.REVEAL) {
                browser.until("return gaugebenchLive.frame.truth !== undefined");
            }
        }
        browser.click("#lesson-next");
        browser.until("return benchLesson.answer !== null");
        String answer = browser.text("return document.getElementById('lesson-answer').textContent");
        assertTrue(answer.startsWith("With the lesson's set-up unchanged it is D, not A."), answer);
        assertTrue(answer.contains("ends 7.2"), answer);
        assertEquals(true, browser.ask("return document.getElementById('lesson-next').disabled"));
        browser.click("#lesson-close");
        browser.until("return document.getElementById('lesson-panel').hidden");
        assertEquals(List.of(), browser.complaints());
    }

    @Test
    void aSheetToPrintOpensWithoutAComplaint(Browser browser) {
        browser.open(URI.create(page + "sheets/03-microvolts-become-amp-hours-pupil.html"));
        assertEquals(
                "Microvolts become amp-hours",
                browser.text("return document.querySelector('h1').textContent"));
        assertEquals(List.of(), browser.complaints());
        assertEquals(List.of(), browser.violations());
    }

    /** Each step of each lesson, the longest texts among them. */
    @Test
    void onAProjectorAWholeStepStandsOnOneScreenInLargeType(Browser browser) {
        browser.size(1280, 720);
        look(browser);
        browser.click("#large");
        List<String> tooLow = new ArrayList<>();
        for (Lesson each : Lessons.all()) {
            browser.ask("location.hash = '#lesson=" + each.number() + "'");
            browser.until(
                    "return benchLesson.lesson !== null && benchLesson.lesson.number === "
                            + each.number()
                            + " && benchLesson.step === 0");
            for (int i = 0; i <= each.steps().size(); i++) {
                browser.ask("scrollTo(0, 0)");
                if (i == each.steps().size()) {
                    browser.until("return benchLesson.answer !== null");
                }
                String state = "lesson " + each.number() + ", step " + (i + 1);
                double bottom =
                        browser.number(
                                "return document.getElementById('lesson-panel')"
                                        + ".getBoundingClientRect().bottom");
                if (bottom > 720) {
                    tooLow.add(state + " ends at " + bottom);
                }
                if (i < each.steps().size()) {
                    browser.click("#lesson-next");
                }
            }
        }
        assertEquals(List.of(), tooLow);
        browser.picture("live-projector");
        assertAll(() -> isLarge(browser, "lesson-step"), () -> isLarge(browser, "lesson-answer"));
    }

    private static void isLarge(Browser browser, String id) {
        double size =
                browser.number(
                        "return parseFloat(getComputedStyle("
                                + "document.getElementById(arguments[0])).fontSize)",
                        id);
        assertTrue(size >= 28, () -> id + " is written in " + size + " px");
    }

    private static boolean isOn(Browser browser, String id) {
        return id.equals(browser.text("return document.activeElement.id"));
    }

    private static boolean isShown(Browser browser, String id) {
        return Boolean.TRUE.equals(
                browser.ask("return !document.getElementById(arguments[0]).hidden", id));
    }

    private void look(Browser browser) {
        browser.open(page);
        browser.until(READY);
    }

    private void lesson(Browser browser) {
        browser.open(URI.create("about:blank"));
        browser.open(page.resolve("#lesson=3"));
        browser.until(READY);
        browser.until("return !document.getElementById('lesson-panel').hidden");
    }
}
