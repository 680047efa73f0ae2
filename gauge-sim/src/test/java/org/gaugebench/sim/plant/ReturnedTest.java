package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.LoadSpec;
import org.gaugebench.sim.scenario.LoadTraits;
import org.gaugebench.sim.scenario.LoadTraits.Returning;
import org.gaugebench.sim.scenario.WiringSpec;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A load that gives back in a part of its cycle: 60 A for 6 s, 40 A back from 20 s to 23 s. */
class ReturnedTest {
    private static LoadSpec hoist(double volts) {
        return new LoadSpec(
                "hoist",
                true,
                LoadSpec.Kind.CONSTANT_CURRENT,
                60_000_000,
                6_000,
                60_000,
                new LoadTraits(
                        0,
                        null,
                        new Returning(40_000_000, 3_000, 20_000, Math.round(volts * 1e6)),
                        null));
    }

    private static Circuit plant(BatterySpec battery, LoadSpec... loads) {
        return new Circuit(battery, List.of(), List.of(loads), new SeedTree(1));
    }

    /** 40 A x 3 s a minute = 2.0 A, 60 A x 6 s = 6 A, whatever the tick. */
    @ParameterizedTest
    @ValueSource(ints = {100, 700, 1_000, 4_000, 60_000})
    void theMeanOfAMinuteIsExact(int tickMillis) {
        Circuit plant = plant(Plants.lithium(100, 50), hoist(14.6));
        // 42 minutes are whole ticks of each.
        Plants.run(plant, 42 * 60_000, tickMillis);
        assertEquals(50 - 4.0 * 42 / 60, plant.chargeAmpHours(), 1e-9);
    }

    @Test
    void secondForSecondItIsOutNothingInNothing() {
        Circuit plant = plant(Plants.lithium(100, 50), hoist(14.6));
        for (int second = 0; second < 180; second++) {
            plant.step(1_000);
            int inCycle = second % 60;
            double expected = inCycle < 6 ? -60 : inCycle >= 20 && inCycle < 23 ? 40 : 0;
            assertEquals(expected, plant.meanCurrentAmps(), 1e-9, "second " + second);
        }
    }

    /** The on part holds its first instant and not its last, as of a load. */
    @Test
    void anInstantSeesAllOrNothing() {
        Circuit plant = plant(Plants.lithium(100, 50), hoist(14.6), Plants.amps(1));
        for (int tick = 1; tick <= 600; tick++) {
            plant.step(100);
            double inCycle = tick % 600 / 10.0;
            double expected = inCycle < 6 ? -61 : inCycle >= 20 && inCycle < 23 ? 39 : -1;
            assertEquals(expected, plant.currentAmps(), 1e-9, "at " + inCycle + " s");
        }
        Circuit minutes = plant(Plants.lithium(100, 50), hoist(14.6), Plants.amps(1));
        minutes.step(21_000);
        assertEquals(39, minutes.currentAmps(), 1e-9);
        minutes.step(39_000);
        assertEquals(-61, minutes.currentAmps(), 1e-9);
    }

    /** A nearly full battery takes 2 A or so at 14.4 V; the rest of the 40 A never flows. */
    @Test
    void aBatteryThatTakesNoMoreHoldsTheReturnAtItsVoltage() {
        Circuit plant = plant(Plants.leadAcid(96), hoist(14.4));
        double most = 0;
        for (int second = 0; second < 600; second++) {
            plant.step(1_000);
            assertTrue(plant.voltageVolts() <= 14.4 + 1e-9);
            most = Math.max(most, plant.meanCurrentAmps());
            if (plant.meanCurrentAmps() > 0) {
                assertEquals(14.4, plant.voltageVolts(), 1e-9);
            }
        }
        assertTrue(most > 1 && most < 5, most + " A");
    }

    @Test
    void switchedOffItGivesNothingAndSwitchedOnItBeginsACycle() {
        Circuit plant = plant(Plants.lithium(100, 50), hoist(14.6));
        plant.step(7_000);
        plant.switchLoad("hoist", false);
        Plants.run(plant, 60_000, 1_000);
        assertEquals(0, plant.meanCurrentAmps());
        plant.switchLoad("hoist", true);
        Plants.run(plant, 21_000, 1_000);
        assertEquals(40, plant.meanCurrentAmps(), 1e-9);
        assertEquals(40, plant.chargerAmps("hoist"), 1e-9);
    }

    @Test
    void whatGoesPastTheShuntComesBackPastIt() {
        Circuit plant = plant(Plants.lithium(100, 50), hoist(14.6), Plants.amps(2));
        plant.setWiring(WiringSpec.RIGHT.with("past-shunt.hoist", 250_000));
        for (int second = 0; second < 120; second++) {
            plant.step(1_000);
            double hoist = plant.meanCurrentAmps() + 2;
            assertEquals(0.75 * hoist - 2, plant.meanShuntAmps(), 1e-9, "second " + second);
        }
    }

    @Test
    void aCopyGoesOnInTheSameCycle() {
        Circuit plant = plant(Plants.leadAcid(85), hoist(14.4), Plants.amps(1));
        plant.switchLoad("hoist", false);
        plant.step(1_300);
        plant.switchLoad("hoist", true);
        Plants.run(plant, 20_500, 500);
        Circuit copy = plant.copy();
        for (int tick = 0; tick < 1_000; tick++) {
            plant.step(500);
            copy.step(500);
            assertEquals(plant.voltageVolts(), copy.voltageVolts());
            assertEquals(plant.currentAmps(), copy.currentAmps());
        }
    }
}
