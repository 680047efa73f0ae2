package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.BatteryTraits;
import org.gaugebench.sim.scenario.Chemistry;
import org.junit.jupiter.api.Test;

/**
 * Closed forms of series resistance and RC pair: 10 mOhm, 15 mOhm with 2000 F (30 s), 20 A.
 *
 * <p>The battery holds a million ampere-hours, so that 150 s at 20 A move its open-circuit voltage
 * by 0.36 microvolts; with that and six printed digits a tolerance of 1 microvolt is due.
 */
class BatteryReferenceTest {
    private static final double TOLERANCE = 1e-6;

    private static Circuit plant() {
        BatterySpec battery =
                new BatterySpec(
                        Chemistry.LIFEPO4,
                        12,
                        1_000_000_000_000L,
                        500_000,
                        10_000,
                        15_000,
                        30_000,
                        1_000_000,
                        0,
                        25_000,
                        0,
                        0,
                        0,
                        0);
        return new Circuit(battery, List.of(), List.of(Plants.amps(20)), new SeedTree(1));
    }

    @Test
    void dropUnderLoadFollowsTheClosedForm() {
        Circuit plant = plant();
        double open = plant.voltageVolts();
        int[] seconds = {30, 60, 90, 150};
        double[] drops = {0.389636, 0.459399, 0.485064, 0.497979};
        int done = 0;
        for (int i = 0; i < seconds.length; i++) {
            Plants.run(plant, (seconds[i] - done) * 1_000L, 1_000);
            done = seconds[i];
            assertEquals(drops[i], open - plant.voltageVolts(), TOLERANCE, seconds[i] + " s");
        }
    }

    @Test
    void lengthOfTheTickChangesNothing() {
        Circuit coarse = plant();
        double open = coarse.voltageVolts();
        coarse.step(60_000);
        assertEquals(0.459399, open - coarse.voltageVolts(), TOLERANCE);
    }

    /** After 60 s the RC pair alone stands at 0.2593994 V; forward Euler would give 0.2607603. */
    @Test
    void sixtyStepsGiveTheExactBranchVoltage() {
        Circuit plant = plant();
        double open = plant.voltageVolts();
        Plants.run(plant, 60_000, 1_000);
        assertEquals(0.2593994, open - plant.voltageVolts() - 0.2, TOLERANCE);
    }

    /** After 20 tau the pair stands at 0.3 V to 6e-10; then it relaxes by e^-n after n tau. */
    @Test
    void residualAfterTheLoadFollowsTheClosedForm() {
        Circuit plant = plant();
        Plants.run(plant, 600_000, 1_000);
        double charge = plant.chargeAmpHours();
        plant.switchLoad("load", false);
        double rested =
                new OpenCircuitCurve(OpenCircuitTable.of(Chemistry.LIFEPO4), 4, 1e6, 25)
                        .voltsAt(charge);
        double[] residuals = {0.110364, 0.040601, 0.014936};
        for (double residual : residuals) {
            Plants.run(plant, 30_000, 1_000);
            assertEquals(residual, rested - plant.voltageVolts(), TOLERANCE);
        }
    }

    /** Step fractions 1 - e^-n for n = 1 to 5, five digits printed: tolerance half of the last. */
    @Test
    void stepFractionsFollowTheClosedForm() {
        Circuit plant = plant();
        double open = plant.voltageVolts();
        double[] fractions = {0.63212, 0.86466, 0.95021, 0.98168, 0.99326};
        for (double fraction : fractions) {
            Plants.run(plant, 30_000, 500);
            assertEquals(fraction, (open - plant.voltageVolts() - 0.2) / 0.3, 1e-5);
        }
    }

    /**
     * Two pairs with the figures of Chen and Rincon-Mora, IEEE Trans. Energy Conversion 21 (2006)
     * 504-511, at 50 %: R = 0.1562 exp(-24.37 s) + 0.07446 and so on, time constants 32.81 s and
     * 223.03 s. Their resistances lie within 1e-5 of the constant terms there.
     */
    @Test
    void twoPairsFollowTheClosedForm() {
        double fastOhms = 0.04669;
        double slowOhms = 0.04984;
        BatterySpec battery =
                new BatterySpec(
                                Chemistry.LIFEPO4,
                                12,
                                1_000_000_000_000L,
                                500_000,
                                74_460,
                                46_690,
                                32_810,
                                1_000_000,
                                0,
                                25_000,
                                0,
                                0,
                                0,
                                0)
                        .with(BatteryTraits.NONE.withSlowPolarization(49_840, 223_030));
        Circuit plant = new Circuit(battery, List.of(), List.of(Plants.amps(2)), new SeedTree(1));
        double open = plant.voltageVolts();
        for (int second = 10; second <= 600; second += 10) {
            Plants.run(plant, 10_000, second % 20 == 0 ? 10_000 : 1_000);
            double drop =
                    2
                            * (0.07446
                                    + fastOhms * (1 - Math.exp(-second / 32.81))
                                    + slowOhms * (1 - Math.exp(-second / 223.03)));
            assertEquals(drop, open - plant.voltageVolts(), TOLERANCE, second + " s");
        }
        plant.switchLoad("load", false);
        double after = 2 * fastOhms * (1 - Math.exp(-600 / 32.81)) * Math.exp(-100 / 32.81);
        after += 2 * slowOhms * (1 - Math.exp(-600 / 223.03)) * Math.exp(-100 / 223.03);
        Plants.run(plant, 100_000, 1_000);
        assertEquals(after, open - plant.voltageVolts(), TOLERANCE);
    }

    /** The same on charge: a lithium battery takes what the charger gives, behind both pairs. */
    @Test
    void twoPairsFollowTheClosedFormOnCharge() {
        BatterySpec battery =
                new BatterySpec(
                                Chemistry.LIFEPO4,
                                12,
                                1_000_000_000_000L,
                                500_000,
                                74_460,
                                46_690,
                                32_810,
                                1_000_000,
                                0,
                                25_000,
                                0,
                                0,
                                0,
                                0)
                        .with(BatteryTraits.NONE.withSlowPolarization(49_840, 223_030));
        Circuit plant =
                new Circuit(
                        battery,
                        List.of(Plants.charger("shore", 60, 60, 2)),
                        List.of(),
                        new SeedTree(1));
        double open = plant.voltageVolts();
        Plants.run(plant, 100_000, 10_000);
        double rise =
                2
                        * (0.07446
                                + 0.04669 * (1 - Math.exp(-100 / 32.81))
                                + 0.04984 * (1 - Math.exp(-100 / 223.03)));
        assertEquals(rise, plant.voltageVolts() - open, TOLERANCE);
    }
}
