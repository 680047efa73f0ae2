package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.Chemistry;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lead-acid on 14.4 V: acceptance = missing charge / 2 h. */
class AcceptanceReferenceTest {
    private static Circuit plant(double startPercent, double efficiency, double endPercent) {
        return new Circuit(
                Plants.leadAcid(startPercent, efficiency, endPercent),
                List.of(Plants.charger("shore", 14.4, 14.4, 100)),
                List.of(),
                new SeedTree(1));
    }

    /**
     * Hours from 60 % to a taper current, of the same law worked by hand: 2 h x ln(20 A / taper).
     * Printed to a tenth of an hour: tolerance half of that.
     */
    @ParameterizedTest
    @CsvSource({"4, 3.2", "2, 4.6", "1, 6.0", "0.5, 7.4"})
    void tapersInTheStatedHours(double taperAmps, double hours) {
        Circuit plant = plant(60, 1, 0);
        do {
            plant.step(1_000);
        } while (plant.meanCurrentAmps() > taperAmps);
        assertEquals(hours, plant.timeMillis() / 3.6e6, 0.05);
    }

    /**
     * Missing charge decays with the time constant exactly, at any efficiency and tick: 7200 steps
     * leave rounding of 7200 x 1e-16 of 100 Ah.
     */
    @ParameterizedTest
    @CsvSource({"1, 1000", "1, 60000", "0.9, 1000", "0.85, 60000"})
    void missingChargeDecaysWithTheTimeConstant(double efficiency, int tickMillis) {
        Circuit plant = plant(60, efficiency, 0);
        Plants.run(plant, 2 * Plants.HOUR, tickMillis);
        double missing = 100 - plant.chargeAmpHours();
        assertEquals(40 * Math.exp(-1), missing, 1e-9);
    }

    @Test
    void reachesFullAndStaysThereOnEndCurrentAlone() {
        Circuit plant = plant(60, 0.9, 1);
        Plants.run(plant, 48 * Plants.HOUR, 1_000);
        // e^-24 of 40 Ah is missing.
        assertEquals(1, plant.stateOfCharge(), 1e-10);
        // 1 % of 100 Ah at 2.4 V a cell, and 14.4 V is that.
        assertEquals(1.0, plant.meanCurrentAmps(), 1e-6);
        assertTrue(plant.stateOfCharge() <= 1);
    }

    /** Halfway between the open-circuit voltage of the full battery and 14.4 V: half of it. */
    @Test
    void endCurrentScalesWithOverpotential() {
        double full =
                new OpenCircuitCurve(OpenCircuitTable.of(Chemistry.LEAD_ACID_AGM), 6, 1, 25)
                        .fullVolts();
        // The set voltage has whole microvolts: 1e-6 / 1.6 of the end current is rounding.
        double volts = (full + 14.4) / 2;
        Circuit plant =
                new Circuit(
                        Plants.leadAcid(100, 1, 1),
                        List.of(Plants.charger("shore", volts, volts, 100)),
                        List.of(),
                        new SeedTree(1));
        plant.step(1_000);
        assertEquals(0.5, plant.meanCurrentAmps(), 1e-6);
    }

    /** A supply that rises toward acceptance lifts the voltage steadily: no jump over 30 mV. */
    @Test
    void voltageRisesSmoothlyAsTheSupplyNearsAcceptance() {
        double last = 0;
        for (int step = 1; step < 200; step++) {
            Circuit plant =
                    new Circuit(
                            Plants.leadAcid(60),
                            List.of(Plants.charger("shore", 14.4, 14.4, step * 0.1)),
                            List.of(),
                            new SeedTree(1));
            plant.step(1_000);
            double volts = plant.voltageVolts();
            assertTrue(volts > last, "rises at " + step);
            assertTrue(step == 1 || volts - last < 0.030, "no jump at " + step);
            last = volts;
        }
        assertTrue(last < 14.4, "still supply-limited just under acceptance");
    }
}
