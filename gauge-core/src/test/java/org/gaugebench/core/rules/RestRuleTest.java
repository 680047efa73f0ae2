package org.gaugebench.core.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.charge.MinuteMean;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.ChemistryPreset;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** 100 Ah, rest of 8 h within 100 mA, 12 h after a charge (R rules). */
class RestRuleTest {
    private static final int REST_MINUTES = 8 * 60;
    private static final int AFTER_CHARGE_MINUTES = 12 * 60;
    private static final int HALF = 12_400_000;
    private static final int SMALL = 100_000;

    private final Minutes minutes = new Minutes();
    private RestRule rule = new RestRule(Minutes.settings());
    private int millicelsius = Sample.TEMPERATURE_ABSENT;
    private int shown = 700_000;
    private int halfWidth = 200_000;

    private RuleOutcome judge(MinuteMean minute) {
        return rule.judge(minute, millicelsius, shown, halfWidth);
    }

    private RuleOutcome minute(int microvolts, int microamps) {
        return judge(minutes.still(microvolts, microamps));
    }

    /** How many minutes of it until the rule speaks; 0 when it does not within two days. */
    private int minutesUntilSpoken(int microvolts, int microamps) {
        for (int i = 1; i <= 2 * Minutes.DAY; i++) {
            if (minute(microvolts, microamps) != RuleOutcome.NONE) {
                return i;
            }
        }
        return 0;
    }

    /** A light load for twelve hours, so that only the rest is missing. */
    private void drain() {
        for (int i = 0; i < AFTER_CHARGE_MINUTES; i++) {
            assertEquals(RuleOutcome.NONE, minute(HALF, -Minutes.AMP));
        }
    }

    private static void assertNear(long expected, long actual, long tolerance) {
        assertTrue(Math.abs(actual - expected) <= tolerance, expected + " but was " + actual);
    }

    /** Within 5 ppm: the weight has 16 bits, the table and the root round by one. */
    @Test
    void aRestedLeadAcidBatteryIsCorrected() {
        drain();
        for (int i = 0; i < REST_MINUTES - 1; i++) {
            assertEquals(RuleOutcome.NONE, minute(HALF, -SMALL));
        }
        assertEquals(REST_MINUTES - 1, rule.restedMinutes());
        assertEquals(RuleOutcome.CORRECTED_BY_REST, minute(HALF, -SMALL));
        // 12.32 V are 45 %, 12.48 V are 60 %: an anchor of 50 % with 10 %, against 70 % with 20 %;
        // weight 4/5, half-width 20 % / sqrt(5) = 8.94 %
        assertEquals(450_000, rule.lowestPartsPerMillion());
        assertEquals(600_000, rule.highestPartsPerMillion());
        assertNear(540_000, rule.targetPartsPerMillion(), 5);
        assertNear(89_443, rule.residualPartsPerMillion(), 5);
    }

    /** R8: the rest itself is counted; the comparison waits for the tenth minute to pass. */
    @Test
    void nothingIsComparedInTheQuietTime() {
        drain();
        for (int i = 0; i < REST_MINUTES - 2; i++) {
            assertEquals(RuleOutcome.NONE, minute(HALF, 0));
        }
        rule.beginQuietTime();
        for (int i = 0; i < 10; i++) {
            assertEquals(RuleOutcome.NONE, minute(HALF, 0));
        }
        assertEquals(RuleOutcome.CORRECTED_BY_REST, minute(HALF, 0));
    }

    @Test
    void withNothingKnownTheVoltageDecidesNearlyAlone() {
        drain();
        shown = 0;
        halfWidth = 1_000_000;
        assertEquals(REST_MINUTES, minutesUntilSpoken(HALF, 0));
        // weight 1 / 1.01
        assertNear(495_049, rule.targetPartsPerMillion(), 10);
    }

    /** The same rule, the same code: on the flat curve 90 mV are 20 points, a band of 5 stands. */
    @Test
    void theFlatCurveOfLiFePo4IsRefusedByArithmetic() {
        rule = new RestRule(ChemistryPreset.LIFEPO4.builder(12_000).build());
        halfWidth = 50_000;
        shown = 600_000;
        for (int i = 0; i < AFTER_CHARGE_MINUTES - 1; i++) {
            assertEquals(RuleOutcome.NONE, minute(13_239_000, 0));
        }
        assertEquals(RuleOutcome.BAND_CLIPPED, minute(13_239_000, 0));
        assertTrue(rule.lowestPartsPerMillion() < 450_000, "" + rule.lowestPartsPerMillion());
        assertTrue(rule.highestPartsPerMillion() > 800_000, "" + rule.highestPartsPerMillion());
    }

    /** Low down the same curve is steep: 12.4 V are under 10 %, within a few points. */
    @Test
    void theKneeOfLiFePo4Corrects() {
        rule = new RestRule(ChemistryPreset.LIFEPO4.builder(12_000).build());
        assertTrue(minutesUntilSpoken(12_400_000, 0) > 0);
        assertTrue(rule.residualPartsPerMillion() < 10_000, "" + rule.residualPartsPerMillion());
    }

    /**
     * Behind an open isolator the leads see the charger: 14.4 V and no current for a day say
     * nothing of the battery, neither that it is full nor that it is not. Float less its margin is
     * 13.388 V; a microvolt less is a rest.
     */
    @Test
    void aChargersVoltageIsNoRest() {
        for (int microvolts : new int[] {14_400_000, 13_388_000}) {
            rule = new RestRule(ChemistryPreset.LIFEPO4.builder(12_000).build());
            for (int i = 0; i < 2 * AFTER_CHARGE_MINUTES; i++) {
                assertEquals(RuleOutcome.NONE, minute(microvolts, 0));
            }
        }
        rule = new RestRule(ChemistryPreset.LIFEPO4.builder(12_000).build());
        minutesUntilSpoken(13_387_999, 0);
        assertTrue(rule.lowestPartsPerMillion() > 700_000);
    }

    /** A charger that knows the heat floats at 13.3 V there: it opened the protection, or ours. */
    @Test
    void inTheWarmthAChargersVoltageIsLower() {
        rule = compensated();
        millicelsius = 32_000;
        assertEquals(0, minutesUntilSpoken(13_220_000, 0), "13.388 V less 7 K x 24 mV");
        rule = compensated();
        assertTrue(minutesUntilSpoken(13_219_999, 0) > 0);
        // In the cold a charger without a compensation floats no higher.
        rule = compensated();
        millicelsius = 10_000;
        assertEquals(0, minutesUntilSpoken(13_388_000, 0));
    }

    private static RestRule compensated() {
        return new RestRule(
                ChemistryPreset.LIFEPO4
                        .builder(12_000)
                        .set(Setting.TEMPERATURE_COEFFICIENT, -24_000)
                        .build());
    }

    /** 12.80 V are the table's end; 12.88 V say no more, and 12.880001 V are surface charge. */
    @Test
    void beyondTheTablesEndNothingIsSurer() {
        minutesUntilSpoken(12_800_000, 0);
        long atTheEnd = rule.residualPartsPerMillion();
        assertTrue(atTheEnd > 30_000, "an anchor of some per cent: " + atTheEnd);
        rule = new RestRule(Minutes.settings());
        minutesUntilSpoken(12_880_000, 0);
        assertEquals(atTheEnd, rule.residualPartsPerMillion());
        rule = new RestRule(Minutes.settings());
        assertEquals(0, minutesUntilSpoken(12_880_001, 0));
    }

    /** No float voltage is known: above 12.80 V, the table's end, and its bound nothing rests. */
    @Test
    void withoutAFloatVoltageTheTableSaysWhatNoRestedBatteryHas() {
        rule = new RestRule(Minutes.settings(Setting.FLOAT_VOLTAGE, 0));
        assertEquals(0, minutesUntilSpoken(12_880_001, 0));
        rule = new RestRule(Minutes.settings(Setting.FLOAT_VOLTAGE, 0));
        assertTrue(minutesUntilSpoken(12_880_000, 0) > 0);
    }

    /** An anchor as wide as the band is no gain: it only clips. */
    @Test
    void anAnchorAsWideAsTheBandOnlyClips() {
        drain();
        halfWidth = 100_000;
        minutesUntilSpoken(HALF, 0);
        assertEquals(0, rule.targetPartsPerMillion());
        rule = new RestRule(Minutes.settings());
        drain();
        halfWidth = 100_001;
        minutesUntilSpoken(HALF, 0);
        assertTrue(rule.targetPartsPerMillion() > 0);
    }

    @Test
    void speaksOnceARest() {
        drain();
        minutesUntilSpoken(HALF, 0);
        assertEquals(0, minutesUntilSpoken(HALF, 0));
        minute(HALF, -Minutes.AMP);
        assertEquals(REST_MINUTES, minutesUntilSpoken(HALF, 0));
    }

    /** +1 A and -1 A in one minute are no current on average and no rest. */
    @Test
    void aRippleIsNoRest() {
        drain();
        for (int i = 0; i < 2 * Minutes.DAY; i++) {
            assertEquals(
                    RuleOutcome.NONE, judge(minutes.of(HALF, HALF, Minutes.AMP, -Minutes.AMP)));
        }
        assertEquals(0, rule.restedMinutes());
    }

    @Test
    void oneMicroampMoreOnEitherSideIsNoRest() {
        drain();
        assertEquals(0, minutesUntilSpoken(HALF, -SMALL - 1));
        judge(minutes.of(HALF, HALF, SMALL + 1, -SMALL));
        assertEquals(0, rule.restedMinutes());
        judge(minutes.of(HALF, HALF, SMALL, -SMALL));
        assertEquals(1, rule.restedMinutes());
    }

    @Test
    void surfaceChargeGoesForTwelveHours() {
        drain();
        minute(14_000_000, SMALL + 1);
        assertEquals(AFTER_CHARGE_MINUTES, minutesUntilSpoken(HALF, 0));
    }

    @Test
    void afterAStartNobodyKnowsWhetherItWasCharged() {
        assertEquals(AFTER_CHARGE_MINUTES, minutesUntilSpoken(HALF, 0));
    }

    @Test
    void missingSamplesStartAgain() {
        drain();
        for (int i = 0; i < REST_MINUTES - 1; i++) {
            minute(HALF, 0);
        }
        rule.samplesMissing();
        assertEquals(AFTER_CHARGE_MINUTES, minutesUntilSpoken(HALF, 0));
    }

    /** At its rail the voltage would read as 100 %; frozen figures would rest for ever. */
    @Test
    void aDoubtfulMinuteIsNoRest() {
        drain();
        for (int i = 0; i < 2 * Minutes.DAY; i++) {
            assertEquals(RuleOutcome.NONE, judge(minutes.doubtful(65_535_000, 0)));
        }
    }

    @Test
    void anOpenLeadIsNoRest() {
        drain();
        assertEquals(0, minutesUntilSpoken(0, 0));
    }

    @Test
    void theColdWaits() {
        drain();
        millicelsius = 4_999;
        assertEquals(0, minutesUntilSpoken(HALF, 0));
        millicelsius = 5_000;
        assertEquals(RuleOutcome.CORRECTED_BY_REST, minute(HALF, 0));
    }

    @Test
    void anOffsetWidensWhatCountsAsRest() {
        rule = new RestRule(Minutes.settings(Setting.OFFSET_BOUND, 200_000));
        for (int i = 0; i < AFTER_CHARGE_MINUTES; i++) {
            minute(HALF, -400_000);
        }
        assertEquals(REST_MINUTES, rule.restedMinutes());
    }

    @Test
    void restTimeZeroSwitchesTheRuleOff() {
        rule = new RestRule(Minutes.settings(Setting.REST_TIME, 0));
        assertEquals(0, minutesUntilSpoken(HALF, 0));
    }

    /** R2 and R3: 0.1 % of the capacity an hour is rest, and so it is no charge either. */
    @Test
    void aChargeThatIsRestIsNoCharge() {
        assertEquals(AFTER_CHARGE_MINUTES, minutesUntilSpoken(HALF, SMALL));
    }
}
