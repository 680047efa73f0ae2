package org.gaugebench.sim.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.gaugebench.sim.scenario.Chemistry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class FirstChargeTest {
    private static final OwnersGauge GAUGE = OwnersGauge.UNKNOWN;

    @ParameterizedTest
    @EnumSource
    void theLaterItIsCalledFullTheLessItCosts(Chemistry chemistry) {
        for (double amps : new double[] {0, 5, 20, 60}) {
            OwnSystem system = OwnSamples.hut(chemistry, amps);
            FirstCharge.Result run = FirstCharge.of(system, GAUGE, OwnSamples.shunt(), null);
            List<FirstCharge.Row> rows = run.rows();
            assertTrue(rows.size() >= 3, rows.toString());
            for (int i = 1; i < rows.size(); i++) {
                assertTrue(
                        rows.get(i).costPoints() <= rows.get(i - 1).costPoints(), rows.toString());
                assertTrue(rows.get(i).hours() >= rows.get(i - 1).hours(), rows.toString());
            }
            // What the rule's own residual allows (3 points) is called full here too.
            assertTrue(rows.get(rows.size() - 1).costPoints() < 3, rows.toString());
            assertTrue(rows.get(rows.size() - 2).amps() <= run.fullAmps() + 0.001, rows.toString());
        }
    }

    /** By hand: 20 A into 100 Ah from half full; 2 % of it are 2 A, for an hour. */
    @Test
    void theFiguresAreThoseOfBatteryAndCharger() {
        OwnSystem system = OwnSamples.hut(Chemistry.LEAD_ACID_AGM, 20);
        FirstCharge.Result run = FirstCharge.of(system, GAUGE, OwnSamples.shunt(), 14.1);
        assertEquals(14.1, run.chargerVolts(), 1e-9);
        assertEquals(2, run.fullAmps(), 1e-9);
        assertEquals(60, run.holdMinutes());
        assertEquals(20, run.rows().get(0).amps(), 0.5);
        // A battery of lead comes to its volts long before it is full.
        assertTrue(run.rows().get(0).costPoints() > 15, run.toString());
        assertTrue(run.isCharger());
        assertFalse(
                FirstCharge.of(
                                OwnSamples.hut(Chemistry.LEAD_ACID_AGM, 0),
                                GAUGE,
                                OwnSamples.shunt(),
                                null)
                        .isCharger());
    }

    /** By hand: 2 A for 24 h past the shunt are 48 Ah of 100 Ah that the screen does not lose. */
    @Test
    void aLoadOnTheWrongSideIsNotSeen() {
        OwnSystem system =
                OwnSamples.hut(Chemistry.LIFEPO4, 0, "fridge: 1 A, 24 h", "lamp: 0.1 A, 24 h");
        WrongSide.Result run = WrongSide.load(system, GAUGE, OwnSamples.shunt());
        assertEquals("fridge", run.name());
        assertEquals(48, run.hours(), 1e-6);
        assertEquals(48, run.shownPercent() - run.truePercent(), 0.5);
        assertEquals(-0.1, run.shownAmps(), 0.01);
        assertEquals(-1.1, run.trueAmps(), 0.01);
    }

    /** By hand: 10 A for 4 h are 40 Ah into 100 Ah from 50 %. */
    @Test
    void aChargerOnTheWrongSideIsNotSeen() {
        OwnSystem system = OwnSamples.hut(Chemistry.LIFEPO4, 10);
        WrongSide.Result run = WrongSide.charger(system, GAUGE, OwnSamples.shunt());
        assertEquals(4, run.hours(), 1e-6);
        assertEquals(50, run.shownPercent(), 0.1);
        assertEquals(90, run.truePercent(), 1);
        assertEquals(0, run.shownAmps(), 0.01);
        assertEquals(10, run.trueAmps(), 0.1);
        assertTrue(
                WrongSide.charger(OwnSamples.hut(Chemistry.LIFEPO4, 0), GAUGE, OwnSamples.shunt())
                        .isExample());
        assertTrue(
                WrongSide.load(OwnSamples.hut(Chemistry.LIFEPO4, 0), GAUGE, OwnSamples.shunt())
                        .isExample());
    }
}
