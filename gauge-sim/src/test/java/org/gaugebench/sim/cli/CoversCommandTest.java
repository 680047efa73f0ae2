package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.gaugebench.sim.report.Samples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Requirement to scenarios and back. */
class CoversCommandTest {
    private static final String HOLDS = "at: 1 h, reading: voltage, at-least: 1 V";
    private static final String FAILS = "at: 1 h, reading: voltage, at-least: 90 V";

    @TempDir Path folder;
    private final FakeTerminal terminal = new FakeTerminal();
    private Path tests;
    private Path ours;

    @BeforeEach
    void writeScenarios() throws IOException {
        tests = Files.createDirectories(folder.resolve("tests"));
        write("good.yaml", HOLDS, "[REQ-1, F4]");
        write("bad.yaml", FAILS, "[REQ-2, REQ-1x]");
        Files.writeString(tests.resolve("free.yaml"), Samples.expecting(HOLDS));
        ours =
                Files.writeString(
                        folder.resolve("ours.csv"),
                        "number,text\nREQ-1,\"It counts, always.\"\nREQ-2,<b>\nREQ-3,Never\n");
    }

    private void write(String name, String claim, String covers) throws IOException {
        Files.writeString(
                tests.resolve(name), Samples.expecting(claim) + "covers: " + covers + "\n");
    }

    @Test
    void requirementsStandWithTheirScenariosAndBack() {
        assertEquals(
                0, terminal.run("covers", "--requirements", ours.toString(), tests.toString()));
        String out = terminal.out();
        String flat = out.replaceAll("\\s+", " ");
        assertTrue(flat.contains("REQ-1 passed: " + tests + "/good.yaml"), out);
        assertTrue(flat.contains("REQ-2 failed: " + tests + "/bad.yaml"), out);
        assertTrue(flat.contains("REQ-3 no scenario"), out);
        assertTrue(flat.contains("passed: " + tests + "/good.yaml REQ-1, F4"), out);
        assertTrue(flat.contains("passed: " + tests + "/free.yaml nothing"), out);
        assertTrue(
                flat.contains("Numbers that this list does not hold: REQ-1x"),
                "F4 is a rule " + out);
        assertTrue(
                out.endsWith("3 requirements: 1 shown, 1 not held, 1 without a scenario\n"), out);
    }

    @Test
    void requireAllIsOnlyContentWhenEachIsShown() throws IOException {
        String[] args = {
            "covers", "--require-all", "--requirements", ours.toString(), tests.toString()
        };
        assertEquals(1, terminal.run(args));
        Files.writeString(ours, "REQ-1\n");
        assertEquals(0, new FakeTerminal().run(args));
        Files.writeString(ours, "REQ-2\n");
        assertEquals(1, new FakeTerminal().run(args), "named, but it does not pass");
        write("also.yaml", HOLDS, "[REQ-2]");
        assertEquals(1, new FakeTerminal().run(args), "one of two does not pass");
    }

    @Test
    void withoutAFileTheRulesOfTheCoreAreAskedFor() {
        assertEquals(0, terminal.run("covers", tests.toString()));
        String flat = terminal.out().replaceAll("\\s+", " ");
        assertTrue(flat.contains(" F4 passed: " + tests + "/good.yaml"), terminal.out());
        assertTrue(flat.contains(" F5 no scenario"), terminal.out());
    }

    @Test
    void theTableAndThePageAreWholeAndEscaped() throws IOException {
        Path csv = folder.resolve("c.csv");
        Path html = folder.resolve("c.html");
        assertEquals(
                0,
                terminal.run(
                        "covers",
                        "--requirements",
                        ours.toString(),
                        "--csv",
                        csv.toString(),
                        "--html",
                        html.toString(),
                        tests.toString()));
        List<String> rows = Files.readAllLines(csv);
        assertEquals("requirement,state,scenario,verdict,text", rows.get(0));
        assertEquals(
                "REQ-1,shown," + tests + "/good.yaml,passed,\"It counts, always.\"", rows.get(1));
        assertEquals("REQ-2,not held," + tests + "/bad.yaml,failed,<b>", rows.get(2));
        assertEquals("REQ-3,no scenario,,,Never", rows.get(3));
        assertEquals("REQ-1x,not held," + tests + "/bad.yaml,failed,", rows.get(4));
        String page = Files.readString(html);
        assertTrue(page.contains("<td>&lt;b&gt;</td>"), page);
        assertFalse(page.contains("<b>"), page);
        assertTrue(page.endsWith("</html>\n"), page);
    }

    @Test
    void shouldRefuseRequirementsThatAreNoneWithLineAndExample() throws IOException {
        Files.writeString(ours, "number,text\nREQ-1,x\n,y\nREQ-1,z\n");
        String[] args = {"covers", "--requirements", ours.toString(), tests.toString()};
        assertEquals(2, terminal.run(args));
        assertTrue(terminal.err().contains("ours.csv:3:1: expected a number"), terminal.err());
        assertTrue(terminal.err().contains("ours.csv:4:1: 'REQ-1' stands twice"), terminal.err());
        assertEquals("", terminal.out());
        Files.delete(ours);
        FakeTerminal missing = new FakeTerminal();
        assertEquals(2, missing.run(args));
        assertTrue(missing.err().contains("it does not exist"), missing.err());
        Files.writeString(ours, "number,text\n");
        FakeTerminal empty = new FakeTerminal();
        assertEquals(2, empty.run(args));
        assertTrue(empty.err().contains("no requirement in this file"), empty.err());
    }

    @Test
    void tagsChooseAsTheyDoForARun() throws IOException {
        Files.writeString(
                tests.resolve("tagged.yaml"),
                Samples.expecting(HOLDS) + "covers: [REQ-2]\ntags: [as-it-should]\n");
        String[] skipping = {
            "covers", "--requirements", ours.toString(), "--skip", "as-it-should", tests.toString()
        };
        assertEquals(0, terminal.run(skipping), terminal.err());
        assertFalse(terminal.out().contains("tagged.yaml"), terminal.out());
        FakeTerminal only = new FakeTerminal();
        skipping[3] = "--only";
        assertEquals(0, only.run(skipping), only.err());
        assertTrue(only.out().contains("tagged.yaml"), only.out());
        assertFalse(only.out().contains("good.yaml"), only.out());
        FakeTerminal misspelt = new FakeTerminal();
        skipping[4] = "as-it-shuold";
        assertEquals(2, misspelt.run(skipping));
        assertTrue(misspelt.err().contains("did you mean 'as-it-should'?"), misspelt.err());
    }

    /** As table programs of many countries write it, byte-order mark included. */
    @Test
    void semicolonsPartTheColumnsOfRequirementsToo() throws IOException {
        Files.writeString(ours, "\uFEFFnumber;text\nREQ-1;\"It counts, always; yes\"\nREQ-2;b\n");
        assertEquals(
                0, terminal.run("covers", "--requirements", ours.toString(), tests.toString()));
        assertTrue(terminal.out().contains("2 requirements: 1 shown, 1 not held"), terminal.out());
        FakeTerminal commas = new FakeTerminal();
        Files.writeString(ours, "REQ-1,It counts; always; and more; yes\n");
        assertEquals(0, commas.run("covers", "--requirements", ours.toString(), tests.toString()));
        assertTrue(commas.out().contains("1 requirement: 1 shown"), commas.out());
        FakeTerminal bytes = new FakeTerminal();
        Files.write(ours, new byte[] {(byte) 0xff, 0x41});
        assertEquals(2, bytes.run("covers", "--requirements", ours.toString(), tests.toString()));
        assertTrue(bytes.err().contains("it is not UTF-8"), bytes.err());
    }
}
