package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.List;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.ChargerSpec.SunSpec;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SunTest {
    private static Circuit plant(double cloudyPart, double depth, long seed) {
        return new Circuit(
                Plants.lithium(1_000, 30),
                List.of(Plants.solar(10, cloudyPart, depth)),
                List.of(),
                new SeedTree(seed));
    }

    private static double dailyAmpHours(Circuit plant, int tickMillis) {
        double before = plant.chargeAmpHours();
        Plants.run(plant, 24 * Plants.HOUR, tickMillis);
        return plant.chargeAmpHours() - before;
    }

    /**
     * Integral of 10 A sin(pi t / 12 h) over 12 h: 10 x 12 x 2 / pi. The tolerance is rounding of
     * 86,400 sums into 3.6e6 C. Ticks that do not divide a minute carry a minute's mean across its
     * border for less than a tick: 7 s of at most 0.044 A change a minute, up and down the day.
     */
    @ParameterizedTest
    @ValueSource(ints = {1_000, 60_000, 500})
    void daysChargeIsTheHalfSinesIntegral(int tickMillis) {
        assertEquals(240 / Math.PI, dailyAmpHours(plant(0, 0, 1), tickMillis), 1e-7);
    }

    @Test
    void noonGivesThePeakAndNightNothing() {
        Circuit plant = plant(0, 0, 1);
        Plants.run(plant, 5 * Plants.HOUR, 1_000);
        assertEquals(0, plant.meanCurrentAmps());
        Plants.run(plant, 7 * Plants.HOUR + 1_000, 1_000);
        // Mean over the minute after noon: 1 - (pi / 720)^2 / 6 of the peak.
        assertEquals(10 * (1 - Math.pow(Math.PI / 720, 2) / 6), plant.meanCurrentAmps(), 1e-9);
    }

    @Test
    void cloudsFollowFromTheSeedAlone() {
        double first = dailyAmpHours(plant(0.5, 0.8, 7), 1_000);
        assertEquals(first, dailyAmpHours(plant(0.5, 0.8, 7), 1_000));
        assertEquals(first, dailyAmpHours(plant(0.5, 0.8, 7), 60_000), 1e-7);
        assertNotEquals(first, dailyAmpHours(plant(0.5, 0.8, 8), 1_000));
    }

    /**
     * Over 1000 days a third under cloud of depth 0.6 takes 20 %. Spells of 10 and 20 minutes
     * decorrelate in 1 / (1/10 + 1/20) = 6.7 min, so a day of 12 h holds about 12 x 60 / 13.3 = 54
     * independent looks of standard deviation 0.47 x 0.6 = 0.28, weighted by a half-sine (x 1.11):
     * 1000 days give 0.28 x 1.11 / sqrt(54,000) = 0.0013. Four of those.
     */
    @Test
    void longRunShareOfCloudIsTheOneAskedFor() {
        Sun sun =
                new Sun(
                        new SunSpec(1_000_000, 6 * Plants.HOUR, 18 * Plants.HOUR, 333_333, 600_000),
                        3);
        double sum = 0;
        int minutes = 1000 * 1440;
        for (int i = 0; i < minutes; i++) {
            sum += sun.meanAmps(i * 60_000L);
        }
        double clear = 1 / Math.PI;
        assertEquals(0.8, sum / minutes / clear, 4 * 0.0013);
    }

    @Test
    void cloudOfFullDepthAllDayLeavesNothing() {
        assertEquals(0, dailyAmpHours(plant(1, 1, 1), 60_000));
    }
}
