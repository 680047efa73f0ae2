package org.gaugebench.sim.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;

/**
 * A broken file is refused in words, whatever broke it; one that is right all the same survives.
 */
class ScenarioFuzzProperties {
    /** A slow machine that also compiles; an honest file takes milliseconds. */
    private static final long LONGEST_NANOS = 2_000_000_000;

    @Property(tries = 2_000, shrinking = ShrinkingMode.OFF)
    void aMutatedFileIsReadOrRefusedAndNothingElse(@ForAll long seed) {
        String mutated = Mutation.of(Samples.EVERYTHING, seed);
        long start = System.nanoTime();
        try {
            Scenario scenario = ScenarioReader.read("hut.yaml", mutated);
            Scenario again = ScenarioReader.read("hut.yaml", ScenarioWriter.resolved(scenario));
            assertEquals(Samples.withoutMarks(scenario), Samples.withoutMarks(again), mutated);
        } catch (ScenarioException e) {
            assertFalse(e.problems().isEmpty());
            assertFalse(e.render().isBlank());
        }
        assertTrue(System.nanoTime() - start < LONGEST_NANOS, mutated);
    }
}
