package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.BatteryTraits;
import org.gaugebench.sim.scenario.BatteryTraits.Thermal;
import org.junit.jupiter.api.Test;

/** The battery's temperature against closed forms of a first-order lag. */
class SurroundingsTest {
    private static Circuit plant(Thermal thermal, double amps) {
        BatterySpec spec =
                Plants.lithium(100_000, 50).with(BatteryTraits.NONE.withThermal(thermal));
        return new Circuit(spec, List.of(), List.of(Plants.amps(amps)), new SeedTree(1));
    }

    /** From 25 °C towards 5 °C without heat: 20 K exp(-t / 4 h). */
    @Test
    void aWarmBatteryCoolsTowardsItsSurroundings() {
        Circuit plant = plant(new Thermal(5_000, 0, 0, 2_000, 4 * Plants.HOUR), 0.001);
        for (int hour = 1; hour <= 12; hour++) {
            // The temperature moves at the first step of a minute: one step more.
            Plants.run(plant, Plants.HOUR, 60_000);
            Circuit next = plant.copy();
            next.step(1_000);
            assertEquals(5 + 20 * Math.exp(-hour / 4.0), next.temperatureCelsius(), 1e-6);
        }
    }

    /** 20 A in 10 mOhm are 4 W, at 2 K/W 8 K; 63.2 % of it after one time constant. */
    @Test
    void currentWarmsByJoulesLaw() {
        Circuit plant = plant(new Thermal(25_000, 0, 0, 2_000, 4 * Plants.HOUR), 20);
        Plants.run(plant, 4 * Plants.HOUR, 1_000);
        Plants.run(plant, 1_000, 1_000);
        assertEquals(25 + 8 * (1 - Math.exp(-1)), plant.temperatureCelsius(), 1e-6);
        Plants.run(plant, 80 * Plants.HOUR, 60_000);
        assertEquals(33, plant.temperatureCelsius(), 1e-6);
    }

    /**
     * A daily sine of 10 K through a lag of 6 h: amplitude 10 / sqrt(1 + (w tau)^2), late by atan(w
     * tau) / w with w = 2 pi a day. The surroundings enter by their value at mid-minute, which
     * costs (w x 60 s)^2 / 24 of the amplitude, a microkelvin.
     */
    @Test
    void theDayReachesTheBatteryDampedAndLate() {
        Thermal thermal = new Thermal(15_000, 10_000, 14 * Plants.HOUR, 2_000, 6 * Plants.HOUR);
        Circuit plant = plant(thermal, 0.001);
        Plants.run(plant, 240 * Plants.HOUR, 60_000);
        double turn = 2 * Math.PI / 24 * 6;
        double amplitude = 10 / Math.sqrt(1 + turn * turn);
        double lateHours = Math.atan(turn) * 24 / (2 * Math.PI);
        for (int hour = 0; hour < 24; hour++) {
            Circuit next = plant.copy();
            next.step(1_000);
            double angle = 2 * Math.PI * (hour - 14 - lateHours) / 24;
            assertEquals(15 + amplitude * Math.cos(angle), next.temperatureCelsius(), 1e-4);
            Plants.run(plant, Plants.HOUR, 60_000);
        }
    }

    @Test
    void theWarmestHourIsTheOneAskedFor() {
        Surroundings surroundings =
                new Surroundings(new Thermal(15_000, 10_000, 14 * Plants.HOUR, 0, 1));
        assertEquals(25, surroundings.ambientCelsius(14.0 * Plants.HOUR), 1e-12);
        assertEquals(5, surroundings.ambientCelsius(26.0 * Plants.HOUR), 1e-12);
    }
}
