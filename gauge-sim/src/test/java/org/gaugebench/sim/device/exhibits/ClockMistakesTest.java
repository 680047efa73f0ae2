package org.gaugebench.sim.device.exhibits;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.sim.scenario.Mistake;
import org.junit.jupiter.api.Test;

/** Time told wrong, and stretches without samples. Figures: catalogue of edge cases. */
class ClockMistakesTest {
    private static final GaugeSettings SETTINGS = Bench.settings().build();

    /** Only the last printed nanocoulomb is rounded. */
    private static final double EXACT = 1e-9;

    @Test
    void anAssumedTickOfTenMillisUndercountsOneOfTenPointThree() {
        Bench bench = new Bench(SETTINGS, 10, 0, Mistake.ASSUMED_TICK).declare(100);
        for (int i = 0; i < 20_000; i++) {
            bench.amps(-20, i % 10 < 3 ? 11 : 10);
        }
        double truth = 100 - bench.plainAmpHours();
        assertEquals(20 * 206 / 3_600.0, truth, EXACT);
        assertEquals(1 - 1 / 1.03, 1 - (100 - bench.ampHours()) / truth, 1e-6);
    }

    @Test
    void anAssumedTickLosesTheMillisOfABlockingWrite() {
        Bench bench = new Bench(SETTINGS, 100, 0, Mistake.ASSUMED_TICK).declare(100);
        for (int i = 0; i < 36_000; i++) {
            bench.amps(-5, i % 10 == 0 ? 120 : 100);
        }
        // 20 ms in 1.02 s
        assertEquals(0.02, (bench.ampHours() - bench.plainAmpHours()) / 5, EXACT);
    }

    @Test
    void theWrapOfTheMillisecondCounterAdds5965AmpHoursInOneTick() {
        int begin = (int) ((1L << 32) - 10_000);
        Bench bench = new Bench(SETTINGS, 1_000, begin, Mistake.MILLISECOND_WRAP, Mistake.NO_CLAMP);
        bench.declare(50).run(-5, 9);
        double before = bench.ampHours();
        bench.run(-5, 1);
        // 5 A x (2^32 ms - 1 s); a difference of one second is 0.0014 Ah
        assertEquals(5_965.23, bench.ampHours() - before, 0.01);
        bench.run(-5, 10);
        assertEquals(50 - 100 / 3_600.0, bench.plainAmpHours(), EXACT);
    }

    @Test
    void aClockThatRunsBackwardsStandsForNoTime() {
        Bench bench = new Bench(SETTINGS).declare(50);
        bench.amps(-5, -3_600_000);
        bench.run(-5, 3_600);
        assertEquals(45, bench.ampHours(), EXACT);
        assertEquals(45, bench.plainAmpHours(), EXACT);
    }

    @Test
    void aGapThatIsNotCountedMissesOneAmpHour() {
        Bench bench = new Bench(SETTINGS, Mistake.GAP_NOT_COUNTED).declare(50);
        bench.run(-40, 60);
        bench.amps(-40, 90_000);
        bench.run(-40, 60);
        assertEquals(1.0, bench.ampHours() - bench.plainAmpHours(), EXACT);
    }

    @Test
    void aReadingHeldThroughAGapCountsOneAmpHourThatNeverFlowed() {
        Bench bench = new Bench(SETTINGS, Mistake.HOLD_LAST_ON_GAP).declare(50);
        bench.run(-40, 60);
        bench.amps(0, 90_000);
        bench.run(0, 60);
        assertEquals(-1.0, bench.ampHours() - bench.plainAmpHours(), EXACT);
    }

    @Test
    void samplesThatAlwaysComeSlowlyAreNoGap() {
        Bench bench = new Bench(SETTINGS, 10_000, 0, Mistake.GAP_NOT_COUNTED).declare(50);
        bench.run(-40, 3_600);
        assertEquals(10, bench.ampHours(), EXACT);
    }
}
