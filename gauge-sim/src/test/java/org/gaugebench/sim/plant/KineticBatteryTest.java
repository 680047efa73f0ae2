package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.BatteryTraits;
import org.gaugebench.sim.scenario.BatteryTraits.Kinetic;
import org.gaugebench.sim.scenario.ChargerSpec;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.scenario.KineticWells;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A battery of two wells: 100 Ah at 20 h, 93 Ah at 10 h, 60 Ah at 1 h. */
class KineticBatteryTest {
    private static final Kinetic RATINGS = new Kinetic(93_000_000, 60_000_000);
    private static final KineticWells WELLS = Objects.requireNonNull(RATINGS.wells(100_000_000));

    private static BatterySpec battery(double startPercent) {
        return Plants.leadAcid(startPercent).with(BatteryTraits.NONE.withKinetic(RATINGS));
    }

    private static Circuit plant(BatterySpec spec, double amps, ChargerSpec... chargers) {
        return new Circuit(spec, List.of(chargers), List.of(Plants.amps(amps)), new SeedTree(1));
    }

    /** Ampere-hours until the load is refused for the first time. */
    private static double drawUntilRefused(Circuit plant, int tickMillis) {
        double drawn = 0;
        while (true) {
            plant.step(tickMillis);
            if (plant.isStarved()) {
                return drawn;
            }
            drawn -= plant.meanCurrentAmps() * tickMillis / 3.6e6;
        }
    }

    /** Refused is the step that does not fit whole: at most one tick of the load is left. */
    @ParameterizedTest
    @ValueSource(doubles = {20, 10, 5, 2, 1})
    void aFullDischargeGivesWhatTheWellsGiveAtThatRate(double hours) {
        double rated = WELLS.ampHoursAt(hours);
        double amps = Math.round(1e6 * rated / hours) / 1e6;
        Circuit plant = plant(battery(100), amps);
        assertEquals(rated, drawUntilRefused(plant, 1_000), amps / 3_600 + 1e-4, hours + " h");
    }

    @Test
    void theTrueChargeIsUsedUpWhenATwentyHourDischargeEnds() {
        Circuit plant = plant(battery(100), 5);
        drawUntilRefused(plant, 1_000);
        assertEquals(0, plant.chargeAmpHours(), 5 / 3_600.0 + 1e-4);
        assertEquals(100, plant.capacityAmpHours(), 1e-9);
    }

    /**
     * Doerffel and Abu Sharkh, J. Power Sources 155 (2006) 395-400: what a fast discharge leaves
     * behind comes out after a rest. A 20 h draw then ends at the true charge of 0 but for what is
     * left of the rest's head start, 100 Ah exp(-0.677 x 7 h) = 0.9 Ah.
     */
    @Test
    void whatAFastDischargeLeavesComesOutAfterARest() {
        Circuit plant = plant(battery(100), 60);
        double fast = drawUntilRefused(plant, 1_000);
        assertEquals(60, fast, 0.1);
        assertEquals(40, plant.chargeAmpHours(), 0.1);
        plant.switchLoad("load", false);
        Plants.run(plant, 10 * Plants.HOUR, 1_000);
        plant.setLoadAmount("load", 5_000_000);
        plant.switchLoad("load", true);
        assertEquals(100, fast + drawUntilRefused(plant, 1_000), 0.9);
    }

    @Test
    void availableNowIsWhatThePresentLoadCanStillDraw() {
        Circuit plant = plant(battery(100), 60);
        plant.step(1_000);
        assertEquals(60, plant.availableAmpHours(), 0.05);
        Plants.run(plant, Plants.HOUR / 2, 1_000);
        assertEquals(30, plant.availableAmpHours(), 0.05);
        assertEquals(70, plant.chargeAmpHours(), 0.05);
        drawUntilRefused(plant, 1_000);
        assertEquals(0, plant.availableAmpHours(), 0);
        // Switched off and rested, the 20 h rate is the measure again.
        plant.switchLoad("load", false);
        Plants.run(plant, 20 * Plants.HOUR, 60_000);
        assertEquals(plant.chargeAmpHours(), plant.availableAmpHours(), 0.5);
    }

    @Test
    void availableNowIsNothingWhileTheIsolatorIsOpen() {
        Circuit plant = plant(battery(80), 1);
        plant.setIsolatorOpen(true);
        plant.step(1_000);
        assertEquals(0, plant.availableAmpHours());
        assertEquals(80, plant.chargeAmpHours(), 1e-9);
    }

    /**
     * An hour of 20 A lowers the available well by (1 - c) 20 A / (c k') (1 - exp(-k' 1 h)), which
     * fades with k': after ten minutes of rest, when the RC pair of a minute holds 3 microvolts,
     * the voltage is the table's at that height, and after 30 h at the true charge.
     */
    @Test
    void voltageFollowsTheAvailableWell() {
        Circuit plant = plant(battery(100), 20);
        Plants.run(plant, Plants.HOUR, 1_000);
        plant.switchLoad("load", false);
        Plants.run(plant, Plants.HOUR / 6, 1_000);
        double part = WELLS.availablePart();
        double rate = WELLS.perHour();
        double sag = (1 - part) * 20 / (part * rate) * (1 - Math.exp(-rate));
        OpenCircuitTable table = OpenCircuitTable.of(Chemistry.LEAD_ACID_AGM);
        OpenCircuitCurve curve = new OpenCircuitCurve(table, 6, 100, 25);
        double height = 80 - sag * Math.exp(-rate / 6);
        assertEquals(curve.voltsAt(height), plant.voltageVolts(), 1e-5);
        Plants.run(plant, 30 * Plants.HOUR, 60_000);
        assertEquals(curve.voltsAt(80), plant.voltageVolts(), 1e-6);
    }

    /** Knee: 1.75 V a cell where a discharge ends, less the drop in the resistances. */
    @Test
    void aDischargeEndsAtTheRatedCutOff() {
        Circuit plant = plant(battery(100), 5);
        double last = 0;
        while (!plant.isStarved()) {
            last = plant.voltageVolts();
            plant.step(1_000);
        }
        // The tick that is refused would take 5 A s, 1.5 mV on the knee's slope.
        assertEquals(10.5 - 5 * 0.008, last, 0.002);
    }

    /** At C/100 the available well stands 1.6 Ah lower: 26 mV at the table's steepest 16 mV/Ah. */
    @Test
    void aSlowDischargeIsNearlyThatOfOneWell() {
        Circuit two = plant(battery(95), 1);
        Circuit one = plant(Plants.leadAcid(95), 1);
        for (int i = 0; i < 60; i++) {
            Plants.run(two, Plants.HOUR, 60_000);
            Plants.run(one, Plants.HOUR, 60_000);
            assertEquals(one.chargeAmpHours(), two.chargeAmpHours(), 1e-9);
            assertEquals(one.voltageVolts(), two.voltageVolts(), 0.027);
        }
    }

    /** Acceptance looks at the true charge: the taper at the set voltage is that of one well. */
    @Test
    void theTaperIsThatOfOneWell() {
        ChargerSpec shore = Plants.charger("shore", 14.4, 14.4, 20);
        Circuit two = plant(battery(60), 0, shore);
        Circuit one = plant(Plants.leadAcid(60), 0, shore);
        for (int i = 0; i < 12; i++) {
            Plants.run(two, Plants.HOUR / 2, 1_000);
            Plants.run(one, Plants.HOUR / 2, 1_000);
            // The set voltage is met some minutes apart.
            assertEquals(one.chargeAmpHours(), two.chargeAmpHours(), 0.3, i + " half hours");
            assertTrue(two.stateOfCharge() <= 1);
        }
    }

    /** Without the latch a 60 A load at dry wells would go on and off with every other tick. */
    @Test
    void aLoadAtDryWellsDoesNotFlutter() {
        Circuit plant = plant(battery(100), 60);
        drawUntilRefused(plant, 1_000);
        int switches = 0;
        boolean before = true;
        for (int i = 0; i < 3_600; i++) {
            plant.step(1_000);
            switches += plant.isStarved() == before ? 0 : 1;
            before = plant.isStarved();
        }
        assertTrue(switches <= 12, switches + " switches in an hour");
    }

    @Test
    void chargeRevivesDryWellsAtOnce() {
        Circuit plant = plant(battery(100), 60, Plants.charger("shore", 14.4, 14.4, 20));
        plant.switchCharger("shore", false);
        drawUntilRefused(plant, 1_000);
        plant.setLoadAmount("load", 5_000_000);
        plant.step(1_000);
        assertTrue(plant.isStarved(), "still dry");
        Circuit copy = plant.copy();
        copy.step(1_000);
        assertTrue(copy.isStarved(), "its copy too");
        plant.switchCharger("shore", true);
        plant.step(1_000);
        plant.switchCharger("shore", false);
        plant.step(1_000);
        assertEquals(-5, plant.meanCurrentAmps());
    }

    /** Charge into and out of two wells: whatever happens, their sum counts amp-hours. */
    @Test
    void theTrueChargeCountsAmpHours() {
        Circuit plant = plant(battery(90), 30);
        double counted = 90;
        for (int i = 0; i < 5_000; i++) {
            if (i % 500 == 0) {
                plant.switchLoad("load", i % 1_000 == 0);
            }
            plant.step(1_000);
            counted += plant.meanCurrentAmps() / 3_600;
            assertEquals(counted, plant.chargeAmpHours(), 1e-9);
        }
    }
}
