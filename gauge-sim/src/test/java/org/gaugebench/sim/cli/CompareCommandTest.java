package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.gaugebench.sim.report.Samples;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Where two gauges on one truth, or two traces, first differ. */
class CompareCommandTest {
    @TempDir Path folder;
    private final FakeTerminal terminal = new FakeTerminal();

    private String write(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text).toString();
    }

    private static String told() {
        return Samples.hut()
                .replace(
                        "at: 12 h, set: {lamp: off}",
                        "at: 6 h, set: {gauge.declare: 47 %}}\n  - {at: 12 h, set: {lamp: off}");
    }

    @Test
    void aScenarioIsTheSameAsItself() throws IOException {
        String file = write("a.yaml", Samples.hut());
        assertEquals(0, terminal.run("compare", file, file), terminal.err());
        assertTrue(
                terminal.out()
                        .endsWith("The same throughout: 86401 ticks compared, to 1 d 00:00:00\n"),
                terminal.out());
    }

    @Test
    void theFirstTickThatDiffersIsTheOneAfterWhatWasDeclared() throws IOException {
        String a = write("a.yaml", Samples.hut());
        String b = write("b.yaml", told());
        assertEquals(1, terminal.run("compare", a, b), terminal.err());
        String out = terminal.out();
        assertTrue(out.contains("First difference at 0 d 06:00:01\n"), out);
        // 48 % of 50 Ah counted, 47 % declared: a point less, for noise and offset nearly that.
        String flat = out.replaceAll("\\s+", " ");
        assertTrue(flat.matches(".*STATE_OF_CHARGE_PARTS_PER_MILLION -\\d{4,5} ppm.*"), out);
        assertFalse(out.contains("SHUNT_COUNTS"), "one front end and one seed give the same");
        assertTrue(out.lines().allMatch(l -> l.length() <= 80 || l.contains("/")), out);
    }

    @Test
    void twoGaugesOfOneScenarioAreNamedBehindTheFile() throws IOException {
        String beside = "beside:\n  - {name: plain, kind: plain-counter}\n";
        String file =
                write("two.yaml", Samples.hut().replace("noise: 2 uV", "noise: 0 uV") + beside);
        assertEquals(1, terminal.run("compare", file, file + "#plain"), terminal.err());
        String out = terminal.out();
        assertTrue(out.contains("B " + file + "#plain\n"), out);
        assertFalse(out.contains("RULE_THRESHOLD"), "a plain counter has no such register");
        assertFalse(out.contains("SHUNT_COUNTS"), "without noise both see the same counts");
        FakeTerminal wrong = new FakeTerminal();
        assertEquals(2, wrong.run("compare", file, file + "#plian"));
        assertTrue(wrong.err().contains("did you mean 'plain'?"), wrong.err());
    }

    @Test
    void shouldRefuseTwoTruthsAndSayFromWhen() throws IOException {
        String a = write("a.yaml", Samples.hut());
        String b = write("b.yaml", Samples.hut().replace("at: 12 h, set", "at: 11 h, set"));
        assertEquals(2, terminal.run("compare", a, b));
        assertTrue(
                terminal.err().contains("the true charge differs from 0 d 11:00:01 on"),
                terminal.err());
        assertEquals("", terminal.out());
        String longer = write("c.yaml", Samples.hut().replace("duration: 1 d", "duration: 2 d"));
        FakeTerminal second = new FakeTerminal();
        assertEquals(2, second.run("compare", a, longer));
        assertTrue(second.err().contains("one run ends at 1 d 00:00:00"), second.err());
    }

    @Test
    void twoTracesAreComparedCellByCell() throws IOException {
        String a = write("a.yaml", Samples.hut());
        String b = write("b.yaml", told());
        String traceA = folder.resolve("a.csv").toString();
        String traceB = folder.resolve("b.csv").toString();
        assertEquals(0, new FakeTerminal().run("run", "--trace", traceA, a));
        assertEquals(0, new FakeTerminal().run("run", "--trace", traceB, b));
        assertEquals(0, new FakeTerminal().run("compare", traceA, traceA));
        assertEquals(1, terminal.run("compare", traceA, traceB), terminal.err());
        String out = terminal.out();
        assertTrue(out.contains("First difference at 0 d 06:01:00\n"), out);
        assertTrue(out.contains("  gauge_soc_percent"), out);
        assertTrue(out.contains("figures differ; 1441 rows compared, to 1 d 00:00:00"), out);
        FakeTerminal one = new FakeTerminal();
        assertEquals(1, one.run("compare", traceA + "#gauge", traceB + "#gauge"));
        assertTrue(one.out().contains("  soc_percent"), one.out());
    }

    @Test
    void shouldRefuseTracesThatDoNotMatch() throws IOException {
        String a = write("a.csv", "time_s,x\n0.000,1\n60.000,2\n");
        String[][] others = {
            {"time_s,y\n0.000,1\n", "no column in common"},
            {"t,x\n0,1\n", "b.csv:1:1: expected a trace"},
            {"time_s,x\n0.000,1\n10.000,2\n", "a.csv:3:1: the time is '60.000'"},
            {"time_s,x\n0.000,1\n", "one trace ends at 0 d 00:00:00"},
            {"time_s,x\n0.000\n", "not well-formed"},
            {"", "expected a trace"}
        };
        for (String[] other : others) {
            String b = write("b.csv", other[0]);
            FakeTerminal each = new FakeTerminal();
            assertEquals(2, each.run("compare", a, b), each.out());
            assertTrue(each.err().contains(other[1]), each.err());
        }
        FakeTerminal missing = new FakeTerminal();
        assertEquals(2, missing.run("compare", a, folder.resolve("no.csv").toString()));
        assertTrue(missing.err().contains("there is no file"), missing.err());
        FakeTerminal mixed = new FakeTerminal();
        assertEquals(2, mixed.run("compare", a, write("a.yaml", Samples.hut())));
        assertTrue(mixed.err().contains("cannot be compared"), mixed.err());
    }
}
