package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.gaugebench.sim.browser.Browser;
import org.gaugebench.sim.browser.BrowserExtension;
import org.gaugebench.sim.live.ClassShelf;
import org.gaugebench.sim.live.Hut;
import org.gaugebench.sim.live.LiveServer;
import org.gaugebench.sim.live.lessons.Words;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** The live page for whoever hears it, works it by keys alone, or reads another language. */
@ExtendWith(BrowserExtension.class)
class LiveReaderInBrowserTest {
    private static final String READY =
            "return window.gaugebenchLive !== undefined && gaugebenchLive.setup !== null"
                    + " && gaugebenchLive.updates > 0";

    /** Everything that a reader program stops at, numbered, so that a test can take each. */
    private static final String NUMBER_THEM =
            "return [...document.querySelectorAll('button, a[href], input, select, table, figure,"
                + " [role=group], section, nav, [role=img]')].filter(it =>"
                + " it.checkVisibility()).map((it, i) => { it.dataset.stop = i; return it.tagName +"
                + " ' ' + (it.id || it.dataset.key || it.textContent.slice(0, 20)); })";

    @TempDir Path folder;
    private LiveServer server;

    private URI open(Browser browser, Words words, String hash) throws IOException {
        server = LiveServer.open(Hut.scenario(), 7, 0, new ClassShelf(words));
        URI page = URI.create(server.address());
        browser.open(page.resolve("/" + hash));
        browser.until(READY);
        if (!hash.isEmpty()) {
            // What stands there before is built anew when the lesson's run begins.
            browser.until(
                    "return gaugebenchLive.setup.lesson > 0 && benchLesson.lesson !== null"
                            + " && document.querySelector('#lesson-choices input') !== null");
        }
        return page;
    }

    @AfterEach
    void close() {
        server.close();
    }

    /** By the browser's own reckoning of names: the rules of axe let a slider without one pass. */
    @Test
    void everythingThatCanBeReachedHasANameOfItsOwn(Browser browser) throws IOException {
        open(browser, Words.english(), "#lesson=3");
        browser.until("return document.querySelectorAll('input[type=range]').length > 10");
        browser.until("return benchLesson.lesson !== null");
        List<String> nameless = new ArrayList<>();
        Map<String, String> sliders = new HashMap<>();
        List<?> stops = (List<?>) browser.ask(NUMBER_THEM);
        assertTrue(stops.size() > 40, stops.toString());
        for (int i = 0; i < stops.size(); i++) {
            String name = browser.find("[data-stop='" + i + "']").getAccessibleName();
            if (name.isBlank() || name.matches("[←→\\s]+")) {
                nameless.add(stops.get(i) + " is called '" + name + "'");
            }
            if (String.valueOf(stops.get(i)).startsWith("INPUT set-")) {
                sliders.put(String.valueOf(stops.get(i)), name);
            }
        }
        assertEquals(List.of(), nameless);
        assertEquals("zero error of the meter's input", sliders.get("INPUT set-sensor-offset"));
        // Which meter was told so is the name of the group around them.
        assertEquals(
                List.of(),
                browser.ask(
                        "const seen = new Set(); return"
                            + " [...document.querySelectorAll('#control-groups input,"
                            + " #control-groups button')].map(it =>"
                            + " it.closest('fieldset').querySelector('legend').textContent + ': ' +"
                            + " (it.getAttribute('aria-label') || it.closest('label,"
                            + " button').textContent)).filter(it => seen.has(it) ||"
                            + " !seen.add(it))"));
        assertEquals(
                "1 µV",
                browser.text(
                        "return document.getElementById('set-sensor-offset')"
                                + ".getAttribute('aria-valuetext')"));
    }

    /** Regions that a reader program speaks by itself keep silent while the run only goes on. */
    @Test
    void aRunningBenchDoesNotTalkAllTheTime(Browser browser) throws IOException {
        open(browser, Words.english(), "");
        browser.ask(
                "window.said = []; const own = it => it.getAttribute('aria-live') || (it.tagName"
                    + " === 'OUTPUT' || it.getAttribute('role') === 'status' ? 'polite' : 'off');"
                    + " for (const it of document.querySelectorAll('output, [role=status],"
                    + " [aria-live]')) { if (own(it) !== 'off') { new MutationObserver(() =>"
                    + " said.push(it.id || it.closest('[id]').id)).observe(it, {childList: true,"
                    + " characterData: true, subtree: true}); } }");
        browser.press(" ");
        browser.until("return gaugebenchLive.frame.running");
        browser.until("return gaugebenchLive.frame.millis > 3600000 * 2");
        browser.press("t");
        browser.until("return gaugebenchLive.frame.truth !== undefined");
        browser.ask("gaugebenchLive.act({act: 'set', 'sensor.offset': '9 uV'})");
        browser.until(
                "return document.getElementById('set-sensor-offset').value === '9'"
                        + " && gaugebenchLive.frame.millis > 3600000 * 3");
        browser.press(" ");
        browser.until("return !gaugebenchLive.frame.running");
        assertEquals(List.of(), browser.ask("return said"));
    }

    /** What is told of the chart is told of the run that is shown, from its first moment. */
    @Test
    void theChartsWordsAreNotThoseOfTheRunBefore(Browser browser) throws IOException {
        open(browser, Words.english(), "");
        browser.until(
                "return document.getElementById('chart-words').textContent.includes('hasty')");
        browser.ask("location.hash = '#lesson=3'");
        browser.until("return gaugebenchLive.setup.lesson === 3");
        browser.until("return document.getElementById('title').textContent.includes('Microvolts')");
        String words = browser.text("return document.getElementById('chart-words').textContent");
        assertTrue(words.contains("the plain counter 50 %"), words);
    }

    /** A class types its guess, a teacher presses T: whatever has the focus. */
    @Test
    void theKeysWorkFromEveryFieldThatDoesNotNeedThem(Browser browser) throws IOException {
        open(browser, Words.english(), "#lesson=3");
        browser.until("return document.querySelector('#lesson-choices input') !== null");
        List<String> deaf = new ArrayList<>();
        boolean shown = false;
        for (String field :
                List.of("guess", "set-sensor-offset", "set-isolator", "lesson-sheet", "reveal")) {
            browser.ask("document.getElementById(arguments[0]).focus()", field);
            if (!presses(browser, "t", !shown)) {
                deaf.add(field);
            } else {
                shown = !shown;
            }
        }
        browser.ask("document.querySelector('#lesson-choices input').focus()");
        if (!presses(browser, "t", !shown)) {
            deaf.add("a choice");
        }
        assertEquals(List.of(), deaf);
        browser.ask("document.getElementById('guess').focus()");
        browser.press("5", "1");
        assertEquals("51", browser.text("return document.getElementById('guess').value"));
        assertEquals("-1", pressed(browser), "figures of a guess choose no window of the chart");
        browser.ask("document.getElementById('lesson-choose').focus()");
        boolean now = Boolean.TRUE.equals(browser.ask("return gaugebenchLive.frame.revealed"));
        assertFalse(presses(browser, "t", !now), "letters in a list are the list's");
    }

    private static String pressed(Browser browser) {
        return browser.text(
                "return document.querySelector('#windows [aria-pressed=true]').dataset.level");
    }

    private static boolean presses(Browser browser, String key, boolean wanted) {
        browser.press(key);
        return Boolean.TRUE.equals(
                browser.ask(
                        "return new Promise(done => { const end = performance.now() + 1500; const"
                                + " look = () => gaugebenchLive.frame.revealed === arguments[0] ?"
                                + " done(true) : performance.now() > end ? done(false) :"
                                + " setTimeout(look, 20); look(); })",
                        wanted));
    }

    /** A lesson by keys: its choice, its steps and its answer, and the focus is never lost. */
    @Test
    void aLessonIsHeldByKeysAlone(Browser browser) throws IOException {
        open(browser, Words.english(), "#lesson=14");
        browser.until("return document.querySelector('#lesson-choices input') !== null");
        tabTo(browser, "document.activeElement.name === 'prediction'");
        browser.press(" ");
        assertEquals("a", browser.text("return benchLesson.kept"));
        browser.press(Keys.ARROW_DOWN, Keys.ARROW_DOWN);
        assertEquals("c", browser.text("return benchLesson.kept"));
        tabTo(browser, "document.activeElement.id === 'lesson-next'");
        browser.press(Keys.ENTER);
        tabTo(browser, "document.activeElement.id === 'lesson-do'");
        assertEquals("Run to 1 h 2 min", browser.text("return document.activeElement.textContent"));
        browser.press(Keys.ENTER);
        browser.until("return gaugebenchLive.frame.millis === 62 * 60000");
        browser.press(Keys.TAB, Keys.ENTER, Keys.ENTER, Keys.ENTER);
        browser.until("return document.getElementById('lesson-answer').textContent !== ''");
        assertEquals("lesson-back", browser.text("return document.activeElement.id"));
        assertTrue(
                browser.text("return document.getElementById('lesson-answer').textContent")
                        .startsWith("With the lesson's set-up unchanged it is C."));
    }

    private static void tabTo(Browser browser, String condition) {
        for (int i = 0; i < 80; i++) {
            if (Boolean.TRUE.equals(browser.ask("return " + condition))) {
                // A ring that is seen: three pixels, as the look asks for.
                assertEquals(
                        "solid 3px",
                        browser.text(
                                "const it = getComputedStyle(document.activeElement);"
                                        + " return it.outlineStyle + ' ' + it.outlineWidth"));
                return;
            }
            browser.press(Keys.TAB);
        }
        throw new AssertionError("the tabulator does not reach what " + condition);
    }

    @Test
    void theFirstScreenSaysWhatThereIsAndWhatToDo(Browser browser) throws IOException {
        open(browser, Words.english(), "");
        String about = browser.text("return document.getElementById('about').textContent");
        assertTrue(about.contains("one that believes a high voltage"), about);
        assertTrue(about.endsWith("Choose a lesson, or press Run and switch something."), about);
        assertEquals(
                List.of(
                        "How full, %",
                        "Current by the first meter, A; minus means out of the battery"),
                browser.ask(
                        "return [...document.querySelectorAll('#chart figcaption')].map(it =>"
                                + " it.querySelector('span') && it.querySelector('span').id ?"
                                + " it.querySelector('span').textContent : it.textContent)"));
        assertEquals(
                List.of("00:00:00", "00:00:30", "00:01:00"),
                browser.ask("return benchChart.labels([0, 30, 60])"));
        assertEquals(
                List.of("00:00", "00:30", "1 d"),
                browser.ask("return benchChart.labels([0, 1800, 86400])"));
        assertEquals(
                "",
                browser.text(
                        """
                        const pen = document.createElement('canvas').getContext('2d');
                        const style = getComputedStyle(document.documentElement);
                        pen.font = style.getPropertyValue('--text-small') + ' system-ui';
                        const half = pen.measureText('365 d 12:00').width / 2;
                        return [...document.querySelectorAll('#chart .uplot')].filter(plot =>
                          plot.getBoundingClientRect().right - half
                            < plot.querySelector('.u-over').getBoundingClientRect().right)
                          .map(plot => plot.parentElement.id).join(', ');
                        """),
                "no room for half of the last label");
    }

    /** A week a second, the truth, a plug that is pulled, a shunt turned round: nothing moves. */
    @Test
    void nothingOnThePageMovesWhileItRuns(Browser browser) throws IOException {
        open(browser, Words.english(), "");
        for (String size : List.of("", "large")) {
            browser.ask("document.documentElement.dataset.size = arguments[0]", size);
            browser.ask("gaugebenchLive.act({act: 'reset'})");
            browser.until("return gaugebenchLive.frame.millis === 0");
            browser.ask("return new Promise(done => setTimeout(() => done(true), 700))");
            browser.ask(
                    "window.moved = []; new PerformanceObserver(list => list.getEntries().forEach("
                            + "it => moved.push(it.sources.map(each => each.node && (each.node.id"
                            + " || each.node.nodeName)).join()))).observe({type: 'layout-shift'})");
            act(browser, "speed", "604800");
            browser.ask("gaugebenchLive.act({act: 'play'})");
            browser.until("return gaugebenchLive.frame.millis > 86400000 * 4");
            act(browser, "reveal", "true");
            browser.ask("gaugebenchLive.act({act: 'set', 'gauge.power': 'off'})");
            browser.until("return gaugebenchLive.frame.gauges[0].power === false");
            browser.ask("gaugebenchLive.act({act: 'set', 'gauge.power': 'on'})");
            browser.ask("gaugebenchLive.act({act: 'set', 'wiring.shunt': 'reversed'})");
            browser.until("return gaugebenchLive.frame.millis > 86400000 * 15");
            browser.ask("gaugebenchLive.act({act: 'pause'})");
            browser.until("return !gaugebenchLive.frame.running");
            browser.ask("return new Promise(done => setTimeout(() => done(true), 500))");
            assertEquals(List.of(), browser.ask("return moved"), size);
            // The longest fault, which no run here is sure to meet, and one that is longer still.
            String longest =
                    "! full did not fit the count: check amps of the shunt, amp-hours, wires"
                            + " (and 10 more)";
            double before = fault(browser, "offsetHeight", "");
            assertTrue(fault(browser, "scrollHeight", longest) <= before, "cut off: " + size);
            assertEquals(before, fault(browser, "offsetHeight", longest.repeat(3)), size);
        }
    }

    private static double fault(Browser browser, String measure, String text) {
        return browser.number(
                "const it = document.querySelector('.fault'); it.textContent = arguments[1];"
                        + " return it[arguments[0]]",
                measure,
                text);
    }

    private static void act(Browser browser, String act, String value) {
        browser.ask("gaugebenchLive.act({act: arguments[0], value: arguments[1]})", act, value);
    }

    @Test
    void aTranslationReachesTheWholePage(Browser browser) throws Exception {
        Path file = folder.resolve("deutsch.words");
        Files.writeString(
                file,
                """
                language = de
                number.decimal-sign = ,
                page.run-row = Ablauf
                page.play = Los
                page.main-meter = unser Messgerät
                page.event-declared = weiß jetzt, wie voll die Batterie ist
                page.from-to = {0} bis {1}
                page.chart-percent = Wie voll, %
                page.a-second = {0} je Sekunde
                """);
        open(browser, Words.load(file), "");
        assertEquals("de", browser.text("return document.documentElement.lang"));
        assertEquals("Los", browser.text("return document.getElementById('play').textContent"));
        assertEquals("Ablauf", browser.find("#run").getAccessibleName());
        assertEquals("Wie voll, %", browser.find("#chart").getAccessibleName());
        browser.until("return document.querySelector('#event-rows li') !== null");
        String page = browser.text("return document.body.innerText").replaceAll("\\s|\u202f", " ");
        for (String part :
                List.of(
                        "80,0 %",
                        "48,00 Ah",
                        "unser Messgerät: weiß jetzt, wie voll die Batterie ist",
                        "41,06 bis 54,94",
                        "1 h je Sekunde",
                        "What happened")) {
            assertTrue(page.contains(part), part + " is not in: " + page);
        }
    }
}
