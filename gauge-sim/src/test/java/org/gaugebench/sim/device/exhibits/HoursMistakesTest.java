package org.gaugebench.sim.device.exhibits;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.function.DoublePredicate;
import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.scenario.Mistake;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Simple filters for the hours. Figures: catalogue of edge cases, which holds 60 Ah left throughout
 * and steps its poles once a second by the first-order formula; here they are stepped exactly.
 */
class HoursMistakesTest {
    private static final GaugeSettings SETTINGS =
            Bench.settings().set(Setting.LONGEST_TIME, 1_000).build();
    private static final double AMP_HOURS_LEFT = 60;

    private static double hours(Bench bench) {
        return AMP_HOURS_LEFT / -bench.filteredAmps();
    }

    /** The load is there from the first sample, so every filter is seeded with it. */
    private static Bench begunAt(double amps, Mistake... mistakes) {
        int counts = (int) Math.round(-amps * 1_000);
        return new Bench(SETTINGS, 1_000, 0, counts, mistakes).declare(100);
    }

    private static Bench settledAt(double amps, Mistake filter) {
        return begunAt(amps, filter).run(-amps, 1_800);
    }

    private static int secondsUntil(Bench bench, double amps, DoublePredicate reached) {
        int seconds = 0;
        while (!reached.test(-bench.filteredAmps()) && seconds < 20_000) {
            bench.run(-amps, 1);
            seconds++;
        }
        return seconds;
    }

    @ParameterizedTest
    @CsvSource({
        "HOURS_SINGLE_POLE_3_MIN, 394, 807",
        "HOURS_SINGLE_POLE_30_MIN, 3953, 8097",
        "HOURS_WINDOW_30_MIN, 1599, 1780"
    })
    void aStepShowsWithinTenPercentAfter(Mistake filter, int upSeconds, int downSeconds) {
        // The catalogue's "10 %" is one of the current: 18 of 20 A, 2.2 of 2 A. Tolerance: a slot
        // of the window, and the first-order formula's error of a second or two.
        assertEquals(upSeconds, secondsUntil(settledAt(2, filter), 20, a -> a >= 18), 5);
        assertEquals(downSeconds, secondsUntil(settledAt(20, filter), 2, a -> a <= 2.2), 5);
    }

    @Test
    void aNewLoadOf20AmpsShowsEightHoursAfterAMinuteWhereThreeAreTrue() {
        Bench bench = settledAt(2, Mistake.HOURS_SINGLE_POLE_3_MIN).run(-20, 60);
        assertEquals(8.45, hours(bench), 0.02);
    }

    @ParameterizedTest
    @CsvSource({
        "HOURS_INSTANT, 0.59, 0.59",
        "HOURS_SINGLE_POLE_3_MIN, 1.97, 0.79",
        "HOURS_SINGLE_POLE_30_MIN, 11.4, 4.1",
        "HOURS_WINDOW_30_MIN, 11.3, 3.9"
    })
    void aKettleBesideTwoAmpsShows(Mistake filter, double afterAMinute, double atWorst) {
        Bench bench = settledAt(2, filter).run(-102, 60);
        // Catalogue's digits; the worst of the first, second and last row are closed forms.
        assertEquals(afterAMinute, hours(bench), 0.06);
        assertEquals(atWorst, hours(bench.run(-102, 180)), 0.06);
    }

    @ParameterizedTest
    @CsvSource({
        "HOURS_SINGLE_POLE_3_MIN, 12.44, 9778",
        "HOURS_SINGLE_POLE_30_MIN, 26.7, 52.1",
        "HOURS_WINDOW_30_MIN, 36.0, 36.0"
    })
    void aRefrigeratorSwingsBetween(Mistake filter, double shortest, double longest) {
        Bench bench = new Bench(SETTINGS, filter).declare(100);
        double least = Double.MAX_VALUE;
        double most = 0;
        for (int second = 0; second < 12 * 1_800; second++) {
            bench.run(second % 1_800 < 600 ? -5 : 0, 1);
            if (second >= 11 * 1_800) {
                least = Math.min(least, hours(bench));
                most = Math.max(most, hours(bench));
            }
        }
        // 0.3 %: a slot of 5 s in 30 min, and the catalogue's three digits (12.44 to four). Its
        // 9958 h is the
        // first-order formula's; exactly it is 60 / (4.822 e^(-20/3)) = 9778.
        assertEquals(shortest, least, 0.003 * shortest);
        assertEquals(longest, most, 0.003 * longest);
    }

    @Test
    void withoutAFilterARefrigeratorShowsTwelveHoursAndNothingByTurns() {
        Bench bench = new Bench(SETTINGS, Mistake.HOURS_INSTANT).declare(60);
        bench.run(-5, 1);
        assertEquals(EstimateState.ESTIMATE, bench.read().timeToEmptyState);
        // Rounded down from 12 h less one second
        assertEquals(719, bench.read().timeToEmptyMinutes);
        bench.run(0, 1);
        assertEquals(EstimateState.NO_ESTIMATE, bench.read().timeToEmptyState);
        bench.run(5, 1);
        assertEquals(EstimateState.CHARGING, bench.read().timeToEmptyState);
    }

    @ParameterizedTest
    @CsvSource({"HOURS_SINGLE_POLE_3_MIN, 185", "HOURS_WINDOW_30_MIN, 1000"})
    void aFilterThatBeginsAtZeroShowsDaysAfterTenSeconds(Mistake filter, int shownHours) {
        Bench bench = begunAt(10, filter, Mistake.FILTER_SEEDED_WITH_ZERO).run(-10, 10);
        // tau 180 s: 100 Ah / (10 A x (1 - e^(-1/18))) = 185.0 h; the window holds 10 s of 30 min,
        // which are 1800 h, more than its limit of 1000.
        assertEquals(shownHours, bench.read().timeToEmptyMinutes / 60.0, 0.5);
        // Without the mistake: 10 h less the ten seconds, rounded down.
        assertEquals(599, begunAt(10, filter).run(-10, 10).read().timeToEmptyMinutes);
    }

    /** 100.1 Ah at 91 mA are 66 000 min exactly, as 100 Ah at 1/11 A are. */
    @Test
    void sixteenBitsOfMinutesShowSevenFortyFour() {
        GaugeSettings settings = Bench.settings().set(Setting.CAPACITY, 100_100).build();
        Bench bench = new Bench(settings, Mistake.HOURS_INSTANT, Mistake.MINUTES_16_BIT);
        bench.run(-0.091, 1).declare(100);
        assertEquals(EstimateState.ESTIMATE, bench.read().timeToEmptyState);
        assertEquals(7 * 60 + 44, bench.read().timeToEmptyMinutes);
    }

    @ParameterizedTest
    @CsvSource({"1.001, 5994", "1.000, 5999", "0.5, 5999", "0.001, 5999"})
    void everythingUnderAnAmpShowsTheSameTime(double amps, int minutes) {
        Bench bench = new Bench(SETTINGS, Mistake.HOURS_INSTANT, Mistake.HOURS_CLAMPED_AS_MEASURED);
        bench.run(-amps, 1).declare(100);
        assertEquals(EstimateState.ESTIMATE, bench.read().timeToEmptyState);
        assertEquals(minutes, bench.read().timeToEmptyMinutes);
    }

    @Test
    void withoutThatMistakeALimitIsCalledALimit() {
        GaugeSettings settings = Bench.settings().set(Setting.LONGEST_TIME, 99).build();
        Bench bench = new Bench(settings, Mistake.HOURS_INSTANT);
        bench.run(-0.5, 1).declare(100);
        assertEquals(EstimateState.MORE_THAN, bench.read().timeToEmptyState);
        assertEquals(99 * 60, bench.read().timeToEmptyMinutes);
    }

    @Test
    void hoursWithoutAKnownChargeAreNoHours() {
        Bench bench = new Bench(SETTINGS, Mistake.HOURS_INSTANT);
        bench.run(-5, 60);
        assertEquals(EstimateState.NO_ESTIMATE, bench.read().timeToEmptyState);
    }
}
