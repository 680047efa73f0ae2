package org.gaugebench.sim.device.exhibits;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.scenario.Mistake;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a gauge makes of a code. Figures: catalogue of edge cases. */
class ReadingMistakesTest {
    private static final double MONTH_SECONDS = 30 * 86_400.0;

    /** 500 A / 50 mV; 25 mA are 256 codes of a 24-bit converter, or one of a 16-bit converter. */
    private static GaugeSettings coarse(int bits) {
        return Bench.settings()
                .set(Setting.SHUNT_RATED_CURRENT, 500_000)
                .set(Setting.SHUNT_RATED_DROP, 50_000)
                .set(Setting.SHUNT_CONVERTER_BITS, bits)
                .set(Setting.SHUNT_FULL_SCALE, 81_920)
                .build();
    }

    @ParameterizedTest
    @CsvSource({"FLOOR_NOT_ROUND, -12.51", "TRUNCATE_NOT_ROUND, 12.49"})
    void droppingLowBitsIsABiasOfHalfAStep(Mistake mistake, double biasMilliamps) {
        Bench bench = new Bench(coarse(24), 1_000, 0, mistake).declare(100);
        Random noise = new Random(4);
        int samples = 200_000;
        for (int i = 0; i < samples; i++) {
            bench.amps(-0.5 + 0.02 * noise.nextGaussian(), 100);
        }
        double hours = samples * 0.1 / 3_600;
        double bias = (bench.ampHours() - bench.plainAmpHours()) / hours * 1_000;
        // 255 of 256 codes give 0.05 mA less; 25 mA / sqrt(12 x 200 000) is 0.02 mA of noise
        assertEquals(biasMilliamps, bias, 0.15);
    }

    @Test
    void aLoadUnderOneStepIsNotThereAfterTruncation() {
        Bench bench = new Bench(coarse(24), Mistake.TRUNCATE_NOT_ROUND).declare(100);
        bench.tickOf(60_000).run(-0.020, MONTH_SECONDS);
        assertEquals(100, bench.ampHours(), 1e-9);
        // 20 mA are 204.8 codes, read as 205: 0.1 %
        assertEquals(14.4, 100 - bench.plainAmpHours(), 0.015);
    }

    @Test
    void minusOneOfSixteenBitsReadsAs1638Amps() {
        Bench bench = new Bench(coarse(16), Mistake.SIGN_EXTENSION).declare(50);
        bench.counts(-1, 100);
        // 65 535 x 25 mA, exactly
        assertEquals(1_638.375, bench.read().currentMicroamps / 1e6, 1e-6);
        assertEquals(0.0455, bench.ampHours() - 50, 5e-5);
        assertEquals(50 - 0.025 * 0.1 / 3_600, bench.plainAmpHours(), 1e-9);
    }

    @Test
    void signExtensionIsWrongInEverySampleOfADischarge() {
        Bench bench = new Bench(coarse(16), Mistake.SIGN_EXTENSION).declare(0);
        bench.run(-10, 10);
        // (65 536 - 400) x 25 mA for 10 s: not a matter of zero crossings only
        assertEquals(1_628.4 * 10 / 3_600, bench.ampHours(), 1e-6);
    }

    @Test
    void aDeadBandHides43AmpHoursOfStandbyAMonth() {
        GaugeSettings settings = Bench.settings().set(Setting.SHOWN_AS_ZERO_BELOW, 70).build();
        Bench bench = new Bench(settings, Mistake.DEAD_BAND).declare(100);
        bench.tickOf(60_000).run(-0.060, MONTH_SECONDS);
        assertEquals(100, bench.ampHours(), 1e-9);
        assertEquals(43.2, 100 - bench.plainAmpHours(), 1e-9);
        bench.run(-0.070, 3_600);
        assertEquals(99.93, bench.ampHours(), 1e-9);
    }
}
