package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.function.Consumer;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.saved.StrictStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/**
 * Capacity and efficiency worked out by a whole gauge (C rules): from full to empty 89.1 Ah come
 * out, which with the 1 % left are 90 Ah of the declared 100; from empty to full 99 Ah and two
 * minutes ampere go in, so 899,697 ppm come out again.
 */
class MeasuredValuesTest {
    private static final int AMP = GaugeFixture.COUNTS_PER_AMP;
    private static final int LOAD = -99 * AMP / 10;

    /** From 100 Ah a quarter of the way to 90, and from 920,000 ppm one to 899,697. */
    private static final long CAPACITY_MILLIAMP_HOURS = 97_500;

    private static final long EFFICIENCY_PARTS_PER_MILLION = 914_925;

    private final StrictStore store = new StrictStore(3, 256);
    private final GaugeSettings settings = settings().build();
    private final GaugeFixture fixture = new GaugeFixture(settings, store, 0, OffTime.EXACT);

    private static GaugeSettings.Builder settings() {
        // C/10 is the largest current at which a low voltage is an end; the cycles here end at it.
        return GaugeFixture.roundNumbers()
                .set(Setting.HOLD, 2)
                .set(Setting.QUIET_TIME, 0)
                .set(Setting.EMPTY_CURRENT, 100_000);
    }

    private static void full(GaugeFixture gauge) {
        gauge.volts(14_400).minutes(2, AMP);
    }

    /** From full to the empty voltage, something in the middle, and full again. */
    private static void cycle(GaugeFixture gauge, Consumer<GaugeFixture> inTheMiddle) {
        gauge.volts(12_000).minutes(270, LOAD);
        inTheMiddle.accept(gauge);
        gauge.volts(12_000).minutes(269, LOAD);
        gauge.volts(10_600).minutes(1, LOAD);
        gauge.volts(13_000).minutes(594, 10 * AMP);
        full(gauge);
    }

    private static void twoCycles(GaugeFixture gauge, Consumer<GaugeFixture> inTheMiddle) {
        full(gauge);
        cycle(gauge, inTheMiddle);
        cycle(gauge, inTheMiddle);
    }

    private static void assertMeasured(long capacity, long efficiency, GaugeFixture gauge) {
        assertEquals(capacity, gauge.register(Register.MEASURED_CAPACITY_MILLIAMP_HOURS));
        assertEquals(efficiency, gauge.register(Register.MEASURED_EFFICIENCY_PARTS_PER_MILLION));
    }

    @Test
    void twoCyclesMoveBothAndAreTold() {
        full(fixture);
        cycle(fixture, gauge -> {});
        assertMeasured(0, 0, fixture);
        assertEquals(0, fixture.times(Event.CAPACITY_MEASURED));
        cycle(fixture, gauge -> {});
        assertEquals(2, fixture.times(Event.SET_TO_EMPTY));
        assertEquals(3, fixture.times(Event.SET_TO_FULL));
        assertMeasured(CAPACITY_MILLIAMP_HOURS, EFFICIENCY_PARTS_PER_MILLION, fixture);
        assertEquals(CAPACITY_MILLIAMP_HOURS, fixture.lastValue(Event.CAPACITY_MEASURED));
        assertEquals(EFFICIENCY_PARTS_PER_MILLION, fixture.lastValue(Event.EFFICIENCY_MEASURED));
        assertEquals(1, fixture.times(Event.CAPACITY_MEASURED));
        assertEquals(1, fixture.times(Event.EFFICIENCY_MEASURED));
    }

    /** C2: 59.4 Ah out of 100 are deep enough, and the count says 40: E5's end counts as well. */
    @Test
    void anEarlyEndIsEvidenceOfTheCapacityToo() {
        for (int i = 0; i < 2; i++) {
            full(fixture);
            fixture.volts(12_000).minutes(359, LOAD);
            fixture.volts(10_600).minutes(1, LOAD);
            assertEquals(
                    i + 1, fixture.times(Event.EARLY_EMPTY) + fixture.times(Event.SET_TO_EMPTY));
            fixture.volts(13_000).minutes(400, 10 * AMP);
        }
        assertEquals(1, fixture.times(Event.EARLY_EMPTY));
        // The second, believed one: 60 Ah twice, a quarter of 40 is more than a twentieth.
        assertEquals(95_000, fixture.lastValue(Event.CAPACITY_MEASURED));
    }

    /** C1, each in the middle of every cycle: nothing is ever learned. */
    @Test
    void whatHidesOrMovesChargeEndsTheEvidence() {
        assertSpoils("a declaration", gauge -> gauge.declare(540_000));
        assertSpoils("missing samples", gauge -> gauge.tick(LOAD, 65_536));
        assertSpoils("a clock that ran back", gauge -> gauge.tick(LOAD, -500));
        assertSpoils("a clipped voltage", gauge -> gauge.volts(65_535).minutes(1, LOAD));
        assertSpoils("garbage", gauge -> gauge.volts(65_536).minutes(1, LOAD));
        assertSpoils("a change of settings", gauge -> gauge.gauge.changeSettings(gauge.settings));
    }

    private static void assertSpoils(String name, Consumer<GaugeFixture> inTheMiddle) {
        GaugeFixture gauge = new GaugeFixture(settings().build());
        twoCycles(gauge, inTheMiddle);
        cycle(gauge, inTheMiddle);
        assertEquals(0, gauge.times(Event.CAPACITY_MEASURED), name);
        assertEquals(0, gauge.times(Event.EFFICIENCY_MEASURED), name);
        assertMeasured(0, 0, gauge);
    }

    /** C1: with a bound of a millivolt the rested voltage beats the count, and sets it. */
    @Test
    void aRestCorrectionEndsTheEvidence() {
        GaugeFixture gauge =
                new GaugeFixture(settings().set(Setting.REST_VOLTAGE_BOUND, 1).build());
        Consumer<GaugeFixture> rest = g -> g.volts(12_400).minutes(12 * 60, 0);
        twoCycles(gauge, rest);
        cycle(gauge, rest);
        assertEquals(3, gauge.times(Event.CORRECTED_BY_REST));
        assertMeasured(0, 0, gauge);
    }

    /** C6 and S1: power, and an edit of anything but the capacity, leave what was measured. */
    @Test
    void whatWasMeasuredOutlivesPowerAndAnEdit() {
        twoCycles(fixture, gauge -> {});
        GaugeSettings edited = settings().set(Setting.TAPER, 30_000).build();
        fixture.gauge.changeSettings(edited);
        assertMeasured(CAPACITY_MILLIAMP_HOURS, EFFICIENCY_PARTS_PER_MILLION, fixture);
        fixture.tick(0, 1_000);
        GaugeFixture again = new GaugeFixture(edited, store, 0, OffTime.EXACT);
        assertMeasured(CAPACITY_MILLIAMP_HOURS, EFFICIENCY_PARTS_PER_MILLION, again);
        // The last single result came over too: one more cycle agrees with it.
        full(again);
        again.volts(12_500).minutes(30, -5 * AMP);
        full(again);
        cycle(again, gauge -> {});
        assertEquals(1, again.times(Event.CAPACITY_MEASURED));
        assertEquals(1, again.times(Event.EFFICIENCY_MEASURED));
    }

    /** C6: on command, for another battery and with another capacity, alive or in a record. */
    @Test
    void whatWasMeasuredIsDropped() {
        twoCycles(fixture, gauge -> {});
        fixture.ticks(11, 0, 1_000);
        GaugeSettings larger = settings().set(Setting.CAPACITY, 150_000).build();
        assertMeasured(0, 0, new GaugeFixture(larger, store, 0, OffTime.EXACT));
        assertDropped(gauge -> gauge.gauge.changeSettings(larger));
        assertDropped(gauge -> gauge.gauge.command(Command.FORGET_MEASURED, 0));
        assertDropped(gauge -> gauge.gauge.command(Command.NEW_BATTERY, 0));
    }

    private void assertDropped(Consumer<GaugeFixture> drop) {
        GaugeFixture gauge = new GaugeFixture(settings, store, 0, OffTime.EXACT);
        assertMeasured(CAPACITY_MILLIAMP_HOURS, EFFICIENCY_PARTS_PER_MILLION, gauge);
        drop.accept(gauge);
        assertMeasured(0, 0, gauge);
    }
}
