package org.gaugebench.core.readout;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.Readout;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DisplayRoundingTest {
    @Test
    void aSmallChangeOfTheHoursWaitsUntilTheShownOneIsAMinuteOld() {
        ShownHours hours = new ShownHours();
        assertTrue(hours.update(500, 0));
        assertFalse(hours.update(509, 59_999));
        assertEquals(500, hours.minutes());
        assertTrue(hours.update(509, 60_000));
        assertEquals(509, hours.minutes());
        assertFalse(hours.update(500, 119_999));
        assertTrue(hours.update(500, 120_000));
    }

    @Test
    void aChangeOfTwoPercentShowsAtOnce() {
        ShownHours hours = new ShownHours();
        hours.update(500, 0);
        assertTrue(hours.update(490, 1));
        assertFalse(hours.update(499, 2));
        assertTrue(hours.update(500, 3));
    }

    @Test
    void belowFiftyMinutesAMinuteIsTheLeastChange() {
        ShownHours hours = new ShownHours();
        hours.update(10, 0);
        assertFalse(hours.update(10, 1));
        assertTrue(hours.update(9, 2));
        assertTrue(hours.update(0, 3));
        assertFalse(hours.update(0, 4));
    }

    @ParameterizedTest
    @CsvSource({
        "599, 599",
        "600, 600",
        "604, 600",
        "1439, 1435",
        "1440, 1440",
        "1499, 1440",
        "5940, 5940",
        "2147483647, 2147483640"
    })
    void longTimesAreRoundedDownToCoarserSteps(int minutes, int shown) {
        ShownHours hours = new ShownHours();
        hours.update(minutes, 0);
        assertEquals(shown, hours.minutes());
    }

    @Test
    void afterClearingTheNextTimeShowsAtOnce() {
        ShownHours hours = new ShownHours();
        hours.update(500, 0);
        hours.clear();
        assertTrue(hours.update(501, 1));
        assertEquals(501, hours.minutes());
    }

    @Test
    void onlyProvenFullReadsOneHundred() {
        ShownPercent percent = new ShownPercent();
        percent.update(1_000_000, false);
        assertEquals(99, percent.percent());
        percent.update(1_000_000, true);
        assertEquals(100, percent.percent());
    }

    /** The noise of a full battery takes nanocoulombs away each minute. */
    @Test
    void aProvenOneHundredStandsUntilHalfAPercentHasLeft() {
        ShownPercent percent = new ShownPercent();
        percent.update(999_999, true);
        assertEquals(99, percent.percent(), "it has to be reached first");
        percent.update(1_000_000, true);
        percent.update(995_000, true);
        assertEquals(100, percent.percent());
        percent.update(994_999, true);
        assertEquals(99, percent.percent());
        percent.update(1_000_000, true);
        percent.update(999_999, false);
        assertEquals(99, percent.percent(), "no longer proven");
    }

    @Test
    void onlyEmptyReadsZero() {
        ShownPercent percent = new ShownPercent();
        percent.update(1, false);
        assertEquals(1, percent.percent());
        percent.update(0, false);
        assertEquals(0, percent.percent());
        percent.update(1, false);
        assertEquals(1, percent.percent());
    }

    @Test
    void thePercentageFallsAtOnceAndRisesHalfAPercentLater() {
        ShownPercent percent = new ShownPercent();
        percent.update(620_000, false);
        assertEquals(62, percent.percent());
        percent.update(619_999, false);
        assertEquals(61, percent.percent());
        percent.update(624_999, false);
        assertEquals(61, percent.percent());
        percent.update(625_000, false);
        assertEquals(62, percent.percent());
        percent.update(640_000, false);
        assertEquals(64, percent.percent());
    }

    @Test
    void anUnknownPercentageIsSaidAndLeft() {
        ShownPercent percent = new ShownPercent();
        assertEquals(Readout.NOT_KNOWN, percent.percent());
        percent.update(620_000, false);
        percent.update(Readout.NOT_KNOWN, false);
        assertEquals(Readout.NOT_KNOWN, percent.percent());
        percent.update(629_999, false);
        assertEquals(62, percent.percent());
    }

    @ParameterizedTest
    @CsvSource({
        "-49999, 0",
        "-50000, -1",
        "49999, 0",
        "50000, 1",
        "-1250000, -13",
        "1249999, 12",
        "-2147483648, -21475",
        "2147483647, 21475",
        "0, 0"
    })
    void currentsAreRoundedAlikeInBothDirections(int microamps, int tenths) {
        assertEquals(tenths, new ShownCurrent(0).tenthsOfAmp(microamps));
    }

    @Test
    void currentsBelowTheSmallestShownReadZero() {
        ShownCurrent current = new ShownCurrent(200_000);
        assertEquals(0, current.tenthsOfAmp(-199_999));
        assertEquals(-2, current.tenthsOfAmp(-200_000));
        assertEquals(0, current.tenthsOfAmp(199_999));
    }
}
