package org.gaugebench.core.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** Hours left, and when there are none (rules T2 and T3). */
class TimeToEmptyTest {
    private static final long AMP_HOUR = 3_600_000_000_000L;

    private static TimeToEmpty after(long nanocoulombs, int microamps, boolean known) {
        TimeToEmpty time = new TimeToEmpty(GaugeSettings.builder().build());
        LoadFilter filter = new LoadFilter();
        filter.addMinute(microamps);
        time.update(nanocoulombs, filter, known);
        return time;
    }

    private static void assertAnswer(EstimateState state, int minutes, TimeToEmpty time) {
        assertEquals(state, time.state());
        assertEquals(minutes, time.minutes());
    }

    @Test
    void sixtyAmpHoursAtSixAmperesLastTenHours() {
        assertAnswer(EstimateState.ESTIMATE, 600, after(60 * AMP_HOUR, -6_000_000, true));
    }

    /** 60 Ah at 0.4 A is 150 h, which a two-digit field cannot show. */
    @Test
    void aHundredAndFiftyHoursReadMoreThanNinetyNine() {
        assertAnswer(EstimateState.MORE_THAN, 99 * 60, after(60 * AMP_HOUR, -400_000, true));
    }

    /** 66,000 minutes would wrap to 464 in 16 bits: 100 Ah at 90.9 mA must not read 7:44. */
    @Test
    void sixteenBitsOfMinutesAreNoTrap() {
        assertAnswer(EstimateState.MORE_THAN, 99 * 60, after(100 * AMP_HOUR, -90_909, true));
        TimeToEmpty longest =
                new TimeToEmpty(GaugeSettings.builder().set(Setting.LONGEST_TIME, 1_000).build());
        LoadFilter filter = new LoadFilter();
        filter.addMinute(-90_909);
        longest.update(90 * AMP_HOUR, filter, true);
        assertAnswer(EstimateState.ESTIMATE, 59_400, longest);
        longest.update(100 * AMP_HOUR, filter, true);
        assertAnswer(EstimateState.MORE_THAN, 60_000, longest);
    }

    @Test
    void thirtyTwoBitsOfMinutesAreNoTrapEither() {
        TimeToEmpty time =
                new TimeToEmpty(GaugeSettings.builder().set(Setting.OFFSET_BOUND, 1).build());
        LoadFilter filter = new LoadFilter();
        filter.addMinute(-1);
        time.update(10_000 * AMP_HOUR, filter, true);
        assertAnswer(EstimateState.MORE_THAN, 99 * 60, time);
    }

    @Test
    void theLongestTimeItselfIsStillAnEstimate() {
        long ninetyNineHours = 99 * AMP_HOUR;
        assertAnswer(EstimateState.ESTIMATE, 5_940, after(ninetyNineHours, -1_000_000, true));
        long lessThanAMinuteMore = ninetyNineHours + AMP_HOUR / 60 - 1;
        assertAnswer(EstimateState.ESTIMATE, 5_940, after(lessThanAMinuteMore, -1_000_000, true));
        long aMinuteMore = ninetyNineHours + AMP_HOUR / 60;
        assertAnswer(EstimateState.MORE_THAN, 5_940, after(aMinuteMore, -1_000_000, true));
    }

    @Test
    void minutesAreRoundedDown() {
        assertAnswer(EstimateState.ESTIMATE, 59, after(AMP_HOUR - 1, -1_000_000, true));
        assertAnswer(EstimateState.ESTIMATE, 0, after(0, -1_000_000, true));
    }

    @Test
    void theOffsetBoundItselfIsALoad() {
        assertAnswer(EstimateState.NO_ESTIMATE, 0, after(AMP_HOUR, -9_999, true));
        assertAnswer(EstimateState.MORE_THAN, 5_940, after(AMP_HOUR, -10_000, true));
        assertAnswer(EstimateState.NO_ESTIMATE, 0, after(AMP_HOUR, 9_999, true));
        assertAnswer(EstimateState.CHARGING, 0, after(AMP_HOUR, 10_000, true));
        assertAnswer(EstimateState.NO_ESTIMATE, 0, after(AMP_HOUR, 0, true));
    }

    @Test
    void thereIsNoAnswerWithoutAMinuteOrWithoutACharge() {
        TimeToEmpty time = new TimeToEmpty(GaugeSettings.builder().build());
        assertAnswer(EstimateState.NO_ESTIMATE, 0, time);
        time.update(AMP_HOUR, new LoadFilter(), true);
        assertAnswer(EstimateState.NO_ESTIMATE, 0, time);
        assertAnswer(EstimateState.NO_ESTIMATE, 0, after(AMP_HOUR, -1_000_000, false));
    }
}
