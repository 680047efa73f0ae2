package org.gaugebench.core.charge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/**
 * Unit facts: 1 C = 1 A s and 1 h = 3600 s (BIPM, SI Brochure, 9th edition, 2019), hence 1 Ah =
 * 3600 C = 3.6e12 nC exactly.
 */
class ChargeUnitsReferenceTest {
    private static final long NANOCOULOMBS_PER_AMP_HOUR = 3_600_000_000_000L;
    private static final int WHOLE = 1_000_000;

    private final ChargeAccumulator hundredAmpHours =
            new ChargeAccumulator(100 * NANOCOULOMBS_PER_AMP_HOUR, WHOLE);

    @Test
    void oneAmpereForThreeThousandSixHundredSecondsIsOneAmpHour() {
        feed(hundredAmpHours, 1_000_000, 3_600, 1_000);
        assertEquals(NANOCOULOMBS_PER_AMP_HOUR, hundredAmpHours.inNanocoulombs());
        assertEquals(NANOCOULOMBS_PER_AMP_HOUR, hundredAmpHours.settledNanocoulombs());
        assertEquals(
                10_000,
                StateOfCharge.partsPerMillion(
                        hundredAmpHours.chargeNanocoulombs(),
                        hundredAmpHours.capacityNanocoulombs()));
    }

    /** 1 mAh = 3.6 C: a milliampere is counted in every tick, however short. */
    @Test
    void oneMilliampereForAnHourInTicksOfOneMillisecondIsOneMilliampHour() {
        feed(hundredAmpHours, 1_000, 3_600_000, 1);
        assertEquals(NANOCOULOMBS_PER_AMP_HOUR / 1_000, hundredAmpHours.settledNanocoulombs());
    }

    /** A signed 32-bit count of millicoulombs overflows at 596.52 Ah; this one must not. */
    @Test
    void sixHundredAmpHoursDoNotWrap() {
        ChargeAccumulator bank = new ChargeAccumulator(600 * NANOCOULOMBS_PER_AMP_HOUR, WHOLE);
        bank.setTo(0, true);
        feed(bank, 600_000_000, 60, 60_000);
        assertEquals(600 * NANOCOULOMBS_PER_AMP_HOUR, bank.settledNanocoulombs());
        assertTrue(bank.settledNanocoulombs() / 1_000_000 > Integer.MAX_VALUE);
        assertEquals(0, bank.surplusNanocoulombs());
    }

    /** 2^63 nC = 2.56e6 Ah: the sums stop there and do not wrap. */
    @Test
    void theSumsSaturate() {
        feed(hundredAmpHours, Integer.MAX_VALUE, 80_000, 60_000);
        feed(hundredAmpHours, -Integer.MAX_VALUE, 80_000, 60_000);
        assertEquals(Long.MAX_VALUE, hundredAmpHours.inNanocoulombs());
        assertEquals(Long.MAX_VALUE, hundredAmpHours.outNanocoulombs());
        assertEquals(Long.MAX_VALUE, hundredAmpHours.surplusNanocoulombs());
        assertEquals(Long.MAX_VALUE, hundredAmpHours.deficitNanocoulombs());
        assertEquals(0, hundredAmpHours.settledNanocoulombs());
    }

    private static void feed(ChargeAccumulator charge, int microamps, int ticks, int millis) {
        int minuteMillis = 0;
        for (int i = 0; i < ticks; i++) {
            charge.add(microamps, millis);
            minuteMillis += millis;
            if (minuteMillis == MinuteMean.MINUTE_MILLIS) {
                charge.settleMinute();
                minuteMillis = 0;
            }
        }
    }
}
