package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.FullTimeState;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.SmartBatteryWord;
import org.gaugebench.core.saved.StrictStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** Hours, alarm and views of a whole gauge: what the estimates are fed with (T and V rules). */
class GaugeEstimatesTest {
    private static final int AMP = GaugeFixture.COUNTS_PER_AMP;
    private static final int THRESHOLD_MILLIVOLTS = 14_200;
    private static final int NOT_APPLICABLE = 65_535;

    private final StrictStore store = new StrictStore(3, 256);
    private final GaugeFixture fixture = new GaugeFixture(settings().build());

    private static GaugeSettings.Builder settings() {
        return GaugeFixture.roundNumbers()
                .set(Setting.COULOMBIC_EFFICIENCY, 1_000_000)
                .set(Setting.PEUKERT_EXPONENT, 1_000_000);
    }

    private static int timeToFullWord(GaugeFixture gauge) {
        return gauge.gauge.readBus(SmartBatteryWord.AVERAGE_TIME_TO_FULL_CODE);
    }

    /** T5: 100 Ah at 10 A are 600 minutes, so an edge of 1 % is 6 of them, rounded down. */
    @Test
    void theHoursHaveTheEndsOfTheBand() {
        fixture.declare(600_000);
        fixture.minutes(1, -10 * AMP);
        Readout readout = fixture.read();
        long low = readout.lowerEdgePartsPerMillion * 600L / 1_000_000;
        long high = readout.upperEdgePartsPerMillion * 600L / 1_000_000;
        assertTrue(low > 200 && low < 359 && high > 359, low + " to " + high);
        assertEquals(low, readout.timeToEmptyLowMinutes);
        assertEquals(high, readout.timeToEmptyHighMinutes);
        assertEquals(low, fixture.register(Register.TIME_TO_EMPTY_LOW_MINUTES));
        assertEquals(high, fixture.register(Register.TIME_TO_EMPTY_HIGH_MINUTES));
    }

    /**
     * T6: at the charger's full voltage 20 A fall to half the taper, 1 A, in 2 h x ln 20 = 359.5
     * minutes, rounded up; a millivolt lower, or with the rule off, only a lower bound is known.
     */
    @Test
    void theTaperIsExpectedAtTheThreshold() {
        fixture.declare(800_000);
        fixture.volts(THRESHOLD_MILLIVOLTS).minutes(1, 20 * AMP);
        assertEquals(FullTimeState.ESTIMATE, fixture.read().timeToFullState);
        assertEquals(360, fixture.read().timeToFullMinutes);
        assertEquals(360, timeToFullWord(fixture));

        GaugeFixture under = new GaugeFixture(settings().build());
        under.declare(800_000);
        under.volts(THRESHOLD_MILLIVOLTS - 1).minutes(1, 20 * AMP);
        assertNotBefore(under);
        GaugeFixture off = new GaugeFixture(settings().set(Setting.ABSORPTION, 0).build());
        off.declare(800_000);
        off.volts(THRESHOLD_MILLIVOLTS).minutes(1, 20 * AMP);
        assertNotBefore(off);
    }

    /** 20 Ah at 20 A, less the minute that has gone: no figure for the bus. */
    private static void assertNotBefore(GaugeFixture gauge) {
        assertEquals(FullTimeState.NOT_BEFORE, gauge.read().timeToFullState);
        assertEquals(59, gauge.read().timeToFullMinutes);
        assertEquals(NOT_APPLICABLE, timeToFullWord(gauge));
    }

    /** T7: 26 % are not low, but they may be 14; register and readout say the same. */
    @Test
    void theAlarmLooksAtTheLowEnd() {
        fixture.declare(400_000);
        assertFalse(fixture.read().lowCharge);
        assertEquals(0, fixture.register(Register.LOW_CHARGE_ALARM));
        fixture.declare(260_000);
        assertTrue(fixture.read().lowCharge);
        assertEquals(1, fixture.register(Register.LOW_CHARGE_ALARM));
    }

    /** A band without a limit has its low end at zero and says nothing: the figure is taken. */
    @Test
    void anUnknownBandIsNoLowCharge() {
        GaugeFixture before = new GaugeFixture(settings().build(), store, 0, OffTime.EXACT);
        before.declare(700_000);
        before.ticks(11, 0, 1_000);
        GaugeFixture after = new GaugeFixture(settings().build(), store, 0, OffTime.UNKNOWN);
        assertTrue(after.read().bandUnknown);
        assertFalse(after.read().lowCharge);
    }

    /** The same where the band loses its limit between two minutes (M5). */
    @Test
    void anAlarmThatStoodOnADoubtedBandGoesAtOnce() {
        GaugeFixture before = new GaugeFixture(settings().build(), store, 0, OffTime.EXACT);
        before.declare(260_000);
        before.ticks(11, 0, 1_000);
        GaugeFixture after = new GaugeFixture(settings().build(), store, 0, OffTime.EXACT);
        after.gauge.powerUp(0, OffTime.EXACT);
        assertTrue(after.read().lowCharge);
        after.volts(12_400).tick(0, 1_000);
        assertEquals(1, after.times(Event.BATTERY_DOUBTFUL));
        assertFalse(after.read().lowCharge);
    }

    @Test
    void whereThereIsNoTimeToEmptyTheDisplayHasNone() {
        fixture.declare(600_000);
        fixture.minutes(2, -10 * AMP);
        assertEquals(358, fixture.read().shownTimeToEmptyMinutes);
        fixture.minutes(10, 10 * AMP);
        assertEquals(EstimateState.CHARGING, fixture.read().timeToEmptyState);
        assertEquals(0, fixture.readout.shownTimeToEmptyMinutes);
    }

    /** Half a minute at 600 A takes 5 %: a display waits for the minute, the bus does not. */
    @Test
    void theBusIsOfTheMomentAndTheDisplayOfTheMinute() {
        fixture.declare(600_000);
        fixture.tick(-600 * AMP, 30_000);
        int percent = fixture.gauge.readBus(SmartBatteryWord.RELATIVE_STATE_OF_CHARGE_CODE);
        assertEquals(fixture.read().lowerEdgePartsPerMillion / 10_000, percent);
        assertEquals(60, fixture.readout.shownPercent);
        // An edit is a command: what is shown follows it, and it ends the minute.
        fixture.gauge.changeSettings(settings().set(Setting.TAPER, 30_000).build());
        assertEquals(55, fixture.read().shownPercent);
    }
}
