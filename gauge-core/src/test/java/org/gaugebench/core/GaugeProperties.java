package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Trust;
import org.gaugebench.core.settings.Setting;

/** Statements about a whole gauge with its full-charge rule on (rules G20 to G22). */
class GaugeProperties {
    /** One step of life: a stretch of constant current and voltage, cut into ticks. */
    record Stretch(int counts, int millivolts, int ticks, int millis, int declarePartsPerMillion) {}

    @Provide
    static Arbitrary<List<Stretch>> lives() {
        Arbitrary<Integer> counts =
                Arbitraries.oneOf(
                        Arbitraries.integers().between(-30, 30).map(amps -> amps * 8_000),
                        Arbitraries.integers().between(-4_000, 16_000));
        Arbitrary<Integer> millivolts =
                Arbitraries.oneOf(
                        Arbitraries.integers().between(11_000, 14_199), Arbitraries.just(14_400));
        Arbitrary<Integer> declared =
                Arbitraries.integers().between(-20, 2).map(x -> x < 0 ? -1 : x * 500_000);
        return Combinators.combine(
                        counts,
                        millivolts,
                        Arbitraries.integers().between(1, 12),
                        Arbitraries.integers().between(1, 70_000),
                        declared)
                .as(Stretch::new)
                .list()
                .ofMinSize(5)
                .ofMaxSize(40);
    }

    private static GaugeFixture fixture() {
        return new GaugeFixture(
                GaugeFixture.roundNumbers()
                        .set(Setting.CAPACITY, 10_000)
                        .set(Setting.TAPER, 200_000)
                        .set(Setting.HOLD, 1)
                        .set(Setting.QUIET_TIME, 0)
                        .set(Setting.REARM_DISCHARGE, 1_000)
                        .build());
    }

    @Property(tries = 300)
    void theReadingMovesByNoMoreThanTheTickBroughtUnlessAnEventSaysSo(
            @ForAll("lives") List<Stretch> lives) {
        GaugeFixture fixture = fixture();
        long before = fixture.charge();
        long jumps = 0;
        for (Stretch stretch : lives) {
            fixture.heard.clear();
            if (stretch.declarePartsPerMillion() >= 0) {
                fixture.declare(stretch.declarePartsPerMillion());
            }
            fixture.volts(stretch.millivolts());
            for (int i = 0; i < stretch.ticks(); i++) {
                boolean knownBefore = fixture.readout.trust != Trust.UNKNOWN;
                fixture.tick(stretch.counts(), stretch.millis());
                long after = fixture.charge();
                boolean announced =
                        fixture.times(Event.SET_TO_FULL) + fixture.times(Event.DECLARED) > 0;
                // 1 nC: the efficiency's floor
                long most =
                        Math.abs((long) stretch.counts())
                                        * GaugeFixture.MICROAMPS_PER_COUNT
                                        * stretch.millis()
                                + 1;
                boolean known = fixture.read().trust != Trust.UNKNOWN;
                assertTrue(
                        announced || Math.abs(after - before) <= most,
                        "moved " + (after - before) + " nC of at most " + most);
                assertTrue(announced || known == knownBefore, "became known without an event");
                jumps += announced ? 1 : 0;
                before = after;
                fixture.heard.clear();
            }
        }
        Statistics.label("lives with a jump").collect(jumps > 0);
    }

    @Property(tries = 300)
    void readoutStaysWithinItsRangesAndAgreesWithTheRegisters(
            @ForAll("lives") List<Stretch> lives) {
        GaugeFixture fixture = fixture();
        for (Stretch stretch : lives) {
            if (stretch.declarePartsPerMillion() >= 0) {
                fixture.declare(stretch.declarePartsPerMillion());
            }
            fixture.volts(stretch.millivolts());
            fixture.ticks(stretch.ticks(), stretch.counts(), stretch.millis());
            Readout readout = fixture.read();
            int parts = readout.stateOfChargePartsPerMillion;
            assertEquals(fixture.register(Register.STATE_OF_CHARGE_PARTS_PER_MILLION), parts);
            assertTrue(parts >= -1 && parts <= 1_000_000, "ppm " + parts);
            if (parts >= 0) {
                assertEquals(fixture.charge(), readout.remainingNanocoulombs);
                assertEquals(readout.remainingNanocoulombs / 36_000_000, parts);
            }
            assertTrue(readout.timeToEmptyMinutes >= 0 && readout.timeToEmptyMinutes <= 5_940);
        }
    }

    /** Full is announced once for each anchor, and each arming lies between two of them. */
    @Property(tries = 300)
    void eventsComeExactlyOnce(@ForAll("lives") List<Stretch> lives) {
        GaugeFixture fixture = fixture();
        for (Stretch stretch : lives) {
            fixture.volts(stretch.millivolts());
            fixture.ticks(stretch.ticks(), stretch.counts(), stretch.millis());
        }
        assertEquals(fixture.register(Register.FULL_COUNT), fixture.times(Event.SET_TO_FULL));
        boolean full = false;
        for (GaugeFixture.Heard heard : fixture.heard) {
            if (heard.event() == Event.SET_TO_FULL) {
                assertTrue(!full, "full twice without an arming");
                full = true;
            } else if (heard.event() == Event.FULL_RULE_ARMED) {
                assertTrue(full, "armed without a full");
                full = false;
            }
        }
        assertEquals(1, fixture.times(Event.POWERED_UP));
    }

    @Property(tries = 100)
    void twoGaugesFedAlikeAgreeAtEveryTick(@ForAll("lives") List<Stretch> lives) {
        GaugeFixture one = fixture();
        GaugeFixture other = fixture();
        for (Stretch stretch : lives) {
            one.volts(stretch.millivolts());
            other.volts(stretch.millivolts());
            for (int i = 0; i < stretch.ticks(); i++) {
                one.tick(stretch.counts(), stretch.millis());
                other.tick(stretch.counts(), stretch.millis());
                // Looking is not touching: only one of them is read out.
                one.read();
                one.gauge.inspect(one.registers);
            }
            other.gauge.inspect(other.registers);
            one.gauge.inspect(one.registers);
            assertEquals(
                    one.registers.fold(Registers.DIGEST_START),
                    other.registers.fold(Registers.DIGEST_START));
        }
        assertEquals(one.heard, other.heard);
    }
}
