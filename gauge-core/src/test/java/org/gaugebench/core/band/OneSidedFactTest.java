package org.gaugebench.core.band;

import static org.gaugebench.core.band.BandRig.DAY_MILLIS;
import static org.gaugebench.core.band.BandRig.WARMTH;
import static org.gaugebench.core.band.BandRig.ampHours;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/** One bound on one side, as uncertain as the counting since it was stated. */
class OneSidedFactTest {
    private static final int WHOLE = 1_000_000;
    private static final long CHARGE = ampHours(60);

    private final GaugeSettings settings =
            BandRig.exact()
                    .set(Setting.OFFSET_BOUND, 10_000)
                    .set(Setting.UNMEASURED_BOUND, 20_000)
                    .build();
    private final OneSidedFact fact = new OneSidedFact(settings, 0);

    /** The same sums without a fact: anchored at nothing when the fact is stated. */
    private ErrorBand growth(int days, long gapMillis) {
        ErrorBand band = new ErrorBand(settings, 0);
        band.anchor(0);
        band.add(days * DAY_MILLIS, 0, 0, WARMTH);
        band.addUnmeasured(gapMillis);
        band.update(CHARGE);
        return band;
    }

    @Test
    void withoutAFactEverySideStays() {
        assertEquals(123_456, fact.clipLow(123_456, CHARGE));
        assertEquals(123_456, fact.clipHigh(123_456, CHARGE));
        fact.add(DAY_MILLIS, 0, 0, WARMTH);
        fact.addUnmeasured(1_000);
        assertEquals(WHOLE, fact.clipLow(WHOLE, CHARGE));
    }

    @Test
    void aFactClipsToItsDistanceAndNeverWidens() {
        fact.state(50_000);
        int least = growth(0, 0).lowSidePartsPerMillion();
        assertEquals(50_000 + least, fact.clipLow(300_000, CHARGE));
        assertEquals(50_000 + least, fact.clipHigh(300_000, CHARGE));
        assertEquals(40_000, fact.clipLow(40_000, CHARGE));
        assertEquals(40_000, fact.clipHigh(40_000, CHARGE));
    }

    @Test
    void theBoundIsAsUncertainAsTheCountingSince() {
        fact.add(20 * DAY_MILLIS, 0, 0, WARMTH);
        fact.state(50_000);
        fact.add(10 * DAY_MILLIS, 0, 0, WARMTH);
        fact.addUnmeasured(30_000);
        ErrorBand since = growth(10, 30_000);
        assertEquals(50_000 + since.lowSidePartsPerMillion(), fact.clipLow(WHOLE, CHARGE));
        assertEquals(50_000 + since.highSidePartsPerMillion(), fact.clipHigh(WHOLE, CHARGE));
        assertTrue(since.lowSidePartsPerMillion() > since.highSidePartsPerMillion() + 40_000);
    }

    @Test
    void droppingEndsIt() {
        fact.state(50_000);
        fact.drop();
        assertEquals(300_000, fact.clipLow(300_000, CHARGE));
        fact.state(90_000);
        assertTrue(fact.clipLow(300_000, CHARGE) < 91_000);
    }

    @Test
    void aWeakerFactDoesNotReplaceAStrongerOne() {
        fact.state(50_000);
        int before = fact.clipLow(WHOLE, CHARGE);
        fact.state(200_000);
        assertEquals(before, fact.clipLow(WHOLE, CHARGE));
        fact.state(10_000);
        assertTrue(fact.clipLow(WHOLE, CHARGE) < before);
    }

    /** 30 days at 10 and 20 mA leave 5 % + 8.3 % + 14.4 %: a fresh 20 % is the better one then. */
    @Test
    void aFactThatCountingHasWornDownIsReplaced() {
        fact.state(50_000);
        fact.add(30 * DAY_MILLIS, 0, 0, WARMTH);
        int worn = fact.clipLow(WHOLE, CHARGE);
        assertTrue(worn > 270_000);
        fact.state(200_000);
        int fresh = fact.clipLow(WHOLE, CHARGE);
        assertTrue(fresh >= 200_000 && fresh < 200_010, "fresh " + fresh);
    }
}
