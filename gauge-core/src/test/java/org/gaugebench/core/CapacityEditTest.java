package org.gaugebench.core;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.OffTime;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.saved.StrictStore;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.Test;

/**
 * A life that a drawn seed once found: a clipped sample, a larger capacity, a power cut. The gap of
 * the clipped sample is a smaller part of a larger capacity; the doubt is not (rule S2).
 */
class CapacityEditTest {
    private static final int MINUTE = 60_000;

    private static int width(GaugeFixture fixture) {
        Readout readout = fixture.read();
        return readout.upperEdgePartsPerMillion - readout.lowerEdgePartsPerMillion;
    }

    /** Half of what there is was typed in, 60 of 200 Ah were drawn, and then the slip was seen. */
    @Test
    void theBandHoldsWhatTheSlipDidToTheCount() {
        var slip = GaugeLife.settings().set(Setting.CAPACITY, 100_000).build();
        StrictStore store = new StrictStore(4, 256);
        GaugeFixture fixture = new GaugeFixture(slip, store, 0, OffTime.EXACT);
        fixture.gauge.command(Command.DECLARE_STATE_OF_CHARGE, 1_000_000);
        for (int i = 0; i < 360; i++) {
            fixture.volts(12_800).tick(-10 * GaugeFixture.COUNTS_PER_AMP, MINUTE);
        }
        assertEquals(400_000, fixture.read().stateOfChargePartsPerMillion, 10_000);
        var right = slip.toBuilder().set(Setting.CAPACITY, 200_000).build();
        fixture.gauge.changeSettings(right);
        assertEquals(400_000, fixture.read().stateOfChargePartsPerMillion, 10_000);
        assertTrue(fixture.read().upperEdgePartsPerMillion >= 700_000, "70 % is true");
        fixture.gauge.changeSettings(slip);
        assertTrue(width(fixture) >= 600_000, "nor does the way back forget it");
    }

    @Test
    void aLargerCapacityNeverNarrowsTheBandNorDoesAPowerCutAfterIt() {
        StrictStore store = new StrictStore(4, 256);
        GaugeFixture fixture =
                new GaugeFixture(GaugeLife.settings().build(), store, 0, OffTime.EXACT);
        for (int i = 0; i < 3; i++) {
            fixture.volts(14_400).tick(GaugeFixture.COUNTS_PER_AMP, MINUTE);
        }
        fixture.volts(11_000).tick(-8_388_608, 11_718);
        int before = width(fixture);
        var larger = fixture.settings.toBuilder().set(Setting.CAPACITY, 12_345).build();
        fixture.gauge.changeSettings(larger);
        int edited = width(fixture);
        assertTrue(edited >= before, edited + " ppm after the edit, " + before + " before");

        // The edit was not saved yet: the record is of the old capacity.
        GaugeFixture restarted = new GaugeFixture(larger, store, 0, OffTime.EXACT);
        int restored = width(restarted);
        assertTrue(restored >= before, restored + " ppm after the cut, " + before + " saved");
    }
}
