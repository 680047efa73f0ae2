package org.gaugebench.core.saved;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class SaveScheduleTest {
    private static final long AMP_HOUR = 3_600_000_000_000L;
    private static final long CAPACITY = 100 * AMP_HOUR;
    private static final long STEP = AMP_HOUR / 2;
    private static final int VOLTS_12_5 = 12_500_000;

    private final SaveSchedule schedule =
            new SaveSchedule(CAPACITY, SaveSchedule.DEFAULT_STEP_PARTS_PER_MILLION, 12_000);
    private long charge = 50 * AMP_HOUR;
    private long gross = 7 * AMP_HOUR;

    SaveScheduleTest() {
        schedule.powerUp(charge, gross);
    }

    private SaveReason second(long movedNanocoulombs, int microvolts) {
        charge += movedNanocoulombs;
        gross += Math.abs(movedNanocoulombs);
        return schedule.due(charge, gross, microvolts, 1_000);
    }

    private SaveReason seconds(int count, int microvolts) {
        SaveReason reason = SaveReason.NONE;
        for (int i = 0; i < count && reason == SaveReason.NONE; i++) {
            reason = second(0, microvolts);
        }
        return reason;
    }

    private void attempted() {
        schedule.attempted(charge, gross);
    }

    @Test
    void theStepIsHalfAPercentOfTheCapacity() {
        assertEquals(STEP, schedule.stepNanocoulombs());
    }

    @Test
    void nothingIsDueAtPowerUpOrBeforeAStepMoved() {
        assertEquals(SaveReason.NONE, second(0, VOLTS_12_5));
        assertEquals(SaveReason.NONE, second(-STEP + 1, VOLTS_12_5));
        assertEquals(SaveReason.CHARGE_MOVED, second(-1, VOLTS_12_5));
    }

    @Test
    void aStepIsDueInBothDirections() {
        assertEquals(SaveReason.CHARGE_MOVED, second(STEP, VOLTS_12_5));
        attempted();
        assertEquals(SaveReason.NONE, second(-STEP + 1, VOLTS_12_5));
        assertEquals(SaveReason.CHARGE_MOVED, second(-1, VOLTS_12_5));
    }

    @Test
    void aRippleThatCancelsIsDueAfterFourSteps() {
        long half = STEP / 2;
        for (int i = 0; i < 7; i++) {
            assertEquals(SaveReason.NONE, second(i % 2 == 0 ? half : -half, VOLTS_12_5), "" + i);
        }
        assertEquals(SaveReason.CHARGE_MOVED, second(-half, VOLTS_12_5));
        attempted();
        assertEquals(SaveReason.NONE, second(0, VOLTS_12_5));
    }

    @Test
    void whatIsDueStaysDueUntilItWasTried() {
        assertEquals(SaveReason.CHARGE_MOVED, second(STEP, VOLTS_12_5));
        assertEquals(SaveReason.CHARGE_MOVED, second(0, VOLTS_12_5));
        attempted();
        assertEquals(SaveReason.NONE, second(0, VOLTS_12_5));
    }

    @Test
    void anAnchorAndAnEditSaveAtOnceEvenInTheFirstSecond() {
        schedule.anchored();
        assertEquals(SaveReason.ANCHORED, second(0, VOLTS_12_5));
        schedule.settingsChanged();
        assertEquals(SaveReason.SETTINGS_CHANGED, second(0, VOLTS_12_5));
        attempted();
        assertEquals(SaveReason.NONE, second(0, VOLTS_12_5));
    }

    @Test
    void editsInARowAreSavedEveryTenSecondsAndNoneIsForgotten() {
        schedule.settingsChanged();
        assertEquals(SaveReason.SETTINGS_CHANGED, second(0, VOLTS_12_5));
        attempted();
        schedule.settingsChanged();
        assertEquals(SaveReason.NONE, seconds(9, VOLTS_12_5));
        assertEquals(SaveReason.SETTINGS_CHANGED, second(0, VOLTS_12_5));
    }

    @Test
    void aFastFallSavesEarlyOnceATenthOfAStepMoved() {
        assertEquals(SaveReason.NONE, seconds(6, VOLTS_12_5));
        assertEquals(SaveReason.NONE, second(-STEP / 10, VOLTS_12_5));
        // A fall of exactly 0.5 V is not more than 0.5 V.
        assertEquals(SaveReason.NONE, second(0, VOLTS_12_5 - 500_000));
        assertEquals(SaveReason.VOLTS_FALLING, second(0, VOLTS_12_5 - 500_001));
    }

    @Test
    void aFastFallWithLessMovedSavesNothing() {
        seconds(6, VOLTS_12_5);
        second(-STEP / 10 + 1, VOLTS_12_5);
        assertEquals(SaveReason.NONE, second(0, 11_000_000));
    }

    @Test
    void aSlowFallSavesNothing() {
        second(-STEP / 10, VOLTS_12_5);
        for (int i = 0; i < 40; i++) {
            // 0.05 V a second is 0.45 to 0.5 V over the window.
            assertEquals(SaveReason.NONE, second(0, VOLTS_12_5 - i * 50_000), "second " + i);
        }
    }

    @Test
    void earlySavesAtMostDoubleTheWrites() {
        int early = 0;
        int byCharge = 0;
        seconds(10, VOLTS_12_5);
        for (int i = 0; i < 200_000; i++) {
            SaveReason reason = second(-STEP / 100, i % 20 == 19 ? 11_000_000 : VOLTS_12_5);
            if (reason != SaveReason.NONE) {
                early += reason == SaveReason.VOLTS_FALLING ? 1 : 0;
                byCharge += reason == SaveReason.CHARGE_MOVED ? 1 : 0;
                attempted();
            }
            if (charge < 10 * AMP_HOUR) {
                charge += 80 * AMP_HOUR;
                schedule.attempted(charge, gross);
            }
        }
        assertTrue(byCharge > 100 && early > 10, byCharge + " by charge, " + early + " early");
        assertTrue(early <= byCharge + 1, byCharge + " by charge, " + early + " early");
    }

    @Test
    void creditsAreEarnedAndSpentOneByOne() {
        seconds(10, VOLTS_12_5);
        assertEquals(SaveReason.VOLTS_FALLING, fall());
        attempted();
        assertEquals(SaveReason.NONE, fall(), "the credit given at power-up is spent");
        charge -= 80 * AMP_HOUR;
        for (int i = 0; i < 9; i++) {
            assertEquals(SaveReason.CHARGE_MOVED, second(STEP, VOLTS_12_5));
            attempted();
        }
        for (int i = 0; i < 4; i++) {
            assertEquals(SaveReason.VOLTS_FALLING, fall(), "credit " + i);
            attempted();
        }
        assertEquals(SaveReason.NONE, fall(), "four credits at most");
    }

    /** A tenth of a step, and a fall of 1 V after twelve steady seconds. */
    private SaveReason fall() {
        for (int i = 0; i < 12; i++) {
            second(0, VOLTS_12_5);
        }
        return second(-STEP / 10, VOLTS_12_5 - 1_000_000);
    }

    @Test
    void nothingIsSavedUnderHalfTheNominalVoltage() {
        schedule.settingsChanged();
        assertEquals(SaveReason.NONE, second(-STEP, 5_999_999));
        assertEquals(SaveReason.SETTINGS_CHANGED, second(0, 6_000_000));
    }

    @Test
    void aParkedSystemSavesOnceADay() {
        assertEquals(SaveReason.NONE, seconds(86_400 - 10 - 1, VOLTS_12_5));
        assertEquals(SaveReason.DAY_PASSED, second(0, VOLTS_12_5));
        attempted();
        assertEquals(SaveReason.NONE, seconds(86_400 - 1, VOLTS_12_5));
        assertEquals(SaveReason.DAY_PASSED, second(0, VOLTS_12_5));
    }

    /** An engine is cranked: 500 A for 0.2 s of each 0.3 s, the gauge loses power ten times. */
    @Test
    void tenBrownOutsInThreeSecondsWriteNothing() {
        int writes = 0;
        long restored = charge;
        for (int i = 0; i < 10; i++) {
            schedule.powerUp(restored, gross);
            charge = restored;
            int[] volts = {12_600_000, 10_400_000, 8_500_000, 6_200_000, 5_000_000};
            for (int microvolts : volts) {
                charge -= 500_000_000L * 40;
                writes += schedule.due(charge, gross, microvolts, 40) == SaveReason.NONE ? 0 : 1;
            }
        }
        assertEquals(0, writes);
    }

    /** Each edge of an early save by itself: five seconds of power, a credit, a tenth of a step. */
    @Test
    void anEarlySaveIsDueAtEachOfItsEdges() {
        charge -= STEP / 10;
        gross += STEP / 10;
        schedule.due(charge, gross, VOLTS_12_5, 4_000);
        assertEquals(SaveReason.NONE, schedule.due(charge, gross, 11_000_000, 999));
        assertEquals(SaveReason.VOLTS_FALLING, schedule.due(charge, gross, 11_000_000, 1));
        attempted();
        // Its credit is spent; ten seconds and a tenth of a step do not bring another.
        seconds(12, VOLTS_12_5);
        assertEquals(SaveReason.NONE, second(-STEP / 10, 11_000_000));
    }

    /** What stood before the power cut is no fall: nobody saw what was between. */
    @Test
    void aFallFromBeforeThePowerCutIsNone() {
        seconds(3, VOLTS_12_5);
        schedule.powerUp(charge, gross);
        charge -= STEP / 10;
        gross += STEP / 10;
        assertEquals(SaveReason.NONE, schedule.due(charge, gross, 11_000_000, 5_000));
    }
}
