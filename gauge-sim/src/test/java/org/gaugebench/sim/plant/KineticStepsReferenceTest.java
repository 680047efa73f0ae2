package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Objects;
import org.gaugebench.sim.scenario.KineticWells;
import org.gaugebench.sim.scenario.KineticWells.Rating;
import org.junit.jupiter.api.Test;

/**
 * The open step sequence of NREL's techno-economic model (lib_battery_capacity_test): 100 Ah at 20
 * h, 93 at 10 h, 60 at 1 h, from 50 %, in steps of an hour. Published tolerance 0.01; the limited
 * currents are held to it too.
 */
class KineticStepsReferenceTest {
    private static final double PUBLISHED = 0.01;

    @Test
    void stepsOfAnHourGiveThePublishedChargeAndCurrent() {
        KineticWells wells =
                Objects.requireNonNull(
                        KineticWells.through(
                                new Rating(20, 100), new Rating(10, 93), new Rating(1, 60)));
        KineticCell cell =
                new KineticCell(wells.availablePart(), wells.perHour(), wells.greatestAmpHours());
        cell.rest(wells.greatestAmpHours() / 2);
        assertEquals(54.08, cell.total(), PUBLISHED);
        assertEquals(25.694, cell.available(), 0.0005);
        double[] asked = {1.5, 3, 490, 490};
        double[] given = {1.5, 3, 26.65, 6.25};
        double[] left = {52.58, 49.58, 22.93, 16.67};
        double[] percent = {48.61, 45.84, 21.19, 15.41};
        cell.prepare(1);
        for (int i = 0; i < asked.length; i++) {
            double amps = Math.min(asked[i], cell.greatestCurrentOut(0));
            assertEquals(given[i], amps, PUBLISHED, "step " + i);
            cell.advance(-amps);
            assertEquals(left[i], cell.total(), PUBLISHED, "step " + i);
            assertEquals(percent[i], 100 * cell.total() / cell.capacity(), PUBLISHED);
        }
    }

    /** Stepping in seconds or in one go: the closed form does not know the step. */
    @Test
    void theStepMayHaveAnyLength() {
        KineticCell fine = new KineticCell(0.475, 0.677 / 3_600, 108 * 3_600);
        KineticCell coarse = fine.copy();
        fine.prepare(1);
        for (int i = 0; i < 3_600; i++) {
            fine.advance(-30);
        }
        coarse.prepare(3_600);
        coarse.advance(-30);
        // 3600 roundings of a charge of 4e5 C.
        assertEquals(coarse.available(), fine.available(), 1e-6);
        assertEquals(coarse.total(), fine.total(), 1e-6);
    }
}
