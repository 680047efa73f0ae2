package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.settings.Setting;

/** The count as it comes out of a whole gauge, the full-charge rule off (rules G1 to G7). */
class GaugeCountProperties {
    private static final int WHOLE = 1_000_000;

    /** One step: a tick, a gap, a clock that runs back, a garbage frame, or a declaration. */
    record Step(String kind, int counts, int millis) {}

    @Provide
    static Arbitrary<List<Step>> steps() {
        Arbitrary<Integer> counts =
                Arbitraries.oneOf(
                        Arbitraries.integers().between(-8_388_608, 8_388_607),
                        Arbitraries.integers().between(-80_000, 80_000),
                        Arbitraries.of(0, 1, -1));
        Arbitrary<Integer> millis =
                Arbitraries.oneOf(
                        Arbitraries.integers().between(0, 65_535),
                        Arbitraries.of(1_000, 59_999, 60_000, 60_001, 65_535));
        Arbitrary<Step> tick = step("tick", counts, millis);
        Arbitrary<Step> gap =
                step("tick", counts, Arbitraries.integers().between(65_536, 10_000_000));
        Arbitrary<Step> back = step("tick", counts, Arbitraries.integers().between(-100_000, -1));
        Arbitrary<Step> garbage =
                step("garbage", Arbitraries.of(8_388_608, -8_388_609, Integer.MIN_VALUE), millis);
        Arbitrary<Step> declare =
                step(
                        "declare",
                        Arbitraries.oneOf(
                                Arbitraries.integers().between(0, WHOLE),
                                Arbitraries.of(0, 989_999, 990_001, WHOLE)),
                        Arbitraries.just(0));
        return Arbitraries.frequencyOf(
                        Tuple.of(30, tick),
                        Tuple.of(1, gap),
                        Tuple.of(1, back),
                        Tuple.of(2, garbage),
                        Tuple.of(2, declare))
                .list()
                .ofMinSize(1)
                .ofMaxSize(150);
    }

    private static Arbitrary<Step> step(
            String kind, Arbitrary<Integer> counts, Arbitrary<Integer> millis) {
        return Combinators.combine(counts, millis).as((c, m) -> new Step(kind, c, m));
    }

    @Property
    void theCountEqualsTheExactOneOverAnySteps(
            @ForAll("steps") List<Step> steps,
            @ForAll @LongRange(min = 100, max = 1_000_000) long capacityMilliampHours,
            @ForAll @IntRange(min = 500_000, max = WHOLE) int efficiency) {
        GaugeFixture fixture = fixture(capacityMilliampHours, efficiency);
        ExactCount exact = new ExactCount(capacityMilliampHours, efficiency);
        long lastMicroamps = 0;
        for (Step step : steps) {
            if (step.kind().equals("declare")) {
                fixture.declare(step.counts());
                exact.declare(step.counts());
            } else {
                if (step.kind().equals("tick")) {
                    lastMicroamps = (long) step.counts() * GaugeFixture.MICROAMPS_PER_COUNT;
                }
                fixture.tick(step.counts(), step.millis());
                exact.tick(lastMicroamps, step.millis());
            }
            compare(exact, fixture);
        }
    }

    private static void compare(ExactCount exact, GaugeFixture fixture) {
        same(exact.reading(), fixture, Register.CHARGE_NANOCOULOMBS);
        same(exact.settled, fixture, Register.SETTLED_NANOCOULOMBS);
        same(exact.minute(), fixture, Register.MINUTE_NANOCOULOMBS);
        same(exact.surplus, fixture, Register.SURPLUS_NANOCOULOMBS);
        same(exact.deficit, fixture, Register.DEFICIT_NANOCOULOMBS);
        same(exact.in, fixture, Register.IN_NANOCOULOMBS);
        same(exact.out, fixture, Register.OUT_NANOCOULOMBS);
    }

    private static void same(BigInteger expected, GaugeFixture fixture, Register register) {
        assertEquals(expected, BigInteger.valueOf(fixture.register(register)), register.name());
    }

    /** Two gauges, one fed whole ticks and one the same ticks in parts, agree in every register. */
    @Property(tries = 300)
    void splittingATickChangesNothing(
            @ForAll("steps") List<Step> steps, @ForAll @IntRange(min = 2, max = 7) int parts) {
        GaugeFixture whole = fixture(100_000, 900_000);
        GaugeFixture split = fixture(100_000, 900_000);
        whole.declare(500_000);
        split.declare(500_000);
        for (Step step : steps) {
            if (!step.kind().equals("tick") || step.millis() < parts || step.millis() > 65_535) {
                continue;
            }
            whole.tick(step.counts(), step.millis());
            int part = step.millis() / parts;
            split.ticks(parts - 1, step.counts(), part);
            split.tick(step.counts(), step.millis() - part * (parts - 1));
            for (Register register : Register.values()) {
                if (register != Register.FAULT_TICKS) {
                    assertEquals(
                            whole.register(register), split.register(register), register.name());
                }
            }
        }
    }

    /** The reading just before a minute ends and just after differ by what the tick brought. */
    @Property
    void settlingDoesNotMoveTheReading(
            @ForAll @IntRange(min = -800_000, max = 800_000) int counts,
            @ForAll @IntRange(min = 1, max = 59_999) int beforeMillis,
            @ForAll @IntRange(min = 500_000, max = WHOLE) int efficiency) {
        GaugeFixture fixture = fixture(100_000, efficiency);
        fixture.declare(500_000);
        fixture.tick(counts, beforeMillis);
        fixture.tick(counts, 60_000 - beforeMillis - 1);
        long before = fixture.charge();
        fixture.tick(0, 0).tick(0, 1);
        long after = fixture.charge();
        assertEquals(0, fixture.register(Register.MINUTE_MILLIS));
        assertTrue(Math.abs(after - before) <= 1, "settling moved " + (after - before) + " nC");
    }

    private static GaugeFixture fixture(long capacityMilliampHours, int efficiency) {
        return new GaugeFixture(
                GaugeFixture.roundNumbers()
                        .set(Setting.CAPACITY, capacityMilliampHours)
                        .set(Setting.COULOMBIC_EFFICIENCY, efficiency)
                        .set(Setting.ABSORPTION, 0)
                        .build());
    }

    /**
     * +-10 A, mean zero, half a second each: an efficiency on each sample would cost 12 Ah a day.
     */
    @Example
    void rippleOfZeroMeanCostsNothingInADay() {
        GaugeFixture fixture = fixture(100_000, 900_000);
        fixture.declare(500_000);
        long before = fixture.charge();
        for (int i = 0; i < 86_400; i++) {
            fixture.tick(10 * GaugeFixture.COUNTS_PER_AMP, 500);
            fixture.tick(-10 * GaugeFixture.COUNTS_PER_AMP, 500);
        }
        assertEquals(before, fixture.charge());
    }

    @Example
    void rippleOfZeroMeanCostsNothingAtFull() {
        GaugeFixture fixture = fixture(100_000, 900_000);
        fixture.declare(WHOLE);
        for (int i = 0; i < 7_200; i++) {
            fixture.tick(10 * GaugeFixture.COUNTS_PER_AMP, 500);
            fixture.tick(-10 * GaugeFixture.COUNTS_PER_AMP, 500);
        }
        assertEquals(100 * GaugeFixture.NANOCOULOMBS_PER_AMP_HOUR, fixture.charge());
        assertEquals(0, fixture.register(Register.SURPLUS_NANOCOULOMBS));
    }
}
