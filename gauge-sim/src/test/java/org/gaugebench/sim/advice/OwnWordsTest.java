package org.gaugebench.sim.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.sim.units.QuantityException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OwnWordsTest {
    @Test
    void chargesADayBecomeAmpHours() throws QuantityException {
        OwnLoad phone = OwnWords.load("phone: 2 charges of 15 Wh, 90 %, idle 20 mA", 12, 1);
        // Two charges take two hours each; the plug stays in for the other twenty.
        double charged = 2 * 15 / 11.4 / 0.9;
        assertEquals(charged + 0.020 * 20, phone.ampHoursPerDay(), 1e-9);
    }

    @Test
    void anInvertersLoadPaysItsLosses() throws QuantityException {
        OwnLoad kettle = OwnWords.load("kettle: 1800 W, 10 min, inverter", 24, 0.9);
        assertEquals(1800 / 22.8 / 0.9, kettle.amps(), 1e-9);
        assertTrue(kettle.byInverter());
    }

    @Test
    void phrasesStandInAnyOrder() throws QuantityException {
        assertEquals(
                OwnWords.load("fridge: 45 W, 8 h, surge 120 W", 12, 1),
                OwnWords.load("fridge: surge 120 W, 8 h, 45 W", 12, 1));
    }

    @Test
    void aMessageTellsWhatIsWrongAndInWhichLoad() {
        QuantityException negative =
                assertThrows(
                        QuantityException.class, () -> OwnWords.load("lamp: -1 A, 5 h", 12, 1));
        assertTrue(negative.getMessage().endsWith("between 0 A and 10000 A"), "not missing");
        QuantityException phrase =
                assertThrows(
                        QuantityException.class, () -> OwnWords.load("fan: 1 A, 5 h, x", 12, 1));
        assertTrue(phrase.getMessage().endsWith(", in 'fan: 1 A, 5 h, x'"), phrase.getMessage());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2000 W, surge -1 W",
                "2000 W, 88 %, 3000 W",
                "2000 W, 88 %, 90 %",
                "99999999999 W",
                "88 %",
            })
    void anInverterIsToldOnceAndWithinReason(String text) {
        QuantityException e = assertThrows(QuantityException.class, () -> OwnWords.inverter(text));
        assertTrue(e.getMessage().contains("such as"), e.getMessage());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "lamp",
                ": 1 A, 5 h",
                "lamp: 1 A",
                "lamp: 5 h",
                "lamp: 1 A, 25 h",
                "lamp: -1 A, 5 h",
                "lamp: 1 A, 5 h, surge 0.5 A",
                "lamp: 1 A, 5 h, idle -1 A",
                "lamp: 1 V, 5 h",
                "lamp: 1, 5",
                "phone: 2 charges of 15",
                "phone: many charges of 15 Wh",
                "phone: NaN charges of 15 Wh",
                "phone: 1 charge of 15 Wh, 5 h",
                "phone: 1 charge of 15 Wh, 0 %",
                "phone: 13 charges of 15 Wh",
                "lamp: 99999 A, 1 h",
                "lamp: 1 A, 5 h, 6 h",
                "lamp: 1 A, 60 W, 5 h",
                "lamp: 1 A, 5 h, 90 %",
                "phone: 1 charge of 15 Wh, 2 charges of 15 Wh",
                "a\nb: 1 A, 5 h",
                "a name of more letters than any line of eighty has room for it: 1 A, 5 h",
            })
    void whatCannotBeReadIsRefusedWithAnExample(String text) {
        QuantityException e =
                assertThrows(QuantityException.class, () -> OwnWords.load(text, 12, 1));
        assertTrue(e.getMessage().contains("such as"), e.getMessage());
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "88 %", "0 W", "2000 W, 0 %", "2000 W, 101 %", "2000 W, surge 1 W"})
    void anInverterNeedsWatts(String text) {
        assertThrows(QuantityException.class, () -> OwnWords.inverter(text));
    }
}
