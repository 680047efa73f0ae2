package org.gaugebench.sim.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Objects;
import org.gaugebench.sim.scenario.KineticWells.Rating;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Wells found from published ratings. */
class KineticWellsReferenceTest {

    private static KineticWells wells(double twenty, double ten, double one) {
        return Objects.requireNonNull(
                KineticWells.through(
                        new Rating(20, twenty), new Rating(10, ten), new Rating(1, one)));
    }

    /**
     * The lead-acid test cell of NREL's open techno-economic model (lib_battery_capacity_test): 100
     * Ah at 20 h, 93 Ah at 10 h, 60 Ah at 1 h. Identified figures and capacities are own
     * computation; half of the last digit.
     */
    @Test
    void theTestCellOfTheSolarModelIsIdentified() {
        KineticWells wells = wells(100, 93, 60);
        assertEquals(0.475111, wells.availablePart(), 5e-7);
        assertEquals(0.676960, wells.perHour(), 5e-7);
        assertEquals(108.16, wells.greatestAmpHours(), 0.005);
        double[] hours = {1, 2, 5, 10, 20, 100};
        double[] ampHours = {60.00, 67.38, 82.23, 93.00, 100.00, 106.42};
        for (int i = 0; i < hours.length; i++) {
            assertEquals(ampHours[i], wells.ampHoursAt(hours[i]), 0.005, hours[i] + " h");
        }
    }

    /**
     * Published multi-rate table of a 12 V pure-lead mat battery in two sizes (a maker's table):
     * wells through 20, 10 and 1 h meet every published rate between within 5 %. At half an hour
     * the model gives 19 and 11 % too much: that is outside its range of validity, and stands here
     * so that nobody takes it for granted.
     */
    @ParameterizedTest
    @CsvSource({"100, 92, 90, 85, 80, 73, 60, 1.19", "126, 114, 110, 103, 90, 80, 69, 1.11"})
    void everyPublishedRateFromTwentyHoursToOneIsMetWithinFivePercent(
            double twenty,
            double ten,
            double eight,
            double five,
            double two,
            double one,
            double half,
            double tooGenerous) {
        KineticWells wells = wells(twenty, ten, one);
        double[] hours = {20, 10, 8, 5, 2, 1};
        double[] published = {twenty, ten, eight, five, two, one};
        for (int i = 0; i < hours.length; i++) {
            double given = wells.ampHoursAt(hours[i]);
            assertEquals(published[i], given, 0.05 * published[i], hours[i] + " h");
        }
        assertEquals(tooGenerous, wells.ampHoursAt(0.5) / half, 0.005, "outside validity");
    }

    /** Limits of the closed form: c C for an instant, C for ever. */
    @Test
    void capacityRunsFromTheAvailablePartToTheWhole() {
        KineticWells wells = wells(100, 93, 60);
        double whole = wells.greatestAmpHours();
        assertEquals(wells.availablePart() * whole, wells.ampHoursAt(1e-6), 1e-3);
        assertEquals(whole, wells.ampHoursAt(1e9), 1e-3);
    }

    @Test
    void ratingsOfNoKineticBatteryAreRefused() {
        assertNull(
                KineticWells.through(new Rating(20, 100), new Rating(10, 100), new Rating(1, 100)));
        assertNull(
                KineticWells.through(new Rating(20, 100), new Rating(10, 103), new Rating(1, 60)));
        assertNull(
                KineticWells.through(new Rating(20, 100), new Rating(10, 50), new Rating(1, 45)));
    }

    /** What the wells give at three rates leads back to the wells. */
    @Test
    void ratingsOfKnownWellsLeadBackToThem() {
        for (double part = 0.1; part < 0.95; part += 0.2) {
            for (double rate = 0.05; rate < 5; rate *= 3) {
                KineticWells made = new KineticWells(part, rate, 80);
                KineticWells found =
                        KineticWells.through(
                                new Rating(20, made.ampHoursAt(20)),
                                new Rating(10, made.ampHoursAt(10)),
                                new Rating(1, made.ampHoursAt(1)));
                assertNotNull(found, part + " " + rate);
                // Nearly parallel conditions cost digits: 1e-6 leaves them room.
                assertTrue(Math.abs(found.availablePart() - part) < 1e-6, part + " " + rate);
                assertEquals(rate, found.perHour(), 1e-5 * rate);
                assertEquals(80, found.greatestAmpHours(), 1e-5);
            }
        }
    }
}
