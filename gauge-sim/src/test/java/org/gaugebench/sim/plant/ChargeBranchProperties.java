package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

class ChargeBranchProperties {
    /**
     * Voltage to current and back. Near acceptance the current hardly depends on the voltage, so
     * the way back is compared in amps: 1e-9 of currents up to 100 A.
     */
    @Property
    void currentAndVoltageAreInverseToEachOther(
            @ForAll @DoubleRange(min = 11.8, max = 12.8) double rest,
            @ForAll @DoubleRange(min = 0, max = 50) double acceptance,
            @ForAll @DoubleRange(min = 0, max = 3) double endCurrent,
            @ForAll @DoubleRange(min = 0.01, max = 3) double above) {
        ChargeBranch branch = branch(endCurrent);
        double amps = branch.chargeAmps(rest + above, rest, acceptance);
        if (amps <= 0 || (endCurrent == 0 && amps >= acceptance)) {
            return;
        }
        double volts = branch.voltsAt(amps, rest, acceptance);
        assertEquals(amps, branch.chargeAmps(volts, rest, acceptance), 1e-9 * 100);
    }

    @Property
    void currentRisesWithVoltageAndStoringStopsAtAcceptance(
            @ForAll @DoubleRange(min = 11.8, max = 12.8) double rest,
            @ForAll @DoubleRange(min = 0, max = 50) double acceptance,
            @ForAll @DoubleRange(min = 0, max = 3) double endCurrent) {
        ChargeBranch branch = branch(endCurrent);
        double last = 0;
        for (int step = 0; step < 300; step++) {
            double volts = rest + step * 0.01;
            double amps = branch.chargeAmps(volts, rest, acceptance);
            assertTrue(amps >= last - 1e-9, "rises");
            assertTrue(branch.storingAmps(volts, rest, acceptance) <= acceptance);
            last = amps;
        }
    }

    private static ChargeBranch branch(double endCurrent) {
        ChargeBranch branch = new ChargeBranch(6, endCurrent);
        branch.setSeriesOhms(0.005);
        branch.setFullVolts(12.8);
        return branch;
    }
}
