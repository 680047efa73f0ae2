package org.gaugebench.sim.bench;

import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.sim.random.SplitMix64;

/**
 * The frozen bench scenario: one day of counts at 1 Hz on the default settings (12 V lead-acid, 100
 * Ah, 100 A / 75 mV, 20 bit), drawn once from a fixed seed. Never change it: figures of different
 * commits are compared on it. A new scenario gets a new name.
 *
 * <p>The day: a night load with a pump that cycles, a charger from the ninth hour at 25 A, its
 * taper, an hour at rest on the charger that proves full, an evening load that arms the rule again.
 * Noise of a few counts lies on current and voltage, so that no branch is foreseeable for long.
 */
final class FrozenDay {
    /** One tick a second. */
    static final int TICKS = 86_400;

    /** Length of a tick. */
    static final int TICK_MILLIS = 1_000;

    private static final long SEED = 20_261_125;
    private static final int SECONDS_PER_HOUR = 3_600;

    /** derived: 100 A x 100 mV / 75 mV at 2^19 counts. */
    private static final double COUNTS_PER_AMP = 524_288 * 75.0 / (100 * 100);

    /** derived: 65.536 V at 2^16 counts. */
    private static final double COUNTS_PER_VOLT = 1_000;

    private final int[] shuntCounts = new int[TICKS];
    private final int[] voltageCounts = new int[TICKS];

    FrozenDay() {
        SplitMix64 random = new SplitMix64(SEED);
        for (int i = 0; i < TICKS; i++) {
            double hour = (double) i / SECONDS_PER_HOUR;
            double amps = amps(hour, i);
            double noise = random.nextDouble() + random.nextDouble() + random.nextDouble() - 1.5;
            shuntCounts[i] = (int) StrictMath.rint(amps * COUNTS_PER_AMP + noise * 12);
            double volts = volts(hour, amps);
            voltageCounts[i] = (int) StrictMath.rint(volts * COUNTS_PER_VOLT + noise * 3);
        }
    }

    private static double amps(double hour, int second) {
        if (hour < 9) {
            return second % 900 < 120 ? -9.5 : -1.2;
        }
        if (hour < 10.5) {
            return 25;
        }
        if (hour < 15) {
            return Math.max(1.0, 25 * (1 - (hour - 10.5) / 2.5));
        }
        return hour < 18 ? 0.4 : -3.1;
    }

    private static double volts(double hour, double amps) {
        if (hour < 9 || hour >= 18) {
            return 12.6 + 0.02 * amps;
        }
        if (hour < 10.5) {
            return 12.9 + (hour - 9);
        }
        return hour < 15 ? 14.4 : 13.6;
    }

    /** The settings of the day: every default, an offset of one and a half counts. */
    static GaugeSettings settings() {
        return GaugeSettings.builder()
                .set(org.gaugebench.core.settings.Setting.SHUNT_OFFSET, 384)
                .build();
    }

    /** Feeds the day to a gauge, from a start of the clock. */
    void feed(BenchGauge gauge, Sample sample, int startMillis) {
        int clockMillis = startMillis;
        for (int i = 0; i < TICKS; i++) {
            clockMillis += TICK_MILLIS;
            sample.shuntCounts = shuntCounts[i];
            sample.voltageCounts = voltageCounts[i];
            sample.temperatureMillicelsius = 18_500;
            sample.clockMillis = clockMillis;
            gauge.tick(sample);
        }
    }
}
