package org.gaugebench.core.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.gaugebench.core.port.EstimateState;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class TimeToEmptyAnswersTest {
    private static final long AMP_HOUR = 3_600_000_000_000L;
    private static final int AMP = 1_000_000;
    private static final int LONGEST = 99 * 60;

    private final LoadFilter filter = new LoadFilter(100 * AMP_HOUR, 30);
    private final EstimateInput input = new EstimateInput();

    @BeforeEach
    void sixtyAmpHoursAreLeft() {
        input.known = true;
        charge(60, 60, 60);
    }

    private void charge(long low, long ampHours, long high) {
        input.lowNanocoulombs = low * AMP_HOUR;
        input.chargeNanocoulombs = ampHours * AMP_HOUR;
        input.highNanocoulombs = high * AMP_HOUR;
    }

    private TimeToEmpty at(int milliamps, long keptBackAmpHours, RateModel model) {
        filter.addMinute(milliamps * 1_000);
        input.presentMicroamps = milliamps * 1_000;
        TimeToEmpty time = new TimeToEmpty(10_000, LONGEST, keptBackAmpHours * AMP_HOUR, model);
        time.update(input, filter);
        return time;
    }

    private static void assertAnswer(EstimateState state, int minutes, TimeAnswer answer) {
        assertEquals(state, answer.state());
        assertEquals(minutes, answer.minutes());
    }

    @Test
    void chargeOverCurrentRoundedDown() {
        // 60 Ah at 7 A is 514.28 min.
        TimeToEmpty time = at(-7_000, 0, RateModel.none());
        assertEquals(EstimateState.ESTIMATE, time.state());
        assertEquals(514, time.minutes());
    }

    @Test
    void theKeptBackLevelReadsZeroWhileChargeIsLeft() {
        charge(19, 20, 21);
        TimeToEmpty time = at(-5_000, 20, RateModel.none());
        assertEquals(EstimateState.ESTIMATE, time.state());
        assertEquals(0, time.minutes());
        assertAnswer(EstimateState.ESTIMATE, 0, time.low());
        assertAnswer(EstimateState.ESTIMATE, 12, time.high());
    }

    @Test
    void theRangeComesFromTheBand() {
        // 62 %, 57 to 67 of 100 Ah at 5 A: 12:24, 11:24 to 13:24.
        charge(57, 62, 67);
        TimeToEmpty time = at(-5_000, 0, RateModel.none());
        assertEquals(12 * 60 + 24, time.minutes());
        assertAnswer(EstimateState.ESTIMATE, 11 * 60 + 24, time.low());
        assertAnswer(EstimateState.ESTIMATE, 13 * 60 + 24, time.high());
    }

    @Test
    void beyondTheLongestTimeItIsMoreThan() {
        // 100 Ah: 1.0102 A is 98.99 h, 1.0000 A is 100 h.
        charge(100, 100, 100);
        assertEquals(EstimateState.ESTIMATE, at(-1_010, 0, RateModel.none()).state());
        LoadFilter light = new LoadFilter(100 * AMP_HOUR, 30);
        light.addMinute(-AMP);
        TimeToEmpty time = new TimeToEmpty(10_000, LONGEST, 0, RateModel.none());
        time.update(input, light);
        assertEquals(EstimateState.MORE_THAN, time.state());
        assertEquals(LONGEST, time.minutes());
    }

    @Test
    void aTimeBeyondSixteenBitsDoesNotWrap() {
        // 100 Ah at 0.0909 A is 66,006 min; in sixteen bits it would read 470.
        charge(100, 100, 100);
        TimeToEmpty time = at(-91, 0, RateModel.none());
        assertEquals(EstimateState.MORE_THAN, time.state());
        assertEquals(LONGEST, time.minutes());
    }

    @Test
    void thereIsNoEstimateOnlyWithinTheOffsetBound() {
        assertEquals(EstimateState.NO_ESTIMATE, at(-9, 0, RateModel.none()).state());
        assertEquals(EstimateState.NO_ESTIMATE, at(9, 0, RateModel.none()).state());
        LoadFilter small = new LoadFilter(100 * AMP_HOUR, 30);
        small.addMinute(-10_000);
        TimeToEmpty time = new TimeToEmpty(10_000, LONGEST, 0, RateModel.none());
        time.update(input, small);
        assertEquals(EstimateState.MORE_THAN, time.state());
    }

    @Test
    void anUnknownChargeHasNoHours() {
        input.known = false;
        TimeToEmpty time = at(-5_000, 0, RateModel.none());
        assertEquals(EstimateState.NO_ESTIMATE, time.state());
        assertAnswer(EstimateState.NO_ESTIMATE, 0, time.atThisLoad());
        assertAnswer(EstimateState.NO_ESTIMATE, 0, time.atUsualUse());
    }

    @Test
    void chargingHasNoTimeToEmptyButTheUsualUseHas() {
        for (int minute = 0; minute < 60; minute++) {
            filter.addMinute(-3 * AMP);
        }
        for (int minute = 0; minute < 40; minute++) {
            filter.addMinute(10 * AMP);
        }
        TimeToEmpty time = at(10_000, 0, RateModel.none());
        assertEquals(EstimateState.CHARGING, time.state());
        assertAnswer(EstimateState.CHARGING, 0, time.atThisLoad());
        assertAnswer(EstimateState.ESTIMATE, 20 * 60, time.atUsualUse());
    }

    @Test
    void theLoadOfThisMomentAnswersBesideTheFilteredOne() {
        filter.addMinute(-2 * AMP);
        input.presentMicroamps = -20 * AMP;
        TimeToEmpty time = new TimeToEmpty(10_000, LONGEST, 0, RateModel.none());
        time.update(input, filter);
        assertEquals(30 * 60, time.minutes());
        assertAnswer(EstimateState.ESTIMATE, 3 * 60, time.atThisLoad());
    }

    @Test
    void theHoursEndWhereTheMoreOfKeptBackAndLeftBehindBegins() {
        charge(100, 100, 100);
        TemperatureCurve cold = new TemperatureCurve(840_000, 712_000, 478_000);
        RateModel model = new RateModel(100 * AMP_HOUR, 20, 1_200_000, cold);
        // 100 A: factor 20^0.2 = 1.8206, so 60 min become 32.95.
        assertEquals(32, at(-100_000, 0, model).minutes());
        // At 0 °C 0.712 / 1.8206 = 39.11 of 100 Ah come out; half kept back is less than stays.
        input.temperatureMillicelsius = 0;
        assertEquals(23, at(-100_000, 50, model).minutes());
        // Seven tenths kept back are more: 30 Ah are left.
        assertEquals(18, at(-100_000, 70, model).minutes());
    }

    @Test
    void withoutABandOnlyTheFilteredAnswerIsGiven() {
        filter.addMinute(-5 * AMP);
        TimeToEmpty time = new TimeToEmpty(10_000, LONGEST, 0, RateModel.none());
        time.update(60 * AMP_HOUR, filter, true);
        assertEquals(12 * 60, time.minutes());
        time.update(60 * AMP_HOUR, filter, false);
        assertEquals(EstimateState.NO_ESTIMATE, time.state());
    }
}
