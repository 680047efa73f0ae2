package org.gaugebench.sim.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Register;
import org.gaugebench.sim.judge.ExpectationResult.Outcome;
import org.gaugebench.sim.report.Samples;
import org.gaugebench.sim.scenario.Expectation.Reading;
import org.junit.jupiter.api.Test;

/** What the judge makes of claims: the sample day draws 1 A from 30 of 50 Ah until noon. */
class JudgeTest {
    private static final String OFTEN =
            "at: 1 h, every: 1 h, until: 10 h, set: {gauge.declare: 50 %}";

    private static ExpectationResult judge(String claim) {
        return Samples.run(Samples.expecting(claim)).expectations().get(0);
    }

    private static void assertNear(long expected, long found, long tolerance) {
        assertTrue(Math.abs(found - expected) <= tolerance, expected + " expected, found " + found);
    }

    private static ExpectationResult judgeOften(String claim) {
        String text = Samples.expecting(claim).replace("at: 12 h, set: {lamp: off}", OFTEN);
        return Samples.run(text).expectations().get(0);
    }

    @Test
    void aClaimWhoseTimeNeverComesIsNeverEvaluatedAndFailsTheRun() {
        RunResult result =
                Samples.run(Samples.expecting("at: 2 d, reading: state-of-charge, at-least: 1 %"));
        assertEquals(Outcome.NEVER_EVALUATED, result.expectations().get(0).outcome());
        assertEquals(Verdict.FAILED, result.verdict());
        assertEquals(-1, result.expectations().get(0).atMillis());
    }

    @Test
    void aClaimWhoseWindowOutlastsTheRunIsNeverEvaluated() {
        String reading = "throughout: true, to: 2 d, reading: state-of-charge, at-least: 1 %";
        assertEquals(Outcome.NEVER_EVALUATED, judge(reading).outcome());
        assertEquals(
                Outcome.NEVER_EVALUATED, judge("event: set-to-full, to: 2 d, times: 0").outcome());
        assertEquals(Outcome.HELD, judge("event: declared, to: 2 d, at-least: 1").outcome());
        assertEquals(
                Outcome.NEVER_EVALUATED,
                judge("event: declared, from: 2 d, to: 3 d, times: 0").outcome());
    }

    @Test
    void aWindowWithoutAWholeMinuteIsNeverEvaluated() {
        String claim =
                "throughout: true, from: 61 s, to: 119 s, reading: state-of-charge, at-least: 1 %";
        ExpectationResult result = judge(claim);
        assertEquals(Outcome.NEVER_EVALUATED, result.outcome());
        assertTrue(result.detail().contains("no whole minute"), result.detail());
    }

    @Test
    void anotherClaimsMomentDoesNotDecideAClaimOverMinutes() {
        RunResult result =
                Samples.run(
                        Samples.expecting(
                                "throughout: true, from: 61 s, to: 119 s, reading: voltage,"
                                        + " at-least: 1 V",
                                "at: 90 s, reading: voltage, at-least: 1 V"));
        assertEquals(Outcome.NEVER_EVALUATED, result.expectations().get(0).outcome());
        assertEquals(Outcome.HELD, result.expectations().get(1).outcome());
        assertEquals(90_000, result.expectations().get(1).atMillis());
    }

    @Test
    void theTruthIsHeldAgainstTheGaugesOwnBand() {
        String claim = "throughout: true, reading: state-of-charge, within: band, of: truth";
        ExpectationResult held = judge(claim);
        assertEquals(Outcome.HELD, held.outcome(), held.detail());
        // 20 % declared with a residual of 10 %, and 48 % true: the band does not reach it.
        String text =
                Samples.expecting(claim)
                        .replace(
                                "at: 12 h, set: {lamp: off}",
                                "at: 6 h, set: {gauge.declare: 20 %}");
        ExpectationResult failed = Samples.run(text).expectations().get(0);
        assertEquals(Outcome.FAILED, failed.outcome());
        assertNear(6 * 3_600_000L, failed.atMillis(), 60_000);
        assertTrue(
                failed.found().matches("19\\.9\\d %, \\d to 3\\d \\(true 4[78]\\..*"),
                failed.found());
    }

    @Test
    void anUnknownBandHoldsNoTruth() {
        String claim = "at: 1 h, reading: state-of-charge, within: band, of: truth";
        String unknown = Samples.expecting(claim) + "gauge: {start: unknown}\n";
        assertEquals(Outcome.FAILED, Samples.run(unknown).expectations().get(0).outcome());
        String edge = Samples.expecting("at: 1 h, reading: upper-edge, is: not-known");
        assertEquals(
                Outcome.HELD,
                Samples.run(edge + "gauge: {start: unknown}\n").expectations().get(0).outcome());
    }

    @Test
    void faultsAreCountedByTheirName() {
        String overdue = "gauge: {rest-time: 0 h, full-overdue: 1 d}\n";
        String found = "event: fault-raised, fault: full-overdue, times: 1";
        String other = "event: fault-raised, fault: samples-missing, times: 1";
        List<ExpectationResult> results =
                Samples.run(Samples.expecting(found, other) + overdue).expectations();
        assertEquals(Outcome.HELD, results.get(0).outcome());
        assertEquals(Outcome.FAILED, results.get(1).outcome());
    }

    @Test
    void theFirstFailureIsKeptAndNotTheWorst() {
        ExpectationResult result =
                judge("throughout: true, reading: state-of-charge, at-least: 50 %");
        assertEquals(Outcome.FAILED, result.outcome());
        // 60 % less 2 % an hour: five hours, and a few minutes for noise and offset
        assertNear(5 * 3_600_000L, result.atMillis(), 5 * 60_000L);
        assertTrue(result.found().startsWith("49.9"), result.found());
        assertTrue(result.detail().contains("gauge shows 49.9"), result.detail());
    }

    @Test
    void whileItHoldsTheNearestMomentIsKept() {
        ExpectationResult result =
                judge("throughout: true, reading: true-state-of-charge, at-least: 30 %");
        assertEquals(Outcome.HELD, result.outcome());
        // the state is lowest at the end: self-discharge goes on after noon
        assertNear(86_400_000L, result.atMillis(), 3_600_000L);
        assertTrue(result.found().startsWith("35.9"), result.found());
    }

    private static void assertOutcome(Outcome outcome, String found, String claim) {
        ExpectationResult result = judge(claim);
        assertEquals(outcome, result.outcome(), claim + ": " + result.found());
        assertTrue(result.found().startsWith(found), claim + ": " + result.found());
    }

    /** From 60 % the lamp draws 1 A of 50 Ah for 12 hours: 2 points an hour. */
    @Test
    void aClaimMayHaveToComeTrueByATime() {
        String falls = "reading: true-state-of-charge, at-most: 50 %";
        ExpectationResult held = judge("by: 8 h, " + falls);
        assertEquals(Outcome.HELD, held.outcome(), held.found());
        // 10 points at 2 points an hour are five hours, less what the battery loses by itself
        assertNear(5 * 3_600_000L, held.atMillis(), 600_000L);
        assertOutcome(Outcome.FAILED, "51.9", "by: 4 h, " + falls);
        assertOutcome(Outcome.HELD, "49.9", "by: 9 d, " + falls);
        assertOutcome(
                Outcome.FAILED, "36", "by: 23 h, from: 20 h, reading: state-of-charge, is: 1 %");
        assertOutcome(
                Outcome.NEVER_EVALUATED, "never", "by: 9 d, reading: voltage, at-least: 20 V");
    }

    @Test
    void aClaimMayNeverBeTrue() {
        assertOutcome(
                Outcome.FAILED,
                "49.9",
                "never: true, reading: true-state-of-charge, at-most: 50 %");
        assertOutcome(
                Outcome.HELD, "35.9", "never: true, reading: true-state-of-charge, at-most: 30 %");
        assertOutcome(
                Outcome.NEVER_EVALUATED,
                "never",
                "never: true, to: 9 d, reading: true-state-of-charge, at-most: 30 %");
    }

    @Test
    void aClaimMayComeTrueExactlyOnce() {
        String near = "reading: true-state-of-charge, within: 1 %, of: 50 %";
        assertOutcome(Outcome.HELD, "", "once: true, " + near);
        assertOutcome(Outcome.FAILED, "4", "once: true, from: 7 h, " + near);
        ExpectationResult twice =
                Samples.run(
                                Samples.expecting(
                                                "once: true, reading: state-of-charge, at-least: 55"
                                                        + " %")
                                        .replace(
                                                "at: 12 h, set: {lamp: off}",
                                                "at: 12 h, set: {gauge.declare: 60 %}"))
                        .expectations()
                        .get(0);
        assertEquals(Outcome.FAILED, twice.outcome());
        assertNear(12 * 3_600_000L, twice.atMillis(), 60_000L);
    }

    @Test
    void everyRegisterCanBeJudged() {
        for (Register register : Register.values()) {
            String key = register.name().toLowerCase(Locale.ROOT).replace('_', '-');
            ExpectationResult result =
                    judge("at: 1 h, register: " + key + ", at-least: -2305843009213693951");
            assertEquals(Outcome.HELD, result.outcome(), key);
            assertTrue(result.found().endsWith(" " + register.unit()), result.found());
        }
        assertOutcome(Outcome.FAILED, "0 times", "at: 1 h, register: full-count, is: 1");
        assertOutcome(
                Outcome.HELD, "3600", "at: 1 h, register: uptime-millis, within: 9, of: 3600000");
    }

    @Test
    void everyReadingCanBeJudged() {
        for (Reading reading : Reading.values()) {
            String largest =
                    switch (reading) {
                        case STATE_OF_CHARGE, LOWER_EDGE, UPPER_EDGE, TRUE_STATE_OF_CHARGE ->
                                "100 %";
                        case REMAINING_CHARGE, FULL_CHARGE_CAPACITY, AVAILABLE_CHARGE -> "51 Ah";
                        case CURRENT, AVERAGE_CURRENT, TRUE_CURRENT -> "5 A";
                        case VOLTAGE, TRUE_VOLTAGE -> "15 V";
                        case TIME_TO_EMPTY,
                                TIME_TO_FULL,
                                TRUE_TIME_TO_EMPTY_LOAD_HELD,
                                TRUE_TIME_TO_EMPTY_AS_IT_GOES ->
                                "100 h";
                        case TEMPERATURE, TRUE_TEMPERATURE -> "60 °C";
                    };
            String claim = "reading: " + reading.key() + ", at-most: " + largest;
            ExpectationResult result = judge("at: 6 h, " + claim);
            // The gauge discharges, so there is no time to full; at noon the lamp goes out for
            // good.
            boolean known =
                    reading != Reading.TIME_TO_FULL
                            && reading != Reading.TRUE_TIME_TO_EMPTY_AS_IT_GOES;
            assertEquals(known ? Outcome.HELD : Outcome.FAILED, result.outcome(), claim);
        }
    }

    @Test
    void theFirstAndTheLastOfTheEventsHaveTheirTimes() {
        String event = "event: declared, from: 1 h, at-least: 9, ";
        assertEquals(
                Outcome.HELD,
                judgeOften(event + "first: {from: 1 h, to: 1 h}, last: {from: 10 h}").outcome());
        assertEquals("the first at 0 d 01:00:00", judgeOften(event + "first: {from: 2 h}").found());
        assertEquals(
                "the first at 0 d 01:00:00", judgeOften(event + "first: {to: 59 min}").found());
        assertEquals("the last at 0 d 10:00:00", judgeOften(event + "last: {from: 11 h}").found());
        assertEquals("the last at 0 d 10:00:00", judgeOften(event + "last: {to: 9 h}").found());
        assertEquals(Outcome.FAILED, judgeOften(event + "last: {to: 9 h}").outcome());
        assertEquals(Outcome.HELD, judgeOften("event: declared, by: 1 h").outcome());
        assertEquals(Outcome.FAILED, judgeOften("event: new-battery, by: 1 h").outcome());
        assertEquals(Outcome.HELD, judgeOften("event: new-battery, never: true").outcome());
        assertEquals(Outcome.HELD, judgeOften("event: powered-up, once: true").outcome());
        assertEquals(Outcome.FAILED, judgeOften("event: new-battery, first: {to: 2 h}").outcome());
    }

    @Test
    void aClaimThatIsExpectedToFailIsTurnedRound() {
        String reason = ", expected-to-fail: \"the sign is lost\"";
        RunResult fails = Samples.run(Samples.expecting("event: declared, at-least: 99" + reason));
        assertEquals(Outcome.FAILED_AS_EXPECTED, fails.expectations().get(0).outcome());
        assertEquals(Verdict.PASSED, fails.verdict());
        RunResult holds = Samples.run(Samples.expecting("event: declared, at-least: 1" + reason));
        assertEquals(Outcome.HELD_UNEXPECTEDLY, holds.expectations().get(0).outcome());
        assertEquals(Verdict.FAILED, holds.verdict());
        RunResult never =
                Samples.run(Samples.expecting("at: 9 d, reading: voltage, is: 1 V" + reason));
        assertEquals(Outcome.NEVER_EVALUATED, never.expectations().get(0).outcome());
        assertEquals(Verdict.FAILED, never.verdict());
    }

    @Test
    void eventsCountBetweenTheirTimesBothEndsIncluded() {
        assertEquals(Outcome.HELD, judgeOften("event: declared, times: 11").outcome());
        assertEquals(
                Outcome.HELD,
                judgeOften("event: declared, from: 2 h, to: 5 h, times: 4").outcome());
        ExpectationResult failed = judgeOften("event: declared, from: 2 h, to: 5 h, at-most: 3");
        assertEquals(Outcome.FAILED, failed.outcome());
        assertEquals("4 times", failed.found());
        assertTrue(failed.detail().contains("first at 0 d 02:00:00"), failed.detail());
        assertTrue(failed.detail().contains("last at 0 d 05:00:00"), failed.detail());
    }

    @Test
    void anEventWhileTheTruthIsTooLowFailsWhateverTheCount() {
        ExpectationResult failed =
                judgeOften("event: declared, at-least: 1, true-state-at-least: 50.5 %");
        assertEquals(Outcome.FAILED, failed.outcome());
        assertEquals(5 * 3_600_000L, failed.atMillis());
        assertTrue(
                failed.detail().contains("while the true state of charge was 49.99"),
                failed.detail());
    }

    @Test
    void eventsBeyondTheRecordersMemoryAreStillCounted() {
        String text =
                Samples.expecting("event: declared, times: 9999")
                        .replace(
                                "at: 12 h, set: {lamp: off}",
                                "at: 8640 ms, every: 8640 ms, set: {gauge.declare: 50 %}");
        RunResult result = Samples.run(text);
        assertEquals(RunRecorder.MOST_EVENTS, result.events().size());
        // ten thousand of the timeline, the start, and POWERED_UP
        assertEquals(10_000 + 1 + 1 - RunRecorder.MOST_EVENTS, result.eventsDropped());
        assertEquals("10001 times", result.expectations().get(0).found());
    }

    @Test
    void theWorstErrorIsTheLargestByMagnitudeWithItsTime() {
        String text =
                Samples.hut()
                        .replace(
                                "at: 12 h, set: {lamp: off}", "at: 6 h, set: {gauge.declare: 20 %}")
                        .replace(
                                "timeline:\n",
                                "timeline:\n  - {at: 3 h, set: {gauge.declare: 60 %}}\n");
        LaneResult lane = Samples.run(text).lanes().get(0);
        // at 3 h 54 % is true and 60 % declared; at 6 h 48 % is true and 20 % declared
        assertNear(-280_000, lane.worstErrorPartsPerMillion(), 1_000);
        assertTrue(lane.worstAtMillis() > 6 * 3_600_000L, "not before it was declared");
    }

    @Test
    void everyEventCarriesTheTruthOfItsMoment() {
        List<RecordedEvent> events =
                Samples.run(Samples.hut().replace("at: 12 h, set: {lamp: off}", OFTEN)).events();
        assertEquals(Event.POWERED_UP, events.get(0).event());
        RecordedEvent fifth = events.get(6);
        assertEquals(5 * 3_600_000L, fifth.atMillis());
        assertNear(500_000, fifth.shownPartsPerMillion(), 10);
        assertNear(500_000, fifth.truePartsPerMillion(), 1_000);
    }
}
