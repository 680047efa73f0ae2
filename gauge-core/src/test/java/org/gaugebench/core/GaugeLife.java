package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.EnumSet;
import java.util.Set;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Trust;
import org.gaugebench.core.saved.StrictStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * A whole gauge on a memory, its twin, and books in integers without a width beside them. Every
 * step of a life is judged by the books: nothing jumps without an event, the band's time and gap
 * terms are exact and never shrink without an anchor, equal inputs give equal digests.
 */
final class GaugeLife {
    private static final Set<Event> ANCHORS =
            Set.of(
                    Event.SET_TO_FULL,
                    Event.SET_TO_EMPTY,
                    Event.CORRECTED_BY_REST,
                    Event.DECLARED,
                    Event.NEW_BATTERY,
                    Event.BATTERY_DOUBTFUL,
                    Event.POWERED_UP);
    private static final int LONGEST_TICK_MILLIS = 65_535;
    private static final BigInteger RATED_MICROAMPS = BigInteger.valueOf(1_048_576_000);
    private static final int GARBAGE_COUNTS = Integer.MIN_VALUE;

    /** Own supply of 20 mA and the largest self-discharge, 2^6 times as fast when it is hot. */
    private static final long OWN_MICROAMPS = 20_000;

    private final StrictStore store = new StrictStore(4, 256);
    private final StrictStore twinStore = new StrictStore(4, 256);
    GaugeSettings settings = settings().build();
    GaugeFixture gauge = new GaugeFixture(settings, store, 0, OffTime.EXACT);
    private GaugeFixture twin = new GaugeFixture(settings, twinStore, 0, OffTime.EXACT);

    // The books: since the last anchor.
    private BigInteger timeMillis = BigInteger.ZERO;
    private BigInteger gapNanocoulombs = BigInteger.ZERO;
    private BigInteger lastMicroamps = BigInteger.ZERO;

    // What the last look showed.
    private long charge;
    private long gross;
    private long warm;
    private long residual = 1_000_000;
    private boolean known;

    // What the last save wrote.
    private long saves;
    private long savedPartsPerMillion = Readout.NOT_KNOWN;
    private long savedWidth = 1_000_000;
    private long savedMinuteNanocoulombs;
    private boolean savedKnown;
    final Set<Event> seen = EnumSet.noneOf(Event.class);
    int powerCuts;

    static GaugeSettings.Builder settings() {
        return GaugeFixture.roundNumbers()
                .set(Setting.CAPACITY, 10_000)
                .set(Setting.TAPER, 200_000)
                .set(Setting.HOLD, 2)
                .set(Setting.QUIET_TIME, 1)
                .set(Setting.REARM_DISCHARGE, 5_000)
                .set(Setting.OWN_SUPPLY, OWN_MICROAMPS)
                .set(Setting.SELF_DISCHARGE, 500_000)
                .set(Setting.EMPTY_CURRENT, 1_000_000)
                .set(Setting.REST_TIME, 1);
    }

    GaugeLife() {
        gauge.heard.clear();
        twin.heard.clear();
    }

    private long register(Register register) {
        return gauge.register(register);
    }

    /** A tick of both gauges, judged. */
    void tick(int counts, int millivolts, int millis) {
        feed(gauge, counts, millivolts, millis);
        feed(twin, counts, millivolts, millis);
        book(counts, millivolts, millis);
        judge(BigInteger.valueOf(Math.max(millis, 0)));
    }

    private static void feed(GaugeFixture fixture, int counts, int millivolts, int millis) {
        fixture.volts(millivolts).tick(counts, millis);
    }

    /** What of a tick the books hold: its time if it was counted, its worst charge if not. */
    private void book(int counts, int millivolts, int millis) {
        boolean garbage =
                counts < -8_388_608 || counts > 8_388_607 || millivolts < 0 || millivolts > 65_535;
        // An adjustment may stand between counts and amps: the gauge's own figure is taken.
        lastMicroamps = BigInteger.valueOf(gauge.read().currentMicroamps);
        if (millis < 0 || millis > LONGEST_TICK_MILLIS) {
            long hidden = millis < 0 ? Integer.MAX_VALUE : millis;
            addGap(BigInteger.valueOf(hidden).multiply(RATED_MICROAMPS));
            return;
        }
        timeMillis = timeMillis.add(BigInteger.valueOf(millis));
        boolean rail = !garbage && (counts == -8_388_608 || counts == 8_388_607);
        if (millis > 0 && (garbage || rail)) {
            addGap(BigInteger.valueOf(millis).multiply(RATED_MICROAMPS));
        }
    }

    private void addGap(BigInteger nanocoulombs) {
        gapNanocoulombs = gapNanocoulombs.add(nanocoulombs).min(BigInteger.ONE.shiftLeft(62));
    }

    /** A larger capacity grows the gap in its ratio; the standing currents' share comes on top. */
    private void growGap(long beforeMilliampHours, long afterMilliampHours) {
        if (afterMilliampHours <= beforeMilliampHours) {
            return;
        }
        gauge.read();
        BigInteger grown = BigInteger.valueOf(register(Register.BAND_GAP_NANOCOULOMBS));
        BigInteger least =
                gapNanocoulombs
                        .multiply(BigInteger.valueOf(afterMilliampHours))
                        .divide(BigInteger.valueOf(beforeMilliampHours))
                        .min(BigInteger.ONE.shiftLeft(62));
        assertTrue(grown.compareTo(least) >= 0, "gap " + grown + " nC under " + least);
        gapNanocoulombs = grown;
    }

    /** Looks at the gauge after a step and compares with the books. */
    private void judge(BigInteger passedMillis) {
        gauge.read();
        gauge.heard.forEach(h -> seen.add(h.event()));
        boolean anchored = gauge.heard.stream().anyMatch(h -> ANCHORS.contains(h.event()));
        boolean edited = gauge.times(Event.SETTINGS_CHANGED) > 0;
        long chargeNow = register(Register.CHARGE_NANOCOULOMBS);
        long capacity = register(Register.CAPACITY_NANOCOULOMBS);
        assertTrue(chargeNow >= 0 && chargeNow <= capacity, "charge " + chargeNow);
        boolean knownNow = gauge.readout.stateOfChargePartsPerMillion != Readout.NOT_KNOWN;
        if (!anchored) {
            assertEquals(known, knownNow, "became known or unknown without an event");
            if (!edited) {
                assertMovedByNoMoreThanWasBrought(chargeNow, passedMillis);
            }
            assertBandGrew();
        }
        assertBandHoldsTheReading();
        settleBooks(anchored);
        charge = chargeNow;
        known = knownNow;
        noteSave();
        gauge.heard.clear();
        twin.heard.clear();
    }

    private void assertMovedByNoMoreThanWasBrought(long chargeNow, BigInteger passedMillis) {
        // Self-discharge: half the capacity in 30 days at 20 °C, no temperature; 1 nC of rounding.
        long lost = register(Register.CAPACITY_NANOCOULOMBS) / 2 / 43_200 * 2 + 2;
        BigInteger most =
                lastMicroamps
                        .abs()
                        .add(BigInteger.valueOf(OWN_MICROAMPS))
                        .multiply(passedMillis)
                        .add(BigInteger.valueOf(lost));
        BigInteger moved = BigInteger.valueOf(chargeNow - charge).abs();
        assertTrue(moved.compareTo(most) <= 0, "moved " + moved + " nC of at most " + most);
    }

    private void assertBandGrew() {
        assertEquals(timeMillis, BigInteger.valueOf(bandTime()), "time since the anchor");
        assertEquals(
                gapNanocoulombs,
                BigInteger.valueOf(register(Register.BAND_GAP_NANOCOULOMBS)),
                "gap since the anchor");
        assertTrue(register(Register.BAND_GROSS_NANOCOULOMBS) >= gross, "throughput shrank");
        assertTrue(register(Register.BAND_WARM_MILLIS_Q8) >= warm, "warm time shrank");
        assertTrue(register(Register.BAND_RESIDUAL_PARTS_PER_MILLION) >= residual, "residual");
    }

    private long bandTime() {
        return register(Register.BAND_MILLIS) + register(Register.MINUTE_MILLIS);
    }

    private void assertBandHoldsTheReading() {
        Readout readout = gauge.readout;
        int shown = readout.stateOfChargePartsPerMillion;
        assertTrue(readout.lowerEdgePartsPerMillion >= 0);
        assertTrue(readout.upperEdgePartsPerMillion <= 1_000_000);
        if (shown != Readout.NOT_KNOWN) {
            assertTrue(readout.lowerEdgePartsPerMillion <= shown, "under the band");
            assertTrue(readout.upperEdgePartsPerMillion >= shown, "above the band");
        }
    }

    /** An anchor begins the books anew, from what the gauge holds at the end of the step. */
    private void settleBooks(boolean anchored) {
        if (anchored) {
            BigInteger time = BigInteger.valueOf(bandTime());
            timeMillis = time;
            gapNanocoulombs = BigInteger.valueOf(register(Register.BAND_GAP_NANOCOULOMBS));
        }
        gross = register(Register.BAND_GROSS_NANOCOULOMBS);
        warm = register(Register.BAND_WARM_MILLIS_Q8);
        residual = register(Register.BAND_RESIDUAL_PARTS_PER_MILLION);
    }

    private void noteSave() {
        long savesNow = register(Register.SAVES);
        if (savesNow > saves) {
            savedKnown = known;
            savedPartsPerMillion = register(Register.STATE_OF_CHARGE_PARTS_PER_MILLION);
            savedWidth = width();
            savedMinuteNanocoulombs = register(Register.MINUTE_NANOCOULOMBS);
        }
        saves = savesNow;
    }

    private long width() {
        return (long) gauge.readout.upperEdgePartsPerMillion
                - gauge.readout.lowerEdgePartsPerMillion;
    }

    void command(Command command, long argument) {
        gauge.gauge.command(command, argument);
        twin.gauge.command(command, argument);
        judge(BigInteger.ZERO);
    }

    /** Other settings; answers the step that the event told. */
    long edit(GaugeSettings changed) {
        long before = settings.get(Setting.CAPACITY);
        settings = changed;
        gauge.gauge.changeSettings(changed);
        twin.gauge.changeSettings(changed);
        long step = gauge.lastValue(Event.SETTINGS_CHANGED);
        growGap(before, changed.get(Setting.CAPACITY));
        judge(BigInteger.ZERO);
        return step;
    }

    /** Power goes; both gauges come up on what their memories hold. */
    void powerCut(int offMillis, OffTime offTime) {
        powerCuts++;
        RecordIdentity.check(store, settings);
        int volts = gauge.sample.voltageCounts;
        gauge = restart(store, offMillis, offTime, volts);
        twin = restart(twinStore, offMillis, offTime, volts);
        lastMicroamps = BigInteger.ZERO;
        saves = 0;
        gauge.read();
        assertEquals(savedKnown, gauge.readout.trust != Trust.UNKNOWN);
        if (savedKnown) {
            assertEquals(
                    (int) savedPartsPerMillion,
                    gauge.readout.stateOfChargePartsPerMillion,
                    1,
                    "count");
            // Net terms shrink as charge returns: the record holds the minute under way, which the
            // band of the running gauge takes in only at its end.
            boolean returned = savedMinuteNanocoulombs > 0;
            assertTrue(returned || width() >= savedWidth, "the band is narrower after a restart");
        }
        judge(BigInteger.ZERO);
    }

    private GaugeFixture restart(StrictStore memory, int offMillis, OffTime offTime, int volts) {
        GaugeFixture fixture = new GaugeFixture(settings, memory, offMillis, offTime);
        fixture.volts(volts);
        return fixture;
    }

    /** Equal inputs, equal digests, though only one of the two is looked at. */
    void assertTwinAgrees() {
        gauge.gauge.inspect(gauge.registers);
        twin.gauge.inspect(twin.registers);
        assertEquals(
                gauge.registers.fold(Registers.DIGEST_START),
                twin.registers.fold(Registers.DIGEST_START),
                "digests");
        for (Fault fault : Fault.values()) {
            assertEquals(gauge.gauge.faults().count(fault), twin.gauge.faults().count(fault));
        }
    }

    /** A frame that no converter can send. */
    void garbage(int millis) {
        tick(GARBAGE_COUNTS, 12_800, millis);
    }
}
