package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.gaugebench.sim.report.Samples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Many scenarios in one command. */
class RunListTest {
    private static final String HOLDS = "at: 1 d, reading: state-of-charge, within: 1 %, of: truth";
    private static final String FAILS = "at: 1 d, reading: state-of-charge, at-least: 90 %";

    @TempDir Path folder;
    private final FakeTerminal terminal = new FakeTerminal();

    @BeforeEach
    void writeScenarios() throws IOException {
        for (int i = 1; i <= 6; i++) {
            String text =
                    i == 2
                            ? Samples.expecting(FAILS, HOLDS)
                            : i == 4
                                    ? Samples.expecting(FAILS, FAILS)
                                    : i == 5 ? Samples.hut() : Samples.expecting(HOLDS);
            Files.writeString(folder.resolve("s" + i + ".yaml"), text);
        }
    }

    private List<String> table() {
        List<String> lines = terminal.out().lines().toList();
        int head = 0;
        while (!lines.get(head).startsWith("worst first")) {
            head++;
        }
        return lines.subList(head, lines.size());
    }

    @Test
    void theTableHasTheWorstFirstAndEndsWithTheCounts() {
        assertEquals(1, terminal.run("run", folder.toString()));
        List<String> table = table();
        assertTrue(table.get(0).endsWith("scenario in " + folder + "/"), table.get(0));
        List<String> order =
                table.subList(1, 7).stream().map(l -> l.substring(l.lastIndexOf(' ') + 1)).toList();
        assertEquals(
                List.of("s4.yaml", "s2.yaml", "s5.yaml", "s1.yaml", "s3.yaml", "s6.yaml"), order);
        assertTrue(table.get(1).startsWith("FAILED        0/2"), table.get(1));
        assertTrue(table.get(3).startsWith("NO VERDICT      - "), table.get(3));
        assertEquals("6 scenarios: 3 passed, 2 failed, 1 without a verdict", table.get(7));
        assertTrue(terminal.out().lines().allMatch(l -> l.length() <= 80 || l.contains("/")));
    }

    @Test
    void outputIsTheSameByteForByteForAnyNumberOfThreads() {
        for (String form : new String[] {"--full", "--json", "--rule-coverage"}) {
            TreeSet<String> outputs = new TreeSet<>();
            for (String threads : new String[] {"1", "2", "5"}) {
                FakeTerminal each = new FakeTerminal();
                assertEquals(1, each.run("run", form, "--threads", threads, folder.toString()));
                outputs.add(each.out());
            }
            assertEquals(1, outputs.size(), form);
        }
    }

    @Test
    void jsonIsOneObjectALineEachWithItsFormatVersion() throws IOException {
        assertEquals(1, terminal.run("run", "--json", "--fail-fast", folder.toString()));
        List<String> lines = terminal.out().lines().toList();
        assertEquals(6, lines.size());
        List<String> verdicts = new ArrayList<>();
        for (String line : lines) {
            assertTrue(line.startsWith("{\"formatVersion\":1,"), line);
            verdicts.add(field(line, "verdict"));
        }
        assertEquals(
                List.of("passed", "failed", "skipped", "skipped", "skipped", "skipped"), verdicts);
        assertTrue(field(lines.get(5), "why").contains("--fail-fast"), lines.get(5));
    }

    private static String field(String line, String name) throws IOException {
        try (JsonParser parser = new JsonFactory().createParser(line)) {
            String found = "";
            while (parser.nextToken() != null) {
                if (parser.currentToken() == JsonToken.FIELD_NAME
                        && name.equals(parser.currentName())
                        && parser.getParsingContext().getParent().inRoot()) {
                    found = parser.nextTextValue();
                }
            }
            return found;
        }
    }

    @Test
    void theShardsTogetherAreTheListAndNothingTwice() {
        List<String> names = new ArrayList<>();
        for (String part : new String[] {"1/4", "2/4", "3/4", "4/4"}) {
            FakeTerminal each = new FakeTerminal();
            each.run("run", "--json", "--shard", part, folder.toString());
            each.out().lines().forEach(l -> names.add(l.replaceFirst(".*?(s\\d)\\.yaml.*", "$1")));
        }
        assertEquals(List.of("s1", "s5", "s2", "s6", "s3", "s4"), names);
    }

    @Test
    void shouldRefuseWrongPartsThreadsAndLimits() {
        for (String[] wrong :
                new String[][] {
                    {"--shard", "0/4", "such as 2/4"},
                    {"--shard", "5/4", "such as 2/4"},
                    {"--shard", "half", "such as 2/4"},
                    {"--threads", "0", "expected 1 to 1024"},
                    {"--threads", "many", "expected 1 to 1024"},
                    {"--timeout", "soon", "'10 s'"},
                    {"--at", "noon", "'2 d 03:12:40'"}
                }) {
            FakeTerminal each = new FakeTerminal();
            assertEquals(2, each.run("run", wrong[0], wrong[1], folder.toString()));
            assertTrue(each.err().contains(wrong[2]), each.err());
            assertEquals("", each.out());
        }
    }

    @Test
    void tagsChooseAndWhatIsLeftOutSaysWhy() throws IOException {
        Path winter = folder.resolve("s1.yaml");
        Files.writeString(winter, Files.readString(winter) + "tags: [winter, long]\n");
        Path storm = folder.resolve("s3.yaml");
        Files.writeString(storm, Files.readString(storm) + "tags: [storm, long]\n");
        String[] args = {"run", "--json", "--only", "storm", "--only", "long", "--skip", "winter"};
        String[] withFolder = java.util.Arrays.copyOf(args, args.length + 1);
        withFolder[args.length] = folder.toString();
        assertEquals(0, terminal.run(withFolder), terminal.err());
        List<String> lines = terminal.out().lines().toList();
        assertEquals("passed", field(lines.get(2), "verdict"));
        assertEquals("it has the tag 'winter', --skip", field(lines.get(0), "why"));
        assertEquals("it has not the tag 'storm' or 'long', --only", field(lines.get(1), "why"));
        FakeTerminal wrong = new FakeTerminal();
        assertEquals(2, wrong.run("run", "--only", "wintr", folder.toString()));
        assertTrue(wrong.err().contains("did you mean 'winter'?"), wrong.err());
        FakeTerminal text = new FakeTerminal();
        assertEquals(0, text.run("run", "--only", "storm", folder.toString()));
        assertTrue(
                text.out()
                        .endsWith(
                                "6 scenarios: 1 passed, 0 failed, 0 without a verdict, 5"
                                        + " skipped\n"),
                text.out());
    }

    @Test
    void aMomentShowsTruthReadingsAndRegistersOfThatTick() {
        String file = folder.resolve("s1.yaml").toString();
        assertEquals(0, terminal.run("run", "--at", "0 d 01:00:30", file), terminal.err());
        String out = terminal.out();
        assertTrue(out.startsWith("At 0 d 01:00:30 of A day at the pier\n"), out);
        assertTrue(out.contains("  full-charge rule    waiting ("), out);
        assertTrue(out.matches("(?s).*UPTIME_MILLIS +3630000 ms.*"), out);
        assertTrue(out.lines().allMatch(l -> l.length() <= 80 || l.contains(file)), out);
        FakeTerminal late = new FakeTerminal();
        assertEquals(2, late.run("run", "--at", "25 h", file));
        assertTrue(late.err().contains("which ends at 1 d 00:00:00"), late.err());
        FakeTerminal many = new FakeTerminal();
        assertEquals(2, many.run("run", "--at", "1 h", folder.toString()));
        assertTrue(many.err().contains("one scenario"), many.err());
    }

    @Test
    void theMomentOfAFailureIsWhatItsCommandShows() {
        String file = folder.resolve("s2.yaml").toString();
        assertEquals(1, terminal.run("run", file));
        String out = terminal.out();
        int at = out.indexOf("--at '") + 6;
        String moment = out.substring(at, out.indexOf('\'', at));
        String shown = out.replaceFirst("(?s).*gauge shows (\\S+) %.*", "$1");
        FakeTerminal again = new FakeTerminal();
        assertEquals(0, again.run("run", "--at", moment, file));
        assertTrue(again.out().contains("state of charge     " + shown + " %, "), again.out());
    }

    @Test
    void verdictsForAServerAppearWholeOrNotAtAll() throws IOException {
        Path xml = Files.createDirectories(folder.resolve("out")).resolve("verdicts.xml");
        assertEquals(1, terminal.run("run", "--junit", xml.toString(), folder.toString()));
        String text = Files.readString(xml);
        assertTrue(
                text.contains("<testsuites name=\"gauge-sim\" tests=\"14\" failures=\"4\""), text);
        try (java.util.stream.Stream<Path> files = Files.list(xml.resolveSibling(""))) {
            assertEquals(1, files.count(), "nothing beside it");
        }
        FakeTerminal nowhere = new FakeTerminal();
        String missing = folder.resolve("missing/verdicts.xml").toString();
        assertEquals(2, nowhere.run("run", "--junit", missing, folder.toString()));
        assertTrue(nowhere.err().contains("--junit: cannot write"), nowhere.err());
        assertEquals("", nowhere.out(), "refused before anything ran");
        FakeTerminal broken = new FakeTerminal();
        Path kept = xml.resolveSibling("kept.xml");
        Files.writeString(kept, "old");
        assertEquals(70, broken.runBroken("run", "--junit", kept.toString(), folder.toString()));
        assertEquals("old", Files.readString(kept));
        try (java.util.stream.Stream<Path> files = Files.list(xml.resolveSibling(""))) {
            assertEquals(2, files.count(), "no part file stays");
        }
    }

    @Test
    void whatNoRunVisitsOfTheRuleIsListed() {
        assertEquals(1, terminal.run("run", "--rule-coverage", folder.toString()));
        String out = terminal.out();
        assertTrue(out.contains("  states       1 of 4; not visited:\n"), out);
        assertTrue(out.contains("  transitions  0 of 9; not visited:\n"), out);
        assertTrue(out.contains("                 not armed -> waiting\n"), out);
        assertTrue(out.contains("                 full proven by taper\n"), out);
        assertFalse(out.contains("                 voltage under the threshold\n"), out);
    }

    /** It ends at the moment, where most claims cannot be known: nothing is judged. */
    @Test
    void aMomentHasNoVerdictWhateverTheWholeRunWouldBe() throws IOException {
        Path wrong = Files.createDirectory(folder.resolve("apart")).resolve("wrong.yaml");
        Files.writeString(
                wrong, Samples.expecting("at: 1 d, reading: state-of-charge, at-least: 90 %"));
        assertEquals(1, new FakeTerminal().run("run", wrong.toString()));
        assertEquals(0, terminal.run("run", "--at", "1 d", wrong.toString()), terminal.err());
        assertFalse(terminal.out().contains("FAILED"), terminal.out());
        FakeTerminal help = new FakeTerminal();
        help.run("run", "--help");
        assertTrue(help.out().replaceAll("\\s+", " ").contains("no verdict: exit 0"), help.out());
    }
}
