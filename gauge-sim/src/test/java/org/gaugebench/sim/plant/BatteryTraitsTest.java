package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.BatteryTraits;
import org.gaugebench.sim.scenario.BatteryTraits.Ageing;
import org.gaugebench.sim.scenario.BatteryTraits.WeakCell;
import org.gaugebench.sim.scenario.ChargerSpec;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.scenario.LoadSpec;
import org.junit.jupiter.api.Test;

/** Efficiency near full, hysteresis, wear and a weak cell. */
class BatteryTraitsTest {
    private static Circuit plant(BatterySpec spec, double loadAmps, ChargerSpec... chargers) {
        List<LoadSpec> loads = loadAmps > 0 ? List.of(Plants.amps(loadAmps)) : List.of();
        return new Circuit(spec, List.of(chargers), loads, new SeedTree(1));
    }

    /** Charge put in, in ampere-hours, from one state of charge to another. */
    private static double putIn(double fromPercent, double toPercent) {
        BatterySpec spec =
                Plants.leadAcid(fromPercent)
                        .with(BatteryTraits.NONE.withEfficiencyFallingNearFull());
        Circuit plant = plant(spec, 0, Plants.charger("sun", 16, 16, 5));
        double sum = 0;
        while (plant.chargeAmpHours() < toPercent) {
            plant.step(10_000);
            sum += plant.meanCurrentAmps() * 10 / 3_600;
        }
        return sum;
    }

    /**
     * Stevens and Corey (1996), figures from memory: 91 % of all charge stored from empty to 84 %,
     * 55 % between 79 and 84 %, below half above 90 %. Two digits: 1 % of one; the points of the
     * curve are chosen to meet them, so 3 % of the second, whose interval they cut.
     */
    @Test
    void efficiencyFallsNearFullAsMeasured() {
        assertEquals(0.91, 84 / putIn(0, 84), 0.01);
        assertEquals(0.55, 5 / putIn(79, 84), 0.03);
        assertTrue(5 / putIn(90, 95) < 0.5);
        assertEquals(0.97, 50 / putIn(10, 60), 0.001);
    }

    private static double rested(double startPercent, double ampHours) {
        BatterySpec spec =
                Plants.lithium(100, startPercent).with(BatteryTraits.NONE.withHysteresis(8_000));
        Circuit plant =
                ampHours > 0
                        ? plant(spec, 0, Plants.charger("shore", 14.4, 14.4, 10))
                        : plant(spec, 10);
        Plants.run(plant, Math.round(Math.abs(ampHours) / 10 * Plants.HOUR), 1_000);
        plant.switchLoad("load", false);
        plant.switchCharger("shore", false);
        Plants.run(plant, Plants.HOUR, 1_000);
        assertEquals(50, plant.chargeAmpHours(), 1e-6);
        return plant.voltageVolts();
    }

    /**
     * Half the gap 8 mV a cell, four cells: 50 % reached by 30 Ah either way stands 64 mV apart but
     * for exp(-30 Ah / 5 Ah) = 0.25 %; one branch alone is half of that from the table.
     */
    @Test
    void restVoltageTellsFromWhichSideItWasReached() {
        double table =
                new OpenCircuitCurve(OpenCircuitTable.of(Chemistry.LIFEPO4), 4, 100, 25)
                        .voltsAt(50);
        double part = 1 - Math.exp(-6);
        assertEquals(table + 0.032 * part, rested(20, 30), 1e-6);
        assertEquals(table - 0.032 * part, rested(80, -30), 1e-6);
    }

    @Test
    void branchesAreApproachedAlikeWhateverTheTick() {
        Hysteresis fine = new Hysteresis(0.032, 360_000);
        Hysteresis coarse = new Hysteresis(0.032, 360_000);
        for (int i = 0; i < 600; i++) {
            fine.advance(-20);
        }
        coarse.advance(-12_000);
        assertEquals(coarse.volts(), fine.volts(), 1e-12);
        fine.advance(0);
        assertEquals(coarse.volts(), fine.volts(), 1e-12, "rest moves nothing");
    }

    @Test
    void wearTakesCapacityAndRaisesResistance() {
        BatterySpec worn =
                Plants.lithium(100, 100)
                        .with(BatteryTraits.NONE.withAgeing(new Ageing(250_000, 600_000, 0)));
        Circuit plant = plant(worn, 10);
        assertEquals(75, plant.capacityAmpHours(), 1e-9);
        assertEquals(1, plant.stateOfCharge(), 1e-12);
        double open = plant.voltageVolts();
        plant.step(1);
        // 10 A through 10 mOhm grown by 60 %, and a microvolt of discharge in 1 ms.
        assertEquals(0.160, open - plant.voltageVolts(), 1e-4);
        double drawn = 0;
        while (!plant.isStarved()) {
            drawn -= plant.meanCurrentAmps() / 3_600;
            plant.step(1_000);
        }
        assertEquals(75, drawn, 10 / 3_600.0 + 3e-3);
    }

    /** Half the acceptance: the missing charge decays with 4 h in place of 2 h. */
    @Test
    void wearTakesAcceptance() {
        BatterySpec worn =
                Plants.leadAcid(80).with(BatteryTraits.NONE.withAgeing(new Ageing(0, 0, 500_000)));
        Circuit plant = plant(worn, 0, Plants.charger("shore", 14.4, 14.4, 100));
        Plants.run(plant, Plants.HOUR, 1_000);
        double before = 100 - plant.chargeAmpHours();
        Plants.run(plant, 4 * Plants.HOUR, 1_000);
        assertEquals(Math.exp(-1), (100 - plant.chargeAmpHours()) / before, 1e-6);
    }

    /** A cell of 80 %: 80 Ah come out, and the protection opens long before 10 V. */
    @Test
    void protectionOpensEarlyForAWeakCell() {
        BatterySpec weak =
                Plants.lithium(100, 100, 14.6, 10)
                        .with(BatteryTraits.NONE.withWeakCell(new WeakCell(800_000, 0)));
        Circuit plant = plant(weak, 10);
        assertEquals(80, plant.capacityAmpHours(), 1e-9);
        double last = 0;
        while (!plant.isStarved()) {
            last = plant.voltageVolts();
            plant.step(1_000);
        }
        assertTrue(last > 12, "three good cells hold " + last + " V");
        // 2.5 V a cell with 25 mV of drop stands at about 0.5 % of the weak cell's 80 Ah.
        assertEquals(0.4, plant.chargeAmpHours(), 0.1);
        assertEquals(0, plant.availableAmpHours());
        assertTrue(plant.chargeAmpHours() > 0);
    }

    /** Lagging by 10 Ah at the top it gives 70 Ah of its 80. */
    @Test
    void aLaggingCellTakesItsLagOffTheCapacity() {
        CellString string =
                new CellString(
                        OpenCircuitTable.of(Chemistry.LIFEPO4),
                        4,
                        100,
                        new WeakCell(800_000, 100_000));
        assertEquals(70, string.capacity(), 1e-9);
        assertEquals(30, string.offset(), 1e-9);
    }

    /** Three cells by their charge and one by its own, at any charge, bends included. */
    @Test
    void theStringsVoltageIsTheSumOfItsCells() {
        OpenCircuitTable table = OpenCircuitTable.of(Chemistry.LIFEPO4);
        OpenCircuitCurve cell = new OpenCircuitCurve(table, 1, 1, 25);
        OpenCircuitCurve string =
                new CellString(table, 4, 100, new WeakCell(800_000, 100_000)).curve(25);
        for (int i = 0; i <= 7_000; i++) {
            double charge = i / 100.0;
            double sum = 3 * cell.voltsAt((charge + 30) / 100) + cell.voltsAt(charge / 80);
            assertEquals(sum, string.voltsAt(charge), 1e-9, charge + " Ah");
        }
    }

    /** On charge the others are the highest: 14.6 V over four cells is 3.65 V at one of them. */
    @Test
    void theChargeStopLooksAtTheHighestCell() {
        BatterySpec weak =
                Plants.lithium(100, 95, 14.2, 10)
                        .with(BatteryTraits.NONE.withWeakCell(new WeakCell(1_000_000, 100_000)));
        Circuit plant = plant(weak, 0, Plants.charger("shore", 14.6, 14.6, 10));
        double last = 0;
        while (plant.meanCurrentAmps() > 0 || plant.timeMillis() == 0) {
            last = plant.voltageVolts();
            plant.step(1_000);
            assertTrue(plant.timeMillis() < 2 * Plants.HOUR);
        }
        assertTrue(last < 14.15, "the lagging cell holds the sum back: " + last);
    }
}
