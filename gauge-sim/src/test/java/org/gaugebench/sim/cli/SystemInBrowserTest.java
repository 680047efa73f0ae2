package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.gaugebench.sim.browser.Browser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** "My system" as a builder of a small system meets it, in a browser. */
class SystemInBrowserTest extends ServedPage {
    static final String READY =
            "return window.gaugebenchSystem !== undefined && gaugebenchSystem.ready";
    static final String SENTENCE = "return document.getElementById('answer-sentence').textContent";
    static final String STATUS = "return document.getElementById('status').textContent";

    @TempDir Path folder;

    private void look(Browser browser) {
        browser.open(page.resolve("system"));
        browser.until(READY);
        browser.click("#clear");
    }

    static void type(Browser browser, String selector, String text) {
        browser.find(selector).clear();
        browser.find(selector).sendKeys(text);
    }

    static void choose(Browser browser, String selector, String value) {
        browser.find(selector + " option[value=\"" + value + "\"]").click();
    }

    static void ask(Browser browser, String question) {
        double before = browser.number("return gaugebenchSystem.answers");
        browser.click("[data-question=" + question + "]");
        browser.until("return gaugebenchSystem.answers > " + before);
    }

    /** A logger's battery of which the month can be worked out by hand: 1.0 % a day. */
    static void fill(Browser browser) {
        choose(browser, "#f-voltage", "12 V");
        choose(browser, "#f-chemistry", "lifepo4");
        type(browser, "#f-capacity", "40");
        browser.click("#add-load");
        type(browser, "#loads li:nth-child(1) [data-part=name] input", "logger");
        type(browser, "#loads li:nth-child(1) [data-part=amount] input", "0.2");
        choose(browser, "#loads li:nth-child(1) [data-part=amount] select", "amps");
        type(browser, "#loads li:nth-child(1) [data-part=hours] input", "24");
        browser.click("#add-charger");
        choose(browser, "#chargers li:nth-child(1) [data-part=source] select", "sun");
        type(browser, "#chargers li:nth-child(1) [data-part=amps] input", "5");
        type(browser, "#f-own-current", "12");
        type(browser, "#f-zero-error", "5 mA");
    }

    @Test
    void fromTheFirstPageToEveryAnswer(Browser browser) {
        browser.open(page);
        browser.until("return document.querySelector('a[href=\"/system\"]').textContent !== ''");
        browser.click("a[href='/system']");
        browser.until(READY);
        browser.ask("sessionStorage.clear()");
        fill(browser);
        browser.wholePicture("system-filled");
        ask(browser, "month");
        FakeTerminal terminal = new FakeTerminal();
        String[] system = {
            "--voltage",
            "12 V",
            "--chemistry",
            "lifepo4",
            "--capacity",
            "40 Ah",
            "--load",
            "logger: 0.2 A, 24 h",
            "--charger",
            "5 A",
        };
        assertEquals(
                0,
                terminal.run(
                        with(system, "ahead", "--own-current", "12 mA", "--zero-error", "5 mA")),
                terminal.err());
        sameStart(terminal.out(), browser.text(SENTENCE));
        browser.wholePicture("system-month");
        ask(browser, "size");
        terminal = new FakeTerminal();
        assertEquals(0, terminal.run(with(system, "size")), terminal.err());
        sameStart(terminal.out(), browser.text(SENTENCE));
        browser.wholePicture("system-size");
        ask(browser, "audit");
        browser.wholePicture("system-audit");
        browser.click("#more-symptom summary");
        choose(browser, "#f-seen", "dark-at-30-percent");
        ask(browser, "symptom");
        browser.wholePicture("system-symptom");
        browser.click("#more-changed summary");
        choose(browser, "#f-changed", "wire-off");
        type(browser, "#f-changed-amount", "20");
        ask(browser, "changed");
        terminal = new FakeTerminal();
        assertEquals(
                0,
                terminal.run(
                        with(
                                system,
                                "changed",
                                "--wire-off",
                                "20 min",
                                "--own-current",
                                "12 mA",
                                "--zero-error",
                                "5 mA")),
                terminal.err());
        sameStart(terminal.out(), browser.text(SENTENCE));
        browser.wholePicture("system-changed");
        browser.click("#more-sheet summary");
        type(browser, "#f-name", "Logger at the pier");
        browser.click("#sheet");
        browser.toNewWindow();
        browser.until("return document.title === 'Logger at the pier'");
        assertTrue(
                browser.text("return document.querySelector('.verdict').textContent")
                        .startsWith("Fully charge it and set it to 100 % at least every 8 days"));
        assertEquals(List.of(), browser.violations());
        browser.print();
        browser.wholePicture("system-sheet");
        browser.toFirstWindow();
        assertEquals(List.of(), browser.complaints());
        assertEquals(
                List.of(),
                browser.requests().stream()
                        .filter(address -> !address.startsWith(server.address()))
                        .toList());
    }

    private static String[] with(String[] system, String command, String... more) {
        String[] all = new String[1 + system.length + more.length];
        all[0] = command;
        System.arraycopy(system, 0, all, 1, system.length);
        System.arraycopy(more, 0, all, 1 + system.length, more.length);
        return all;
    }

    private static void sameStart(String report, String sentence) {
        assertTrue(
                report.replaceAll("\\s+", " ").startsWith(sentence),
                sentence + " is not the start of " + report);
    }

    @Test
    void whatIsWrongStandsAtItsField(Browser browser) {
        look(browser);
        fill(browser);
        type(browser, "#f-capacity", "0,5");
        type(browser, "#loads li:nth-child(1) [data-part=hours] input", "30");
        browser.click("[data-question=size]");
        browser.until(STATUS + ".startsWith('2 to mend')");
        assertEquals(
                "expected a charge such as 60 Ah, but found '0,5 Ah'; the decimal sign is a point",
                browser.text("return document.getElementById('f-capacity-wrong').textContent"));
        assertEquals(
                "f-capacity",
                browser.text("return document.activeElement.id"),
                "the keyboard is at the first wrong field");
        assertTrue(
                browser.text(
                                "return document.querySelector('#loads [data-part=hours] .wrong')"
                                        + ".textContent")
                        .startsWith("expected 0 h to 24 h a day, such as 5 h"));
        browser.wholePicture("system-wrong");
        assertEquals(List.of(), browser.violations());
    }

    @Test
    void whatIsSavedOpensAgainAndAForeignFileChangesNothing(Browser browser) throws IOException {
        look(browser);
        fill(browser);
        String filled = browser.text("return JSON.stringify(gaugebenchSystem.gather())");
        browser.downloadTo(folder);
        browser.click("#save");
        Path saved = folder.resolve("my-system.json");
        for (int i = 0; i < 200 && !Files.exists(saved); i++) {
            browser.until("return new Promise(done => setTimeout(() => done(true), 50))");
        }
        browser.click("#clear");
        browser.until("return document.querySelectorAll('#loads li').length === 0");
        browser.find("#file").sendKeys(saved.toString());
        browser.until(STATUS + " === 'my-system.json is open.'");
        assertEquals(filled, browser.text("return JSON.stringify(gaugebenchSystem.gather())"));
        Path foreign = Files.writeString(folder.resolve("foreign.json"), "{\"hut\": true}");
        browser.find("#file").sendKeys(foreign.toString());
        browser.until(STATUS + ".startsWith(\"there is no field 'hut'\")");
        Path huge = Files.writeString(folder.resolve("huge.json"), " ".repeat(70_000));
        browser.find("#file").sendKeys(huge.toString());
        browser.until(STATUS + ".startsWith('This file is too large')");
        assertEquals(filled, browser.text("return JSON.stringify(gaugebenchSystem.gather())"));
    }

    @Test
    void axeFindsNothingAndNoWidthScrollsSideways(Browser browser) {
        for (int width : List.of(390, 1024, 1600)) {
            browser.size(width, 844);
            look(browser);
            fill(browser);
            for (String question : List.of("size", "month", "audit")) {
                ask(browser, question);
                browser.assertNoSidewaysScroll(question + " at " + width);
                browser.wholePicture("system-" + question + "-" + width);
            }
            assertEquals(List.of(), browser.violations(), "light at " + width);
        }
        browser.scheme("dark");
        ask(browser, "month");
        browser.wholePicture("system-dark");
        assertEquals(List.of(), browser.violations(), "dark");
        browser.size(760, 1000);
        browser.print();
        browser.wholePicture("system-print");
    }

    @Test
    void nothingMovesByItself(Browser browser) {
        look(browser);
        // What moves because somebody has just added a row is no surprise to him.
        browser.ask(
                """
                window.moved = 0;
                new PerformanceObserver(list => list.getEntries().forEach(entry => {
                    window.moved += entry.hadRecentInput ? 0 : entry.value;
                })).observe({type: 'layout-shift', buffered: true});
                """);
        fill(browser);
        ask(browser, "month");
        browser.until("return new Promise(done => setTimeout(() => done(true), 300))");
        assertEquals(0, browser.number("return window.moved"));
    }

    @Test
    void aDeepLinkAsksAndWithNothingKnownEveryAssumptionIsListed(Browser browser) {
        browser.open(page.resolve("system#month"));
        browser.until("return window.gaugebenchSystem && gaugebenchSystem.answers === 1");
        assertTrue(
                browser.text("return document.getElementById('answer-parts').textContent")
                        .contains("100 Ah printed on it"));
        browser.wholePicture("system-nothing-known");
        assertEquals(List.of(), browser.complaints());
    }
}
