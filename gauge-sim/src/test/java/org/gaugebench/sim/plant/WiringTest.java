package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.Change;
import org.gaugebench.sim.scenario.ChargerSpec;
import org.gaugebench.sim.scenario.LoadShape;
import org.gaugebench.sim.scenario.LoadSpec;
import org.gaugebench.sim.scenario.LoadTraits;
import org.gaugebench.sim.scenario.WiringSpec;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Kirchhoff's current law at both ends of the shunt, Ohm's law in the joint. */
class WiringTest {
    /** A few roundings of values up to 100. */
    private static final double ROUNDING = 1e-12;

    /** A day of 0.1 s steps. */
    private static final double MANY_STEPS = 1e-9;

    private static Circuit plant(
            BatterySpec battery, List<ChargerSpec> chargers, WiringSpec wiring, LoadSpec... loads) {
        Circuit plant = new Circuit(battery, chargers, List.of(loads), new SeedTree(1));
        plant.setWiring(wiring);
        return plant;
    }

    private static LoadSpec load(String name, double amps) {
        return Plants.load(name, LoadSpec.Kind.CONSTANT_CURRENT, amps);
    }

    private static WiringSpec past(String name, double part) {
        return WiringSpec.RIGHT.with("past-shunt." + name, Math.round(part * 1e6));
    }

    /** A fridge of 3 A, a third of the time, on the battery side: 24 Ah a day unseen. */
    @Test
    void aLoadOnTheBatterySideIsUnseen() {
        LoadSpec fridge =
                new LoadSpec(
                        "fridge",
                        true,
                        LoadSpec.Kind.CONSTANT_CURRENT,
                        3_000_000,
                        600_000,
                        1_800_000);
        Circuit plant =
                plant(
                        Plants.lithium(100, 80),
                        List.of(),
                        past("fridge", 1),
                        fridge,
                        load("lamp", 0.5));
        double seen = 0;
        for (int second = 0; second < 86_400; second++) {
            plant.step(1_000);
            seen += plant.meanShuntAmps() / 3_600;
            assertEquals(-0.5, plant.meanShuntAmps(), ROUNDING);
            assertEquals(-0.5, plant.shuntAmps(), ROUNDING);
        }
        assertEquals(-12, seen, MANY_STEPS);
        assertEquals(80 - 12 - 24, plant.chargeAmpHours(), MANY_STEPS);
    }

    @ParameterizedTest
    @ValueSource(strings = {"CONSTANT_CURRENT", "CONSTANT_POWER", "CONSTANT_RESISTANCE"})
    void loadsOfEveryKindGoPastByTheirPart(LoadSpec.Kind kind) {
        double size = kind == LoadSpec.Kind.CONSTANT_POWER ? 60 : 5;
        Circuit plant =
                plant(
                        Plants.lithium(100, 80),
                        List.of(),
                        past("odd", 0.1),
                        Plants.load("odd", kind, size),
                        load("lamp", 2));
        for (int i = 0; i < 100; i++) {
            plant.step(1_000);
            double odd = plant.loadAmps() - 2;
            assertTrue(odd > 1);
            assertEquals(-2 - 0.9 * odd, plant.meanShuntAmps(), ROUNDING);
            assertEquals(plant.meanShuntAmps(), plant.shuntAmps(), ROUNDING);
        }
    }

    /** A charger there lifts the battery and never the count; loads go on being counted. */
    @Test
    void aChargerOnTheBatterySideIsUnseen() {
        Circuit plant =
                plant(
                        Plants.leadAcid(50),
                        List.of(Plants.charger("shore", 14.4, 14.4, 20)),
                        past("shore", 1),
                        load("lamp", 2));
        for (int second = 0; second < 20_000; second++) {
            plant.step(1_000);
            assertEquals(-2, plant.meanShuntAmps(), ROUNDING);
        }
        assertTrue(plant.stateOfCharge() > 0.9, "it charges");
    }

    /** The charger there regulates, and gives what a pulsed load takes at the instant. */
    @Test
    void anInstantOfAPulsedLoadComesThroughTheShuntFromTheChargerBehindIt() {
        LoadSpec dimmed =
                new LoadSpec(
                        "lamp",
                        true,
                        LoadSpec.Kind.CONSTANT_CURRENT,
                        4_000_000,
                        0,
                        0,
                        new LoadTraits(0, new LoadShape.PulseWidth(500, 500_000, 0)));
        Circuit plant =
                plant(
                        Plants.leadAcid(99),
                        List.of(Plants.charger("shore", 14.4, 14.4, 20)),
                        past("shore", 1),
                        dimmed);
        for (int i = 0; i < 20; i++) {
            plant.step(500);
            double instant = plant.timeMillis() % 2_000 < 1_000 ? -4 : 0;
            assertEquals(instant, plant.shuntAmps(), ROUNDING);
            assertTrue(plant.currentAmps() > 0, "the battery goes on being charged");
        }
    }

    @Test
    void aSecondPathTakesItsPartOfEverythingElse() {
        WiringSpec wiring = past("fridge", 0.5).with("parallel-path", 200_000);
        Circuit plant =
                plant(
                        Plants.lithium(100, 80),
                        List.of(),
                        wiring,
                        load("fridge", 4),
                        load("lamp", 2));
        plant.step(1_000);
        assertEquals(-6, plant.meanCurrentAmps(), ROUNDING);
        assertEquals(-0.8 * (2 + 2), plant.meanShuntAmps(), ROUNDING);
    }

    /** 12 mA for 30 days are 8.64 Ah, 14.4 % of 60 Ah. */
    @Test
    void theGaugesOwnSupplyNeverCrossesTheShunt() {
        Circuit plant =
                plant(
                        Plants.lithium(60, 100),
                        List.of(),
                        WiringSpec.RIGHT.with("own-supply", 12_000));
        for (int minute = 0; minute < 30 * 1_440; minute++) {
            plant.step(60_000);
            assertEquals(0, plant.meanShuntAmps());
            assertEquals(0, plant.shuntAmps());
        }
        assertEquals(60 - 8.64, plant.chargeAmpHours(), MANY_STEPS);
        assertEquals(1 - 0.144, plant.stateOfCharge(), MANY_STEPS);
    }

    /** 30 A over 5 mOhm: the bus stands 150 mV off the battery, above or below. */
    @Test
    void aJointDropsBetweenBatteryAndBus() {
        WiringSpec joint = WiringSpec.RIGHT.with("joint-resistance", 5_000);
        Circuit plain = plant(Plants.lithium(100, 50), List.of(), WiringSpec.RIGHT, load("l", 30));
        Circuit plant = plant(Plants.lithium(100, 50), List.of(), joint, load("l", 30));
        plain.step(1_000);
        plant.step(1_000);
        assertEquals(plain.voltageVolts(), plant.batteryVolts(), ROUNDING, "the same battery");
        assertEquals(plain.voltageVolts() - 0.150, plant.voltageVolts(), ROUNDING);
        plant.setWiring(joint.with("voltage-sense", 1));
        plant.step(1_000);
        plain.step(1_000);
        assertEquals(plain.voltageVolts(), plant.voltageVolts(), ROUNDING, "at its terminals");
        List<ChargerSpec> charger = List.of(Plants.charger("shore", 16, 16, 30));
        Circuit charged = plant(Plants.lithium(100, 50), charger, joint);
        charged.step(1_000);
        assertEquals(30, charged.meanCurrentAmps(), ROUNDING);
        assertEquals(0.150, charged.voltageVolts() - charged.batteryVolts(), ROUNDING);
    }

    /** A regulating charger fills a battery behind a joint more slowly, not to another end. */
    @Test
    void aJointSlowsTheLastOfTheCharge() {
        WiringSpec joint = WiringSpec.RIGHT.with("joint-resistance", 20_000);
        List<ChargerSpec> charger = List.of(Plants.charger("shore", 14.2, 14.2, 100));
        Circuit plain = plant(Plants.lithium(100, 50), charger, WiringSpec.RIGHT);
        Circuit plant = plant(Plants.lithium(100, 50), charger, joint);
        plain.step(1_000);
        plant.step(1_000);
        double open = plain.batteryVolts() - plain.meanCurrentAmps() * 0.010;
        assertEquals(
                (14.2 - open) / 0.030, plant.meanCurrentAmps(), 0.01, "voltage moves in the step");
        Plants.run(plant, 20 * Plants.HOUR, 1_000);
        Plants.run(plain, 20 * Plants.HOUR, 1_000);
        assertEquals(plain.chargeAmpHours(), plant.chargeAmpHours(), 0.01);
    }

    @Test
    void anOpenIsolatorLeavesTheLeadsAtTheBatteryWithItsOwnVoltage() {
        Circuit plant =
                plant(
                        Plants.lithium(100, 50),
                        List.of(Plants.charger("shore", 14.2, 14.2, 10)),
                        WiringSpec.RIGHT.with("voltage-sense", 1));
        double rest = plant.voltageVolts();
        plant.setIsolatorOpen(true);
        plant.step(1_000);
        assertEquals(rest, plant.voltageVolts(), 1e-6);
        assertTrue(plant.voltageVolts() < 13.5);
    }

    /** With the isolator open a load past the shunt is fed through the shunt. */
    @Test
    void withoutBatteryTheCurrentRunsTheOtherWay() {
        Circuit plant =
                plant(
                        Plants.lithium(100, 50),
                        List.of(Plants.charger("shore", 14.2, 14.2, 10)),
                        past("lamp", 1),
                        load("lamp", 2));
        plant.setIsolatorOpen(true);
        plant.step(1_000);
        assertEquals(0, plant.meanCurrentAmps());
        assertEquals(2, plant.meanShuntAmps(), ROUNDING);
    }

    @Test
    void loadsThatGetNothingSendNothingPast() {
        Circuit plant = plant(Plants.lithium(100, 0), List.of(), past("lamp", 1), load("lamp", 2));
        plant.step(1_000);
        assertTrue(plant.isStarved());
        assertEquals(0, plant.meanShuntAmps());
        assertEquals(0, plant.shuntAmps());
    }

    @Test
    void theTimelineMovesTheWiringAndACopyTakesItOver() {
        Circuit plant = plant(Plants.lithium(100, 80), List.of(), WiringSpec.RIGHT, load("a", 2));
        plant.step(1_000);
        assertTrue(plant.apply(new Change(0, Change.Target.WIRING, "past-shunt.a", 1_000_000)));
        assertTrue(plant.apply(new Change(0, Change.Target.WIRING, "own-supply", 10_000)));
        Circuit copy = plant.copy();
        plant.step(1_000);
        copy.step(1_000);
        assertEquals(0, plant.meanShuntAmps(), ROUNDING);
        assertEquals(-2.01, plant.meanCurrentAmps(), ROUNDING);
        assertEquals(plant.meanShuntAmps(), copy.meanShuntAmps());
        assertEquals(plant.meanCurrentAmps(), copy.meanCurrentAmps());
        assertEquals(Map.of("a", 1_000_000L), copy.wiring().pastShunt());
    }
}
