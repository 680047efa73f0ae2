package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.ChargerSpec;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.scenario.LoadSpec;
import org.junit.jupiter.api.Test;

class CircuitTest {
    /** Rounding of a few operations on volts and amps. */
    private static final double ROUNDING = 1e-9;

    private static Circuit plant(
            BatterySpec battery, List<ChargerSpec> chargers, LoadSpec... loads) {
        return new Circuit(battery, chargers, List.of(loads), new SeedTree(1));
    }

    @Test
    void oneAmpForAnHourTakesOneAmpHour() {
        Circuit plant = plant(Plants.lithium(60, 80), List.of(), Plants.amps(1));
        Plants.run(plant, Plants.HOUR, 1_000);
        assertEquals(47, plant.chargeAmpHours(), ROUNDING);
        assertEquals(-1, plant.meanCurrentAmps());
        assertEquals(60, plant.capacityAmpHours(), ROUNDING);
    }

    @Test
    void constantPowerLoadTakesItsWatts() {
        Circuit plant =
                plant(
                        Plants.lithium(60, 80),
                        List.of(),
                        Plants.load("heater", LoadSpec.Kind.CONSTANT_POWER, 300));
        for (int i = 0; i < 100; i++) {
            plant.step(1_000);
            assertEquals(300, -plant.meanCurrentAmps() * plant.voltageVolts(), 300 * ROUNDING);
        }
    }

    @Test
    void resistiveLoadFollowsOhm() {
        Circuit plant =
                plant(
                        Plants.lithium(60, 80),
                        List.of(),
                        Plants.load("lamp", LoadSpec.Kind.CONSTANT_RESISTANCE, 2.5));
        for (int i = 0; i < 100; i++) {
            plant.step(1_000);
            assertEquals(plant.voltageVolts() / 2.5, -plant.meanCurrentAmps(), ROUNDING);
        }
    }

    /**
     * Energy that the open-circuit source gives = what the terminals give + heat in the 10 mOhm.
     */
    @Test
    void joulesBalance() {
        Circuit plant = plant(Plants.lithium(60, 80), List.of(), Plants.amps(20));
        double source = 0;
        double terminals = 0;
        OpenCircuitCurve curve =
                new OpenCircuitCurve(OpenCircuitTable.of(Chemistry.LIFEPO4), 4, 60, 25);
        for (int i = 0; i < 3_600; i++) {
            plant.step(1_000);
            source += 20 * curve.voltsAt(plant.chargeAmpHours());
            terminals += 20 * plant.voltageVolts();
        }
        assertEquals(20 * 20 * 0.010 * 3_600, source - terminals, 1e-4);
    }

    @Test
    void cyclingLoadEntersByItsMean() {
        Circuit plant = plant(Plants.lithium(60, 80), List.of(), Plants.cycling(6, 250, 750));
        Plants.run(plant, 750_000, 1_000);
        assertEquals(48 - 2 * 750 / 3600.0, plant.chargeAmpHours(), ROUNDING);
        // 750,000 ms is a whole number of periods: the next on part begins.
        assertEquals(-6, plant.currentAmps());
    }

    @Test
    void cycleBeginsWithItsOnPartWhenSwitchedOn() {
        LoadSpec pump =
                new LoadSpec(
                        "pump", false, LoadSpec.Kind.CONSTANT_CURRENT, 5_000_000, 10_000, 30_000);
        Circuit plant = plant(Plants.lithium(60, 80), List.of(), pump);
        Plants.run(plant, 7_000, 1_000);
        plant.switchLoad("pump", true);
        for (int second = 0; second < 60; second++) {
            plant.step(1_000);
            double expected = second % 30 < 10 ? -5 : 0;
            assertEquals(expected, plant.meanCurrentAmps(), 0, second + " s");
        }
    }

    @Test
    void lowerSetPointGivesWayFirst() {
        List<ChargerSpec> both =
                List.of(
                        Plants.charger("roof", 14.4, 14.4, 5),
                        Plants.charger("shore", 13.8, 13.8, 20));
        Circuit plant = plant(Plants.leadAcid(30), both);
        plant.step(1_000);
        assertEquals(25, plant.meanCurrentAmps(), ROUNDING, "bulk: both give all");
        while (plant.chargerAmps("shore") == 20) {
            plant.step(1_000);
        }
        assertEquals(13.8, plant.voltageVolts(), ROUNDING, "the lower one regulates");
        assertEquals(5, plant.chargerAmps("roof"), "the higher one gives all it has");
        while (plant.chargerAmps("roof") == 5) {
            plant.step(1_000);
        }
        assertEquals(0, plant.chargerAmps("shore"), "above its set point it gives nothing");
        assertEquals(14.4, plant.voltageVolts(), ROUNDING);
    }

    /** A battery isolated while its charger runs: 14.4 V and 0 A from the start. */
    @Test
    void isolatorOpenShowsTheChargersVoltageAndNoCurrent() {
        Circuit plant =
                plant(
                        Plants.leadAcid(60),
                        List.of(Plants.charger("shore", 14.4, 14.4, 20)),
                        Plants.amps(2));
        plant.setIsolatorOpen(true);
        Plants.run(plant, Plants.HOUR, 1_000);
        assertEquals(14.4, plant.voltageVolts());
        assertEquals(0, plant.meanCurrentAmps());
        assertEquals(2, plant.chargerAmps("shore"));
        assertEquals(60, plant.chargeAmpHours(), ROUNDING);
        assertEquals(0, plant.availableAmpHours());
        plant.setIsolatorOpen(false);
        plant.step(1_000);
        assertEquals(60, plant.availableAmpHours(), 0.01);
        assertTrue(plant.meanCurrentAmps() > 17);
    }

    @Test
    void isolatorOpenWithoutChargerShowsNothing() {
        Circuit plant = plant(Plants.leadAcid(60), List.of(), Plants.amps(2));
        plant.setIsolatorOpen(true);
        plant.step(1_000);
        assertEquals(0, plant.voltageVolts());
        assertEquals(0, plant.meanCurrentAmps());
        assertEquals(0, plant.loadAmps());
    }

    /** The protection opens at 82 %: a step to no flow at the charger's voltage. */
    @Test
    void forcedProtectionStepsToNoFlowAtBusVoltage() {
        Circuit plant =
                plant(Plants.lithium(100, 60), List.of(Plants.charger("shore", 14.4, 14.4, 30)));
        while (plant.stateOfCharge() < 0.82) {
            plant.step(1_000);
        }
        assertEquals(30, plant.meanCurrentAmps(), ROUNDING);
        assertTrue(plant.apply(new Change(0, Change.Target.PROTECTION, "", 1)));
        double charge = plant.chargeAmpHours();
        Plants.run(plant, 3 * Plants.HOUR, 1_000);
        assertEquals(14.4, plant.voltageVolts());
        assertEquals(0, plant.meanCurrentAmps());
        assertEquals(charge, plant.chargeAmpHours());
        assertTrue(plant.apply(new Change(0, Change.Target.PROTECTION, "", 0)));
        plant.step(1_000);
        assertEquals(30, plant.meanCurrentAmps(), ROUNDING);
    }

    @Test
    void chargeStopOpensAtItsVoltageAndClosesOnDischarge() {
        Circuit plant =
                plant(
                        Plants.lithium(10, 90, 14.2, 0),
                        List.of(Plants.charger("shore", 14.6, 14.6, 5)),
                        Plants.amps(1));
        Plants.run(plant, Plants.HOUR, 1_000);
        assertEquals(0, plant.meanCurrentAmps(), "charge stopped");
        assertEquals(14.6, plant.voltageVolts(), "the bus stays at the charger's voltage");
        plant.switchCharger("shore", false);
        plant.step(1_000);
        assertEquals(-1, plant.meanCurrentAmps(), "a discharge closes the path");
        plant.switchCharger("shore", true);
        plant.step(1_000);
        assertEquals(4, plant.meanCurrentAmps(), ROUNDING, "and charging goes on");
    }

    @Test
    void dischargeStopOpensAtItsVoltageAndClosesOnCharge() {
        Circuit plant =
                plant(
                        Plants.lithium(10, 20, 0, 11),
                        List.of(
                                new ChargerSpec(
                                        "shore",
                                        false,
                                        14_400_000,
                                        14_400_000,
                                        5_000_000,
                                        0,
                                        0,
                                        0,
                                        null)),
                        Plants.amps(1));
        Plants.run(plant, 3 * Plants.HOUR, 1_000);
        assertEquals(0, plant.meanCurrentAmps());
        assertEquals(0, plant.voltageVolts());
        // 11.01 V of open circuit, 10 mOhm at 1 A, lie between 1.17 % and 2.67 %.
        assertTrue(plant.stateOfCharge() > 0.0117 && plant.stateOfCharge() < 0.0267);
        plant.switchCharger("shore", true);
        plant.step(1_000);
        assertEquals(4, plant.meanCurrentAmps(), ROUNDING);
    }

    @Test
    void emptyBatteryGivesNothingMore() {
        Circuit plant = plant(Plants.lithium(10, 1), List.of(), Plants.amps(7));
        Plants.run(plant, Plants.HOUR, 1_000);
        // What is left is less than one tick of the load.
        assertTrue(plant.chargeAmpHours() >= 0 && plant.chargeAmpHours() < 7 / 3600.0);
        assertEquals(0, plant.meanCurrentAmps());
        assertEquals(0, plant.voltageVolts());
    }

    @Test
    void loadBeyondWhatTheBatteryCanGiveBreaksTheBusDown() {
        // 13.2 V on 10 mOhm gives at most 13.2^2 / 0.04 = 4.4 kW.
        Circuit plant =
                plant(
                        Plants.lithium(60, 50),
                        List.of(),
                        Plants.load("heater", LoadSpec.Kind.CONSTANT_POWER, 5_000));
        plant.step(1_000);
        assertEquals(0, plant.voltageVolts());
        assertEquals(0, plant.meanCurrentAmps());
    }

    /** 3 % in 30 days at 20 °C; four times as fast at 40 °C: 1 - 0.97^4. */
    @Test
    void selfDischargeDoublesWithTenKelvin() {
        BatterySpec spec = withSelfDischarge(30_000, 20_000);
        Circuit cool = plant(spec, List.of());
        Plants.run(cool, 30 * 24 * Plants.HOUR, 60_000);
        assertEquals(0.97, cool.stateOfCharge(), 1e-9);
        Circuit hot = plant(spec, List.of());
        hot.setBatteryTemperature(40);
        Plants.run(hot, 30 * 24 * Plants.HOUR, 60_000);
        assertEquals(Math.pow(0.97, 4), hot.stateOfCharge(), 1e-9);
    }

    private static BatterySpec withSelfDischarge(long partsPerMillion, long millicelsius) {
        BatterySpec base = Plants.lithium(60, 100);
        return new BatterySpec(
                base.chemistry(),
                12,
                base.capacityMicroampHours(),
                1_000_000,
                10_000,
                0,
                0,
                1_000_000,
                partsPerMillion,
                millicelsius,
                0,
                0,
                0,
                0);
    }

    @Test
    void ironPhosphateChargesToFullAndThenTakesNothing() {
        Circuit plant =
                plant(Plants.lithium(60, 50), List.of(Plants.charger("shore", 14.4, 14.4, 30)));
        Plants.run(plant, 6 * Plants.HOUR, 1_000);
        assertEquals(1, plant.stateOfCharge(), 1e-6);
        assertEquals(0, plant.meanCurrentAmps(), 1e-3);
        assertEquals(14.4, plant.voltageVolts());
    }

    /** A tick of a minute must not make the regulated charge swing. */
    @Test
    void regulatedChargeIsSteadyAtALongTick() {
        Circuit plant =
                plant(Plants.lithium(60, 95), List.of(Plants.charger("shore", 14.4, 14.4, 30)));
        double last = 31;
        for (int i = 0; i < 60; i++) {
            plant.step(60_000);
            assertTrue(plant.meanCurrentAmps() <= last + ROUNDING, "minute " + i);
            assertTrue(plant.meanCurrentAmps() >= 0, "minute " + i);
            last = plant.meanCurrentAmps();
        }
    }

    @Test
    void changesOfOtherPartsAreRefused() {
        Circuit plant = plant(Plants.lithium(60, 50), List.of(), Plants.amps(1));
        assertFalse(plant.apply(new Change(0, Change.Target.SENSOR_OFFSET, "", 5)));
        assertFalse(plant.apply(new Change(0, Change.Target.DECLARE, "gauge", 5)));
        assertTrue(plant.apply(new Change(0, Change.Target.LOAD_AMOUNT, "load", 3_000_000)));
        plant.step(1_000);
        assertEquals(-3, plant.meanCurrentAmps());
        assertTrue(plant.apply(new Change(0, Change.Target.BATTERY_TEMPERATURE, "", -5_000)));
        assertEquals(-5, plant.temperatureCelsius());
    }
}
