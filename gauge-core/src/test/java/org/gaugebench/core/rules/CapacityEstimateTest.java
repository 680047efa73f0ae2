package org.gaugebench.core.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** Capacity between a proven full and the empty voltage; 100 Ah declared, 1 % left (rule C2). */
class CapacityEstimateTest {
    private static final int ABSENT = Sample.TEMPERATURE_ABSENT;

    private final Minutes minutes = new Minutes();
    private CapacityEstimate estimate = new CapacityEstimate(Minutes.settings());

    /** A discharge of so many minutes at so many milliamps. */
    private void discharge(int number, int milliamps, int millicelsius) {
        for (int i = 0; i < number; i++) {
            estimate.addMinute(minutes.still(12_000_000, -milliamps * 1_000), millicelsius);
        }
    }

    private boolean cycle(int number, int milliamps, int millicelsius) {
        estimate.full(true);
        discharge(number, milliamps, millicelsius);
        return estimate.empty();
    }

    private boolean gave(int number, int milliamps, int millicelsius) {
        estimate.forget();
        cycle(number, milliamps, millicelsius);
        return estimate.candidateMilliampHours() != 0;
    }

    /** 79.2 Ah out and 1 % left are 80 Ah; from 100 towards 80 a quarter, at most 5 Ah, each. */
    @Test
    void twoAgreeingCyclesMoveTheValueByAQuarterOrATwentieth() {
        assertFalse(cycle(480, 9_900, ABSENT));
        assertEquals(80_000, estimate.candidateMilliampHours());
        assertEquals(0, estimate.measuredMilliampHours());
        assertTrue(cycle(480, 9_900, ABSENT));
        assertEquals(95_000, estimate.measuredMilliampHours());
        cycle(480, 9_900, ABSENT);
        assertEquals(91_250, estimate.measuredMilliampHours());
    }

    @Test
    void aCycleThatDoesNotAgreeMovesNothing() {
        cycle(480, 9_900, ABSENT);
        assertFalse(cycle(540, 9_900, ABSENT));
        assertEquals(0, estimate.measuredMilliampHours());
    }

    /** Set to full too early at 62 %, run to empty: 62 Ah come out of a battery of 100. */
    @Test
    void anImplausibleFullTeachesNothing() {
        for (int i = 0; i < 3; i++) {
            estimate.full(false);
            discharge(372, 10_000, ABSENT);
            assertFalse(estimate.empty());
        }
        assertEquals(0, estimate.candidateMilliampHours());
    }

    @Test
    void halfTheCapacityIsDeepEnough() {
        assertTrue(gave(300, 10_000, ABSENT));
        assertFalse(gave(299, 10_000, ABSENT));
    }

    /** In five hours is slow enough, 20 A; at 20.1 A the rate takes its part. */
    @Test
    void aFastDischargeTeachesNothing() {
        assertTrue(gave(200, 20_000, ABSENT));
        assertFalse(gave(200, 20_100, ABSENT));
        // 100 Ah in five hours exactly
        assertTrue(gave(300, 20_000, ABSENT));
    }

    /** C4: results of 60 Ah ask for a quarter of 40, which is more than a twentieth of 100. */
    @Test
    void aStepIsATwentiethOfTheDeclaredAtMost() {
        cycle(360, 9_900, ABSENT);
        assertTrue(cycle(360, 9_900, ABSENT));
        assertEquals(95_000, estimate.measuredMilliampHours());
    }

    /** C5: 132 Ah come out of it again and again; a record may hold anything. */
    @Test
    void theValueStaysBetweenHalfAndElevenTenths() {
        for (int i = 0; i < 20; i++) {
            cycle(800, 9_900, ABSENT);
        }
        assertEquals(110_000, estimate.measuredMilliampHours());
        estimate.resume(1_000_000, 0);
        assertEquals(110_000, estimate.measuredMilliampHours());
        estimate.resume(1, 0);
        assertEquals(50_000, estimate.measuredMilliampHours());
    }

    /** The answer is whether the value moved, and a shallow or fast cycle moves nothing. */
    @Test
    void aCycleThatIsNoEvidenceIsNotTold() {
        assertFalse(cycle(299, 10_000, ABSENT));
        assertFalse(cycle(200, 20_100, ABSENT));
    }

    @Test
    void threeDaysAreShortEnough() {
        assertTrue(gave(3 * Minutes.DAY, 1_000, ABSENT));
        assertFalse(gave(3 * Minutes.DAY + 1, 1_000, ABSENT));
    }

    @Test
    void fifteenToThirtyFiveDegreesAreMild() {
        assertTrue(gave(480, 9_900, 15_000));
        assertTrue(gave(480, 9_900, 35_000));
        assertFalse(gave(480, 9_900, 14_999));
        assertFalse(gave(480, 9_900, 35_001));
    }

    @Test
    void whatSpoilsACycleEndsIt() {
        estimate.full(true);
        assertTrue(estimate.isFit());
        estimate.spoil();
        assertFalse(estimate.isFit());
        discharge(480, 9_900, ABSENT);
        estimate.empty();
        assertEquals(0, estimate.candidateMilliampHours());
    }

    @Test
    void oneFullGivesOneResult() {
        cycle(480, 9_900, ABSENT);
        discharge(480, 9_900, ABSENT);
        assertFalse(estimate.empty());
        assertEquals(80_000, estimate.candidateMilliampHours());
    }

    @Test
    void emptyWithoutAnyMinuteTeachesNothing() {
        estimate.full(true);
        assertFalse(estimate.empty());
    }

    @Test
    void anchorsLooserThanThreePercentTeachNothing() {
        for (Setting residual : new Setting[] {Setting.FULL_RESIDUAL, Setting.EMPTY_RESIDUAL}) {
            estimate = new CapacityEstimate(Minutes.settings(residual, 30_001));
            assertFalse(gave(480, 9_900, ABSENT), residual.key());
        }
    }

    @Test
    void measureCapacityZeroSwitchesItOff() {
        estimate = new CapacityEstimate(Minutes.settings(Setting.MEASURE_CAPACITY, 0));
        assertFalse(gave(480, 9_900, ABSENT));
    }

    @Test
    void takesOverAndForgets() {
        estimate.full(true);
        estimate.resume(90_000, 80_000);
        assertFalse(estimate.isFit());
        assertEquals(90_000, estimate.measuredMilliampHours());
        assertTrue(cycle(480, 9_900, ABSENT));
        estimate.full(true);
        estimate.forget();
        assertFalse(estimate.isFit());
        assertEquals(0, estimate.measuredMilliampHours());
    }
}
