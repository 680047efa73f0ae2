package org.gaugebench.sim.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Readout;
import org.gaugebench.sim.advice.OwnersGauge.AfterOff;
import org.gaugebench.sim.advice.OwnersGauge.PastFull;
import org.gaugebench.sim.advice.OwnersGauge.SetsFull;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioReader;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Each answer of an owner changes the gauge that is run, and what is told of it. */
class ComposedGaugeTest {
    private static OwnersGauge gauge(
            SetsFull sets,
            PastFull past,
            AfterOff off,
            @Nullable Double amps,
            @Nullable Double ampHours,
            @Nullable Double hours) {
        return new OwnersGauge(sets, past, off, amps, ampHours, hours, 0.005, 0.002, 0, 0.92);
    }

    private static OwnersGauge gauge(SetsFull sets, PastFull past, AfterOff off) {
        return gauge(sets, past, off, 0.0, null, null);
    }

    private static MonthAheadResult month(OwnersGauge gauge) throws Exception {
        OwnSystem system =
                new OwnSystem(
                        12,
                        Chemistry.LEAD_ACID_AGM,
                        60,
                        List.of(
                                OwnWords.load("lamp: 1 A, 5 h", 12, 1),
                                OwnWords.load("logger: 50 mA, 24 h", 12, 1)),
                        null,
                        15,
                        null,
                        null,
                        null);
        return MonthAhead.of(system, gauge, ShuntRating.parse("50 A / 75 mV"));
    }

    private static MonthAheadResult month(SetsFull sets, PastFull past) throws Exception {
        return month(gauge(sets, past, AfterOff.KEEPS));
    }

    /** 15 A into 60 Ah of mat: high volts long before it is full, a small current when it is. */
    @Test
    void onWhatItSetsItselfDecidesHowManyDaysThereAre() throws Exception {
        MonthAheadResult volts = month(SetsFull.VOLTS, PastFull.STOPS);
        MonthAheadResult both = month(SetsFull.VOLTS_AND_CURRENT, PastFull.STOPS);
        MonthAheadResult hand = month(SetsFull.BY_HAND, PastFull.STOPS);
        Long early = volts.after().leftAtOwnFull();
        Long late = both.after().leftAtOwnFull();
        assertNotNull(early);
        assertNotNull(late);
        assertTrue(early < 800_000, early.toString());
        assertTrue(late > 950_000, late.toString());
        assertNull(hand.after().leftAtOwnFull());
        assertEquals(0, volts.daysWithinTen());
        assertTrue(both.daysWithinTen() > 0, both.toString());
        assertTrue(both.daysWithinTen() < hand.daysWithinTen());
        // The drift is the same for all; what is gone at once makes the difference.
        assertEquals(hand.tooHighPerDay(), both.tooHighPerDay(), 1e-9);
        double perDay = both.tooHighPerDay() + both.eitherWayPerDay();
        assertEquals(Math.floor((10 - both.startPoints()) / perDay), both.daysWithinTen());
        assertEquals(100 - late / 1e4, both.startPoints(), 1e-9);
    }

    @Test
    void pastFullMattersWhereNobodySetsIt() throws Exception {
        assertTrue(month(SetsFull.NEVER, PastFull.STOPS).isPutRight());
        assertFalse(month(SetsFull.NEVER, PastFull.SHOWS_MORE).isPutRight());
        assertFalse(month(SetsFull.NEVER, PastFull.HIDES_MORE).isPutRight());
        MonthAheadResult stops = month(SetsFull.VOLTS_AND_CURRENT, PastFull.STOPS);
        for (PastFull past : List.of(PastFull.SHOWS_MORE, PastFull.HIDES_MORE)) {
            MonthAheadResult more = month(SetsFull.VOLTS_AND_CURRENT, past);
            assertTrue(more.after().tooMuchAfterFull() > stops.after().tooMuchAfterFull() + 1);
            assertTrue(more.daysWithinTen() < stops.daysWithinTen());
        }
        // Who sets it by hand when the charger has finished takes that away.
        assertEquals(
                month(SetsFull.BY_HAND, PastFull.STOPS).daysWithinTen(),
                month(SetsFull.BY_HAND, PastFull.SHOWS_MORE).daysWithinTen());
    }

    /** By hand: what is left two minutes after, and 1.05 A for those two. */
    @ParameterizedTest
    @CsvSource({"KEEPS", "FULL", "ZERO", "NOTHING", "GUESSES"})
    void afterItsWireWasOff(AfterOff off) throws Exception {
        AfterMonth kept = month(gauge(SetsFull.BY_HAND, PastFull.STOPS, AfterOff.KEEPS)).after();
        AfterMonth after = month(gauge(SetsFull.BY_HAND, PastFull.STOPS, off)).after();
        assertEquals(kept.leftWhenOff(), after.leftWhenOff());
        switch (off) {
            case FULL -> assertEquals(1_000_000, (double) after.shownAfterOff(), 1_000);
            case ZERO -> assertEquals(0, after.shownAfterOff());
            case NOTHING -> assertEquals(Readout.NOT_KNOWN, after.shownAfterOff());
            case GUESSES -> {
                // Sag under a lamp: lower than the truth, and not what was counted.
                assertTrue(after.shownAfterOff() < after.leftWhenOff(), after.toString());
                assertTrue(after.shownAfterOff() > 300_000, after.toString());
            }
            default -> assertTrue(after.shownAfterOff() > after.leftWhenOff() + 50_000);
        }
        assertEquals(kept.betterAfterOff(), after.betterAfterOff());
    }

    /** 50 mA for the 24 h less 5 h of lamp and 6 h of charge: 0.65 Ah of 60 Ah are 1.08 points. */
    @Test
    void smallCurrentsAreNotCounted() throws Exception {
        MonthAheadResult fine = month(SetsFull.BY_HAND, PastFull.STOPS);
        OwnersGauge coarse =
                gauge(SetsFull.BY_HAND, PastFull.STOPS, AfterOff.KEEPS, 0.1, null, null);
        MonthAheadResult result = month(coarse);
        assertEquals(13 * 0.05 / 60 * 100, result.tooHighPerDay() - fine.tooHighPerDay(), 1e-6);
        // Before it stands at 100 %.
        long shown = result.course().get(480).own() - fine.course().get(480).own();
        // And the run's own, which is the sum's but for a zero error that is not counted either:
        // 2 mA for 13 h in 20 d are 0.9 points.
        assertEquals(20 * 13 * (0.05 - 0.002) / 60 * 1e6, (double) shown, 3_000);
        assertTrue(result.daysWithinTen() < fine.daysWithinTen());
    }

    @Test
    void aCoarseStepOfAmpHoursIsGoneAtOnce() throws Exception {
        OwnersGauge coarse =
                gauge(SetsFull.BY_HAND, PastFull.STOPS, AfterOff.KEEPS, 0.0, 6.0, null);
        MonthAheadResult result = month(coarse);
        // Half of 6 Ah of 60 Ah.
        assertEquals(5, result.startPoints(), 1e-9);
        assertTrue(
                result.daysWithinTen() < month(SetsFull.BY_HAND, PastFull.STOPS).daysWithinTen());
    }

    @Test
    void theLongestHoursStandStill() throws Exception {
        AfterOff keeps = AfterOff.KEEPS;
        double few =
                month(gauge(SetsFull.BY_HAND, PastFull.STOPS, keeps, 0.0, null, 20.0))
                        .after()
                        .hoursAtLimitPart();
        double many =
                month(gauge(SetsFull.BY_HAND, PastFull.STOPS, keeps, 0.0, null, 999.0))
                        .after()
                        .hoursAtLimitPart();
        assertEquals(0, month(SetsFull.BY_HAND, PastFull.STOPS).after().hoursAtLimitPart());
        // The logger alone would run for weeks, the lamp for a day and a half.
        assertTrue(few > 0.95, few + "");
        assertTrue(many < 0.3, many + "");
    }

    /** The scenario is the answer's own: run by itself it gives the same figures. */
    @ParameterizedTest
    @EnumSource
    void theScenarioGivesTheSameFigures(AfterOff off) throws Exception {
        MonthAheadResult result =
                month(gauge(SetsFull.VOLTS_AND_CURRENT, PastFull.SHOWS_MORE, off, 0.1, 1.0, 99.0));
        Scenario scenario = ScenarioReader.read("own.yaml", result.scenario());
        RunResult run = RunRecorder.run(scenario, scenario.seed(), Observer.NONE);
        Long own = result.after().leftAtOwnFull();
        assertNotNull(own);
        assertTrue(
                run.events().stream()
                        .anyMatch(
                                it ->
                                        it.event() == Event.SET_TO_FULL
                                                && it.gauge().equals("gauge")
                                                && it.truePartsPerMillion() == own));
    }

    @Test
    void whatIsNotKnownWidensTheAnswerAndHasATest() throws Exception {
        OwnersGauge known = gauge(SetsFull.BY_HAND, PastFull.STOPS, AfterOff.KEEPS);
        MonthAheadResult narrow = month(known);
        assertEquals(narrow.daysWithinTen(), narrow.leastDaysWithinTen());
        assertEquals(List.of(), TwoMinuteTests.of(known));
        OwnersGauge unsure = gauge(SetsFull.NOT_KNOWN, PastFull.NOT_KNOWN, AfterOff.NOT_KNOWN);
        MonthAheadResult wide = month(unsure);
        assertEquals(narrow.daysWithinTen(), wide.daysWithinTen());
        assertTrue(wide.leastDaysWithinTen() < wide.daysWithinTen());
        assertEquals(3, TwoMinuteTests.of(unsure).size());
        assertEquals(4, TwoMinuteTests.of(OwnersGauge.UNKNOWN).size());
        assertTrue(wide.findOut().containsAll(TwoMinuteTests.of(unsure)));
        assertTrue(
                TwoMinuteTests.of(unsure).stream().allMatch(it -> it.contains("minute")),
                "each says how long it takes");
    }
}
