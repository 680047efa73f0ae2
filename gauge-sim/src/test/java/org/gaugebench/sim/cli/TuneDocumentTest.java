package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.PageSection;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The example of {@code tuning.md} prints what stands there, from cases of the shelf. */
class TuneDocumentTest {
    private static final Path PAGE = Path.of("docs", "tuning.md");
    private static final List<String> CASES =
            List.of(
                    "edge-cases/a-charger-whose-meter-reads-high.yaml",
                    "edge-cases/a-right-charge-from-shore.yaml",
                    "edge-cases/gusts-over-the-threshold.yaml",
                    "edge-cases/two-chargers-that-disagree.yaml",
                    "teaching/09-false-full-missed-full.yaml");

    @TempDir private Path folder;

    @Test
    void thePageShowsTheRealOutputPartAndPicture() throws IOException {
        List<String> words = new ArrayList<>(List.of("tune"));
        Path part = folder.resolve("tuned.yaml");
        Path picture = folder.resolve("tuned.svg");
        words.addAll(List.of("--picture", picture.toString(), "--out", part.toString()));
        StringBuilder command = new StringBuilder("gauge-sim tune \\\n");
        words.addAll(List.of("--seeds", "1", "--holdout-seeds", "101"));
        command.append("    --seeds 1 --holdout-seeds 101 \\\n");
        command.append("    --picture tuned.svg --out parts/tuned.yaml");
        for (String file : CASES) {
            words.add(FakeTerminal.scenarios().resolve(file).toString());
            command.append(" \\\n    scenarios/").append(file);
        }
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.OK, terminal.run(words.toArray(new String[0])), terminal.err());
        String told =
                terminal.out()
                        .replaceFirst("(?s)Written to .*?\\.\n", "Written to parts/tuned.yaml.\n");
        PageSection.check(PAGE, "example", "```\n" + command + "\n```\n\n```\n" + told + "```\n");
        String yaml = Files.readString(part).replaceFirst("tune [^\n]*", "tune.");
        PageSection.check(PAGE, "part", "```yaml\n" + yaml + "```\n");
        String drawn = Files.readString(picture).replaceAll("gauge-sim not packaged", "gauge-sim");
        Path shown = Path.of("docs", "examples", "tuned.svg");
        if (Boolean.getBoolean("golden.update")) {
            Files.writeString(shown, drawn);
        }
        assertEquals(Files.readString(shown), drawn, "-Dgolden.update=true rewrites it");
        // Both kinds of wrong hold a setting where it stands: the example shows the trade.
        assertTrue(told.matches("(?s).*false full.? more, in [0-9a-z-]+\\.yaml.*"), told);
        assertTrue(told.matches("(?s).*missed full.? more, in [0-9a-z-]+\\.yaml.*"), told);
        assertTrue(told.startsWith("MET"), told);
    }
}
