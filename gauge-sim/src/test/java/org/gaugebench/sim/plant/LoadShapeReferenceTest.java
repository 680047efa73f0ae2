package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.LoadShape;
import org.gaugebench.sim.scenario.LoadSpec;
import org.gaugebench.sim.scenario.LoadTraits;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What an instantaneous sampler makes of loads that are faster than it, against what flows.
 *
 * <p>Sources: the sampling theorem for alias frequencies, |f - round(f / fs) fs|; elementary
 * integrals for the charges. The figures of the cases are computed from these, not measured.
 */
class LoadShapeReferenceTest {
    private static final int PART = 1_000_000;

    /** Charge adds up in doubles over thousands of steps. */
    private static final double ROUNDING = 1e-9;

    /** Half the last place of 2.9e6 C in each of 600,000 steps is 4e-8 Ah. */
    private static final double MANY_STEPS = 1e-7;

    private static LoadSpec shaped(double amps, LoadShape shape) {
        return shaped(amps, 0, 0, 0, shape);
    }

    private static LoadSpec shaped(
            double amps, long on, long every, long startsAfter, LoadShape shape) {
        return new LoadSpec(
                "load",
                true,
                LoadSpec.Kind.CONSTANT_CURRENT,
                Math.round(amps * 1e6),
                on,
                every,
                new LoadTraits(startsAfter, shape));
    }

    private static Circuit plant(LoadSpec load) {
        return new Circuit(Plants.lithium(1_000, 80), List.of(), List.of(load), new SeedTree(1));
    }

    private static LoadShape pulses(double hertz, double duty, double phase) {
        return new LoadShape.PulseWidth(
                Math.round(hertz * 1e3), Math.round(duty * PART), Math.round(phase * PART));
    }

    private static LoadShape ripple(double lineHertz, double depth, double phase) {
        return new LoadShape.Ripple(
                Math.round(lineHertz * 1e3), Math.round(depth * PART), Math.round(phase * PART));
    }

    /** Mean draw that samples of an instant show, and the true one beside it. */
    private record Seen(double instants, double truth) {}

    private static Seen seen(LoadSpec load, int tickMillis, int ticks) {
        Circuit plant = plant(load);
        double instants = 0;
        double truth = 0;
        for (int tick = 0; tick < ticks; tick++) {
            plant.step(tickMillis);
            instants -= plant.currentAmps();
            truth -= plant.meanCurrentAmps();
        }
        return new Seen(instants / ticks, truth / ticks);
    }

    @ParameterizedTest
    @CsvSource({"0.00, 20", "0.25, 20", "0.49, 20", "0.51, 0", "0.75, 0", "0.99, 0"})
    void pulsesSampledAtAWholeDivisorLockToAllOrNothing(double phase, double locked) {
        Seen seen = seen(shaped(20, pulses(200, 0.5, phase)), 100, 600);
        assertEquals(locked, seen.instants);
        assertEquals(10, seen.truth, ROUNDING, "what flows does not depend on the phase");
    }

    /** 50 ppm between pulse and sampler make a beat of 100 s. */
    @Test
    void aSlowBeatIsWrongForAMinuteAndRightForAnHour() {
        LoadSpec load = shaped(20, pulses(200.01, 0.5, 0.25));
        assertEquals(20 * 25 / 60.0, seen(load, 100, 600).instants, 20 / 600.0, "one sample");
        Seen hour = seen(load, 100, 36_000);
        assertEquals(10, hour.instants, 20 / 36_000.0 + ROUNDING, "one sample");
        assertEquals(10, hour.truth, 20 * 0.005 / 3_600, "less than one pulse");
    }

    /** Duty 0.30: 997 Hz at 100 Hz over 1000 samples reads 0.303; 1000 Hz reads 0 or 1. */
    @Test
    void samplesOfADutyOfThirtyPercent() {
        Seen near = seen(shaped(1, pulses(997, 0.3, 0)), 10, 1_000);
        assertEquals(0.303, near.instants, 0.0035, "a sample more or less in each beat of 333");
        assertEquals(0.3, near.truth, ROUNDING);
        assertEquals(1, seen(shaped(1, pulses(1_000, 0.3, 0)), 10, 1_000).instants);
        assertEquals(0, seen(shaped(1, pulses(1_000, 0.3, 0.5)), 10, 1_000).instants);
    }

    @ParameterizedTest
    @CsvSource({"997, 10, 3", "490, 8, 10", "1000, 10, 0", "50, 8, 50"})
    void samplesShowTheAliasFrequency(double hertz, int tickMillis, int aliasHertz) {
        Circuit plant = plant(shaped(1, pulses(hertz, 0.5, 0)));
        boolean on = true;
        int begun = 0;
        for (int tick = 0; tick < 10_000 / tickMillis; tick++) {
            plant.step(tickMillis);
            boolean now = plant.currentAmps() < -0.5;
            begun += now && !on ? 1 : 0;
            on = now;
        }
        assertEquals(10 * aliasHertz, begun, 1, "a pulse cut at the end");
    }

    /** 50 A (1 - cos 2 pi 100 t): samples at 10 Hz can lock at 0 or 100 A. */
    @Test
    void rippleLocksAtNothingOrAtTwiceItsMean() {
        assertEquals(0, seen(shaped(50, ripple(50, 1, 0)), 100, 100).instants, ROUNDING);
        assertEquals(100, seen(shaped(50, ripple(50, 1, 0.5)), 100, 100).instants, ROUNDING);
        assertEquals(50, seen(shaped(50, ripple(50, 1, 0)), 100, 100).truth, ROUNDING);
        // 100 ppm: a beat of 100 s.
        Seen beat = seen(shaped(50, ripple(50.005, 1, 0)), 100, 1_000);
        assertEquals(50, beat.instants, ROUNDING * 10);
        Seen quarter = seen(shaped(50, ripple(50.005, 1, 0)), 100, 250);
        assertEquals(50 * (1 - 2 / Math.PI), quarter.instants, 0.2, "the sum is no integral");
    }

    /** 80 A and 60 A of ripple on a range of 100 A: 69.8 A are left. */
    @Test
    void aClippedRippleLosesOneSideOnly() {
        Circuit plant = plant(shaped(80, ripple(50.005, 0.75, 0)));
        double clipped = 0;
        for (int tick = 0; tick < 2_000; tick++) {
            plant.step(100);
            clipped += Math.min(-plant.currentAmps(), 100);
        }
        assertEquals(69.8, clipped / 2_000, 0.05, "printed to one decimal");
    }

    /** What flows over any stretch of a ripple, against its integral. */
    @Test
    void rippleOverAPartOfItsPeriod() {
        Circuit plant = plant(shaped(50, ripple(50, 0.8, 0)));
        plant.step(3);
        double radians = 2 * Math.PI * 0.3;
        double expected = 50 * (3 - 0.8 * Math.sin(radians) / (2 * Math.PI * 0.1)) / 3;
        assertEquals(-expected, plant.meanCurrentAmps(), ROUNDING);
    }

    @Test
    void aMotorsStartTakesItsPeakOnceInEachCycle() {
        LoadShape inrush = new LoadShape.Inrush(6 * PART, 200);
        Circuit plant = plant(shaped(5, 60_000, 600_000, 0, inrush));
        plant.step(100);
        assertEquals(-5 * (1 + 5 * Math.exp(-0.5)), plant.currentAmps(), ROUNDING);
        double seconds = 0.1 + 5 * 0.2 * (1 - Math.exp(-0.5));
        assertEquals(-5 * seconds / 0.1, plant.meanCurrentAmps(), ROUNDING);
        Plants.run(plant, 3_600_000 - 100, 100);
        double hours = 6 * (60 + 5 * 0.2) / 3_600;
        assertEquals(800 - 5 * hours, plant.chargeAmpHours(), ROUNDING, "(peak - 1) tau a start");
    }

    /** 500 A for 20 ms, as an inverter's capacitors take it: 0.0028 Ah. */
    @Test
    void capacitorsOfAnInverterTakeLittleCharge() {
        LoadShape inrush = new LoadShape.Inrush(50 * PART, 20);
        Circuit plant = plant(shaped(10, inrush));
        Plants.run(plant, 10_000, 1_000);
        double extra = 800 - 10 * 10 / 3_600.0 - plant.chargeAmpHours();
        assertEquals(490 * 0.02 / 3_600, extra, ROUNDING);
        assertEquals(0.0028, extra, 0.0001, "printed to four decimals, for 500 A on top");
    }

    /** Any tick, mixed with any other, moves the same charge. */
    @ParameterizedTest
    @CsvSource({"1", "7", "250", "999", "1000", "60000"})
    void chargeDoesNotDependOnTheTick(int tickMillis) {
        for (LoadShape shape :
                List.of(
                        pulses(997, 0.3, 0.1),
                        ripple(50.3, 1, 0.2),
                        new LoadShape.Inrush(6 * PART, 200))) {
            Circuit plant = plant(shaped(10, 1_700, 7_100, 450, shape));
            int ticks = 600_000 / tickMillis;
            Plants.run(plant, (long) ticks * tickMillis, tickMillis);
            plant.step(600_001 - ticks * tickMillis);
            Circuit other = plant(shaped(10, 1_700, 7_100, 450, shape));
            Plants.run(other, 600_000, 100);
            other.step(1);
            assertEquals(other.chargeAmpHours(), plant.chargeAmpHours(), MANY_STEPS, "" + shape);
        }
    }

    @Test
    void aLoadThatStartsLateBeginsItsCycleThen() {
        Circuit plant = plant(shaped(6, 10_000, 30_000, 4_500, null));
        double[] expected = {0, 0, 0, 0, 3, 6, 6, 6, 6, 6, 6, 6, 6, 6, 3, 0};
        for (double amps : expected) {
            plant.step(1_000);
            assertEquals(0 - amps, plant.meanCurrentAmps());
        }
        plant.switchLoad("load", false);
        plant.step(1_000);
        plant.switchLoad("load", true);
        Plants.run(plant, 4_000, 1_000);
        assertEquals(0, plant.meanCurrentAmps(), "it waits again");
        plant.step(1_000);
        assertEquals(-3, plant.meanCurrentAmps());
    }

    @Test
    void aSteadyLoadAsksForNoRenewal() {
        assertTrue(new Load(shaped(1, null)).nextChangeMillis(5) == Long.MAX_VALUE);
        Load started = new Load(shaped(1, new LoadShape.Inrush(2 * PART, 10)));
        assertEquals(5, started.nextChangeMillis(5));
        assertTrue(started.nextChangeMillis(500) == Long.MAX_VALUE, "the peak is long gone");
    }
}
