package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.ChargerSpec;
import org.gaugebench.sim.scenario.ChargerTraits;
import org.gaugebench.sim.scenario.ChargerTraits.Equalizing;
import org.gaugebench.sim.scenario.LoadSpec;
import org.gaugebench.sim.scenario.WiringSpec;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Cable, meter, timer and equalizing stage of a charger. */
class ChargerTraitsTest {
    /** The search ends at 1e-12 V; over 10 mOhm that is 1e-10 A. */
    private static final double SEARCH = 1e-9;

    private static ChargerSpec charger(
            String name, double volts, double floatVolts, double amps, ChargerTraits traits) {
        return new ChargerSpec(
                name,
                true,
                Math.round(volts * 1e6),
                Math.round(floatVolts * 1e6),
                Math.round(amps * 1e6),
                0,
                0,
                floatVolts < volts ? Plants.HOUR : 0,
                null,
                traits);
    }

    private static ChargerTraits cable(long microohms) {
        return new ChargerTraits(microohms, 0, 0, null);
    }

    private static Circuit plant(
            BatterySpec battery, List<ChargerSpec> chargers, LoadSpec... loads) {
        return new Circuit(battery, chargers, List.of(loads), new SeedTree(1));
    }

    /** 55 A through 20 mOhm lose 1.1 V: 14.2 V at the alternator, 13.1 V at the battery. */
    @Test
    void anAlternatorBehindACableRegulatesAtItsOwnEnd() {
        Circuit plant =
                plant(Plants.leadAcid(60), List.of(charger("a", 14.2, 14.2, 90, cable(20_000))));
        boolean regulated = false;
        for (int second = 0; second < 7_200; second++) {
            plant.step(1_000);
            double ownVolts = plant.voltageVolts() + plant.chargerAmps("a") * 0.020;
            if (plant.chargerAmps("a") < 90) {
                regulated = true;
                assertEquals(14.2, ownVolts, SEARCH);
            } else {
                assertTrue(ownVolts <= 14.2);
            }
            assertEquals(plant.chargerAmps("a"), plant.meanCurrentAmps(), SEARCH);
        }
        assertTrue(regulated);
    }

    /** The same resistance in the battery's own joint, solved in closed form: the same current. */
    @ParameterizedTest
    @ValueSource(ints = {1_000, 60_000})
    void aCableAloneActsLikeAJoint(int tickMillis) {
        for (BatterySpec battery : List.of(Plants.leadAcid(60), Plants.lithium(100, 30))) {
            Circuit cabled = plant(battery, List.of(charger("a", 14.2, 14.2, 50, cable(15_000))));
            Circuit joined = plant(battery, List.of(charger("a", 14.2, 14.2, 50, cable(0))));
            joined.setWiring(WiringSpec.RIGHT.with("joint-resistance", 15_000));
            for (int tick = 0; tick < 400; tick++) {
                cabled.step(tickMillis);
                joined.step(tickMillis);
                // Away from the jump where acceptance is reached a nanovolt moves no more than
                // this.
                assertEquals(joined.meanCurrentAmps(), cabled.meanCurrentAmps(), 1e-6);
            }
            assertEquals(joined.chargeAmpHours(), cabled.chargeAmpHours(), 1e-6);
        }
    }

    @Test
    void loadsAndASecondChargerShareWithTheCable() {
        Circuit plant =
                plant(
                        Plants.lithium(100, 50),
                        List.of(
                                charger("far", 14.2, 14.2, 60, cable(10_000)),
                                charger("near", 13.6, 13.6, 10, ChargerTraits.NONE)),
                        Plants.load("pump", LoadSpec.Kind.CONSTANT_POWER, 120),
                        Plants.amps(3));
        for (int second = 0; second < 3_600; second++) {
            plant.step(1_000);
            double far = plant.chargerAmps("far");
            double near = plant.chargerAmps("near");
            double loads = 120 / plant.voltageVolts() + 3;
            assertEquals(far + near - loads, plant.meanCurrentAmps(), 1e-8);
            if (far > 0 && far < 60) {
                assertEquals((14.2 - plant.voltageVolts()) / 0.010, far, 1e-6);
            }
            if (near > 0 && near < 10) {
                assertEquals(13.6, plant.voltageVolts(), 2e-5, "10 A over a microohm");
            }
        }
        plant.setIsolatorOpen(true);
        plant.step(1_000);
        assertEquals(0, plant.meanCurrentAmps());
        assertEquals(120 / plant.voltageVolts() + 3, plant.chargerAmps("far"), 1e-6);
    }

    @Test
    void aChargerWhoseMeterReadsHighHoldsLess() {
        ChargerTraits high = new ChargerTraits(0, 10_000, 0, null);
        Circuit plant = plant(Plants.leadAcid(90), List.of(charger("a", 14.4, 14.4, 20, high)));
        Plants.run(plant, Plants.HOUR, 1_000);
        assertEquals(14.4 / 1.01, plant.voltageVolts(), 1e-12);
    }

    @Test
    void aTimerStopsItAndSwitchingItOnStartsTheTimerAgain() {
        ChargerTraits timed = new ChargerTraits(0, 0, 600_000, null);
        Circuit plant =
                plant(Plants.lithium(100, 30), List.of(charger("a", 14.2, 14.2, 10, timed)));
        Plants.run(plant, 600_000, 1_000);
        assertEquals(10, plant.meanCurrentAmps());
        assertEquals(30 + 10 / 6.0, plant.chargeAmpHours(), 1e-9);
        Plants.run(plant, 600_000, 1_000);
        assertEquals(0, plant.meanCurrentAmps());
        plant.switchCharger("a", true);
        Plants.run(plant, 1_200_000, 1_000);
        assertEquals(30 + 20 / 6.0, plant.chargeAmpHours(), 1e-9);
    }

    /** Absorption 1 h, equalizing 2 h on the first, then not before two days have gone by. */
    @Test
    void equalizingComesBetweenAbsorptionAndFloatWhereItIsDue() {
        Equalizing stage = new Equalizing(15_500_000, 2 * Plants.HOUR, 48 * Plants.HOUR);
        ChargerTraits traits = new ChargerTraits(0, 0, 0, stage);
        Circuit plant =
                plant(Plants.leadAcid(98, 1, 0.5), List.of(charger("a", 14.4, 13.5, 20, traits)));
        assertEquals(2 * 3_600, secondsAbove(plant, 15.49, 24), 1);
        assertEquals(13.5, plant.voltageVolts(), "and float after it");
        plant.switchCharger("a", false);
        plant.step(1_000);
        plant.switchCharger("a", true);
        assertEquals(0, secondsAbove(plant, 15.49, 23), "not due");
        plant.switchCharger("a", false);
        Plants.run(plant, 3 * Plants.HOUR, 1_000);
        plant.switchCharger("a", true);
        assertEquals(2 * 3_600, secondsAbove(plant, 15.49, 24), 1);
    }

    private static int secondsAbove(Circuit plant, double volts, int hours) {
        int seconds = 0;
        for (int second = 0; second < hours * 3_600; second++) {
            plant.step(1_000);
            seconds += plant.voltageVolts() > volts ? 1 : 0;
        }
        return seconds;
    }

    @Test
    void aCopyGoesOnToTheSameBits() {
        Equalizing stage = new Equalizing(15_500_000, Plants.HOUR, 48 * Plants.HOUR);
        Circuit plant =
                plant(
                        Plants.leadAcid(95),
                        List.of(
                                charger(
                                        "a",
                                        14.4,
                                        13.5,
                                        20,
                                        new ChargerTraits(5_000, -3_000, 7 * Plants.HOUR, stage))),
                        Plants.amps(1));
        Plants.run(plant, 6 * Plants.HOUR, 1_000);
        Circuit copy = plant.copy();
        for (int second = 0; second < 17 * 3_600; second++) {
            if (second % (5 * 3_600) == 4 * 3_600) {
                for (Circuit each : List.of(plant, copy)) {
                    each.switchCharger("a", false);
                    each.switchCharger("a", true);
                }
            }
            plant.step(1_000);
            copy.step(1_000);
            assertEquals(plant.voltageVolts(), copy.voltageVolts());
        }
    }
}
