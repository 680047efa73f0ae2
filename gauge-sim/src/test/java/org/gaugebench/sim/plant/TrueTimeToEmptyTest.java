package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.BatteryTraits;
import org.gaugebench.sim.scenario.BatteryTraits.Kinetic;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.ChargerSpec;
import org.junit.jupiter.api.Test;

// Millisecond figures of some hours lie far below 2^53: nothing is lost.
@SuppressWarnings("LongDoubleConversion")
class TrueTimeToEmptyTest {
    private static final double SECOND = 1_000;

    private static Circuit plant(BatterySpec spec, double amps, ChargerSpec... chargers) {
        return new Circuit(spec, List.of(chargers), List.of(Plants.amps(amps)), new SeedTree(1));
    }

    @Test
    void oneWellLastsItsChargeOverTheCurrent() {
        Circuit plant = plant(Plants.lithium(60, 50), 4);
        plant.step(1_000);
        assertEquals(7.5 * Plants.HOUR - 1_000, TrueTimeToEmpty.withPresentLoadHeld(plant), SECOND);
        assertEquals(10 * Plants.HOUR, TrueTimeToEmpty.withCurrentHeld(plant, 3), 2 * SECOND);
    }

    /** A full battery of two wells lasts one hour at the current of its one-hour rating. */
    @Test
    void twoWellsLastWhatTheClosedFormSays() {
        Kinetic ratings = new Kinetic(93_000_000, 60_000_000);
        BatterySpec spec = Plants.leadAcid(100).with(BatteryTraits.NONE.withKinetic(ratings));
        Circuit plant = plant(spec, 60);
        assertEquals(Plants.HOUR, TrueTimeToEmpty.withCurrentHeld(plant, 60), 1.1 * SECOND);
        double slow = Objects.requireNonNull(ratings.wells(100_000_000)).ampHoursAt(50) / 50;
        assertEquals(50 * Plants.HOUR, TrueTimeToEmpty.withCurrentHeld(plant, slow), 2 * SECOND);
        plant.step(1_000);
        double hours = plant.availableAmpHours() / 60;
        assertEquals(hours * Plants.HOUR, TrueTimeToEmpty.withPresentLoadHeld(plant), 1.1 * SECOND);
    }

    @Test
    void askingChangesNothing() {
        Circuit asked = plant(Plants.leadAcid(80), 4);
        Circuit other = plant(Plants.leadAcid(80), 4);
        for (int i = 0; i < 100; i++) {
            asked.step(1_000);
            other.step(1_000);
            TrueTimeToEmpty.asTheScenarioGoesOn(asked, List.of(), Plants.HOUR, 1_000);
            TrueTimeToEmpty.withPresentLoadHeld(asked);
            assertEquals(other.voltageVolts(), asked.voltageVolts());
            assertEquals(other.chargeAmpHours(), asked.chargeAmpHours());
        }
    }

    @Test
    void aBatteryThatIsNotDischargedLastsForEver() {
        Circuit plant = plant(Plants.leadAcid(80), 1, Plants.charger("shore", 14.4, 14.4, 20));
        plant.step(1_000);
        assertEquals(TrueTimeToEmpty.NEVER, TrueTimeToEmpty.withPresentLoadHeld(plant));
        assertEquals(TrueTimeToEmpty.NEVER, TrueTimeToEmpty.withCurrentHeld(plant, 0.01));
    }

    /** Full load for an hour of the scenario, then half of it: 30 Ah at 4 A and 2 A. */
    @Test
    void theScenarioGoesOnWithItsChanges() {
        Circuit plant = plant(Plants.lithium(60, 50), 4);
        plant.step(1_000);
        List<Change> changes =
                List.of(new Change(Plants.HOUR, Change.Target.LOAD_AMOUNT, "load", 2_000_000));
        long end = 100 * Plants.HOUR;
        assertEquals(
                14 * Plants.HOUR - 1_000,
                TrueTimeToEmpty.asTheScenarioGoesOn(plant, changes, end, 1_000),
                SECOND);
        assertEquals(7.5 * Plants.HOUR - 1_000, TrueTimeToEmpty.withPresentLoadHeld(plant), SECOND);
        assertEquals(
                TrueTimeToEmpty.NEVER,
                TrueTimeToEmpty.asTheScenarioGoesOn(plant, changes, 13 * Plants.HOUR, 1_000),
                "the scenario ends first");
    }

    /** What is due at this very moment has not reached the plant yet. */
    @Test
    void aChangeThatIsDueComesFirst() {
        Circuit plant = plant(Plants.lithium(60, 50), 4);
        plant.step(1_000);
        List<Change> due = List.of(new Change(1_000, Change.Target.LOAD_AMOUNT, "load", 8_000_000));
        double left = 30 - 4 / 3_600.0;
        assertEquals(
                left / 8 * Plants.HOUR,
                TrueTimeToEmpty.asTheScenarioGoesOn(plant, due, 100 * Plants.HOUR, 1_000),
                2 * SECOND);
    }

    @Test
    void aChargerOfTheScenarioCountsOnlyInTheSecondFigure() {
        Circuit plant = plant(Plants.lithium(60, 50), 4, Plants.charger("roof", 14.2, 14.2, 2));
        plant.step(1_000);
        long goesOn =
                TrueTimeToEmpty.asTheScenarioGoesOn(plant, List.of(), 100 * Plants.HOUR, 1_000);
        // 2 A net either way: what is held is the battery's current.
        assertEquals(15 * Plants.HOUR - 1_000, goesOn, SECOND);
        List<Change> off =
                List.of(new Change(5 * Plants.HOUR, Change.Target.CHARGER_SWITCH, "roof", 0));
        assertEquals(
                10 * Plants.HOUR - 1_000,
                TrueTimeToEmpty.asTheScenarioGoesOn(plant, off, 100 * Plants.HOUR, 1_000),
                SECOND);
        assertEquals(15 * Plants.HOUR - 1_000, TrueTimeToEmpty.withPresentLoadHeld(plant), SECOND);
    }

    /** The protection circuit opens before the charge is drawn; both figures see it. */
    @Test
    void anOpenedProtectionIsTheEndToo() {
        Circuit plant = plant(Plants.lithium(60, 50, 14.6, 12.4), 6);
        plant.step(1_000);
        Circuit real = plant.copy();
        while (!real.isStarved()) {
            real.step(1_000);
        }
        assertTrue(real.chargeAmpHours() > 3);
        double lasted = real.timeMillis() - 1_000 - plant.timeMillis();
        assertEquals(lasted, TrueTimeToEmpty.withPresentLoadHeld(plant), 0);
        assertEquals(
                lasted,
                TrueTimeToEmpty.asTheScenarioGoesOn(plant, List.of(), 100 * Plants.HOUR, 1_000),
                0);
    }
}
