package org.gaugebench.sim.judge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** A track forgets when exactly something was, never that it was. */
class TrackProperties {
    @Property(tries = 50)
    void aSpikeIsNeverLostAndStaysNearItsPlace(
            @ForAll @IntRange(min = 1, max = 50_000) int length,
            @ForAll @IntRange(max = 49_999) int anywhere) {
        int spike = anywhere % length;
        Track track = new Track();
        for (int i = 0; i < length; i++) {
            track.add(i == spike ? 99 : i % 7);
        }
        int span = 1;
        while (length > span * Track.BUCKETS) {
            span *= 2;
        }
        assertEquals((length + span - 1) / span, track.size());
        assertEquals(99, track.highest(spike / span));
        for (int bucket = 0; bucket < track.size(); bucket++) {
            assertTrue(bucket == spike / span || track.highest(bucket) < 7, "one spike only");
        }
    }

    @Property(tries = 20)
    void whatIsNotKnownHidesNothing(@ForAll @IntRange(min = 1, max = 20_000) int length) {
        Track track = new Track();
        for (int i = 0; i < length; i++) {
            track.add(i % 2 == 0 ? Double.NaN : 5);
        }
        int span = length <= Track.BUCKETS ? 1 : 2;
        for (int bucket = 0; bucket < track.size() - 1; bucket++) {
            boolean known = span == 2 || bucket % 2 == 1;
            assertEquals(known, track.lowest(bucket) == 5, "span " + bucket);
        }
    }
}
