package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;

/**
 * The two wells by another road: the differential equations as published (Manwell and McGowan,
 * Solar Energy 50, 1993), integrated by Dormand-Prince 8(5,3) with step control.
 */
class KineticOdeTest {
    private static final double PART = 0.475111;
    private static final double PER_HOUR = 0.676960;
    private static final double CAPACITY = 108.16;

    /** State: available and bound charge; the current is constant. */
    private record Equations(double amps) implements OrdinaryDifferentialEquation {
        @Override
        public int getDimension() {
            return 2;
        }

        @Override
        public double[] computeDerivatives(double hours, double[] y) {
            double k = PER_HOUR * PART * (1 - PART);
            double across = k * (y[1] / (1 - PART) - y[0] / PART);
            return new double[] {amps + across, -across};
        }
    }

    /**
     * Discharge, rest, charge and a heavy load, each in steps of a length of its own. The
     * integrator is held to 1e-10 Ah; two orders above that for what it sums up over the spells.
     */
    @Test
    void bothWellsAgreeWithAnIndependentIntegrator() {
        KineticCell cell = new KineticCell(PART, PER_HOUR, CAPACITY);
        DormandPrince853Integrator integrator =
                new DormandPrince853Integrator(1e-6, 0.5, 1e-10, 1e-12);
        double[] y = {PART * CAPACITY, (1 - PART) * CAPACITY};
        double[] amps = {-10, 0, 6, -25, -1, 0};
        double[] hours = {3, 2, 1.5, 0.5, 12, 8};
        int[] steps = {10_800, 1, 90, 7, 720, 16};
        double now = 0;
        for (int i = 0; i < amps.length; i++) {
            double end = now + hours[i];
            y =
                    integrator
                            .integrate(new Equations(amps[i]), new ODEState(now, y), end)
                            .getPrimaryState();
            now = end;
            cell.prepare(hours[i] / steps[i]);
            for (int step = 0; step < steps[i]; step++) {
                cell.advance(amps[i]);
            }
            assertEquals(y[0], cell.available(), 1e-8, "available, spell " + i);
            assertEquals(y[1], cell.bound(), 1e-8, "bound, spell " + i);
        }
    }
}
