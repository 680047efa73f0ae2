package org.gaugebench.sim.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Published and recomputed sizing figures. */
class SizingReferenceTest {
    /** A published figure holds as many digits as it was printed with. */
    private static double half(double lastDigit) {
        return lastDigit / 2;
    }

    private static OwnSystem of(
            List<OwnLoad> loads, @Nullable OwnInverter inverter, @Nullable String shunt)
            throws QuantityException {
        return new OwnSystem(
                12,
                Chemistry.LIFEPO4,
                100,
                loads,
                inverter,
                0,
                25.0,
                shunt == null ? null : ShuntRating.parse(shunt),
                null);
    }

    /** Arithmetic of a converter of 2000 W at 10.5 V and 88 %; 2/3 rule of three shunt makers. */
    @Test
    void anInverterOfTwoKilowattsAsksForFiveHundredAmps() throws QuantityException {
        SizingResult result = Sizing.of(of(List.of(), OwnWords.inverter("2000 W, 88 %"), null));
        assertEquals(216.5, result.steadyAmps(), half(0.1));
        assertEquals(500_000_000, proposed(result).microamps());
    }

    private static ShuntRating proposed(SizingResult result) {
        ShuntRating proposed = result.proposed();
        assertNotNull(proposed);
        return proposed;
    }

    /** 150 A for hours: 225 A by the 2/3 rule, so the next size is 300 A. */
    @Test
    void twoThirdsOfTheRatingForWhatFlowsForHours() throws QuantityException {
        List<OwnLoad> loads = List.of(OwnWords.load("winch: 150 A, 1 h", 12, 1));
        assertEquals(300_000_000, proposed(Sizing.of(of(loads, null, null))).microamps());
        List<OwnLoad> less = List.of(OwnWords.load("winch: 100 A, 1 h", 12, 1));
        assertEquals(150_000_000, proposed(Sizing.of(of(less, null, null))).microamps());
        List<OwnLoad> surge = List.of(OwnWords.load("winch: 100 A, 1 h, surge 151 A", 12, 1));
        assertEquals(200_000_000, proposed(Sizing.of(of(surge, null, null))).microamps());
    }

    /** Ohm's law: what a microvolt is on 100 A / 75 mV and on 500 A / 50 mV, and in 30 days. */
    @Test
    void aMicrovoltCostsMoreOnALargerShunt() throws QuantityException {
        List<OwnLoad> loads = List.of(OwnWords.load("lamp: 1 A, 1 h", 12, 1));
        ShuntChoice small = choice(Sizing.of(of(loads, null, "100 A / 75 mV")));
        assertEquals(1.33e-3, small.microvoltAmps(), half(1e-5));
        assertEquals(0.96, small.microvoltAmpHoursPerMonth(), half(0.01));
        ShuntChoice large = choice(Sizing.of(of(loads, null, "500 A / 50 mV")));
        assertEquals(10e-3, large.microvoltAmps(), 1e-12);
        assertEquals(7.2, large.microvoltAmpHoursPerMonth(), 1e-9);
        assertEquals(7.2, large.microvoltPercentPerMonth(), 1e-9);
    }

    private static ShuntChoice choice(SizingResult result) {
        ShuntChoice choice = result.choice();
        assertNotNull(choice);
        return choice;
    }

    /** P = I x V_drop: 4/9 of 5 W at two thirds of 100 A / 50 mV. */
    @Test
    void heatAtTwoThirds() throws QuantityException {
        OwnLoad load = new OwnLoad("heater", 200.0 / 3, 1, 0, 200.0 / 3, false, List.of());
        ShuntChoice choice = choice(Sizing.of(of(List.of(load), null, "100 A / 50 mV")));
        assertEquals(2.222, choice.steadyWatts(), half(0.001));
        assertEquals(ShuntChoice.Fit.FITS, choice.fit());
    }

    /** IEEE Std 1013-2007, 5.2: 100 W at 12 V counts at 95 % of the voltage: 8.772 A. */
    @Test
    void aPowerDrawsAtNinetyFivePercentOfTheVoltage() throws QuantityException {
        assertEquals(8.772, OwnWords.load("lamp: 100 W, 1 h", 12, 1).amps(), half(0.001));
    }

    /** 300 W for 5 h at 12 V and half depth: 250 Ah; a common worked example. */
    @Test
    void halfDepthDoublesTheBattery() {
        assertEquals(250, BatteryNeed.ampHours(300.0 * 5 / 12, 1, 0.5, 1, 1), 1e-9);
    }

    /** 5000 Wh a day at 48 V and 80 % depth: 130.21 Ah; a common worked example. */
    @Test
    void eightyPercentDepth() {
        assertEquals(130.21, BatteryNeed.ampHours(5000.0 / 48, 1, 0.8, 1, 1), half(0.01));
    }

    /** 6000 Wh a day, 24 V, 3 days, 50 %, 60 °F (1.11, IEEE Std 485 table 1): 1665 Ah. */
    @Test
    void worksheetOrder() {
        assertEquals(1665, BatteryNeed.ampHours(6000.0 / 24, 3, 0.5, 1.11, 1), 1e-9);
    }

    /** A published table of an absorbed-glass-mat battery at 20 h to half an hour. */
    @Test
    void whatComesOutInOneGo() {
        double[] ampHours = {100, 92, 90, 85, 80, 73, 60};
        double[] hours = {20, 10, 8, 5, 2, 1, 0.5};
        for (int i = 0; i < hours.length; i++) {
            double part = FastDischarge.partOf(100, ampHours[i] / hours[i]);
            assertEquals(ampHours[i], part * 100, 1e-9, "at " + hours[i] + " h");
        }
        assertEquals(1, FastDischarge.partOf(100, 0.5), 0);
    }

    @Test
    void coldTakesFromTheUsableCharge() throws QuantityException {
        OwnSystem cold =
                new OwnSystem(
                        12,
                        Chemistry.LEAD_ACID_AGM,
                        100,
                        List.of(OwnWords.load("lamp: 1 A, 10 h", 12, 1)),
                        null,
                        0,
                        10.0,
                        null,
                        null);
        SizingResult result = Sizing.of(cold);
        // 10 °C is 50 °F, whose row says 1.190.
        assertEquals(100 / 1.190 * 0.5, result.usableAmpHours(), 1e-9);
        assertEquals(result.usableAmpHours() / 10, result.autonomyDays(), 1e-9);
        assertTrue(result.findings().isEmpty());
    }
}
