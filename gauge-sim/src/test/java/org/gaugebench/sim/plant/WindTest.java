package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.ChargerSpec;
import org.gaugebench.sim.scenario.ChargerTraits;
import org.gaugebench.sim.scenario.ChargerTraits.WindSpec;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Gusts and the charger behind them. */
class WindTest {
    private static final int DAY_SECONDS = 86_400;

    private static WindSpec spec(double peak, double mean, double gustiness, long gustMillis) {
        return new WindSpec(
                Math.round(peak * 1e6),
                Math.round(mean * 1e6),
                Math.round(gustiness * 1e6),
                gustMillis);
    }

    private static Wind wind(WindSpec spec, long seed) {
        return new Wind(spec, 1_000, seed);
    }

    private static ChargerSpec turbine(String name, double volts, double limitAmps) {
        return new ChargerSpec(
                name,
                true,
                Math.round(volts * 1e6),
                Math.round(volts * 1e6),
                Math.round(limitAmps * 1e6),
                0,
                0,
                0,
                null,
                new ChargerTraits(0, 0, 0, null, 0, spec(20, 0.5, 0.2, 10_000), null));
    }

    /** E (1 + g z)^3 = 1 + 3 g^2 for a normal z; at 20 % of 40 % neither end is ever reached. */
    @Test
    void theMeanCurrentIsTheThirdMomentOfTheSpeed() {
        double expected = 20 * 0.4 * 0.4 * 0.4 * (1 + 3 * 0.2 * 0.2);
        double sum = 0;
        for (int seed = 1; seed <= 30; seed++) {
            sum += wind(spec(20, 0.4, 0.2, 10_000), seed).meanAmps(0, DAY_SECONDS * 1_000L);
        }
        // 30 days hold some 130,000 independent gusts of 0.6 relative deviation: 0.17 %, thrice.
        assertEquals(expected, sum / 30, expected * 0.005);
    }

    @Test
    void theSpeedForgetsWithItsTimeConstant() {
        Wind wind = wind(spec(1, 0.4, 0.15, 20_000), 7);
        double[] deviates = new double[10 * DAY_SECONDS];
        for (int second = 0; second < deviates.length; second++) {
            double speed = Math.cbrt(wind.meanAmps(second * 1_000L, second * 1_000L + 1_000));
            deviates[second] = (speed / 0.4 - 1) / 0.15;
        }
        // Twenty thousand independent gusts: 0.7 %, thrice.
        assertEquals(1, meanProduct(deviates, 0), 0.03);
        assertEquals(StrictMath.exp(-1), meanProduct(deviates, 20), 0.025);
    }

    private static double meanProduct(double[] values, int lag) {
        double sum = 0;
        for (int i = lag; i < values.length; i++) {
            sum += values[i] * values[i - lag];
        }
        return sum / (values.length - lag);
    }

    @Test
    void withoutGustsItIsTheCubeAndTheLimitIsALimit() {
        assertEquals(20 * 0.125, wind(spec(20, 0.5, 0, 10_000), 1).meanAmps(0, 60_000), 1e-12);
        Wind strong = new Wind(spec(20, 1, 0, 10_000), 12, 1);
        assertEquals(12, strong.meanAmps(0, 60_000), 1e-12);
    }

    /** Sums of a thousand terms differ in the last bits. */
    @ParameterizedTest
    @ValueSource(longs = {250, 700, 1_000, 60_000})
    void aTickSeesTheMeanOfItsSeconds(long tickMillis) {
        Wind ticking = wind(spec(20, 0.5, 0.3, 5_000), 3);
        Wind whole = wind(spec(20, 0.5, 0.3, 5_000), 3);
        long ticks = 4_200_000 / tickMillis;
        double sum = 0;
        for (long tick = 0; tick < ticks; tick++) {
            sum += ticking.meanAmps(tick * tickMillis, (tick + 1) * tickMillis);
        }
        assertEquals(whole.meanAmps(0, ticks * tickMillis), sum / ticks, 1e-9);
    }

    @Test
    void aTurbineChargesInGustsAndHoldsItsVoltage() {
        Circuit plant =
                new Circuit(
                        Plants.leadAcid(80),
                        List.of(turbine("mast", 14.4, 15)),
                        List.of(),
                        new SeedTree(5));
        int bounces = 0;
        boolean above = false;
        double most = 0;
        for (int second = 0; second < 8 * 3_600; second++) {
            plant.step(1_000);
            assertTrue(plant.voltageVolts() <= 14.4 + 1e-9);
            assertEquals(plant.chargerAmps("mast"), plant.meanCurrentAmps(), 1e-9);
            assertEquals(plant.meanCurrentAmps(), plant.currentAmps(), 1e-9, "a second is one");
            most = Math.max(most, plant.meanCurrentAmps());
            bounces += above != plant.voltageVolts() > 14.2 ? 1 : 0;
            above = plant.voltageVolts() > 14.2;
        }
        assertTrue(bounces > 100, bounces + " times over the threshold");
        assertTrue(most > 5 && most <= 15, most + " A");
    }

    /** A minute's mean, and at its end the current of its last second. */
    @Test
    void anInstantSeesTheLastSecond() {
        Circuit minutes =
                new Circuit(
                        Plants.lithium(1_000, 30),
                        List.of(turbine("mast", 14.6, 15)),
                        List.of(),
                        new SeedTree(5));
        Circuit seconds =
                new Circuit(
                        Plants.lithium(1_000, 30),
                        List.of(turbine("mast", 14.6, 15)),
                        List.of(),
                        new SeedTree(5));
        for (int minute = 0; minute < 100; minute++) {
            minutes.step(60_000);
            Plants.run(seconds, 60_000, 1_000);
            assertEquals(seconds.meanCurrentAmps(), minutes.currentAmps(), 1e-9);
            assertNotEquals(minutes.meanCurrentAmps(), minutes.currentAmps());
        }
        assertEquals(seconds.chargeAmpHours(), minutes.chargeAmpHours(), 1e-9);
    }

    @Test
    void gustsDependOnSeedAndNameAndOnNothingElse() {
        double[] first = gusts("mast", 5, false);
        assertEquals(0, distance(first, gusts("mast", 5, false)));
        assertEquals(0, distance(first, gusts("mast", 5, true)), "switching moves no gust");
        assertTrue(distance(first, gusts("mast", 6, false)) > 1);
        assertTrue(distance(first, gusts("roof", 5, false)) > 1);
    }

    private static double distance(double[] one, double[] other) {
        double sum = 0;
        for (int i = 0; i < one.length; i++) {
            sum += Math.abs(one[i] - other[i]);
        }
        return sum;
    }

    private static double[] gusts(String name, long seed, boolean offForAWhile) {
        Circuit plant =
                new Circuit(
                        Plants.lithium(1_000, 30),
                        List.of(turbine(name, 14.6, 15)),
                        List.of(),
                        new SeedTree(seed));
        plant.switchCharger(name, !offForAWhile);
        Plants.run(plant, 600_000, 1_000);
        plant.switchCharger(name, true);
        double[] amps = new double[600];
        for (int second = 0; second < amps.length; second++) {
            plant.step(1_000);
            amps[second] = plant.chargerAmps(name);
        }
        return amps;
    }

    @Test
    void aCopyGoesOnWithTheSameGusts() {
        Circuit plant =
                new Circuit(
                        Plants.leadAcid(80),
                        List.of(turbine("mast", 14.4, 15)),
                        List.of(Plants.amps(1)),
                        new SeedTree(5));
        Plants.run(plant, Plants.HOUR, 700);
        Circuit copy = plant.copy();
        for (int tick = 0; tick < 10_000; tick++) {
            plant.step(700);
            copy.step(700);
            assertEquals(plant.voltageVolts(), copy.voltageVolts());
            assertEquals(plant.currentAmps(), copy.currentAmps());
        }
    }
}
