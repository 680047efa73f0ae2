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
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.ChargerSpec;
import org.gaugebench.sim.scenario.LoadSpec;

/** Statements that hold whatever is switched and when. */
class CircuitProperties {
    /** Sums of a few currents of up to 60 A; the search for the voltage ends at 1e-12 V. */
    private static final double ROUNDING = 1e-8;

    private static final String[] LOADS = {"lamp", "heater", "resistor", "pump"};
    private static final String[] CHARGERS = {"shore", "roof"};

    /** One thing that happens, and how many ticks pass after it. */
    record Action(Change.Target target, int which, int value, int ticks) {}

    @Provide
    Arbitrary<List<Action>> actions() {
        Arbitrary<Change.Target> targets =
                Arbitraries.of(
                        Change.Target.LOAD_SWITCH,
                        Change.Target.CHARGER_SWITCH,
                        Change.Target.ISOLATOR,
                        Change.Target.PROTECTION,
                        Change.Target.BATTERY_TEMPERATURE);
        return Combinators.combine(
                        targets,
                        Arbitraries.integers().between(0, 3),
                        Arbitraries.integers().between(0, 1),
                        Arbitraries.integers().between(1, 40))
                .as(Action::new)
                .list()
                .ofMaxSize(40);
    }

    private static Circuit plant(boolean lead, int startPercent, double amps, double watts) {
        BatterySpec battery =
                lead
                        ? Plants.leadAcid(startPercent, 0.9, 1)
                        : Plants.lithium(20, startPercent, 14.5, 11);
        List<LoadSpec> loads =
                List.of(
                        Plants.load("lamp", LoadSpec.Kind.CONSTANT_CURRENT, amps),
                        Plants.load("heater", LoadSpec.Kind.CONSTANT_POWER, watts),
                        Plants.load("resistor", LoadSpec.Kind.CONSTANT_RESISTANCE, 4),
                        new LoadSpec(
                                "pump",
                                true,
                                LoadSpec.Kind.CONSTANT_CURRENT,
                                5_000_000,
                                90_000,
                                250_000));
        List<ChargerSpec> chargers =
                List.of(
                        Plants.charger("shore", 14.4, 13.5, 20, -24, 2, 0),
                        Plants.charger("roof", 14.6, 13.8, 8, 0, 1, 3_600_000));
        return new Circuit(battery, chargers, loads, new SeedTree(1));
    }

    private static void carryOut(Circuit plant, Action action) {
        String name =
                action.target() == Change.Target.LOAD_SWITCH
                        ? LOADS[action.which()]
                        : CHARGERS[action.which() / 2];
        long value =
                action.target() == Change.Target.BATTERY_TEMPERATURE
                        ? action.which() * 12_000L - 5_000
                        : action.value();
        assertTrue(plant.apply(new Change(0, action.target(), name, value)));
    }

    /** Kirchhoff at the bus, the bounds of charge, and no voltage above what anything drives. */
    @Property(tries = 400)
    void theBusBalancesAndNothingLeavesItsBounds(
            @ForAll boolean lead,
            @ForAll("percent") int startPercent,
            @ForAll("tens") double amps,
            @ForAll("tens") double watts,
            @ForAll("ticks") int tickMillis,
            @ForAll("actions") List<Action> actions) {
        Circuit plant = plant(lead, startPercent, amps, watts * 10);
        for (Action action : actions) {
            carryOut(plant, action);
            for (int i = 0; i < action.ticks(); i++) {
                double before = plant.chargeAmpHours();
                plant.step(tickMillis);
                double given = plant.chargerAmps("shore") + plant.chargerAmps("roof");
                assertEquals(
                        given, plant.loadAmps() + plant.meanCurrentAmps(), ROUNDING, "balance");
                assertTrue(plant.loadAmps() >= 0, "loads give nothing");
                assertTrue(plant.chargeAmpHours() >= 0);
                assertTrue(plant.stateOfCharge() <= 1);
                double moved = plant.chargeAmpHours() - before;
                double fed = plant.meanCurrentAmps() * tickMillis / 3.6e6;
                assertTrue(moved <= Math.max(fed, 0) + ROUNDING, "nothing from nowhere");
                assertTrue(plant.voltageVolts() >= 0);
                // 14.6 V, or 14.4 V compensated by 24 mV/K down to -5 °C: 15.12 V.
                assertTrue(plant.voltageVolts() <= 15.12 + ROUNDING);
            }
        }
    }

    /** While a charger gives current, the bus does not stand above the highest set voltage. */
    @Property(tries = 200)
    void chargersNeverLiftTheBusAboveTheHighestSetVoltage(
            @ForAll boolean lead,
            @ForAll("percent") int startPercent,
            @ForAll("actions") List<Action> actions) {
        Circuit plant = plant(lead, startPercent, 3, 40);
        for (Action action : actions) {
            if (action.target() != Change.Target.BATTERY_TEMPERATURE) {
                carryOut(plant, action);
            }
            for (int i = 0; i < action.ticks(); i++) {
                plant.step(1_000);
                if (plant.chargerAmps("roof") > 0) {
                    assertTrue(plant.voltageVolts() <= 14.6 + ROUNDING);
                } else if (plant.chargerAmps("shore") > 0) {
                    assertTrue(plant.voltageVolts() <= 14.4 + ROUNDING);
                }
            }
        }
    }

    @Property(tries = 50)
    void theSameActionsGiveTheSameBits(
            @ForAll boolean lead, @ForAll("actions") List<Action> actions) {
        Circuit first = plant(lead, 60, 3, 40);
        Circuit second = plant(lead, 60, 3, 40);
        for (Action action : actions) {
            carryOut(first, action);
            carryOut(second, action);
            for (int i = 0; i < action.ticks(); i++) {
                first.step(1_000);
                second.step(1_000);
                assertEquals(first.voltageVolts(), second.voltageVolts());
                assertEquals(first.chargeAmpHours(), second.chargeAmpHours());
            }
        }
    }

    @Provide
    Arbitrary<Integer> percent() {
        return Arbitraries.integers().between(0, 100);
    }

    @Provide
    Arbitrary<Double> tens() {
        return Arbitraries.doubles().between(0.1, 30).ofScale(3);
    }

    @Provide
    Arbitrary<Integer> ticks() {
        return Arbitraries.of(100, 1_000, 7_000, 60_000);
    }
}
