package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Trust;
import org.gaugebench.core.port.TrustReason;
import org.gaugebench.core.saved.StrictStore;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** Each reason to believe, or not to believe, is reached by a life that deserves it. */
class TrustReasonTest {
    private static final int AMP = GaugeFixture.COUNTS_PER_AMP;

    private static GaugeSettings.Builder settings() {
        return GaugeFixture.roundNumbers().set(Setting.QUIET_TIME, 0).set(Setting.HOLD, 2);
    }

    private final GaugeFixture fixture = new GaugeFixture(settings().build());

    private static void assertReason(TrustReason expected, GaugeFixture fixture) {
        assertEquals(expected, fixture.read().trustReason);
    }

    @Test
    void nothingIsKnownBeforeAnAnchor() {
        fixture.minutes(5, -AMP);
        assertReason(TrustReason.NOTHING_KNOWN, fixture);
    }

    @Test
    void aDeclarationIsOnlyADeclaration() {
        fixture.declare(600_000);
        assertReason(TrustReason.DECLARED_ONLY, fixture);
    }

    @Test
    void aProofWithoutAFaultHasNoObjection() {
        fixture.volts(14_400).minutes(2, AMP);
        assertReason(TrustReason.NO_OBJECTION, fixture);
    }

    /** Rules still prove against a suspect sensor; the reason says that somebody must look. */
    @Test
    void voltageStepsWithoutACurrentMakeTheSensorSuspect() {
        fixture.declare(600_000);
        for (int i = 0; i < 6; i++) {
            fixture.volts(i % 2 == 0 ? 12_200 : 12_900).minutes(1, -3 * AMP);
        }
        assertReason(TrustReason.SENSOR_SUSPECT, fixture);
    }

    @Test
    void anUnknownOffTimeLeavesABandWithoutALimit() {
        StrictStore store = new StrictStore(2, 256);
        GaugeFixture before = new GaugeFixture(settings().build(), store, 0, OffTime.EXACT);
        before.declare(600_000);
        before.ticks(11, 0, 1_000);
        GaugeFixture after = new GaugeFixture(settings().build(), store, 0, OffTime.UNKNOWN);
        assertEquals(Trust.DECLARED, after.read().trust);
        assertReason(TrustReason.BAND_UNKNOWN, after);
    }

    /** Declared 30 +- 10 %, and the battery tapers all the same: four times the hold. */
    @Test
    void aFullThatContradictsTheCountMakesTheScaleSuspect() {
        fixture.declare(300_000);
        fixture.volts(14_400).minutes(8, AMP);
        assertEquals(Trust.PROVEN, fixture.read().trust);
        assertReason(TrustReason.SCALE_SUSPECT, fixture);
    }

    @Test
    void aWeekWithoutAFullChargeIsOverdue() {
        GaugeFixture still =
                new GaugeFixture(
                        settings()
                                .set(Setting.OFFSET_BOUND, 1)
                                .set(Setting.UNMEASURED_BOUND, 0)
                                .set(Setting.REST_TIME, 0)
                                .build());
        still.volts(14_400).minutes(2, AMP);
        still.volts(13_000).minutes(7 * 24 * 60 - 1, 0);
        assertReason(TrustReason.NO_OBJECTION, still);
        still.minutes(1, 0);
        assertReason(TrustReason.FULL_OVERDUE, still);
    }
}
