package org.gaugebench.core.band;

import static org.gaugebench.core.band.BandRig.WARMTH;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** Whatever is stated, the interval holds the count and no fact widens it. */
class StateBandProperties {
    private static final int WHOLE = 1_000_000;

    private final GaugeSettings settings =
            BandRig.exact().set(Setting.OFFSET_BOUND, 10_000).build();

    @Property
    void aFactNeverWidensAndTheEdgesHoldTheCount(
            @ForAll @IntRange(min = 0, max = 999_999) int residual,
            @ForAll @IntRange(min = 0, max = WHOLE) int shown,
            @ForAll @IntRange(min = 0, max = WHOLE) int lowest,
            @ForAll @IntRange(min = 0, max = WHOLE) int highest,
            @ForAll @IntRange(min = 0, max = 1_000_000_000) int millis) {
        StateBand clipped = new StateBand(settings, 0);
        StateBand plain = new StateBand(settings, 0);
        long charge = 360_000_000L * shown;
        clipped.anchor(residual);
        plain.anchor(residual);
        clipped.clip(shown, lowest, highest);
        clipped.add(millis, 0, 0, WARMTH);
        plain.add(millis, 0, 0, WARMTH);
        clipped.update(shown, charge);
        plain.update(shown, charge);
        assertTrue(clipped.lowerEdgePartsPerMillion() >= plain.lowerEdgePartsPerMillion());
        assertTrue(clipped.upperEdgePartsPerMillion() <= plain.upperEdgePartsPerMillion());
        assertTrue(clipped.lowerEdgePartsPerMillion() <= shown);
        assertTrue(clipped.upperEdgePartsPerMillion() >= shown);
    }
}
