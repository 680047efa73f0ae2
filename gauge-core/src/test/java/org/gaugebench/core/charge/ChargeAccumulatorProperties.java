package org.gaugebench.core.charge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.Size;

/**
 * Statements about the count by itself (rules G2 to G5); {@code GaugeCountProperties} has the way
 * in.
 */
class ChargeAccumulatorProperties {
    private static final long AMP_HOUR = 3_600_000_000_000L;
    private static final int WHOLE = 1_000_000;
    private static final int LARGEST_MICROAMPS = Integer.MAX_VALUE - 2;

    @Property
    void splittingAStretchChangesNothing(
            @ForAll @IntRange(min = -LARGEST_MICROAMPS, max = LARGEST_MICROAMPS) int microamps,
            @ForAll @IntRange(min = 2, max = 60_000) int millis,
            @ForAll @IntRange(min = 1, max = 59_999) int cut,
            @ForAll @IntRange(min = 500_000, max = WHOLE) int efficiency) {
        int firstMillis = 1 + cut % (millis - 1);
        ChargeAccumulator whole = new ChargeAccumulator(1_000 * AMP_HOUR, efficiency);
        ChargeAccumulator split = new ChargeAccumulator(1_000 * AMP_HOUR, efficiency);
        whole.setTo(500 * AMP_HOUR, false);
        split.setTo(500 * AMP_HOUR, false);
        whole.add(microamps, millis);
        split.add(microamps, firstMillis);
        split.add(microamps, millis - firstMillis);
        assertSame(whole, split);
        whole.settleMinute();
        split.settleMinute();
        assertSame(whole, split);
    }

    private static void assertSame(ChargeAccumulator one, ChargeAccumulator other) {
        assertEquals(one.chargeNanocoulombs(), other.chargeNanocoulombs());
        assertEquals(one.minuteNanocoulombs(), other.minuteNanocoulombs());
        assertEquals(one.settledNanocoulombs(), other.settledNanocoulombs());
        assertEquals(one.inNanocoulombs(), other.inNanocoulombs());
        assertEquals(one.outNanocoulombs(), other.outNanocoulombs());
        assertEquals(one.efficiencyRemainderQ16(), other.efficiencyRemainderQ16());
    }

    /** At 100 % efficiency and away from both clamps what goes in comes out again, exactly. */
    @Property
    void chargeThenEqualDischargeReturnsToTheStart(
            @ForAll @Size(min = 1, max = 30) List<@IntRange(min = 0, max = 100_000_000) Integer> up,
            @ForAll @LongRange(min = 100, max = 600) long startAmpHours) {
        ChargeAccumulator charge = new ChargeAccumulator(1_000 * AMP_HOUR, WHOLE);
        charge.setTo(startAmpHours * AMP_HOUR, false);
        for (int microamps : up) {
            charge.add(microamps, 60_000);
            charge.settleMinute();
        }
        for (int microamps : up) {
            charge.add(-microamps, 60_000);
            charge.settleMinute();
        }
        assertEquals(startAmpHours * AMP_HOUR, charge.settledNanocoulombs());
        assertEquals(0, charge.surplusNanocoulombs());
        assertEquals(0, charge.deficitNanocoulombs());
    }

    @Property
    void theCountNeverLeavesZeroToCapacity(
            @ForAll @Size(min = 1, max = 60)
                    List<@IntRange(min = -LARGEST_MICROAMPS, max = LARGEST_MICROAMPS) Integer> way,
            @ForAll @LongRange(min = 100, max = 10_000_000) long capacityMilliampHours,
            @ForAll @IntRange(min = 0, max = WHOLE) int start,
            @ForAll boolean proven) {
        long capacity = capacityMilliampHours * (AMP_HOUR / 1_000);
        ChargeAccumulator charge = new ChargeAccumulator(capacity, 900_000);
        charge.setTo(StateOfCharge.nanocoulombs(start, capacity), proven);
        long limit =
                proven ? capacity : Math.max(capacity / 100 * 99, charge.settledNanocoulombs());
        for (int microamps : way) {
            charge.add(microamps, 60_000);
            long reading = charge.chargeNanocoulombs();
            assertTrue(reading >= 0 && reading <= limit, "reading " + reading);
            charge.settleMinute();
            assertEquals(reading, charge.settledNanocoulombs(), "settling moved the reading");
            assertEquals(reading, charge.chargeNanocoulombs());
            int parts = StateOfCharge.partsPerMillion(reading, capacity);
            assertTrue(parts >= 0 && parts <= WHOLE, "ppm " + parts);
        }
    }

    /** Settling an empty minute at a limit neither moves the count nor adds to what was cut off. */
    @Property
    void clampingIsIdempotent(
            @ForAll @IntRange(min = -LARGEST_MICROAMPS, max = LARGEST_MICROAMPS) int microamps,
            @ForAll boolean proven) {
        ChargeAccumulator charge = new ChargeAccumulator(10 * AMP_HOUR, 900_000);
        charge.setTo(proven ? 10 * AMP_HOUR : 5 * AMP_HOUR, proven);
        charge.add(microamps, 60_000);
        charge.settleMinute();
        long settled = charge.settledNanocoulombs();
        long surplus = charge.surplusNanocoulombs();
        long deficit = charge.deficitNanocoulombs();
        for (int i = 0; i < 3; i++) {
            charge.settleMinute();
            assertEquals(settled, charge.settledNanocoulombs());
            assertEquals(surplus, charge.surplusNanocoulombs());
            assertEquals(deficit, charge.deficitNanocoulombs());
            assertEquals(settled, charge.chargeNanocoulombs());
        }
    }

    /** What is cut off at a limit and what is kept add up to what came. */
    @Property
    void nothingIsLostAtTheLimits(
            @ForAll @Size(min = 1, max = 40)
                    List<@IntRange(min = -LARGEST_MICROAMPS, max = LARGEST_MICROAMPS) Integer>
                            way) {
        ChargeAccumulator charge = new ChargeAccumulator(10 * AMP_HOUR, WHOLE);
        charge.setTo(5 * AMP_HOUR, false);
        for (int microamps : way) {
            charge.add(microamps, 60_000);
            charge.settleMinute();
        }
        assertEquals(
                charge.inNanocoulombs() - charge.outNanocoulombs(),
                charge.settledNanocoulombs()
                        - 5 * AMP_HOUR
                        + charge.surplusNanocoulombs()
                        - charge.deficitNanocoulombs());
    }

    /** The efficiency's floor costs less than 1 nC in all, however many minutes there are. */
    @Property(tries = 200)
    void theCarriedRemainderKeepsRoundingBelowOneNanocoulomb(
            @ForAll @IntRange(min = 500_000, max = WHOLE) int efficiency,
            @ForAll @IntRange(min = 1, max = 1_000_000) int nanocoulombs,
            @ForAll @IntRange(min = 1, max = 5_000) int minutes) {
        CoulombicEfficiency stage = new CoulombicEfficiency(efficiency);
        long stored = 0;
        for (int i = 0; i < minutes; i++) {
            stored += stage.settle(nanocoulombs);
        }
        // nearest Q16 of the efficiency, halves up
        long factorQ16 = (2L * efficiency * 65_536 + WHOLE) / (2 * WHOLE);
        long scaled = (long) nanocoulombs * minutes * factorQ16;
        assertEquals(scaled / 65_536, stored);
        assertEquals(scaled % 65_536, stage.remainderQ16());
    }

    /** A million ticks of one 24-bit count (125 uA) sum exactly: no drift from rounding. */
    @Example
    void aMillionTicksOfOneCountSumExactly() {
        ChargeAccumulator charge = new ChargeAccumulator(100 * AMP_HOUR, WHOLE);
        for (int i = 1; i <= 1_000_000; i++) {
            charge.add(125, 1_000);
            if (i % 60 == 0) {
                charge.settleMinute();
            }
        }
        assertEquals(125L * 1_000 * 1_000_000, charge.chargeNanocoulombs());
        assertEquals(125L * 1_000 * 1_000_000, charge.inNanocoulombs());
    }

    @Example
    void aProofIsUsedUpWithoutPullingTheCountDown() {
        ChargeAccumulator charge = new ChargeAccumulator(100 * AMP_HOUR, WHOLE);
        assertEquals(100 * AMP_HOUR, charge.setTo(100 * AMP_HOUR, true));
        charge.add(-1_000_000, 60_000);
        charge.settleMinute();
        charge.withdrawProof();
        long settled = charge.settledNanocoulombs();
        assertEquals(100 * AMP_HOUR - AMP_HOUR / 60, settled);
        charge.add(1_000_000, 60_000);
        assertEquals(settled, charge.chargeNanocoulombs());
        charge.settleMinute();
        assertEquals(settled, charge.settledNanocoulombs());
        assertEquals(AMP_HOUR / 60, charge.surplusNanocoulombs());
        assertTrue(charge.isAtUpperLimit());
    }

    /**
     * G3: 20 mA of its own in a minute of 1 A leave 0.98 A to the efficiency of a half; with
     * nothing through the shunt they are a discharge. The sums through the shunt know none of it.
     */
    @Example
    void theGaugesOwnCurrentIsTakenOffTheMinutesNet() {
        ChargeAccumulator charge = new ChargeAccumulator(100 * AMP_HOUR, 500_000, 20_000);
        charge.setTo(50 * AMP_HOUR, false);
        charge.add(1_000_000, 60_000);
        charge.settleMinute();
        assertEquals(50 * AMP_HOUR + 980_000L * 60_000 / 2, charge.settledNanocoulombs());
        charge.setTo(50 * AMP_HOUR, false);
        charge.add(0, 60_000);
        assertEquals(50 * AMP_HOUR - 20_000L * 60_000, charge.chargeNanocoulombs());
        assertEquals(1_000_000L * 60_000, charge.inNanocoulombs());
        assertEquals(0, charge.outNanocoulombs());
    }

    /** G23: what the battery loses inside comes off the count and never makes a deficit. */
    @Example
    void aLossComesOffTheCountDownToZero() {
        ChargeAccumulator charge = new ChargeAccumulator(100 * AMP_HOUR, WHOLE);
        charge.setTo(1_000, false);
        charge.settleMinute(400);
        assertEquals(600, charge.settledNanocoulombs());
        charge.settleMinute(700);
        assertEquals(0, charge.settledNanocoulombs());
        charge.settleMinute(700);
        assertEquals(0, charge.settledNanocoulombs());
        assertEquals(0, charge.deficitNanocoulombs());
    }

    /** G4: only a proof is one. */
    @Example
    void fullIsProvenByAProofAlone() {
        ChargeAccumulator charge = new ChargeAccumulator(100 * AMP_HOUR, WHOLE);
        assertFalse(charge.isFullProven());
        charge.setTo(100 * AMP_HOUR, false);
        assertFalse(charge.isFullProven());
        charge.setTo(100 * AMP_HOUR, true);
        assertTrue(charge.isFullProven());
        charge.withdrawProof();
        assertFalse(charge.isFullProven());
    }
}
