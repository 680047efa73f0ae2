package org.gaugebench.sim.random;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

class SeedTreeTest {
    private static final int DRAWS = 20_000;

    @Test
    void aNameGivesTheSameSeedWhateverElseWasAsked() {
        SeedTree first = new SeedTree(42);
        SeedTree second = new SeedTree(42);
        first.seedOf("plant/other/clouds");
        assertEquals(first.seedOf("plant/roof/clouds"), second.seedOf("plant/roof/clouds"));
    }

    @Test
    void anotherRunSeedGivesAnotherStream() {
        String name = "front-end/gauge/shunt-noise";
        assertNotEquals(new SeedTree(1).seedOf(name), new SeedTree(2).seedOf(name));
    }

    @Test
    void tenThousandLikeNamesGiveTenThousandSeeds() {
        SeedTree tree = new SeedTree(7);
        Set<Long> seeds = new HashSet<>();
        for (int i = 0; i < 10_000; i++) {
            seeds.add(tree.seedOf("front-end/lane" + i + "/shunt-noise"));
        }
        assertEquals(10_000, seeds.size());
    }

    /**
     * Neighbouring names must not correlate. The correlation of n independent pairs has standard
     * error 1/sqrt(n) = 0.0071; 5 standard errors leave one false alarm in 1.7 million, and the
     * seed is fixed.
     */
    @Test
    void streamsOfLikeNamesDoNotCorrelate() {
        SeedTree tree = new SeedTree(7);
        SplitMix64 a = new SplitMix64(tree.seedOf("front-end/a/shunt-noise"));
        SplitMix64 b = new SplitMix64(tree.seedOf("front-end/b/shunt-noise"));
        double sum = 0;
        for (int i = 0; i < DRAWS; i++) {
            sum += (a.nextDouble() - 0.5) * (b.nextDouble() - 0.5) * 12;
        }
        double correlation = sum / DRAWS;
        assertTrue(Math.abs(correlation) < 5 / Math.sqrt(DRAWS), "correlation " + correlation);
    }
}
