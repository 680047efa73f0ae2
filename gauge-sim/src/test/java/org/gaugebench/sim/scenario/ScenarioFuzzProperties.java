package org.gaugebench.sim.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.ShrinkingMode;

/** A broken file is refused in words, whatever broke it. */
class ScenarioFuzzProperties {
    /** A slow machine that also compiles; an honest file takes milliseconds. */
    private static final long LONGEST_NANOS = 2_000_000_000;

    private static final List<String> PIECES =
            List.of(
                    "{",
                    "}",
                    "[",
                    "]",
                    ":",
                    ": ",
                    "- ",
                    "\n",
                    "  ",
                    "\t",
                    "\"",
                    "'",
                    "#",
                    "&a ",
                    "*a",
                    "!!int ",
                    "|",
                    ">",
                    "%",
                    "@",
                    "---\n",
                    "...",
                    "? ",
                    "<<: ",
                    "~",
                    "null",
                    "99999999999999999999 A",
                    "1e999 V",
                    "-1 s",
                    "0 ms",
                    "9223372036854775807",
                    "106751991167 d",
                    "every: 1 ms",
                    "\u0000",
                    "\ud800",
                    "\u00b5",
                    "\u2028",
                    "");

    @Property(tries = 2_000, shrinking = ShrinkingMode.OFF)
    void aMutatedFileIsReadOrRefusedAndNothingElse(@ForAll long seed) {
        Random random = new Random(seed);
        StringBuilder text = new StringBuilder(Samples.EVERYTHING);
        int mutations = 1 + random.nextInt(4);
        for (int i = 0; i < mutations; i++) {
            int at = random.nextInt(text.length());
            int end = Math.min(text.length(), at + random.nextInt(12));
            switch (random.nextInt(4)) {
                case 0 -> text.delete(at, end);
                case 1 -> text.insert(at, PIECES.get(random.nextInt(PIECES.size())));
                case 2 -> text.replace(at, end, PIECES.get(random.nextInt(PIECES.size())));
                default -> text.insert(random.nextInt(text.length()), text.substring(at, end));
            }
        }
        long start = System.nanoTime();
        String mutated = text.toString();
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
