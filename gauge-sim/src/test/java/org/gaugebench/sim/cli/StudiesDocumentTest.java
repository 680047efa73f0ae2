package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.gaugebench.sim.scenario.ScenarioException;
import org.gaugebench.sim.scenario.StudyReader;
import org.gaugebench.sim.scenario.Tolerance;
import org.junit.jupiter.api.Test;

/** The page on studies shows the study that is there, and knows every shape. */
class StudiesDocumentTest {
    private static final Path PAGE =
            FakeTerminal.scenarios().resolveSibling("gauge-sim").resolve("docs/studies.md");

    @Test
    void thePageShowsTheShippedStudy() throws IOException {
        String study =
                Files.readString(
                                FakeTerminal.scenarios()
                                        .resolve("tolerance/a-month-of-microvolts.study"))
                        .replaceAll("(?m)^#.*\n", "");
        assertTrue(Files.readString(PAGE).contains("```yaml\n" + study + "```"), study);
    }

    @Test
    void thePageHasEveryShape() throws IOException {
        String page = Files.readString(PAGE);
        for (Tolerance.Kind kind : Tolerance.Kind.values()) {
            assertTrue(page.contains("| `" + kind.key() + "` |"), kind.key());
        }
    }

    /** Running them all takes minutes; that they can be read and make devices is shown here. */
    @Test
    void everyStudyOfTheShelfCanBeRead() throws IOException, ScenarioException {
        List<Path> studies;
        try (Stream<Path> all = Files.walk(FakeTerminal.scenarios())) {
            studies = all.filter(it -> it.toString().endsWith(".study")).sorted().toList();
        }
        assertFalse(studies.isEmpty());
        for (Path study : studies) {
            assertTrue(StudyReader.read(study).claim().isMade(), study + " answers nothing");
            FakeTerminal terminal = new FakeTerminal();
            String variant = StudyReader.read(study).cases().get(0).name();
            String[] words =
                    variant.isEmpty()
                            ? new String[] {"study", "--device", "1", study.toString()}
                            : new String[] {
                                "study", "--device", "1", "--variant", variant, study.toString()
                            };
            assertEquals(0, terminal.run(words), terminal.err());
        }
    }
}
