package org.gaugebench.sim.device.exhibits;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.scenario.Mistake;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Currents weighed before they are counted. Figures: catalogue of edge cases. */
class WeightMistakesTest {
    /** 100 Ah at 20 h, exponent 1.2. */
    private static final GaugeSettings SETTINGS =
            Bench.settings().set(Setting.COULOMBIC_EFFICIENCY, 900_000).build();

    @Test
    void efficiencyOnEverySampleMakesTwelveAmpHoursADayOfRipple() {
        Bench bench = new Bench(SETTINGS, 500, 0, Mistake.EFFICIENCY_PER_SAMPLE).declare(50);
        for (int second = 0; second < 86_400; second++) {
            bench.amps(10, 500);
            bench.amps(-10, 500);
        }
        // Less than one count-millisecond is carried over.
        assertEquals(38, bench.ampHours(), 1e-6);
        assertEquals(50, bench.plainAmpHours(), 1e-9);
    }

    @Test
    void peukertInTheCountIsEmptyWith45AmpHoursLeft() {
        Bench bench = new Bench(SETTINGS, Mistake.RATE_COUNTED_CHARGE).declare(100);
        int seconds = 0;
        while (bench.percent() > 0 && seconds < 7_200) {
            bench.run(-100, 1);
            seconds++;
        }
        // Catalogue's digits; a tick of 1 s is 0.03 Ah.
        assertEquals(33.0, seconds / 60.0, 0.05);
        assertEquals(54.9, 100 - bench.plainAmpHours(), 0.05);
        assertEquals(45.1, bench.plainAmpHours(), 0.05);
    }

    @Test
    void peukertInTheCountLeavesTheRatedCurrentAlone() {
        Bench bench = new Bench(SETTINGS, Mistake.RATE_COUNTED_CHARGE, Mistake.RATE_BELOW_RATED);
        bench.declare(100).run(-5, 3_600);
        assertEquals(95, bench.ampHours(), 1e-6);
    }

    /** Each of the three regions is weighed by its own mistake and by no other. */
    @ParameterizedTest
    @CsvSource({
        "RATE_COUNTED_CHARGE, -1", "RATE_COUNTED_CHARGE, 40",
        "RATE_BELOW_RATED, -40", "RATE_BELOW_RATED, 1",
        "RATE_ON_CHARGE, -40", "RATE_ON_CHARGE, -1"
    })
    void eachRateMistakeLeavesTheOtherCurrentsAlone(Mistake mistake, double amps) {
        Bench bench = new Bench(SETTINGS, mistake).declare(50);
        bench.run(amps, 3_600);
        assertEquals(50 + amps, bench.ampHours(), 1e-9);
    }

    @Test
    void peukertBelowTheRatedCurrentMakesABatteryOf138AmpHours() {
        Bench bench = new Bench(SETTINGS, Mistake.RATE_BELOW_RATED).declare(100);
        bench.tickOf(60_000);
        int minutes = 0;
        while (bench.percent() > 0 && minutes < 12_000) {
            bench.run(-1, 60);
            minutes++;
        }
        // At 1 A hours are ampere-hours; 100 / 0.2^0.2 = 137.97.
        assertEquals(138, minutes / 60.0, 0.05);
    }

    @Test
    void peukertOnTheWayInCounts40AmpsAs61() {
        Bench bench = new Bench(SETTINGS, Mistake.RATE_ON_CHARGE).declare(0);
        bench.run(40, 3_600);
        // Catalogue: 1.52 times.
        assertEquals(1.52, bench.ampHours() / 40, 0.005);
        assertEquals(40, bench.plainAmpHours(), 1e-9);
    }
}
