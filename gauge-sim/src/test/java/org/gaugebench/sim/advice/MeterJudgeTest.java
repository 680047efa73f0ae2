package org.gaugebench.sim.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.gaugebench.sim.advice.MeterVerdict.Word;
import org.gaugebench.sim.advice.OwnersGauge.AfterOff;
import org.gaugebench.sim.logs.MeterCheck;
import org.gaugebench.sim.logs.MeterReading;
import org.gaugebench.sim.scenario.Chemistry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeterJudgeTest {
    private static final OwnSystem HUT =
            OwnSamples.hut(Chemistry.LIFEPO4, 10, "lamp: 10 A, 2 h", "radio: 0.2 A, 24 h");
    private static final OwnersGauge GAUGE = OwnSamples.gauge(0.012, 0.005, AfterOff.KEEPS);
    private static final List<MeterReading> GOOD =
            List.of(
                    new MeterReading(MeterCheck.ZERO_TEST, 24, -0.1),
                    new MeterReading(MeterCheck.OWN_CURRENT, 0.0121, 0),
                    new MeterReading(MeterCheck.SCALE_AT_REST, 0, 0.02),
                    new MeterReading(MeterCheck.SCALE_SMALL, -2.1, -2.0),
                    new MeterReading(MeterCheck.SCALE_WORKING, -9.8, -9.9),
                    new MeterReading(MeterCheck.VOLTS_UNDER_LOAD, 12.41, 12.30),
                    new MeterReading(MeterCheck.CAPACITY_TEST, 0, -98));

    private static MeterVerdict judge(MeterReading... readings) {
        return MeterJudge.of(HUT, GAUGE, OwnSamples.shunt(), Arrays.asList(readings));
    }

    private static MeterVerdict.Line one(MeterReading reading) {
        return judge(reading).lines().get(0);
    }

    @Test
    void goodColumnsAskForNothing() {
        MeterVerdict verdict = MeterJudge.of(HUT, GAUGE, OwnSamples.shunt(), GOOD);
        assertEquals(0, verdict.toChange(), verdict.toString());
        assertTrue(
                verdict.lines().stream().allMatch(it -> it.word() == Word.GOOD),
                verdict.toString());
        assertEquals(List.of(), verdict.missing());
        assertTrue(verdict.answer().startsWith("7 of 7 checks ask for nothing;"));
        int ahead = MonthAhead.of(HUT, GAUGE, OwnSamples.shunt()).daysWithinTen();
        assertEquals(ahead, verdict.daysBefore());
    }

    @ParameterizedTest
    @CsvSource({
        // Hand: half an amp-hour in 24 h is 20.8 mA; 15 Ah in a month.
        "ZERO_TEST, 24, 0.5, CHANGE, '20.8 mA, 15.0 points in a month', zero adjustment",
        "ZERO_TEST, 24, -0.5, CHANGE, 20.8 mA, zero adjustment",
        "ZERO_TEST, 6, 0.5, CANNOT_TELL, 83.3 mA, 24 h",
        "OWN_CURRENT, 0.030, 0, CHANGE, '30.0 mA, 21.6 points', load side",
        "OWN_CURRENT, 3, 0, CANNOT_TELL, 3.00 A, never across",
        "SCALE_AT_REST, 0, 0.4, CHANGE, +0.40 A on the gauge, zero adjustment",
        "SCALE_AT_REST, -0.6, -0.6, CANNOT_TELL, -0.60 A by the meter, still on",
        "SCALE_SMALL, -2.1, 0, CHANGE, +0.00 A on the gauge, over night",
        "SCALE_SMALL, -0.5, -0.5, CANNOT_TELL, -0.50 A, 20 to 50 steps",
        "SCALE_SMALL, -2.1, -1.6, CHANGE, -1.60 A, does not go through the shunt",
        "SCALE_WORKING, -9.8, -8.0, CHANGE, 82 %, does not go through the shunt",
        "SCALE_WORKING, -9.8, 9.8, CHANGE, -100 %, swap the two thin wires",
        // Hand: a shunt of 100 A / 75 mV typed in where one of 50 A is counts twice.
        "SCALE_WORKING, -9.8, -19.6, CHANGE, 200 %, one of 100 A / 75 mV would",
        "SCALE_WORKING, -9.8, -10.6, CHANGE, 108 %, small screws",
        "SCALE_WORKING, -1.0, -1.0, CANNOT_TELL, -1.00 A, at most",
        "VOLTS_UNDER_LOAD, 12.4, 11.9, CHANGE, 0.50 V lost, tighten",
        "VOLTS_UNDER_LOAD, 12.4, 12.9, CANNOT_TELL, -0.50 V lost, charger on",
        "CAPACITY_TEST, 0, 88, CHANGE, 88 %, type in 88 Ah",
        "CAPACITY_TEST, 0, 70, CHANGE, 70 %, another battery",
        "CAPACITY_TEST, 0, 120, CANNOT_TELL, 120 %, no battery gives so much",
    })
    void eachBadColumnIsNamed(
            MeterCheck check, double meter, double gauge, Word word, String found, String todo) {
        MeterVerdict.Line line = one(new MeterReading(check, meter, gauge));
        assertEquals(word, line.word(), line.toString());
        assertTrue(line.found().contains(found), line.toString());
        assertTrue(line.todo().contains(todo), line.toString());
    }

    /** By hand: 0.5 V at 10 A are 50 milliohms and 5 W. */
    @Test
    void aDropHasItsResistanceWhereTheAmpsAreKnown() {
        MeterVerdict verdict =
                judge(
                        new MeterReading(MeterCheck.VOLTS_UNDER_LOAD, 12.4, 11.9),
                        new MeterReading(MeterCheck.SCALE_WORKING, -10, -10));
        String found = verdict.lines().get(1).found();
        assertTrue(found.contains("50.0 milliohms at 10.0 A, 5.0 W"), found);
        assertEquals(5, verdict.missing().size());
    }

    /** What it shows at rest is no matter of scale. */
    @Test
    void whatItShowsAtRestIsTakenOffTheScale() {
        List<MeterReading> both = new ArrayList<>();
        both.add(new MeterReading(MeterCheck.SCALE_WORKING, -10, -9.2));
        assertEquals(Word.CHANGE, one(both.get(0)).word());
        both.add(new MeterReading(MeterCheck.SCALE_AT_REST, 0, 0.8));
        MeterVerdict verdict = judge(both.toArray(new MeterReading[0]));
        assertEquals(Word.GOOD, verdict.lines().get(1).word(), verdict.toString());
        assertEquals(Word.CHANGE, verdict.lines().get(0).word(), verdict.toString());
    }

    /** By hand: 12 mA and 5 mA and little else are 0.55 points a day, 18 days; 30 mA are 12. */
    @Test
    void whatWasMeasuredMovesTheDays() {
        MeterVerdict verdict = judge(new MeterReading(MeterCheck.OWN_CURRENT, 0.05, 0));
        int now =
                MonthAhead.of(
                                HUT,
                                OwnSamples.gauge(0.05, 0.005, AfterOff.KEEPS),
                                OwnSamples.shunt())
                        .daysWithinTen();
        assertEquals(now, verdict.daysNow());
        assertTrue(verdict.daysNow() < verdict.daysBefore(), verdict.toString());
        assertTrue(
                verdict.answer()
                        .contains("for %d days, not %d days".formatted(now, verdict.daysBefore())),
                verdict.answer());
    }

    /** 2.4 Ah of 100 Ah is the step; half of it, 1.2 points, stands in both months ahead. */
    @Test
    void whatNoMeterToldStaysAsTheOwnerToldIt() {
        OwnersGauge coarse =
                new OwnersGauge(
                        OwnersGauge.SetsFull.BY_HAND,
                        OwnersGauge.PastFull.STOPS,
                        AfterOff.KEEPS,
                        0.1,
                        2.4,
                        99.0,
                        0.012,
                        0.005,
                        0.01,
                        0.99);
        assertEquals(coarse, coarse.measured(0.012, 0.005));
        MeterReading own = new MeterReading(MeterCheck.OWN_CURRENT, 0.012, 0);
        MeterVerdict verdict = MeterJudge.of(HUT, coarse, OwnSamples.shunt(), List.of(own));
        assertEquals(verdict.daysBefore(), verdict.daysNow(), verdict.toString());
    }

    /** Hand: one step of 2.4 Ah in 24 h is 100 mA; 1 Ah in 24 h is 42 mA, below that. */
    @Test
    void theToldStepOfTheAmpHoursIsTheOneThatHides() {
        OwnersGauge coarse =
                new OwnersGauge(
                        OwnersGauge.SetsFull.NOT_KNOWN,
                        OwnersGauge.PastFull.NOT_KNOWN,
                        AfterOff.KEEPS,
                        null,
                        2.4,
                        null,
                        0.012,
                        0.005,
                        0,
                        null);
        MeterReading zero = new MeterReading(MeterCheck.ZERO_TEST, 24, 1);
        MeterVerdict.Line line =
                MeterJudge.of(HUT, coarse, OwnSamples.shunt(), List.of(zero)).lines().get(0);
        assertEquals(Word.GOOD, line.word(), line.toString());
        assertTrue(line.why().startsWith("2.4 Ah, one step"), line.toString());
        String blind = CheckPlan.of(HUT, coarse, OwnSamples.shunt()).get(0).blind();
        assertTrue(blind.contains("steps of 2.4 Ah cannot show less than 100.0 mA"), blind);
    }

    /** Hand: 2400 Ah in 24 h are 100 A, 150 mV on this shunt; no run has more than 100 mV. */
    @Test
    void aMoveThatNoZeroErrorMakesIsNoVerdict() {
        MeterVerdict.Line line = one(new MeterReading(MeterCheck.ZERO_TEST, 24, -2_400));
        assertEquals(Word.CANNOT_TELL, line.word(), line.toString());
    }
}
