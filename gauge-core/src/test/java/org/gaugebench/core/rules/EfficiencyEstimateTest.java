package org.gaugebench.core.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.settings.ChemistryPreset;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** Efficiency from full to full; 100 Ah, 92 % declared, 20 mA may pass unseen (rule C3). */
class EfficiencyEstimateTest {
    private final Minutes minutes = new Minutes();
    private EfficiencyEstimate estimate = new EfficiencyEstimate(Minutes.settings());

    private void flow(int number, int milliamps) {
        for (int i = 0; i < number; i++) {
            estimate.addMinute(minutes.still(12_800_000, milliamps * 1_000), false);
        }
    }

    /**
     * 40 Ah out in 4 h, so much in over 4 h, the rest of the time nothing; begins and ends full.
     */
    private boolean cycle(int inMilliamps, int allMinutes) {
        estimate.full(true);
        flow(240, -10_000);
        flow(240, inMilliamps);
        flow(allMinutes - 480, 0);
        return estimate.full(true);
    }

    private boolean gave(int inMilliamps, int allMinutes) {
        estimate.forget();
        cycle(inMilliamps, allMinutes);
        return estimate.candidatePartsPerMillion() != 0;
    }

    private static GaugeSettings lithium(long offsetMicroamps, long unmeasuredMicroamps) {
        return ChemistryPreset.LIFEPO4
                .builder(12_000)
                .set(Setting.OFFSET_BOUND, offsetMicroamps)
                .set(Setting.UNMEASURED_BOUND, unmeasuredMicroamps)
                .build();
    }

    /** 40 of 50 Ah are 80 %: from 92 a quarter of the way would be 3 points, a step is 1. */
    @Test
    void twoAgreeingCyclesMoveTheValueByAPointAtMost() {
        assertFalse(cycle(12_500, 480));
        assertEquals(800_000, estimate.candidatePartsPerMillion());
        assertTrue(cycle(12_500, 480));
        assertEquals(910_000, estimate.measuredPartsPerMillion());
    }

    /** 10/10.8 = 0.92593 less 0.92, a quarter: 1481 ppm. */
    @Test
    void aSmallDifferenceMovesByAQuarter() {
        cycle(10_800, 480);
        assertTrue(cycle(10_800, 480));
        assertEquals(921_481, estimate.measuredPartsPerMillion());
    }

    @Test
    void twoResultsTwoPointsApartAgree() {
        cycle(12_500, 480);
        assertTrue(cycle(12_200, 480));
        estimate.forget();
        cycle(12_500, 480);
        assertFalse(cycle(12_100, 480));
    }

    @Test
    void anImplausibleFullBeginsAndEndsNothing() {
        for (int i = 0; i < 3; i++) {
            estimate.full(true);
            flow(240, -10_000);
            flow(240, 12_500);
            assertFalse(estimate.full(false));
            flow(240, -10_000);
            flow(240, 12_500);
        }
        assertEquals(0, estimate.candidatePartsPerMillion());
    }

    @Test
    void thirtyPercentOutAreDeepEnough() {
        estimate.full(true);
        flow(180, -10_000);
        flow(180, 12_500);
        estimate.full(true);
        assertEquals(800_000, estimate.candidatePartsPerMillion());
        estimate.forget();
        estimate.full(true);
        flow(179, -10_000);
        flow(180, 12_500);
        estimate.full(true);
        assertEquals(0, estimate.candidatePartsPerMillion());
    }

    /** Ten hours of float after the proof are gas, and no part of the cycle's time either. */
    @Test
    void whatKeepsAFullBatteryFullIsNoPartOfTheCycle() {
        estimate.full(true);
        for (int i = 0; i < 4 * Minutes.DAY; i++) {
            estimate.addMinute(minutes.still(13_500_000, 500_000), true);
        }
        flow(240, -10_000);
        flow(240, 12_500);
        estimate.full(true);
        assertEquals(800_000, estimate.candidatePartsPerMillion());
    }

    @Test
    void threeDaysAreShortEnough() {
        assertTrue(gave(12_500, 3 * Minutes.DAY));
        assertFalse(gave(12_500, 3 * Minutes.DAY + 1));
    }

    /** 20 mA over 3000 min are 1 Ah, a quarter of the 4 Ah between in and out: one minute less. */
    @Test
    void whatMayHavePassedUnseenMustBeUnderAQuarter() {
        assertTrue(gave(11_000, 2_999));
        assertFalse(gave(11_000, 3_000));
    }

    /**
     * 12 mA past the shunt of a LiFePO4 battery of 99.5 %, 40 Ah out. True in is 40.201 Ah; the
     * leak adds 0.864 Ah in three days (97.4 % would be learned) and 4.03 Ah in fourteen (90.4 %).
     */
    @Test
    void aLeakIsNotLearnedAsAPoorEfficiency() {
        estimate = new EfficiencyEstimate(lithium(1_000, 12_000));
        // 41.065 and 44.233 Ah in over four hours
        assertFalse(gave(10_266, 3 * Minutes.DAY));
        assertFalse(gave(11_058, 14 * Minutes.DAY));
    }

    /** Its bound understated, the three days let it through, and the limits hold it at 97 %. */
    @Test
    void aLeakThatNobodyDeclaredIsHeldByTheLimits() {
        estimate = new EfficiencyEstimate(lithium(1_000, 1_000));
        for (int i = 0; i < 50; i++) {
            cycle(11_000, 3 * Minutes.DAY);
        }
        assertEquals(970_000, estimate.measuredPartsPerMillion());
    }

    @Test
    void leadAcidStaysBetweenEightyAndNinetyEightPercent() {
        estimate =
                new EfficiencyEstimate(
                        Minutes.settings(Setting.OFFSET_BOUND, 1, Setting.UNMEASURED_BOUND, 1));
        for (int i = 0; i < 60; i++) {
            cycle(20_000, 480);
        }
        assertEquals(800_000, estimate.measuredPartsPerMillion());
        for (int i = 0; i < 60; i++) {
            cycle(10_050, 480);
        }
        assertEquals(980_000, estimate.measuredPartsPerMillion());
    }

    @Test
    void moreOutThanInTeachesNothing() {
        assertFalse(gave(9_000, 480));
    }

    @Test
    void whatSpoilsACycleEndsIt() {
        estimate.full(true);
        flow(240, -10_000);
        estimate.spoil();
        flow(240, 12_500);
        estimate.full(true);
        assertEquals(0, estimate.candidatePartsPerMillion());
    }

    @Test
    void measureEfficiencyZeroSwitchesItOff() {
        estimate = new EfficiencyEstimate(Minutes.settings(Setting.MEASURE_EFFICIENCY, 0));
        assertFalse(gave(12_500, 480));
    }

    @Test
    void takesOverAndForgets() {
        estimate.resume(900_000, 805_000);
        assertEquals(900_000, estimate.measuredPartsPerMillion());
        assertTrue(cycle(12_500, 480));
        estimate.forget();
        assertEquals(0, estimate.measuredPartsPerMillion());
        assertEquals(0, estimate.candidatePartsPerMillion());
    }
}
