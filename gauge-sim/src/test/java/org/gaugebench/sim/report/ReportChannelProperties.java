package org.gaugebench.sim.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

/** What a report keeps of a line: no spike is lost, nothing is moved, a gap stays a gap. */
class ReportChannelProperties {
    private static final int RING = 1_024;

    private static int at(ReportChannel channel, long tick) {
        for (int i = 0; i < channel.size(); i++) {
            if (channel.tick(i) == tick) {
                return channel.value(i);
            }
        }
        return ReportWindows.NOT_LOOKED;
    }

    private static ReportChannel channel(List<Integer> values, long bucketTicks) {
        ReportChannel channel = new ReportChannel(bucketTicks);
        for (int i = 0; i < values.size(); i++) {
            channel.add(i + 1, values.get(i));
        }
        channel.close();
        return channel;
    }

    @Property(tries = 300)
    void theSmallestAndTheLargestOfEachBucketStandWhereTheyWere(
            @ForAll @Size(min = 1, max = 600) List<@IntRange(min = -50, max = 50) Integer> values,
            @ForAll @IntRange(min = 1, max = 90) int bucketTicks) {
        ReportChannel channel = channel(values, bucketTicks);
        for (int from = 0; from < values.size(); from += bucketTicks) {
            List<Integer> bucket =
                    values.subList(from, Math.min(values.size(), from + bucketTicks));
            for (int extreme : new int[] {least(bucket), -least(negated(bucket))}) {
                // The first tick at which it was.
                assertEquals(extreme, at(channel, from + bucket.indexOf(extreme) + 1));
            }
        }
        assertEquals(values.get(0), at(channel, 1));
        assertEquals(values.get(values.size() - 1), at(channel, values.size()));
        long last = 0;
        for (int i = 0; i < channel.size(); i++) {
            assertTrue(channel.tick(i) > last, "in order of time");
            last = channel.tick(i);
            assertEquals(values.get((int) last - 1), channel.value(i), "as it was");
        }
    }

    private static int least(List<Integer> values) {
        return values.stream().mapToInt(Integer::intValue).min().orElseThrow();
    }

    private static List<Integer> negated(List<Integer> values) {
        return values.stream().map(it -> -it).toList();
    }

    @Property(tries = 300)
    void rowsGiveWhatSingleValuesGive(
            @ForAll @Size(min = 1, max = 500) List<@IntRange(min = -50, max = 50) Integer> values,
            @ForAll @IntRange(min = 1, max = 90) int bucketTicks,
            @ForAll @IntRange(min = 1, max = 64) int most) {
        ReportChannel rows = new ReportChannel(bucketTicks);
        List<Integer> gappy = new ArrayList<>();
        int[] ring = new int[RING];
        for (int i = 0; i < values.size(); i++) {
            // A value in ten is a gap, and they come in stretches: neighbours fall out together.
            boolean goesOn = i % 3 > 0 && gappy.get(i - 1) == ReportChannel.GAP;
            boolean gap = goesOn || values.get(i) < -40;
            gappy.add(gap ? ReportChannel.GAP : values.get(i));
            ring[(i + 1) & (RING - 1)] = gappy.get(i);
        }
        long tick = 1;
        while (tick <= values.size()) {
            long end =
                    Math.min(
                            Math.min(values.size(), tick + most - 1),
                            ReportChannel.endOfBucket(tick, bucketTicks));
            rows.addRow(tick, ring, (int) (end - tick + 1));
            tick = end + 1;
        }
        rows.close();
        ReportChannel single = channel(gappy, bucketTicks);
        assertEquals(single.size(), rows.size());
        for (int i = 0; i < single.size(); i++) {
            assertEquals(single.tick(i), rows.tick(i));
            assertEquals(single.value(i), rows.value(i));
        }
    }

    @Property(tries = 300)
    void aGapHasItsEdgesWhereItBeginsAndEnds(
            @ForAll @IntRange(min = 1, max = 200) int before,
            @ForAll @IntRange(min = 1, max = 200) int without,
            @ForAll @IntRange(min = 1, max = 200) int after,
            @ForAll @IntRange(min = 1, max = 400) int bucketTicks) {
        List<Integer> values = new ArrayList<>();
        for (int i = 0; i < before + without + after; i++) {
            boolean gap = i >= before && i < before + without;
            values.add(gap ? ReportChannel.GAP : 7);
        }
        ReportChannel channel = channel(values, bucketTicks);
        assertEquals(7, at(channel, before));
        assertEquals(ReportChannel.GAP, at(channel, before + 1));
        assertEquals(7, at(channel, before + without + 1));
        for (int i = 0; i < channel.size(); i++) {
            assertEquals(values.get((int) channel.tick(i) - 1), channel.value(i));
        }
    }
}
