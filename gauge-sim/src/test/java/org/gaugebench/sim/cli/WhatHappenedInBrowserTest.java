package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.gaugebench.sim.browser.Browser;
import org.junit.jupiter.api.Test;

/** The list of what happened tells what was changed, in the controls' words, and to what. */
class WhatHappenedInBrowserTest extends ServedPage {
    private static final String LINES =
            "return [...document.querySelectorAll('#event-rows li[data-event=change] span')]"
                    + ".map(it => it.textContent).reverse()";

    /** Does something, and lets one sample pass, with which it takes effect. */
    private static void act(Browser browser, String body) {
        double before = browser.number("return gaugebenchLive.frame.millis");
        browser.ask("gaugebenchLive.act(" + body + ")");
        browser.until("return gaugebenchLive.frame.waiting");
        browser.ask("gaugebenchLive.act({act: 'step'})");
        browser.until("return gaugebenchLive.frame.millis > " + before);
    }

    private static List<?> linesWith(Browser browser, int count) {
        browser.until(LINES + ".length >= " + count);
        return (List<?>) browser.ask(LINES);
    }

    @Test
    void aFigureAndAStateStandBesideTheirName(Browser browser) {
        browser.open(page);
        browser.until("return window.gaugebenchLive && gaugebenchLive.updates > 0");
        browser.ask("gaugebenchLive.act({act: 'step'})");
        browser.until("return gaugebenchLive.frame.millis > 0");
        for (String set :
                List.of(
                        "'battery.temperature': '-5 °C'",
                        "'sensor.offset': '0.5 uV'",
                        "'gauge.capacity': '120 Ah'",
                        "heater: 'on'",
                        "isolator: 'open'",
                        "isolator: 'closed'",
                        "'wiring.shunt': 'reversed'",
                        "'gauge.declare': '80 %'",
                        "'gauge.hold': '30 min'",
                        "'wiring.lug-resistance': '100 uOhm'",
                        "'gauge.clock': 'stopped'",
                        "'gauge.power': 'off'",
                        "'gauge.power': 'on'")) {
            act(browser, "{act: 'set', " + set + "}");
        }
        act(browser, "{act: 'command', command: 'zero-adjustment'}");
        assertEquals(
                List.of(
                        "temperature → −5 °C",
                        "zero error of the meter's input → 0.5 µV",
                        "our meter: amp-hours printed on the battery → 120 Ah",
                        "heater: on",
                        "isolator: open",
                        "isolator: closed",
                        "shunt: turned round",
                        "our meter: set by hand to 80 %",
                        "our meter: setting, hold → 30 min",
                        "wiring, lug resistance → 100 µΩ",
                        "our meter: its clock is stopped",
                        "our meter: no power",
                        "our meter: power is back",
                        "our meter: told to take this current as zero"),
                linesWith(browser, 14));
        assertEquals(List.of(), browser.complaints());
    }

    /** Rounded to nearest, a band looks narrower than it is. */
    @Test
    void theBandIsRoundedOutward(Browser browser) {
        browser.open(page);
        browser.until("return window.gaugebenchLive && gaugebenchLive.updates > 0");
        browser.ask("gaugebenchLive.act({act: 'run-to', at: '3 d 7 h'})");
        browser.until("return gaugebenchLive.frame.millis === 284400000");
        double lower = browser.number("return gaugebenchLive.frame.gauges[0].lower");
        double upper = browser.number("return gaugebenchLive.frame.gauges[0].upper");
        assertTrue(lower % 1 >= 0.5 || upper % 1 < 0.5, lower + " to " + upper + " tells nothing");
        assertEquals(
                "could be %.0f to %.0f %%".formatted(Math.floor(lower), Math.ceil(upper)),
                browser.text("return document.querySelector('[data-field=band]').textContent"));
        browser.until(
                "return document.querySelector('#ledger-rows tr td:nth-child(6)').textContent"
                        + " !== ''");
        String wrong =
                browser.text(
                        """
                        // The table follows the book a moment later.
                        const look = tries => fetch('/book/0').then(it => it.json()).then(book => {
                            const shown = [...document.querySelectorAll('#ledger-rows tr.first')]
                                .map(it => it.children[5].textContent.match(/[\\d.]+/g) || []);
                            const wrong = book.entries.filter((it, i) => it.lower !== null
                                && !(shown[i] && shown[i][0] <= it.lower + 1e-9
                                    && shown[i][1] >= it.upper - 1e-9
                                    && shown[i][0] >= it.lower - 0.01
                                    && shown[i][1] <= it.upper + 0.01))
                                .map(it => it.lower + ' ' + it.upper).join() + book.entries.length;
                            return !wrong.includes(' ') || tries === 0 ? wrong
                                : new Promise(go => setTimeout(go, 50)).then(() => look(tries - 1));
                        });
                        return look(60);
                        """);
        assertTrue(wrong.matches("[1-9]\\d*"), wrong);
    }
}
