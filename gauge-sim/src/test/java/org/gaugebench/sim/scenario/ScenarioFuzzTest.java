package org.gaugebench.sim.scenario;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Every run of a broken file is read or refused in words. The files broken are the reference, the
 * sample of every key and the shelf; {@code .ci/fuzz-scenarios} breaks a million of them.
 */
class ScenarioFuzzTest {
    private static final long FILES = Long.getLong("gaugebench.fuzzFiles", 2_000);

    /** As for the property; a file with 256 combinations may take that long on a slow machine. */
    private static final long LONGEST_NANOS = 10_000_000_000L;

    /** A text and the file that it comes from: the files of its profiles lie beside that. */
    private record Origin(String text, Path file) {}

    private static List<Origin> texts() throws IOException {
        List<Origin> texts = new ArrayList<>();
        Path reference = Path.of("docs", "reference-scenario.yaml");
        texts.add(new Origin(Samples.EVERYTHING, reference));
        texts.add(new Origin(Files.readString(reference), reference));
        try (Stream<Path> shelf = Files.walk(Path.of("..", "scenarios"))) {
            for (Path file :
                    shelf.filter(it -> it.toString().endsWith(".yaml")).sorted().toList()) {
                texts.add(new Origin(Files.readString(file), file));
            }
        }
        return texts;
    }

    @Test
    void aBrokenFileIsReadOrRefusedAndNothingElse() throws IOException {
        List<Origin> texts = texts();
        AtomicLong right = new AtomicLong();
        AtomicLong slowest = new AtomicLong();
        LongStream.range(0, FILES)
                .parallel()
                .forEach(
                        seed -> {
                            Origin origin = texts.get((int) (seed % texts.size()));
                            String broken = Mutation.of(origin.text(), seed);
                            long start = System.nanoTime();
                            right.addAndGet(read(broken, origin.file(), seed));
                            slowest.accumulateAndGet(System.nanoTime() - start, Math::max);
                        });
        System.out.printf(
                "%d broken files: %d read all the same, %d refused in words; the slowest took"
                        + " %d ms%n",
                FILES, right.get(), FILES - right.get(), slowest.get() / 1_000_000);
        assertTrue(slowest.get() < LONGEST_NANOS, slowest + " ns");
        assertTrue(right.get() > 0 && right.get() < FILES, "nothing was broken, or everything");
    }

    /** 1 for a file that is right all the same. */
    private static int read(String broken, Path file, long seed) {
        try {
            assertFalse(Variants.read("broken.yaml", broken, file).isEmpty());
            return 1;
        } catch (ScenarioException e) {
            assertFalse(e.problems().isEmpty());
            for (ScenarioProblem problem : e.problems()) {
                assertFalse(problem.render().isBlank());
                assertTrue(problem.mark().line() >= 1 && problem.mark().column() >= 1);
            }
            return 0;
        } catch (RuntimeException | StackOverflowError e) {
            throw new AssertionError("seed " + seed + " of gaugebench.fuzzFiles:\n" + broken, e);
        }
    }
}
