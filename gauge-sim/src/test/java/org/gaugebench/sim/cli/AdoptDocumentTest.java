package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands of the two pages on {@code adopt} do what the pages say. */
class AdoptDocumentTest {
    @TempDir private Path folder;

    /** The words of the first command in a page that adopts a log, from the log's name on. */
    private static List<String> command(String page) {
        Matcher fence =
                Pattern.compile(
                                "(?s)(?:java -jar gauge-sim.jar|gauge-sim) (adopt \\S+\\.csv .*?)\n"
                                        + "```")
                        .matcher(page);
        assertTrue(fence.find());
        Matcher word =
                Pattern.compile("\"([^\"]*)\"|(\\S+)").matcher(fence.group(1).replace("\\\n", " "));
        List<String> words = new ArrayList<>();
        while (word.find()) {
            words.add(word.group(1) == null ? word.group(2) : word.group(1));
        }
        return words;
    }

    private FakeTerminal run(List<String> words) throws IOException {
        Path log = Files.writeString(folder.resolve("hut.csv"), HutLog.csv(1));
        words.set(1, log.toString());
        words.set(
                words.indexOf("gauge-tests/scenarios"),
                folder.resolve("gauge-tests/scenarios").toString());
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(
                0, terminal.run(words.toArray(new String[0])), terminal.out() + terminal.err());
        return terminal;
    }

    @Test
    void theOutputInTheUserGuideIsTheRealOne() throws IOException {
        String page = Files.readString(Path.of("docs", "user-guide.md"));
        String printed = run(command(page)).out().replace(folder + "/", "");
        if (Boolean.getBoolean("golden.update")) {
            page =
                    page.replaceFirst(
                            "(?s)gauge-tests/scenarios/hut.yaml and its table.*?\n```",
                            Matcher.quoteReplacement(printed + "```"));
            Files.writeString(Path.of("docs", "user-guide.md"), page);
        }
        assertTrue(page.contains("```\n" + printed + "```\n"), printed);
    }

    @Test
    void theComplaintOnThePageBecomesAGreenScenario() throws IOException {
        String page = Files.readString(Path.of("docs", "testing-your-gauge.md"));
        run(command(page));
        Path scenario =
                folder.resolve("gauge-tests/scenarios").resolve("full-after-a-power-cut.yaml");
        String text = Files.readString(scenario);
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(0, terminal.run("run", scenario.toString()), terminal.out());
        // The claim that the page advises: it holds here, and says what the unit did not do.
        Matcher claim =
                Pattern.compile("`(\\{at: [^`]*, reading: state-of-charge, at-most: [^`]*})`")
                        .matcher(page);
        assertTrue(claim.find());
        Files.writeString(scenario, text + "  - " + claim.group(1) + "\n");
        FakeTerminal again = new FakeTerminal();
        assertEquals(0, again.run("run", scenario.toString()), again.out());
        Files.writeString(
                scenario, text + "  - " + claim.group(1).replaceFirst("\\d+ %", "40 %") + "\n");
        assertEquals(1, new FakeTerminal().run("run", scenario.toString()), "a claim can fail");
    }
}
