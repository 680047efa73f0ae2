package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.browser.Browser;
import org.gaugebench.sim.browser.BrowserExtension;
import org.gaugebench.sim.report.Samples;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/**
 * The page that {@code run --report} writes, as a reader meets it: opened from disk in a browser.
 */
@ExtendWith(BrowserExtension.class)
class ReportInBrowserTest {
    private static final double WEEK_MILLIS = 7 * 86_400_000.0;

    /**
     * One pixel of a strip at this width is 0.1 % of the run; a drag may be two off at each end.
     */
    private static final double DRAG_MILLIS = 0.005 * WEEK_MILLIS;

    private static final String READY = "return document.documentElement.dataset.ready === 'yes'";
    private static final String STRIPS =
            "[...document.querySelectorAll('[data-chart]')].filter(chart => !chart.hidden)";

    /** Unknown to a reader, and the way to what is painted on a canvas. */
    private static final String NUMBERS =
            "return [[4], [5, 4], [6, 4, 5], [1, 4, 5, 6, 9]].map(GaugebenchCharts.numbers)"
                    + ".join(' | ')";

    private static final String SEEN =
            "return gaugebenchReport.fromMillis + ' ' + gaugebenchReport.toMillis";

    @TempDir static Path folder;
    private static Path week;
    private static Path several;
    private static Path failing;

    @BeforeAll
    static void writeReports() throws IOException {
        Path shelf = FakeTerminal.scenarios();
        week = report(0, shelf.resolve("first-steps/a-week-in-the-hut.yaml"), "--attribution");
        several = report(0, shelf.resolve("teaching/01-counting-is-adding.yaml"));
        Path wrong = folder.resolve("wrong.yaml");
        Files.writeString(
                wrong, Samples.expecting("at: 1 d, reading: state-of-charge, at-least: 90 %"));
        failing = report(1, wrong);
    }

    @Test
    void opensFromDiskWithoutAComplaintAndAsksNobodyForAnything(Browser browser) {
        for (Path page : List.of(week, several, failing)) {
            open(browser, page);
            browser.press(Keys.TAB);
            assertEquals(List.of(), browser.complaints(), page::toString);
            assertEquals(List.of(), browser.requests(), page::toString);
            browser.wholePicture(page.getFileName().toString().replace(".html", ""));
        }
    }

    @Test
    void everyStripIsDrawnInItsOwnColour(Browser browser) {
        open(browser, week);
        assertEquals(
                "charge current voltage temperature rule hours attribution",
                browser.text("return " + STRIPS + ".map(c => c.dataset.chart).join(' ')"));
        String notDrawn =
                "const pens = {rule: 'rule-waiting', attribution: 'cause-losses'};"
                        + "const style = getComputedStyle(document.documentElement);"
                        + "return [...STRIPS].filter(chart => {"
                        + "  const pen = pens[chart.dataset.chart] || 'gauge-1';"
                        + "  const hex = style.getPropertyValue('--' + pen).trim().slice(1);"
                        + "  const [r, g, b] = hex.match(/../g).map(it => parseInt(it, 16));"
                        + "  const canvas = chart.querySelector('canvas');"
                        + "  const all = canvas.getContext('2d')"
                        + "    .getImageData(0, 0, canvas.width, canvas.height).data;"
                        + "  for (let i = 0; i < all.length; i += 4)"
                        + "    if (all[i] === r && all[i + 1] === g && all[i + 2] === b"
                        + "        && all[i + 3] === 255) return false;"
                        + "  return true;"
                        + "}).map(c => c.dataset.chart).join(' ')";
        assertEquals("", browser.text(notDrawn.replace("STRIPS", STRIPS)));
    }

    @Test
    void eventsCloseTogetherShareOnePlaceForTheirNumbers(Browser browser) {
        open(browser, week);
        assertEquals("4 | 4, 5 | 4\u20136 | 1, 4\u20136, 9", browser.text(NUMBERS));
        assertEquals(
                "1+2 3",
                browser.text(
                        "return GaugebenchCharts.together([{number: 3, from: 40, to: 40},"
                                + " {number: 1, from: 0, to: 0}, {number: 2, from: 17, to: 17}],"
                                + " 18).map(it => it.numbers.join('+')).join(' ')"));
    }

    @Test
    void theWayPastTheHeadCoversNothingOfIt(Browser browser) {
        open(browser, week);
        browser.press(Keys.TAB);
        assertEquals("skip", browser.text("return document.activeElement.className"));
        assertEquals(
                "true",
                browser.text(
                        "const box = name => document.querySelector(name).getBoundingClientRect();"
                                + "return String(box('.skip').bottom <= box('.verdict').top"
                                + " && box('.skip').left >= 0)"));
    }

    @Test
    void aDragShowsThatTimeInEveryStrip(Browser browser) {
        open(browser, week);
        List<?> before = canvases(browser);
        browser.drag("[data-chart=charge] .u-over", 0.25, 0.5);
        browser.until("return gaugebenchReport.toMillis < " + 0.6 * WEEK_MILLIS);
        assertAll(
                () ->
                        near(
                                0.25 * WEEK_MILLIS,
                                browser.number("return gaugebenchReport.fromMillis")),
                () -> near(0.5 * WEEK_MILLIS, browser.number("return gaugebenchReport.toMillis")));
        frame(browser);
        List<?> after = canvases(browser);
        for (int strip = 0; strip < before.size(); strip++) {
            assertNotEquals(before.get(strip), after.get(strip), "strip " + strip);
        }
        // A second drag goes on from what is seen.
        browser.drag("[data-chart=current] .u-over", 0.5, 0.9);
        browser.until("return gaugebenchReport.fromMillis > " + 0.3 * WEEK_MILLIS);
        near(0.375 * WEEK_MILLIS, browser.number("return gaugebenchReport.fromMillis"));
        browser.click("#whole");
        assertEquals("0 604800000", browser.text(SEEN));
    }

    @Test
    void keysAloneZoomAndMove(Browser browser) {
        open(browser, week);
        for (int i = 0; i < 40 && !isOnCharge(browser); i++) {
            browser.press(Keys.TAB);
        }
        assertTrue(isOnCharge(browser), "the tabulator does not reach the first strip");
        browser.press("+");
        assertEquals("151200000 453600000", browser.text(SEEN));
        browser.press(Keys.PAGE_DOWN);
        assertEquals("302400000 604800000", browser.text(SEEN));
        browser.press("-");
        assertEquals("0 604800000", browser.text(SEEN));
        browser.press("n", "n");
        // Two events stand at the first moment; next is 'count held at its upper limit'.
        assertEquals(
                moment(2, 21, 21), browser.number("return gaugebenchReport.cursorMillis"), 0.0);
        browser.press("p");
        assertEquals(0, browser.number("return gaugebenchReport.cursorMillis"), 0.0);
        browser.press(Keys.ARROW_RIGHT);
        assertEquals(
                0.005 * WEEK_MILLIS, browser.number("return gaugebenchReport.cursorMillis"), 0.0);
        browser.press(Keys.ESCAPE);
        assertEquals("null", browser.text("return gaugebenchReport.cursorMillis"));
    }

    @Test
    void theCursorOfOneStripIsThatOfAll(Browser browser) {
        open(browser, week);
        browser.hover("[data-chart=charge] .u-over", 0.4, 0.5);
        browser.until("return gaugebenchReport.cursorMillis !== null");
        near(0.4 * WEEK_MILLIS, browser.number("return gaugebenchReport.cursorMillis"));
        frame(browser);
        assertEquals(
                "true",
                browser.text(
                        "const lefts = "
                                + STRIPS
                                + ".map(chart => chart.querySelector('.u-cursor-x')"
                                + ".getBoundingClientRect().left);"
                                + "return Math.max(...lefts) - Math.min(...lefts) <= 1.5"));
        assertEquals(
                "0",
                browser.text(
                        "return [...document.querySelectorAll('.key li b')]"
                                + ".filter(value => !value.textContent).length"));
    }

    @Test
    void aMomentInATableIsAWayToTheStrips(Browser browser) {
        open(browser, failing);
        browser.click("#readings .moment");
        assertEquals(
                browser.number(
                        "return Number(document.querySelector('#readings .moment').dataset.at)"),
                browser.number("return gaugebenchReport.cursorMillis"),
                0.0);
        assertTrue(isOnCharge(browser), "the focus is not on the first strip");
    }

    @Test
    void axeFindsNothingInLightAndDarkAndLarge(Browser browser) {
        open(browser, week);
        browser.ask("document.querySelectorAll('details').forEach(d => d.open = true)");
        assertEquals(List.of(), browser.violations(), "light");
        browser.scheme("dark");
        assertEquals(List.of(), browser.violations(), "dark");
        browser.click("#large");
        assertEquals(List.of(), browser.violations(), "dark and large");
        browser.picture("report-dark-large");
        for (Path page : List.of(several, failing)) {
            open(browser, page);
            assertEquals(List.of(), browser.violations(), page + " in dark");
        }
    }

    /**
     * Aimed at is two seconds. The bound is ten, since a shared machine may be busy with other
     * things for that long; it fails where the work grows with the length of the run.
     */
    @Test
    void theReportOfAYearOpensAtOnce(Browser browser) throws IOException {
        Path scenario = folder.resolve("year.yaml");
        Files.writeString(
                scenario,
                Samples.hut()
                        .replace("duration: 1 d", "duration: 365 d\ntick: 1 min")
                        .replace(
                                "  - {at: 12 h, set: {lamp: off}}",
                                "  - {from: 12 h, to: 24 h, every: 1 d, set: {lamp: off}}"));
        Path page = report(0, scenario);
        open(browser, page);
        assertEquals(List.of(), browser.complaints());
        assertEquals(365 * 86_400_000.0, browser.number("return gaugebenchReport.toMillis"), 0.0);
        double millis = browser.number("return performance.getEntriesByName('drawn')[0].startTime");
        assertTrue(millis < 10_000, () -> "drawn after " + millis + " ms");
    }

    @Test
    void noWidthMakesThePageScrollSideways(Browser browser) {
        for (Path page : List.of(week, several, failing)) {
            for (int width : List.of(390, 1024, 1600)) {
                browser.size(width, 844);
                open(browser, page);
                browser.assertNoSidewaysScroll(page.getFileName() + " at " + width);
                browser.picture(page.getFileName().toString().replace(".html", "-") + width);
                browser.click("#large");
                browser.assertNoSidewaysScroll(page.getFileName() + " at " + width + ", large");
            }
        }
    }

    @Test
    void theSchemeOfTheSystemIsDrawnAndTheSwitchOverrulesIt(Browser browser) {
        open(browser, week);
        List<?> light = canvases(browser);
        browser.scheme("dark");
        frame(browser);
        List<?> dark = canvases(browser);
        assertNotEquals(light, dark);
        browser.ask(
                "const theme = document.getElementById('theme'); theme.value = 'light';"
                        + "theme.dispatchEvent(new Event('change'))");
        frame(browser);
        assertEquals(light, canvases(browser));
    }

    private static boolean isOnCharge(Browser browser) {
        return Boolean.TRUE.equals(
                browser.ask("return document.activeElement.dataset.chart === 'charge'"));
    }

    private static double moment(int days, int hours, int minutes) {
        return ((days * 24 + hours) * 60 + minutes) * 60_000.0;
    }

    private static void near(double expectedMillis, double millis) {
        assertEquals(expectedMillis, millis, DRAG_MILLIS);
    }

    /** A sum over what each strip shows. */
    private static List<?> canvases(Browser browser) {
        return (List<?>)
                browser.ask(
                        "return "
                                + STRIPS
                                + ".map(c => [...c.querySelector('canvas').toDataURL()]"
                                + ".reduce((sum, it) => (31 * sum + it.charCodeAt(0)) | 0, 7))");
    }

    /** Until the browser has painted what was asked for. */
    private static void frame(Browser browser) {
        browser.ask(
                "window.painted = false; requestAnimationFrame(() =>"
                        + " requestAnimationFrame(() => window.painted = true))");
        browser.until("return window.painted");
    }

    private static void open(Browser browser, Path page) {
        browser.open(page);
        browser.until(READY);
    }

    private static Path report(int exitCode, Path scenario, String... options) {
        String name = scenario.getFileName().toString().replace(".yaml", "");
        Path page = folder.resolve("report-" + name + ".html");
        List<String> words = new ArrayList<>(List.of("run", "--report", page.toString()));
        words.addAll(List.of(options));
        words.add(scenario.toString());
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(exitCode, terminal.run(words.toArray(String[]::new)), terminal.err());
        return page;
    }
}
