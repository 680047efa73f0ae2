package org.gaugebench.core.charge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.Sample;
import org.junit.jupiter.api.Test;

/** Doubling every 10 K, and sums that are exact over a month (rule G23). */
class SelfDischargeTest {
    private static final int MINUTES_PER_MONTH = 43_200;
    private static final long AMP_HOUR = 3_600_000_000_000L;

    @Test
    void doublesEveryTenKelvin() {
        int[] expected = {16, 32, 64, 128, 256, 512, 1_024, 2_048, 4_096, 8_192, 16_384};
        for (int i = 0; i < expected.length; i++) {
            assertEquals(expected[i], SelfDischarge.warmthQ8(-20_000 + 10_000 * i));
        }
        assertEquals(256, SelfDischarge.warmthQ8(Sample.TEMPERATURE_ABSENT));
    }

    @Test
    void isLimitedAtEitherEnd() {
        assertEquals(16, SelfDischarge.warmthQ8(-20_001));
        assertEquals(16, SelfDischarge.warmthQ8(Integer.MIN_VALUE + 1));
        assertEquals(16_384, SelfDischarge.warmthQ8(80_001));
        assertEquals(16_384, SelfDischarge.warmthQ8(Integer.MAX_VALUE));
    }

    /**
     * The chord of 2^x lies at most 6.15 % above it; the last bit is 1/256 of the result or less.
     */
    @Test
    void betweenTheStepsItIsNeverLowAndAtMostSixPercentHigh() {
        for (int millicelsius = -20_000; millicelsius <= 80_000; millicelsius += 37) {
            double exact = 256 * StrictMath.pow(2, (millicelsius - 20_000) / 10_000.0);
            int warmth = SelfDischarge.warmthQ8(millicelsius);
            assertTrue(warmth > exact - 1, millicelsius + ": " + warmth);
            assertTrue(warmth <= exact * 1.0615, millicelsius + ": " + warmth);
        }
    }

    private static long month(SelfDischarge loss, int warmthQ8) {
        long sum = 0;
        for (int i = 0; i < MINUTES_PER_MONTH; i++) {
            sum += loss.minuteNanocoulombs(warmthQ8);
        }
        return sum;
    }

    /** 3 % of 100 Ah are 3 Ah a month at 20 °C, 12 Ah at 40 °C, to the nanocoulomb. */
    @Test
    void losesExactlyThatInAMonth() {
        assertEquals(3 * AMP_HOUR, month(new SelfDischarge(30_000, 100 * AMP_HOUR), 256));
        assertEquals(12 * AMP_HOUR, month(new SelfDischarge(30_000, 100 * AMP_HOUR), 1_024));
    }

    /**
     * 1 ppm of 100 mAh are 360,000 nC: 8 and a third a minute, and nothing is lost of the third.
     */
    @Test
    void carriesTheRemainderFromMinuteToMinute() {
        SelfDischarge loss = new SelfDischarge(1, AMP_HOUR / 10);
        assertEquals(8, loss.minuteNanocoulombs(256));
        assertEquals(8, loss.minuteNanocoulombs(256));
        assertEquals(9, loss.minuteNanocoulombs(256));
        assertEquals(360_000, month(new SelfDischarge(1, AMP_HOUR / 10), 256));
        assertEquals(360_000 / 16, month(new SelfDischarge(1, AMP_HOUR / 10), 16));
    }

    /** Half of 10,000 Ah a month at 64-fold: 5e3 Ah x 64 to the nanocoulomb. */
    @Test
    void holdsAtTheEndsOfItsRange() {
        long sum = month(new SelfDischarge(500_000, 10_000 * AMP_HOUR), 16_384);
        assertEquals(320_000 * AMP_HOUR, sum);
        assertEquals(0, month(new SelfDischarge(0, 10_000 * AMP_HOUR), 16_384));
    }
}
