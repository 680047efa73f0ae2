package org.gaugebench.core.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.Sample;
import org.junit.jupiter.api.Test;

class RateModelTest {
    private static final long CAPACITY = 100 * 3_600_000_000_000L;
    private static final TemperatureCurve LEAD_ACID =
            new TemperatureCurve(840_000, 712_000, 478_000);
    private static final RateModel MODEL = new RateModel(CAPACITY, 20, 1_200_000, LEAD_ACID);

    @Test
    void atAndBelowTheRatedCurrentTheFactorIsOne() {
        assertEquals(1 << 24, MODEL.factorQ24(-1_000_000));
        assertEquals(1.0, MODEL.factorQ24(-5_000_000) / 0x1p24, 1e-6);
        assertTrue(MODEL.factorQ24(-5_100_000) > 1 << 24);
    }

    @Test
    void chargingHasTheFactorOneAndNoTemperature() {
        assertEquals(1 << 24, MODEL.factorQ24(40_000_000));
        assertEquals(CAPACITY, MODEL.usableNanocoulombs(CAPACITY, 40_000_000, -10_000));
    }

    @Test
    void anHourAtOneHundredAmpsIsThirtyThreeMinutes() {
        // Common lesson: 100 A from 100 Ah with exponent 1.2 is 33.0 min, not 60.
        long usable = MODEL.usableNanocoulombs(CAPACITY, -100_000_000, 25_000);
        assertEquals(33.0, usable / 100e6 / 60e3, 0.05);
    }

    /** 54.9 of 100 Ah come out; who has drawn 40 of them has 14.9 left, not 55 % of the rest. */
    @Test
    void whatStaysBehindIsAPartOfTheWholeBattery() {
        long amp = -100_000_000;
        long drawn = 40 * CAPACITY / 100;
        long full = MODEL.usableNanocoulombs(CAPACITY, (int) amp, 25_000);
        assertEquals(full - drawn, MODEL.usableNanocoulombs(CAPACITY - drawn, (int) amp, 25_000));
        assertEquals(CAPACITY - full, MODEL.behindNanocoulombs((int) amp, 25_000));
        assertEquals(0, MODEL.usableNanocoulombs(40 * CAPACITY / 100, (int) amp, 25_000));
    }

    /** Cold keeps a part of the capacity however slowly it is drawn. */
    @Test
    void coldLeavesItsPartBehindAtAnyCurrent() {
        long exact = 288 * (CAPACITY / 1_000);
        long behind = MODEL.behindNanocoulombs(-1_000_000, 0);
        // Rounded up, by no more than what 30 bits leave of the capacity.
        assertTrue(behind >= exact && behind <= exact + (CAPACITY >> 30) + 1, "behind " + behind);
        assertEquals(0, MODEL.behindNanocoulombs(1_000_000, 0));
        assertEquals(0, MODEL.behindNanocoulombs(-1_000_000, 25_000));
    }

    @Test
    void aMissingOrBrokenSensorDoesNotShortenTheHours() {
        assertEquals(1_000_000, LEAD_ACID.partsPerMillion(Sample.TEMPERATURE_ABSENT));
        assertEquals(1_000_000, LEAD_ACID.partsPerMillion(-40_000));
        assertEquals(1_000_000, LEAD_ACID.partsPerMillion(Integer.MIN_VALUE));
        assertEquals(1_000_000, LEAD_ACID.partsPerMillion(Integer.MAX_VALUE));
        assertEquals(478_000, LEAD_ACID.partsPerMillion(-39_999));
    }

    @Test
    void aWarmBatteryIsCreditedNoMoreThanItsRating() {
        assertEquals(1_000_000, LEAD_ACID.partsPerMillion(45_000));
    }

    @Test
    void theCurveNeverFallsAsItGetsWarmer() {
        int before = 0;
        for (int millicelsius = -39_999; millicelsius < 100_000; millicelsius += 7) {
            int now = LEAD_ACID.partsPerMillion(millicelsius);
            assertTrue(now >= before);
            before = now;
        }
    }

    @Test
    void aCurveDeclaredUpsideDownIsHeldToItsWarmerPoint() {
        TemperatureCurve odd = new TemperatureCurve(700_000, 900_000, -5);
        assertEquals(700_000, odd.partsPerMillion(0));
        assertEquals(1, odd.partsPerMillion(-20_000));
    }

    @Test
    void theModelWithoutDependenceChangesNothing() {
        assertEquals(
                CAPACITY, RateModel.none().usableNanocoulombs(CAPACITY, -900_000_000, -30_000));
    }
}
