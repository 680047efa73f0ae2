package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.gaugebench.sim.logs.LogException;
import org.gaugebench.sim.logs.ProfileColumns;
import org.gaugebench.sim.logs.ProfileReader;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.ChargerSpec;
import org.gaugebench.sim.scenario.ChargerTraits;
import org.gaugebench.sim.scenario.LoadSpec;
import org.gaugebench.sim.scenario.LoadTraits;
import org.gaugebench.sim.scenario.ProfileSpec;
import org.gaugebench.sim.scenario.ProfileSpec.Figure;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What follows a file draws what the file says. The charges are worked out by hand from the rows:
 * rectangles where figures hold, trapezia where they run straight.
 */
class FollowerReferenceTest {
    /** Sums of some ten thousand doubles of the size of 1. */
    private static final double ROUNDING = 1e-9;

    /** 4 A for 2.5 s, nothing for 1 s, 10 A for 0.25 s, 1 A until 10 s. */
    private static final String ROWS = "time_s,x\n0.5,4\n3,0\n4,10\n4.25,1\n10,7\n";

    /** 10 + 0 + 2.5 + 5.75 As. */
    private static final double HELD = 18.25;

    /** 2.5 s of 4 to 0, 1 s of 0 to 10, 0.25 s of 10 to 1, 5.75 s of 1 to 7: means 2, 5, 5.5, 4. */
    private static final double STRAIGHT = 5 + 5 + 1.375 + 23;

    @TempDir private Path folder;
    private Path file;

    @BeforeEach
    void write() throws IOException {
        file = Files.writeString(folder.resolve("x.csv"), ROWS);
    }

    private ProfileSpec profile(Figure figure, boolean straight, boolean repeats, boolean turned)
            throws LogException {
        ProfileColumns columns =
                new ProfileColumns(
                        "time_s", "x", "A", turned, -9_000_000_000L, 9_000_000_000L, "", 0);
        return new ProfileSpec(
                "x.csv",
                "time_s",
                "x",
                figure,
                "A",
                turned,
                straight,
                repeats,
                0,
                turned,
                ProfileReader.read(file, "x.csv", columns));
    }

    private static LoadSpec load(ProfileSpec profile) {
        return new LoadSpec(
                "house",
                true,
                profile.figure() == Figure.POWER
                        ? LoadSpec.Kind.CONSTANT_POWER
                        : LoadSpec.Kind.CONSTANT_CURRENT,
                1_000_000,
                0,
                0,
                new LoadTraits(0, null, null, profile));
    }

    private static Circuit plant(LoadSpec load) {
        return new Circuit(Plants.lithium(100, 50), List.of(), List.of(load), new SeedTree(1));
    }

    /** Ampere-seconds into the battery. */
    private static double run(Circuit plant, int tickMillis, long millis) {
        double sum = 0;
        for (long at = 0; at < millis; at += tickMillis) {
            plant.step(tickMillis);
            sum += plant.meanCurrentAmps() * (tickMillis / 1e3);
        }
        return sum;
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 7, 40, 250, 1_000, 3_000, 60_000})
    void theMeanOfATickIsExact(int tick) throws LogException {
        assertEquals(
                -HELD,
                run(plant(load(profile(Figure.CURRENT, false, false, false))), tick, 60_000),
                ROUNDING);
        assertEquals(
                -STRAIGHT,
                run(plant(load(profile(Figure.CURRENT, true, false, false))), tick, 60_000),
                ROUNDING);
    }

    @ParameterizedTest
    @ValueSource(ints = {8, 1_000, 3_000, 60_000})
    void aProfileThatRepeatsBeginsAgainAtItsLastRow(int tick) throws LogException {
        assertEquals(
                -12 * HELD,
                run(plant(load(profile(Figure.CURRENT, false, true, false))), tick, 120_000),
                ROUNDING);
        assertEquals(
                -12 * STRAIGHT,
                run(plant(load(profile(Figure.CURRENT, true, true, false))), tick, 120_000),
                ROUNDING);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0, 0",
        "499, 0, 0",
        "500, 4, 4",
        "1750, 4, 2",
        "2999, 4, 0.0016",
        "3000, 0, 0",
        "3500, 0, 5",
        "4000, 10, 10",
        "4249, 10, 1.036",
        "9999, 1, 6.998956521739130",
        "10000, 0, 0",
        "11000, 0, 0"
    })
    void anInstantSeesWhatHoldsFromItOn(long at, double held, double straight) throws LogException {
        assertEquals(held, new Follower(profile(Figure.CURRENT, false, false, false)).at(at));
        assertEquals(
                straight,
                new Follower(profile(Figure.CURRENT, true, false, false)).at(at),
                ROUNDING);
    }

    /** Looking back and forth finds the same: a copy of a plant asks for the future. */
    @Test
    void whatWasAskedBeforeDoesNotMatter() throws LogException {
        Follower used = new Follower(profile(Figure.CURRENT, true, true, false));
        for (long at : new long[] {9_000, 100, 4_100, 23_999, 2_000, 0, 4_249, 600}) {
            Follower fresh = new Follower(profile(Figure.CURRENT, true, true, false));
            assertEquals(fresh.at(at), used.at(at));
            assertEquals(fresh.integral(at, at + 777), used.integral(at, at + 777));
            assertEquals(fresh.nextChange(at), used.nextChange(at));
        }
    }

    @Test
    void anInstantaneousSamplerSeesTheInstant() throws LogException {
        Circuit plant = plant(load(profile(Figure.CURRENT, false, false, false)));
        plant.step(1_000);
        assertEquals(-2, plant.meanCurrentAmps(), ROUNDING);
        assertEquals(-4, plant.currentAmps(), ROUNDING);
    }

    @Test
    void theProfileGoesOnWhileItsLoadIsOff() throws LogException {
        Circuit plant = plant(load(profile(Figure.CURRENT, false, false, false)));
        plant.switchLoad("house", false);
        assertEquals(0, run(plant, 500, 4_000));
        plant.switchLoad("house", true);
        assertEquals(-2.5 - 5.75, run(plant, 250, 60_000), ROUNDING);
    }

    @Test
    void aPowerDrawsMoreWhereTheVoltageIsLower() throws LogException {
        Circuit plant = plant(load(profile(Figure.POWER, false, false, false)));
        double joules = 0;
        for (int i = 0; i < 100; i++) {
            plant.step(250);
            joules -= plant.meanCurrentAmps() * plant.voltageVolts() * 0.25;
        }
        assertEquals(HELD, joules, ROUNDING);
    }

    /** The battery of this plant accepts less the fuller it is; a current source does not ask. */
    @ParameterizedTest
    @ValueSource(ints = {250, 1_000})
    void aLoadThatFeedsPutsInWhatTheFileSays(int tick) throws LogException {
        LoadSpec feeding = load(profile(Figure.CURRENT, false, false, true));
        assertEquals(HELD, run(plant(feeding), tick, 60_000), ROUNDING);
        LoadSpec heater =
                new LoadSpec("heater", true, LoadSpec.Kind.CONSTANT_RESISTANCE, 100_000_000, 0, 0);
        Circuit lead =
                new Circuit(
                        Plants.leadAcid(50, 1, 0.3),
                        List.of(),
                        List.of(feeding, heater),
                        new SeedTree(1));
        for (int i = 0; i < 10_000 / tick; i++) {
            lead.step(tick);
            double fed = -lead.loadAmps() - lead.meanCurrentAmps();
            assertEquals(0, fed, ROUNDING);
            assertTrue(lead.voltageVolts() > 11 && lead.voltageVolts() < 15);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {7, 250, 1_000, 3_000})
    void aChargerGivesWhatTheFileSaysUnlessItsVoltageIsReached(int tick) throws LogException {
        ChargerSpec panel =
                new ChargerSpec(
                        "panel",
                        true,
                        14_400_000,
                        13_500_000,
                        20_000_000,
                        0,
                        0,
                        0,
                        null,
                        new ChargerTraits(
                                0,
                                0,
                                0,
                                null,
                                0,
                                null,
                                profile(Figure.CURRENT, false, false, false)));
        Circuit low =
                new Circuit(Plants.lithium(100, 50), List.of(panel), List.of(), new SeedTree(1));
        assertEquals(HELD, run(low, tick, 30_000), ROUNDING);
        Circuit full =
                new Circuit(
                        Plants.leadAcid(99.9, 1, 0), List.of(panel), List.of(), new SeedTree(1));
        // 0.1 Ah are missing and come in with a time constant of 2 h: 0.05 A and falling, in each
        // tick of which the panel's mean is more; with ticks of 3 s that is until 12 s.
        double taken = run(full, tick, 30_000);
        assertTrue(taken > 0.1 && taken < 0.05 * 12, taken + " As");
    }

    @Test
    void aCopyGoesOnToTheSameBits() throws LogException {
        Circuit plant = plant(load(profile(Figure.CURRENT, true, true, false)));
        run(plant, 700, 5_000);
        Circuit twin = plant.copy();
        for (int i = 0; i < 100; i++) {
            plant.step(700);
            twin.step(700);
            assertEquals(plant.meanCurrentAmps(), twin.meanCurrentAmps());
            assertEquals(plant.chargeAmpHours(), twin.chargeAmpHours());
        }
    }

    @Test
    void theEndShowsTheLastRowAndNothingComesAfter() throws LogException {
        Follower shown = new Follower(profile(Figure.VOLTAGE, true, false, false));
        assertTrue(!shown.covers(499) && shown.covers(500) && shown.covers(10_000));
        assertTrue(!shown.covers(10_001));
        assertEquals(7, shown.shownAt(10_000));
    }
}
