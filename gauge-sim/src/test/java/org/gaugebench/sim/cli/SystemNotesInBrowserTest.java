package org.gaugebench.sim.cli;

import static org.gaugebench.sim.cli.SystemInBrowserTest.READY;
import static org.gaugebench.sim.cli.SystemInBrowserTest.SENTENCE;
import static org.gaugebench.sim.cli.SystemInBrowserTest.STATUS;
import static org.gaugebench.sim.cli.SystemInBrowserTest.ask;
import static org.gaugebench.sim.cli.SystemInBrowserTest.choose;
import static org.gaugebench.sim.cli.SystemInBrowserTest.fill;
import static org.gaugebench.sim.cli.SystemInBrowserTest.type;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.gaugebench.sim.browser.Browser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;

/** Notes on "my system", from an empty form to their answer, in a browser. */
class SystemNotesInBrowserTest extends ServedPage {
    private static final String FORM = "return JSON.stringify(gaugebenchSystem.gather())";

    @TempDir Path folder;

    private void look(Browser browser) {
        browser.open(page.resolve("system"));
        browser.until(READY);
        browser.click("#clear");
        browser.ask("document.getElementById('more-symptom').open = true");
    }

    private static String part(int row, String part) {
        return "#notes > li:nth-child("
                + row
                + ") [data-part="
                + part
                + "] "
                + (part.equals("word") ? "select" : "input");
    }

    private static void note(Browser browser, int row, String time, String shown, String word) {
        browser.click("#add-note");
        setTime(browser, row, time);
        type(browser, part(row, "shown"), shown);
        if (!word.isEmpty()) {
            choose(browser, part(row, "word"), word);
        }
    }

    /** By a script: which keys a date takes differs from language to language. */
    private static void setTime(Browser browser, int row, String time) {
        browser.ask(
                "arguments[0].value = arguments[1];"
                        + "arguments[0].dispatchEvent(new Event('input', {bubbles: true}))",
                browser.find(part(row, "time")),
                time);
    }

    /** By hand: 3 points of 40 Ah a day with nothing on are 1.2 Ah in 24 h, 50 mA. */
    private static void drift(Browser browser) {
        choose(browser, "#f-sets-full", "by-hand");
        note(browser, 1, "2026-05-03T07:00", "97", "charger-finished");
        for (int day = 1; day <= 4; day++) {
            String time = "2026-05-%02dT07:00".formatted(3 + day);
            note(browser, 1 + day, time, String.valueOf(97 - 3 * day), "nothing");
        }
    }

    private static String answer(Browser browser) {
        // A unit stays with its figure by a space that does not break.
        return browser.text("return document.getElementById('answer').innerText")
                .replace('\u00a0', ' ');
    }

    @Test
    void fromAnEmptyFormOverNotesToTheirAnswerAFileAndPaper(Browser browser) throws IOException {
        look(browser);
        fill(browser);
        drift(browser);
        type(browser, "#loads li:nth-child(1) [data-part=surge] input", "3");
        browser.click("#loads li:nth-child(1) [data-part=inverter] input");
        type(browser, part(5, "ah"), "34");
        type(browser, part(5, "charged"), "0");
        browser.click("#ask-notes");
        browser.until("return gaugebenchSystem.answers === 1");
        String sentence = browser.text(SENTENCE);
        assertTrue(
                sentence.startsWith(
                        "These 5 notes point to one cause: zero error, downward, 50.0 mA,"),
                sentence);
        String whole = answer(browser);
        for (String words :
                List.of(
                        "fit this best",
                        "all loads and chargers off for 24 h: amp-hours shown must not fall",
                        "floor-instead-of-round.yaml",
                        "note when the lights go out")) {
            assertTrue(whole.contains(words), words + " is not in " + whole);
        }
        assertEquals(List.of(), browser.violations());
        browser.wholePicture("system-notes");
        String form = browser.text(FORM);
        browser.reload();
        browser.until(READY);
        assertEquals(form, browser.text(FORM), "kept when the page is loaded again");
        browser.downloadTo(folder);
        browser.click("#save");
        Path saved = folder.resolve("my-system.json");
        for (int i = 0; i < 200 && !Files.exists(saved); i++) {
            browser.until("return new Promise(done => setTimeout(() => done(true), 50))");
        }
        browser.click("#clear");
        browser.until("return document.querySelectorAll('#notes li').length === 0");
        assertEquals(
                0,
                browser.number("return document.querySelectorAll('[aria-pressed=true]').length"),
                "with the form the question is gone");
        assertEquals("", browser.text("return location.hash"));
        browser.find("#file").sendKeys(saved.toString());
        browser.until(STATUS + " === 'my-system.json is open.'");
        assertEquals(form, browser.text(FORM), "saved and opened");
        ask(browser, "symptom");
        assertEquals(sentence, browser.text(SENTENCE));
        browser.size(760, 1000);
        browser.print();
        String paper = answer(browser);
        for (String words :
                List.of(
                        "The battery: Volts of the system: 12 V; Kind of battery: LiFePO4",
                        "Load 1: logger, 0.2 amps, 24 h, Draws when it starts: 3 amps, runs on",
                        "Note 1: 2026-05-03 07:00, 97 %, the charger has finished",
                        "Note 5: 2026-05-07 07:00, 85 %, Amp-hours shown: 34 Ah,"
                                + " Charged meanwhile: 0 Ah, nothing was on")) {
            assertTrue(paper.contains(words), words + " is not in " + paper);
        }
        browser.wholePicture("system-notes-print");
        browser.scheme("light");
        browser.click("#more-sheet summary");
        type(browser, "#f-name", "Logger at the pier");
        browser.click("#sheet");
        browser.toNewWindow();
        browser.until("return document.title === 'Logger at the pier'");
        assertEquals(List.of(), browser.violations());
        browser.toFirstWindow();
        assertEquals(List.of(), browser.complaints());
    }

    @Test
    void aNoteIsWrittenAndTakenOutByTheKeyboardAlone(Browser browser) {
        look(browser);
        browser.ask("document.getElementById('add-note').focus()");
        browser.press(Keys.ENTER);
        assertEquals(
                "Note 1",
                browser.text(
                        "return document.activeElement.closest('[role=group]')"
                                + ".getAttribute('aria-label')"));
        // Each part of a date takes an arrow, whatever the order of the parts.
        for (int i = 0; i < 6; i++) {
            browser.press(Keys.ARROW_UP, Keys.ARROW_RIGHT);
        }
        for (int i = 0; i < 12 && !inPart(browser).equals("shown"); i++) {
            browser.press(Keys.TAB);
        }
        browser.press("82", Keys.TAB, "30", Keys.TAB, "4", Keys.TAB, "12.7", Keys.TAB);
        assertEquals("word", inPart(browser));
        browser.press(Keys.ARROW_DOWN, Keys.TAB);
        String form = browser.text(FORM);
        String time = "\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d";
        assertTrue(
                form.matches(
                        ".*\"notes\":\\[\\{\"time\":\"%s\",\"shown\":\"82\",".formatted(time)
                                + "\"ah\":\"30\",\"charged\":\"4\",\"volts\":\"12.7\","
                                + "\"word\":\"charger-finished\"}].*"),
                form);
        assertEquals("add-note", browser.text("return document.activeElement.id"));
        browser.ask("document.getElementById('f-seen').focus()");
        browser.press(Keys.TAB);
        assertEquals("remove", browser.text("return document.activeElement.className"));
        browser.press(Keys.ENTER);
        assertEquals(0, browser.number("return document.querySelectorAll('#notes li').length"));
        assertEquals("add-note", browser.text("return document.activeElement.id"));
    }

    private static String inPart(Browser browser) {
        return browser.text(
                "const part = document.activeElement.closest('[data-part]');"
                        + "return part ? part.dataset.part : ''");
    }

    @Test
    void wrongNotesAreToldAtTheirFieldAndTooFewAtTheList(Browser browser) {
        look(browser);
        note(browser, 1, "2026-05-03T07:00", "97", "");
        note(browser, 2, "2026-05-03T07:00", "much", "");
        browser.ask("document.getElementById('more-symptom').open = false");
        browser.click("[data-question=size]");
        browser.until(STATUS + ".startsWith('2 to mend')");
        assertEquals("time", inPart(browser), "the keyboard is there, though it was folded");
        String told = "return document.querySelector('%s').closest('.field').innerText";
        assertTrue(
                browser.text(told.formatted(part(2, "time")))
                        .contains("is not later than the note"));
        assertTrue(
                browser.text(told.formatted(part(2, "shown"))).contains("'much' is not a number"));
        browser.wholePicture("system-notes-wrong");
        assertEquals(List.of(), browser.violations());
        setTime(browser, 2, "2026-05-04T07:00");
        type(browser, part(2, "shown"), "90");
        browser.click("#ask-notes");
        browser.until(STATUS + ".startsWith('1 to mend')");
        assertEquals(
                "2 notes say too little; expected four or more, over 12 h or longer",
                browser.text("return document.getElementById('notes-wrong').textContent"));
        assertEquals("add-note", browser.text("return document.activeElement.id"));
        assertEquals(List.of(), browser.violations());
    }

    /** A form in a file may count hours, as the command's notes may; a field for dates cannot. */
    @Test
    void aFileWhoseTimesAreHoursKeepsThem(Browser browser) throws IOException {
        look(browser);
        StringBuilder rows = new StringBuilder();
        for (int i = 0; i < 5; i++) {
            rows.append(i == 0 ? "" : ",")
                    .append("{\"time\":\"%d\",\"shown\":\"%d\"}".formatted(i * 12, 90 - 3 * i));
        }
        Path file =
                Files.writeString(
                        folder.resolve("hours.json"), "{\"my-system\":1,\"notes\":[" + rows + "]}");
        browser.find("#file").sendKeys(file.toString());
        browser.until(STATUS + " === 'hours.json is open.'");
        assertTrue(browser.text(FORM).contains("\"notes\":[" + rows + "]"), browser.text(FORM));
    }

    @Test
    void aDateThatLacksAPartIsToldAndNotTakenForNone(Browser browser) {
        look(browser);
        browser.click("#add-note");
        browser.press(Keys.ARROW_UP);
        browser.click("#ask-notes");
        browser.until(STATUS + ".endsWith('see the marked fields.')");
        assertEquals("time", inPart(browser));
        assertTrue(browser.text(FORM).contains("\"notes\":[{\"time\":\"?\"}]"), browser.text(FORM));
        browser.reload();
        browser.until(READY);
        assertEquals(
                "datetime-local",
                browser.text("return document.querySelector('#notes input').type"),
                "still a field for dates");
    }

    @Test
    void axeFindsNothingAndNoWidthScrollsSideways(Browser browser) {
        for (int width : List.of(390, 1024, 1600)) {
            browser.size(width, 844);
            browser.scheme("light");
            look(browser);
            fill(browser);
            drift(browser);
            ask(browser, "symptom");
            browser.assertNoSidewaysScroll("notes at " + width);
            assertEquals(List.of(), browser.violations(), "light at " + width);
            browser.wholePicture("system-notes-" + width);
            browser.scheme("dark");
            assertEquals(List.of(), browser.violations(), "dark at " + width);
            browser.wholePicture("system-notes-dark-" + width);
        }
    }
}
