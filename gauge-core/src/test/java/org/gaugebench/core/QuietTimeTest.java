package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/**
 * After power-up and after an adjustment no rule decides for ten minutes (F14, E7, R8); in the
 * eleventh each does what it would have done in the first.
 */
class QuietTimeTest {
    private static final int AMP = GaugeFixture.COUNTS_PER_AMP;
    private static final int QUIET_MINUTES = 10;

    private final GaugeFixture fixture =
            new GaugeFixture(
                    GaugeFixture.roundNumbers()
                            .set(Setting.HOLD, 1)
                            .set(Setting.QUIET_TIME, QUIET_MINUTES)
                            .build());

    private void silentThenSpeaks(Event event, int counts) {
        fixture.minutes(QUIET_MINUTES, counts);
        assertEquals(0, fixture.times(event));
        fixture.minutes(1, counts);
        assertEquals(1, fixture.times(event));
    }

    /** Nothing to be taken away: what is asked for is the quiet time. */
    private void adjust() {
        assertEquals(CommandOutcome.DONE, fixture.gauge.command(Command.ZERO_ADJUSTMENT, 0));
    }

    @Test
    void noFullAfterPowerUp() {
        fixture.volts(14_400);
        silentThenSpeaks(Event.SET_TO_FULL, AMP);
    }

    @Test
    void noEndAfterPowerUp() {
        fixture.declare(100_000);
        fixture.volts(10_600);
        silentThenSpeaks(Event.SET_TO_EMPTY, -2 * AMP);
    }

    @Test
    void noFullAfterAnAdjustment() {
        fixture.minutes(2 * QUIET_MINUTES, 0);
        adjust();
        fixture.volts(14_400);
        silentThenSpeaks(Event.SET_TO_FULL, AMP);
    }

    @Test
    void noEndAfterAnAdjustment() {
        fixture.declare(100_000);
        fixture.minutes(2 * QUIET_MINUTES, 0);
        adjust();
        fixture.volts(10_600);
        silentThenSpeaks(Event.SET_TO_EMPTY, -2 * AMP);
    }

    /** The rest of twelve hours itself goes on. */
    @Test
    void noComparisonAfterAnAdjustment() {
        fixture.declare(700_000);
        fixture.volts(12_400).minutes(12 * 60 - 1, 0);
        adjust();
        silentThenSpeaks(Event.CORRECTED_BY_REST, 0);
    }
}
