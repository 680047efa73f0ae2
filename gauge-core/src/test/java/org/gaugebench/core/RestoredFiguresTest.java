package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.SmartBatteryWord;
import org.gaugebench.core.port.Trust;
import org.gaugebench.core.saved.SavedField;
import org.gaugebench.core.saved.SavedState;
import org.gaugebench.core.saved.SavedStateCodec;
import org.gaugebench.core.saved.SettingsMark;
import org.gaugebench.core.saved.StrictStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a record holds of the figures, and whose battery it is taken for (M rules). */
class RestoredFiguresTest {
    private static final int AMP = GaugeFixture.COUNTS_PER_AMP;
    private static final long AMP_HOUR = GaugeFixture.NANOCOULOMBS_PER_AMP_HOUR;
    private static final int WARMTH_Q8 = 256;

    private final StrictStore store = new StrictStore(3, 256);
    private final GaugeSettings settings =
            GaugeFixture.roundNumbers().set(Setting.QUIET_TIME, 0).build();

    private GaugeFixture start() {
        return new GaugeFixture(settings, store, 0, OffTime.EXACT);
    }

    private static void assertBand(GaugeFixture gauge, long millis, long in, long out) {
        assertEquals(millis, gauge.register(Register.BAND_MILLIS));
        assertEquals(millis * WARMTH_Q8, gauge.register(Register.BAND_WARM_MILLIS_Q8));
        assertEquals(in - out, gauge.register(Register.BAND_NET_NANOCOULOMBS));
        assertEquals(in + out, gauge.register(Register.BAND_GROSS_NANOCOULOMBS));
    }

    /**
     * A minute of 10 A out and half a minute of 600 A, which moves the save step of 0.5 % and is
     * saved in mid-minute: the record holds all of it (B1).
     */
    @Test
    void theBandOfARecordHoldsTheMinuteUnderWay() {
        GaugeFixture before = start();
        before.declare(600_000);
        before.minutes(1, -10 * AMP).tick(-600 * AMP, 30_000);
        long out = AMP_HOUR / 6 + 5 * AMP_HOUR;
        GaugeFixture after = start();
        assertBand(after, 90_000, 0, out);
        assertEquals(0, after.register(Register.BAND_IN_NANOCOULOMBS));
        // Counted on from there, and nothing of the old life counted again.
        after.minutes(2, 30 * AMP);
        assertBand(after, 210_000, AMP_HOUR, out);
        assertEquals(AMP_HOUR, after.register(Register.BAND_IN_NANOCOULOMBS));
    }

    /** The same with charge: a minute's net charge is what the efficiency is unsure of. */
    @Test
    void theBandOfARecordHoldsTheChargeUnderWay() {
        GaugeFixture before = start();
        before.declare(600_000);
        before.minutes(1, -10 * AMP).tick(-60 * AMP, 10_000).tick(600 * AMP, 30_000);
        long out = AMP_HOUR / 6 + AMP_HOUR / 6;
        GaugeFixture after = start();
        assertBand(after, 100_000, 5 * AMP_HOUR, out);
        assertEquals(5 * AMP_HOUR - AMP_HOUR / 6, after.register(Register.BAND_IN_NANOCOULOMBS));
    }

    /** An edit builds the stages anew; the sums before it were in the band already (S1). */
    @Test
    void theBandCountsOnAfterAnEdit() {
        GaugeFixture gauge = start();
        gauge.declare(600_000);
        gauge.minutes(2, -30 * AMP).minutes(3, 20 * AMP);
        assertBand(gauge, 300_000, AMP_HOUR, AMP_HOUR);
        gauge.gauge.changeSettings(settings.toBuilder().set(Setting.TAPER, 30_000).build());
        gauge.minutes(2, -30 * AMP).minutes(3, 20 * AMP);
        assertBand(gauge, 600_000, 2 * AMP_HOUR, 2 * AMP_HOUR);
    }

    /** M2 by what moved either way: a ripple of 2 Ah in all is four steps, its net is none. */
    @Test
    void aRippleIsSavedAfterFourSteps() {
        GaugeFixture gauge = start();
        gauge.declare(600_000);
        gauge.ticks(11, 0, 1_000);
        assertEquals(1, gauge.register(Register.SAVES));
        // a second at 300 A is a twelfth of an ampere-hour
        for (int i = 0; i < 11; i++) {
            gauge.tick(300 * AMP, 1_000).tick(-300 * AMP, 1_000);
        }
        assertEquals(1, gauge.register(Register.SAVES));
        gauge.tick(300 * AMP, 1_000).tick(-300 * AMP, 1_000);
        assertEquals(2, gauge.register(Register.SAVES));
    }

    /** G3: what the efficiency's floor had cut off is carried over the power cut. */
    @Test
    void theRemainderOfTheEfficiencyIsKept() {
        GaugeFixture one = start();
        one.declare(600_000);
        one.minutes(1, 37 * AMP + 1);
        long remainder = one.register(Register.EFFICIENCY_REMAINDER_Q16);
        // 92 % are 60,293 of 65,536: the minute's net times that, what is under a nanocoulomb
        assertEquals((37_000_125L * 60_000 * 60_293) % 65_536, remainder);
        assertNotEquals(0, remainder);
        GaugeFixture other = start();
        assertEquals(remainder, other.register(Register.EFFICIENCY_REMAINDER_Q16));
    }

    /** G4: 99.5 % declared are no proof, before the cut or after it. */
    @Test
    void whatWasNotProvenIsNotProvenByAPowerCut() {
        GaugeFixture before = start();
        before.declare(995_000);
        before.ticks(11, 0, 1_000);
        GaugeFixture after = start();
        after.minutes(60, AMP);
        assertEquals(995_000, after.read().stateOfChargePartsPerMillion);
        int status = after.gauge.readBus(SmartBatteryWord.BATTERY_STATUS_CODE);
        assertEquals(0, status & SmartBatteryWord.FULLY_CHARGED_MASK);
    }

    /** A gauge that knows nothing has nothing to lose but the settings of its record (S5). */
    @Test
    void anEditIsSavedAtOnceWhereNothingIsKnown() {
        GaugeFixture gauge = start();
        gauge.gauge.changeSettings(settings.toBuilder().set(Setting.TAPER, 30_000).build());
        gauge.tick(0, 1_000);
        assertEquals(1, gauge.register(Register.SAVES));
    }

    /** M7: a trust that nobody has named is no record of ours. */
    @ParameterizedTest
    @CsvSource({"-1, UNKNOWN", "0, UNKNOWN", "1, DECLARED", "2, PROVEN", "3, UNKNOWN"})
    void aTrustThatNobodyHasNamedIsNone(int code, Trust trust) {
        SavedState state = new SavedState();
        state.trustCode = code;
        state.capacityNanocoulombs = 100 * AMP_HOUR;
        byte[] record = new SavedStateCodec().encode(state, 1, mark());
        System.arraycopy(record, 0, store.cells[0], 0, record.length);
        GaugeFixture gauge = start();
        assertEquals(code >= 0 && code <= 2 ? 1 : 0, gauge.times(Event.RESTORED));
        assertEquals(trust, gauge.read().trust);
    }

    /**
     * M7: the largest zero adjustment of a record and the largest offset setting make 2^31 - 1
     * 1/256 counts together. A reading of 0 is then as far below zero as the converter reaches; a
     * sum that wraps would show it above.
     */
    @ParameterizedTest
    @CsvSource({"1, 65536", "-1, -65536"})
    void theLargestZeroAdjustmentFitsBesideTheLargestOffset(int sign, int offset) {
        GaugeSettings offsetSettings =
                settings.toBuilder().set(Setting.SHUNT_OFFSET, offset).build();
        SavedState state = new SavedState();
        state.capacityNanocoulombs = 100 * AMP_HOUR;
        state.zeroAdjustmentCountsQ8 = sign * (int) SavedField.ZERO_ADJUSTMENT_COUNTS_Q8.highest();
        SettingsMark mark = new SettingsMark(offsetSettings.fingerprint(), 2, 12_000);
        byte[] record = new SavedStateCodec().encode(state, 1, mark);
        System.arraycopy(record, 0, store.cells[0], 0, record.length);
        GaugeFixture gauge = new GaugeFixture(offsetSettings, store, 0, OffTime.EXACT);
        assertEquals(1, gauge.times(Event.RESTORED));
        // 2^31 - 1 of 1/256 counts at 125 uA a count
        assertEquals(-sign * 1_048_576_000.0, gauge.read().currentMicroamps, 1);
    }

    /** M7: the count of full anchors stops at its end instead of turning below zero. */
    @Test
    void theCountOfFullAnchorsStopsAtItsEnd() {
        GaugeSettings fast = GaugeLife.settings().set(Setting.QUIET_TIME, 0).build();
        SavedState state = new SavedState();
        state.capacityNanocoulombs = 10 * AMP_HOUR;
        state.chargeNanocoulombs = 9 * AMP_HOUR;
        state.bandResidualPartsPerMillion = 100_000;
        state.fullCount = Integer.MAX_VALUE;
        state.ruleArmed = true;
        SettingsMark mark = new SettingsMark(fast.fingerprint(), 2, 12_000);
        byte[] record = new SavedStateCodec().encode(state, 1, mark);
        System.arraycopy(record, 0, store.cells[0], 0, record.length);
        GaugeFixture gauge = new GaugeFixture(fast, store, 0, OffTime.EXACT);
        gauge.volts(14_400).minutes(5, 4 * AMP).minutes(10, AMP);
        assertEquals(1, gauge.times(Event.SET_TO_FULL));
        assertEquals(Integer.MAX_VALUE, gauge.register(Register.FULL_COUNT));
    }

    private SettingsMark mark() {
        return new SettingsMark(
                settings.fingerprint(),
                (int) settings.get(Setting.CHEMISTRY),
                (int) settings.get(Setting.NOMINAL_VOLTAGE));
    }

    /**
     * M5: rested are currents of at most a hundredth of the capacity an hour, 1 A, and voltages of
     * at most the highest rested one and a fortieth, 13.1 V. Volts and 125 uA counts saved, then
     * seen.
     */
    @ParameterizedTest
    @CsvSource({
        "12700, 0, 12399, 0, true",
        "12700, 0, 12401, 0, false",
        "12399, 0, 12700, 0, true",
        "12700, 8000, 12300, -8000, true",
        "12700, -8000, 12300, 8000, true",
        "12700, 8001, 12300, 0, false",
        "12700, -8001, 12300, 0, false",
        "12700, 0, 12300, 8001, false",
        "12700, 0, 12300, -8001, false",
        "13100, 0, 12700, 0, true",
        "13101, 0, 12700, 0, false",
        "12700, 0, 13100, 0, true",
        "12700, 0, 13101, 0, false",
        "1, 0, 12700, 0, true",
        "0, 0, 12700, 0, false",
        "12700, 0, 1, 0, true",
        "12700, 0, 0, 0, false",
    })
    void aRestedVoltageFarFromTheSavedOneIsDoubted(
            int savedMillivolts, int savedCounts, int millivolts, int counts, boolean doubted) {
        SavedState state = new SavedState();
        state.trustCode = Trust.DECLARED.ordinal();
        state.capacityNanocoulombs = 100 * AMP_HOUR;
        state.chargeNanocoulombs = 50 * AMP_HOUR;
        state.voltageMicrovolts = savedMillivolts * 1_000;
        state.currentMicroamps = savedCounts * GaugeFixture.MICROAMPS_PER_COUNT;
        byte[] record = new SavedStateCodec().encode(state, 1, mark());
        System.arraycopy(record, 0, store.cells[0], 0, record.length);
        GaugeFixture gauge = start();
        gauge.gauge.powerUp(0, OffTime.EXACT);
        gauge.heard.clear();
        assertFalse(gauge.read().bandUnknown);
        gauge.volts(millivolts).tick(counts, 1_000);
        assertEquals(doubted ? 1 : 0, gauge.times(Event.BATTERY_DOUBTFUL));
        assertEquals(doubted, gauge.read().bandUnknown);
    }
}
