package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.SmartBatteryWord;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/**
 * Every crossing of the raw clock, through a whole gauge: 0, 2^31, 2^32, the longest tick, a clock
 * that stands still or runs back, and gaps that come back again and again.
 */
class GaugeClockTest {
    private static final int AMP = GaugeFixture.COUNTS_PER_AMP;
    private static final long AMP_HOUR = GaugeFixture.NANOCOULOMBS_PER_AMP_HOUR;
    private static final long TWO_TO_32 = 1L << 32;

    private final GaugeFixture fixture =
            new GaugeFixture(
                    GaugeFixture.roundNumbers()
                            .set(Setting.COULOMBIC_EFFICIENCY, 1_000_000)
                            .set(Setting.QUIET_TIME, 0)
                            .set(Setting.HOLD, 2)
                            .build());

    /** A gauge whose first sample carries this raw clock. */
    private GaugeFixture startingAt(int clockMillis) {
        fixture.gauge.powerUp(0, OffTime.EXACT);
        fixture.sample.clockMillis = clockMillis;
        fixture.tick(0, 0);
        fixture.declare(500_000);
        fixture.heard.clear();
        return fixture;
    }

    private void assertAnOrdinaryHour(int clockMillis) {
        startingAt(clockMillis);
        fixture.ticks(3_600, AMP, 1_000);
        assertEquals(51 * AMP_HOUR, fixture.charge());
        assertEquals(3_600_000, fixture.register(Register.UPTIME_MILLIS));
        assertEquals(0, fixture.register(Register.FAULT_TICKS));
        assertEquals(3_600_000, fixture.register(Register.BAND_MILLIS));
    }

    @Test
    void theWrapAfterFortyNineDaysIsAnOrdinaryTick() {
        assertAnOrdinaryHour(-1_800_500);
        assertTrue(fixture.register(Register.CLOCK_MILLIS) < 2_000_000, "wrapped");
    }

    @Test
    void theSignBitOfTheClockIsAnOrdinaryTick() {
        assertAnOrdinaryHour(Integer.MAX_VALUE - 1_800_500);
    }

    @Test
    void theUptimePassesTheClocksWidth() {
        startingAt(0);
        // 2^31 - 1 ms at a time, as gaps: uptime goes on counting where the clock wraps.
        fixture.tick(0, Integer.MAX_VALUE).tick(0, Integer.MAX_VALUE).tick(0, 1_000);
        assertEquals(TWO_TO_32 - 2 + 1_000, fixture.register(Register.UPTIME_MILLIS));
        assertEquals(998, fixture.register(Register.CLOCK_MILLIS));
    }

    @Test
    void theLongestTickIsCountedAndOneMillisecondMoreIsAGap() {
        startingAt(0);
        fixture.tick(AMP, 65_535);
        assertEquals(0, fixture.read().faultBits);
        assertEquals(50 * AMP_HOUR + 65_535_000_000L, fixture.charge());
        fixture.tick(AMP, 65_536);
        assertEquals(Fault.SAMPLES_MISSING.bit(), fixture.read().faultBits);
        assertEquals(50 * AMP_HOUR + 65_535_000_000L, fixture.charge());
        // What was not counted is in the band: the rated current for the whole gap.
        assertEquals(65_536 * 1_048_576_000L, fixture.register(Register.BAND_GAP_NANOCOULOMBS));
    }

    @Test
    void aRepeatedSampleIsNotCountedAndNoMinutePasses() {
        startingAt(0);
        fixture.tick(AMP, 1_000).tick(AMP, 0).tick(AMP, 0);
        assertEquals(Fault.SAMPLE_REPEATED.bit(), fixture.read().faultBits);
        assertEquals(2, fixture.gauge.faults().count(Fault.SAMPLE_REPEATED));
        assertEquals(50 * AMP_HOUR + 1_000_000_000L, fixture.charge());
        assertEquals(1_000, fixture.register(Register.MINUTE_MILLIS));
        assertEquals(0, fixture.register(Register.BAND_GAP_NANOCOULOMBS));
    }

    @Test
    void aStalledClockThatGoesOnLosesNothing() {
        startingAt(0);
        fixture.ticks(50, AMP, 0).tick(AMP, 50_000);
        assertEquals(50 * AMP_HOUR + 50_000_000_000L, fixture.charge());
        assertEquals(0, fixture.read().faultBits);
    }

    /** Half the clock's range is the most that can be told from a clock that ran backwards. */
    @Test
    void halfTheClocksRangeForwardIsAGapAndOneMoreIsBackwards() {
        startingAt(0);
        fixture.tick(0, Integer.MAX_VALUE);
        assertEquals(Fault.SAMPLES_MISSING.bit(), fixture.read().faultBits);
        fixture.tick(0, Integer.MIN_VALUE);
        assertEquals(Fault.CLOCK_BACKWARDS.bit(), fixture.read().faultBits);
        assertTrue(fixture.read().bandUnknown, "a clock that ran back may hide any time");
    }

    /**
     * Half a minute of samples, then a gap, for ever: no minute is ever whole, so no rule judges
     * and no filter is fed. What is shown follows the count, and the band says how little it is
     * worth.
     */
    @Test
    void gapsLessThanAMinuteApartStarveTheRulesAndTheBandSaysSo() {
        startingAt(0);
        fixture.volts(14_400);
        for (int i = 0; i < 60; i++) {
            fixture.ticks(30, AMP, 1_000).tick(AMP, 70_000);
        }
        assertEquals(0, fixture.times(Event.SET_TO_FULL), "a hold of two minutes never ran");
        assertEquals(RuleReason.SAMPLES_MISSING, fixture.read().ruleReason);
        assertEquals(60, fixture.gauge.faults().count(Fault.SAMPLES_MISSING));
        // Counted all the same: 60 half minutes of an ampere, once up to the percentage shown.
        assertEquals(50 * AMP_HOUR + 1_800_000_000_000L, fixture.charge());
        assertEquals(505_000, fixture.read().stateOfChargePartsPerMillion);
        assertTrue(fixture.read().bandUnknown);
    }

    @Test
    void theHoursFollowTheCountThroughSuchGaps() {
        startingAt(0);
        fixture.minutes(2, -10 * AMP);
        int before = fixture.read().timeToEmptyMinutes;
        for (int i = 0; i < 60; i++) {
            fixture.ticks(50, -10 * AMP, 1_000).tick(-10 * AMP, 70_000);
        }
        int after = fixture.read().timeToEmptyMinutes;
        assertNotEquals(before, after);
        // 50 minutes at 10 A went; the hours at one load go down by as much, and Peukert's part.
        assertEquals(50, before - after, 5);
    }

    /** E3: a heavy load may hide among missing samples, so five light minutes are asked again. */
    @Test
    void afterAGapTheFiveLightMinutesBeginAnew() {
        startingAt(0);
        fixture.declare(100_000);
        fixture.volts(10_600).minutes(4, -2 * AMP).tick(-2 * AMP, 65_536);
        fixture.minutes(4, -2 * AMP);
        assertEquals(0, fixture.times(Event.SET_TO_EMPTY));
        fixture.minutes(1, -2 * AMP);
        assertEquals(1, fixture.times(Event.SET_TO_EMPTY));
    }

    /** R3: a charge may hide among them, so the twelve hours without one begin anew. */
    @Test
    void afterAGapTheRestBeginsAnew() {
        startingAt(0);
        fixture.volts(12_400).minutes(719, 0).tick(0, 65_536);
        fixture.minutes(719, 0);
        assertEquals(0, fixture.times(Event.CORRECTED_BY_REST));
        fixture.minutes(1, 0);
        assertEquals(1, fixture.times(Event.CORRECTED_BY_REST));
    }

    /** D11: from one side of a gap to the other is no step, whatever current and voltage did. */
    @Test
    void afterAGapTheNextMinuteIsNoNeighbour() {
        startingAt(0);
        for (int i = 0; i < 6; i++) {
            fixture.volts(12_800 - i % 2 * 400).minutes(1, i % 2 * 20 * AMP);
            fixture.tick(0, 65_536);
        }
        assertEquals(0, fixture.read().faultBits & Fault.POLARITY_REVERSED.bit());
        assertEquals(0, fixture.register(Register.RESISTANCE_MICROOHMS));
    }

    /** V7: the four seconds before the gap are not joined to the one after it. */
    @Test
    void afterAGapTheAverageBeginsAnew() {
        startingAt(0);
        fixture.tick(-500 * AMP, 4_000).tick(-2 * AMP, 65_536).tick(-2 * AMP, 5_000);
        int word = fixture.gauge.readBus(SmartBatteryWord.AVERAGE_CURRENT_CODE);
        // in units of 100 mA: the fixture's shunt is large
        assertEquals(-20, (short) word);
    }
}
