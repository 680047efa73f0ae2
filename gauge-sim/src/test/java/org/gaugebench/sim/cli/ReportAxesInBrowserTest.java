package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
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

/** What stands beside and below the strips of a report: every word of it is to be read whole. */
@ExtendWith(BrowserExtension.class)
class ReportAxesInBrowserTest {
    /**
     * Draws all strips again and keeps where each word of a canvas lies. A canvas cuts what leaves
     * it without a trace, so nothing but its own orders tells.
     */
    private static final String SPY =
            """
            window.words = [];
            const plain = CanvasRenderingContext2D.prototype.fillText;
            CanvasRenderingContext2D.prototype.fillText = function (text, x, y) {
              const chart = this.canvas.closest('[data-chart]');
              const width = this.measureText(text).width;
              const at = this.getTransform().e + x;
              const part = {right: 1, end: 1, center: 0.5}[this.textAlign] || 0;
              words.push({chart: chart.dataset.chart, text, align: this.textAlign, y,
                left: at - part * width, right: at + (1 - part) * width,
                most: this.canvas.width,
                from: chart.querySelector('.u-over').offsetLeft * uPlot.pxRatio});
              plain.call(this, text, x, y);
            };
            document.getElementById('theme').dispatchEvent(new Event('change'));
            window.painted = false;
            requestAnimationFrame(() => requestAnimationFrame(() => window.painted = true));
            """;

    private static final String CUT =
            """
            return words.filter(it => it.align === arguments[0])
              .filter(it => it.left < 0 || it.right > it.most)
              .map(it => it.chart + ': ' + it.text).join(', ');
            """;

    /** Labels of one line that touch the one before them. */
    private static final String CROWDED =
            """
            const rows = Map.groupBy(
              words.filter(it => it.align === 'center' && it.text.includes(':')),
              it => it.chart + ' at ' + it.y);
            return [...rows].flatMap(([row, all]) => all.sort((a, b) => a.left - b.left)
              .filter((it, i) => i > 0 && it.left < all[i - 1].right + 4)
              .map(it => row + ': ' + it.text)).join(', ');
            """;

    /** Strips whose line of the moment does not stand where the moment is. */
    private static final String ASTRAY =
            """
            const {cursorMillis, fromMillis, toMillis} = gaugebenchReport;
            const part = (cursorMillis - fromMillis) / (toMillis - fromMillis);
            return [...document.querySelectorAll('.u-over')].filter(over => {
              const box = over.getBoundingClientRect();
              const line = over.querySelector('.u-cursor-x').getBoundingClientRect().left;
              return Math.abs(line - box.left - part * box.width) > 3;
            }).map(over => over.closest('[data-chart]').dataset.chart).join(', ');
            """;

    private static final String EDGES =
            """
            return String(new Set([...document.querySelectorAll('.u-over')]
              .map(it => it.getBoundingClientRect().left + ' '
                + it.getBoundingClientRect().right)).size);
            """;

    @TempDir static Path folder;
    private static Path twoSeconds;
    private static Path twoMinutes;
    private static Path beside;
    private static Path weeks;

    @BeforeAll
    static void writeReports() throws IOException {
        twoSeconds =
                report(
                        "two-seconds.yaml",
                        Samples.hut()
                                .replace("duration: 1 d", "duration: 2 s\ntick: 1 s")
                                .replace("{at: 12 h", "{at: 1 s"),
                        "--attribution");
        twoMinutes =
                report(
                        "two-minutes.yaml",
                        Samples.hut()
                                .replace("duration: 1 d", "duration: 2 min\ntick: 100 ms")
                                .replace("{at: 12 h", "{at: 1 min"));
        beside =
                report(
                        "beside.yaml",
                        Samples.hut() + "beside:\n  - {name: second-of-the-hut, start: 60 %}\n");
        weeks =
                report(
                        "weeks.yaml",
                        Samples.hut()
                                .replace("duration: 1 d", "duration: 45 d\ntick: 1 min")
                                .replace("current: 1 A", "current: 30 mA")
                                .replace("{at: 12 h", "{at: 44 d"));
    }

    @Test
    void theLongestFigureBesideAStripIsReadWithItsSign(Browser browser) {
        for (int width : List.of(390, 1600)) {
            browser.size(width, 844);
            spy(browser, twoSeconds);
            assertEquals("", browser.text(CUT, "right"), "cut at " + width);
            assertEquals("1", browser.text(EDGES), "edges at " + width);
            browser.wholePicture("two-seconds" + width);
            // Built anew, the widest strip comes last: those before it are drawn again.
            browser.click("#large");
            browser.click("#large");
            spy(browser);
            assertEquals("1", browser.text(EDGES), "edges anew at " + width);
        }
    }

    @Test
    void labelsOfShortTimesAreWholeAndApart(Browser browser) {
        for (Path page : List.of(twoSeconds, twoMinutes)) {
            for (int width : List.of(390, 1024, 1600)) {
                browser.size(width, 844);
                spy(browser, page);
                String where = page.getFileName() + " at " + width;
                assertEquals("", browser.text(CUT, "center"), "cut in " + where);
                assertEquals("", browser.text(CROWDED), "crowded in " + where);
                assertEquals("1", browser.text(EDGES), "edges in " + where);
            }
        }
    }

    @Test
    void gaugesAreNamedWholeInTheStripOfTheRule(Browser browser) {
        spy(browser, beside);
        // Left of where the strip starts is cut off, too.
        assertEquals(
                "gauge, second-of-the-hut",
                browser.text(
                        "return words.filter(it => it.chart === 'rule' && it.align !== 'center'"
                                + " && it.left >= it.from && it.text.length > 4)"
                                + ".map(it => it.text).join(', ')"));
    }

    @Test
    void closerBringsTheMomentToTheMiddle(Browser browser) {
        spy(browser, twoMinutes);
        browser.hover("[data-chart=charge] .u-over", 0.3, 0.5);
        browser.until("return gaugebenchReport.cursorMillis !== null");
        double chosen = browser.number("return gaugebenchReport.cursorMillis");
        browser.ask("document.getElementById('closer').click()");
        browser.until("return gaugebenchReport.toMillis < 100000");
        // The view is a whole number of ticks of 100 ms.
        assertEquals(chosen - 30_000, browser.number("return gaugebenchReport.fromMillis"), 100.0);
        assertEquals(chosen + 30_000, browser.number("return gaugebenchReport.toMillis"), 100.0);
        assertEquals(chosen, browser.number("return gaugebenchReport.cursorMillis"), 0.0);
        // The line of the moment is one pixel wide, and a tick is two.
        assertEquals("", browser.text(ASTRAY), "lines of the moment");
        browser.ask("document.getElementById('later').click()");
        browser.ask("document.getElementById('earlier').click()");
        assertEquals("", browser.text(ASTRAY), "lines of the moment after there and back");
    }

    /** The gauge shows hours up to a hundred or so, the truth starts with a thousand. */
    @Test
    void trueHoursFarAboveThoseOfTheGaugeAreCutWithAWord(Browser browser) {
        spy(browser, weeks);
        browser.wholePicture("true-hours-cut");
        double most =
                browser.number(
                        "return Math.max(...words.filter(it => it.chart === 'hours'"
                                + " && it.align === 'right').map(it => Number(it.text)))");
        assertTrue(most >= 50 && most <= 500, () -> "the scale goes to " + most + " h");
        // A thousand hours of 30 mA from 30 Ah, less what the battery loses by itself.
        double hours =
                browser.number(
                        "return JSON.parse(document.getElementById('run').textContent)"
                                + ".starved[0] / 3.6e6");
        assertTrue(hours > 900 && hours < 1000, () -> "the loads are met for " + hours + " h");
        assertEquals(
                "\u2191 true goes on to " + Math.round(hours) + "\u202fh",
                browser.text(
                        "return words.filter(it => it.chart === 'hours'"
                                + " && it.text.includes('true')).map(it => it.text).join('; ')"));
        browser.ask("document.querySelector('[data-chart=hours]').focus()");
        browser.press("n");
        // The key tells tenths: half of one is lost by rounding, and a little in the last bit.
        assertEquals(
                hours,
                browser.number(
                        "return parseFloat(document.querySelector('#key-hours li b').textContent)"),
                0.0501);
    }

    private static void spy(Browser browser, Path page) {
        browser.open(page);
        browser.until("return document.documentElement.dataset.ready === 'yes'");
        spy(browser);
    }

    private static void spy(Browser browser) {
        browser.ask(SPY);
        browser.until("return window.painted");
    }

    private static Path report(String name, String text, String... options) throws IOException {
        Path scenario = folder.resolve(name);
        Files.writeString(scenario, text);
        Path page = folder.resolve(name.replace(".yaml", ".html"));
        List<String> words = new ArrayList<>(List.of("run", "--report", page.toString()));
        words.addAll(List.of(options));
        words.add(scenario.toString());
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(0, terminal.run(words.toArray(String[]::new)), terminal.err());
        return page;
    }
}
