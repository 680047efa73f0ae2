package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

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
        browser.until("return gaugebenchLive.frame.waiting || gaugebenchLive.frame.millis === 0");
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
        act(browser, "{act: 'step'}");
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
}
