package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.BatteryTraits;
import org.gaugebench.sim.scenario.BatteryTraits.Ageing;
import org.gaugebench.sim.scenario.BatteryTraits.Kinetic;
import org.gaugebench.sim.scenario.BatteryTraits.Thermal;
import org.gaugebench.sim.scenario.BatteryTraits.WeakCell;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.LoadSpec;

/** Statements about a plant with every trait and a copy of it, whatever is switched and when. */
class CircuitCopyProperties {
    /** One thing that happens, and how many ticks pass after it. */
    record Action(Change.Target target, String name, long value, int ticks) {}

    private static Arbitrary<Action> action(Change.Target target, String name, long from, long to) {
        return Combinators.combine(
                        Arbitraries.longs().between(from, to),
                        Arbitraries.integers().between(1, 400))
                .as((value, ticks) -> new Action(target, name, value, ticks));
    }

    @Provide
    Arbitrary<List<Action>> actions() {
        return Arbitraries.oneOf(
                        action(Change.Target.LOAD_SWITCH, "load", 0, 1),
                        action(Change.Target.LOAD_SWITCH, "pump", 0, 1),
                        action(Change.Target.LOAD_AMOUNT, "load", 1_000_000, 200_000_000),
                        action(Change.Target.CHARGER_SWITCH, "shore", 0, 1),
                        action(Change.Target.CHARGER_SWITCH, "roof", 0, 1),
                        action(Change.Target.ISOLATOR, "", 0, 1),
                        action(Change.Target.PROTECTION, "", 0, 1),
                        action(Change.Target.BATTERY_TEMPERATURE, "", -20_000, 50_000))
                .list()
                .ofMinSize(1)
                .ofMaxSize(30);
    }

    private static BatterySpec everything(boolean lead, int startPercent) {
        BatteryTraits traits =
                BatteryTraits.NONE
                        .withSlowPolarization(4_000, 1_800_000)
                        .withHysteresis(5_000)
                        .withCapacityFollowingTemperature()
                        .withThermal(new Thermal(12_000, 8_000, 50_000_000, 1_500, 10_000_000))
                        .withAgeing(new Ageing(100_000, 300_000, 200_000))
                        .withWeakCell(new WeakCell(900_000, 20_000))
                        .withKinetic(new Kinetic(93_000_000, 60_000_000));
        return lead
                ? Plants.leadAcid(startPercent, 0.95, 1)
                        .with(traits.withEfficiencyFallingNearFull())
                : Plants.lithium(100, startPercent, 14.4, 10).with(traits);
    }

    private static Circuit plant(boolean lead, int startPercent) {
        LoadSpec pump =
                new LoadSpec(
                        "pump", true, LoadSpec.Kind.CONSTANT_CURRENT, 5_000_000, 90_000, 250_000);
        return new Circuit(
                everything(lead, startPercent),
                List.of(
                        Plants.charger("shore", 14.4, 13.5, 20, -24, 2, 0),
                        Plants.solar(15, 0.4, 0.7)),
                List.of(Plants.amps(3), pump),
                new SeedTree(1));
    }

    @Property(tries = 60)
    void aCopyGoesOnToTheSameBits(
            @ForAll boolean lead,
            @ForAll("percent") int startPercent,
            @ForAll("ticks") int tickMillis,
            @ForAll("actions") List<Action> actions) {
        Circuit plant = plant(lead, startPercent);
        Circuit copy = plant.copy();
        for (Action action : actions) {
            Change change = new Change(0, action.target(), action.name(), action.value());
            assertTrue(plant.apply(change));
            assertTrue(copy.apply(change));
            for (int i = 0; i < action.ticks(); i++) {
                plant.step(tickMillis);
                copy.step(tickMillis);
                assertEquals(plant.voltageVolts(), copy.voltageVolts());
                assertEquals(plant.currentAmps(), copy.currentAmps());
                assertEquals(plant.chargeAmpHours(), copy.chargeAmpHours());
                assertEquals(plant.temperatureCelsius(), copy.temperatureCelsius());
                assertEquals(plant.chargerAmps("roof"), copy.chargerAmps("roof"));
            }
            assertEquals(plant.availableAmpHours(), copy.availableAmpHours());
            copy = plant.copy();
        }
    }

    /** 1e-8: sums of a few currents of up to 200 A; the search for the voltage ends at 1e-12 V. */
    @Property(tries = 100)
    void nothingLeavesItsBoundsWithEveryTrait(
            @ForAll boolean lead,
            @ForAll("percent") int startPercent,
            @ForAll("ticks") int tickMillis,
            @ForAll("actions") List<Action> actions) {
        Circuit plant = plant(lead, startPercent);
        for (Action action : actions) {
            plant.apply(new Change(0, action.target(), action.name(), action.value()));
            for (int i = 0; i < action.ticks(); i++) {
                double before = plant.chargeAmpHours();
                plant.step(tickMillis);
                double given = plant.chargerAmps("shore") + plant.chargerAmps("roof");
                assertEquals(given, plant.loadAmps() + plant.meanCurrentAmps(), 1e-8);
                assertTrue(plant.loadAmps() >= 0, "loads give nothing");
                assertTrue(plant.stateOfCharge() >= 0 && plant.stateOfCharge() <= 1 + 1e-12);
                double fed = plant.meanCurrentAmps() * tickMillis / 3.6e6;
                assertTrue(plant.chargeAmpHours() - before <= Math.max(fed, 0) + 1e-8);
                assertTrue(plant.voltageVolts() >= 0);
                // 14.4 V compensated by 24 mV/K down to -20 °C: 15.48 V.
                assertTrue(plant.voltageVolts() <= 15.48 + 1e-8);
                assertTrue(plant.temperatureCelsius() > -25, "no runaway");
                assertTrue(Double.isFinite(plant.availableAmpHours()));
                assertTrue(plant.availableAmpHours() >= 0);
            }
        }
    }

    @Provide
    Arbitrary<Integer> percent() {
        return Arbitraries.integers().between(0, 100);
    }

    @Provide
    Arbitrary<Integer> ticks() {
        return Arbitraries.of(100, 1_000, 7_000, 60_000);
    }
}
