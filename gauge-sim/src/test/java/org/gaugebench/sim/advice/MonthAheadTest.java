package org.gaugebench.sim.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.scenario.ScenarioReader;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class MonthAheadTest {
    private static OwnSystem system(Chemistry chemistry, double ampHours, double chargerAmps)
            throws QuantityException {
        List<OwnLoad> loads =
                List.of(
                        OwnWords.load("lamp: 600 mA, 5 h", 12, 1),
                        OwnWords.load("Lamp!: 10 mA, 24 h", 12, 1),
                        OwnWords.load("gauge: 100 mA, 1 h, idle 1 mA", 12, 1));
        return new OwnSystem(12, chemistry, ampHours, loads, null, chargerAmps, null, null, null);
    }

    private static OwnersGauge gauge(
            @Nullable Double own, @Nullable Double zero, double past, @Nullable Double efficiency) {
        return new OwnersGauge(
                OwnersGauge.SetsFull.NOT_KNOWN,
                OwnersGauge.PastFull.NOT_KNOWN,
                OwnersGauge.AfterOff.NOT_KNOWN,
                null,
                null,
                own,
                zero,
                past,
                efficiency);
    }

    private static ShuntRating shunt() throws QuantityException {
        return ShuntRating.parse("50 A / 75 mV");
    }

    private static double perDay(MonthAheadResult result, Drift.Cause cause) {
        return result.drifts().stream()
                .filter(each -> each.cause() == cause)
                .mapToDouble(Drift::ampHoursPerDay)
                .sum();
    }

    private static double meanTruth(MonthAheadResult result) {
        return result.course().stream().mapToLong(Course.Hour::truth).average().orElse(0) / 1e6;
    }

    /** By hand: 12 mA and 5 mA over 24 h are 0.408 Ah, of 40 Ah 1.0 % a day. */
    @Test
    void theCheckByHand() throws QuantityException {
        OwnSystem system = system(Chemistry.LIFEPO4, 40, 0);
        MonthAheadResult result = MonthAhead.of(system, gauge(0.012, 0.005, 0, 0.995), shunt());
        double two =
                perDay(result, Drift.Cause.OWN_CURRENT) + perDay(result, Drift.Cause.ZERO_ERROR);
        assertEquals(0.408, two, 1e-9);
        assertEquals(Drift.Cause.OWN_CURRENT, result.drifts().get(0).cause());
        // The battery's own leak of 2 % a month is there too: 9.8 days become 9.
        assertEquals(9, result.daysWithinTen());
        assertEquals(4, result.daysWithinFive());
    }

    /** The sum and the run are two ways to one figure. */
    @Test
    void theRunDrivesAsFarOffAsTheSumSays() throws QuantityException {
        OwnSystem system = system(Chemistry.LEAD_ACID_AGM, 60, 10);
        // All of it can only make the gauge show too much, and the zero error is taken so too.
        MonthAheadResult result = MonthAhead.of(system, gauge(0.006, 0.004, 0.005, null), shunt());
        double zero = perDay(result, Drift.Cause.ZERO_ERROR) / 60 * 100;
        Course.Hour end = result.course().get(result.course().size() - 1);
        double found = (end.own() - end.truth()) / 1e4;
        // The sum takes the leak of a full battery, the safe side; the run's is at its own charge.
        double leak = perDay(result, Drift.Cause.SELF_DISCHARGE) / 60 * 100;
        // What is drawn in the six hours of charging (22 mA) never goes through the battery, so
        // that no heat of charging it (8 %) is lost.
        double notStored = 0.022 * 6 * 0.08 / 60 * 100;
        double perDay = result.tooHighPerDay() + zero - leak * (1 - meanTruth(result)) - notStored;
        // 0.1 points: the sensor's noise, and hours for the mean charge.
        assertEquals(perDay * 30, found, 0.1);
        assertTrue(Math.abs(end.better() - end.truth()) < Math.abs(end.own() - end.truth()));
    }

    @Test
    void aToldEfficiencyTakesTheHeatAway() throws QuantityException {
        OwnSystem system = system(Chemistry.LEAD_ACID_AGM, 60, 10);
        MonthAheadResult none = MonthAhead.of(system, gauge(0.0, 0.0, 0, null), shunt());
        MonthAheadResult told = MonthAhead.of(system, gauge(0.0, 0.0, 0, 0.92), shunt());
        assertTrue(none.drifts().get(0).cause() == Drift.Cause.HEAT);
        assertTrue(told.tooHighPerDay() < none.tooHighPerDay() / 2);
        Course.Hour end = told.course().get(told.course().size() - 1);
        // What goes in holds the battery where it is, but for its leak.
        assertEquals(60 - 4 * meanTruth(told), end.truth() / 1e4, 0.5);
        // What is left is the leak, 4 % a month of what is in it; 0.3 points of noise.
        assertEquals(4 * meanTruth(told), (end.own() - end.truth()) / 1e4, 0.3);
    }

    @Test
    void whatIsNotKnownIsAssumedAndCanBeFoundOut() throws QuantityException {
        OwnSystem system = system(Chemistry.LEAD_ACID_AGM, 60, 10);
        MonthAheadResult result = MonthAhead.of(system, OwnersGauge.UNKNOWN, shunt());
        assertTrue(result.assumed().stream().anyMatch(it -> it.contains("5 uV")));
        // Its own current, zero error and efficiency; and how it counts, a test for each.
        assertEquals(3 + 4, result.findOut().size(), result.findOut().toString());
        MonthAheadResult known = MonthAhead.of(system, gauge(0.0, 0.0, 0, 0.92), shunt());
        assertEquals(TwoMinuteTests.of(OwnersGauge.UNKNOWN), known.findOut());
    }

    @Test
    void theScenarioBehindItCanBeRead() throws Exception {
        OwnSystem system = system(Chemistry.LEAD_ACID_AGM, 60, 10);
        MonthAheadResult result = MonthAhead.of(system, gauge(0.006, 0.004, 0.005, 0.9), shunt());
        assertEquals(
                // A month, two days on the charger and a day of use. By hand: 24 Ah at less than 10
                // A
                // in three hours and 0.7 d; 15 Ah at 3.3 Ah a day in five.
                36L * 86_400_000,
                ScenarioReader.read("own.yaml", result.scenario()).durationMillis());
        // Names that a scenario cannot have became others.
        assertTrue(result.scenario().contains("  lamp-2: "), result.scenario());
        assertTrue(result.scenario().contains("  gauge-2: "), result.scenario());
    }

    @Test
    void aBatteryThatIsEmptiedHasNoRun() throws QuantityException {
        OwnSystem system = system(Chemistry.LIFEPO4, 5, 0);
        MonthAheadResult result = MonthAhead.of(system, OwnersGauge.UNKNOWN, shunt());
        assertTrue(result.course().isEmpty());
        assertEquals(null, result.lastGoodDay());
        assertNotNull(result.scenario());
    }
}
