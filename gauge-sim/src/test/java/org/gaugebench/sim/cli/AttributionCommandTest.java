package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.gaugebench.sim.PageSection;
import org.gaugebench.sim.judge.Attribution;
import org.gaugebench.sim.judge.AttributionRun;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.judge.ShelfCase;
import org.gaugebench.sim.report.Page;
import org.gaugebench.sim.report.Samples;
import org.gaugebench.sim.rig.Cause;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The split on the command line: it comes behind the report and changes nothing of it. */
class AttributionCommandTest {
    @TempDir Path folder;
    private String hut = "";

    /** 10 % declared too low of 50 Ah, and a claim that fails at 6 h because of it. */
    @BeforeEach
    void writeScenario() throws IOException {
        String text =
                Samples.expecting("at: 6 h, reading: state-of-charge, within: 1 %, of: truth");
        hut = write("hut.yaml", text + "gauge: {start: 50 %}\n");
    }

    private String write(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text).toString();
    }

    private static String run(int exitCode, String... args) {
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(exitCode, terminal.run(args), terminal.err());
        return terminal.out();
    }

    @Test
    void theTablesStandBehindTheReport() {
        String plain = run(1, "run", hut);
        String split = run(1, "run", "--attribution", hut);
        assertTrue(split.startsWith(plain), split);
        String tables = split.substring(plain.length());
        int failed = tables.indexOf("Where the error of gauge comes from, at 0 d 06:00:00");
        int end = tables.indexOf("Where the error of gauge comes from, at 1 d 00:00:00");
        assertTrue(failed >= 0 && end > failed, tables);
        String start =
                "    not really full at the start: what was declared       -5.0000     -10.00";
        assertTrue(tables.substring(end).contains(start), tables);
        assertTrue(tables.lines().allMatch(line -> line.length() <= Page.WIDTH), tables);
        assertFalse(plain.contains("Where the error"), plain);
    }

    @Test
    void aMomentHasItsTable() {
        String plain = run(0, "run", "--at", "3 h", hut);
        String split = run(0, "run", "--at", "3 h", "--attribution", hut);
        assertTrue(split.startsWith(plain + "\nWhere the error of gauge comes from, at 0 d 03:"));
    }

    @Test
    void theObjectHasTheSameFigures() throws IOException {
        String plain = run(1, "run", "--json", hut).strip();
        String split = run(1, "run", "--json", "--attribution", hut).strip();
        String same = plain.substring(0, plain.length() - 1);
        assertTrue(split.startsWith(same + ",\"attribution\":{"), split);
        JsonNode moments = new ObjectMapper().readTree(split).get("attribution").get("moments");
        assertEquals(2, moments.size());
        for (JsonNode moment : moments) {
            assertTrue(moment.get("known").asBoolean());
            long error = moment.get("errorNanocoulombs").asLong();
            for (String list : new String[] {"plain", "causes"}) {
                long sum = 0;
                for (JsonNode cause : moment.get(list)) {
                    sum += cause.get("errorNanocoulombs").asLong();
                }
                assertEquals(error, sum, list);
            }
        }
    }

    @Test
    void onlyACoreIsSplit() throws IOException {
        String plain = write("plain.yaml", Samples.hut() + "gauge: {kind: plain-counter}\n");
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(2, terminal.run("run", "--attribution", hut, plain));
        assertEquals("", terminal.out());
        assertTrue(
                terminal.err().contains("plain.yaml is of kind plain-counter; expected kind core"),
                terminal.err());
    }

    @Test
    void anotherCoreGaugeCanBeChosen() throws IOException {
        String beside =
                """
                beside:
                  - {name: plain, kind: plain-counter}
                  - {name: second, kind: core, start: 75 %}
                """;
        String two = write("two.yaml", Samples.hut() + beside);
        String second = run(0, "run", "--attribution", "--attribution-gauge", "second", two);
        assertTrue(second.contains("Where the error of second comes from, at 1 d"), second);
        String start = "what was declared       +7.5000     +15.00";
        assertTrue(second.contains(start), second);
        String at =
                run(0, "run", "--at", "3 h", "--attribution", "--attribution-gauge=second", two);
        assertTrue(at.contains("Where the error of second comes from, at 0 d 03:"), at);
        String wrong = refused("--attribution", "--attribution-gauge", "secnd", two);
        assertTrue(wrong.contains("is called 'secnd'; did you mean 'second'?"), wrong);
        wrong = refused("--attribution", "--attribution-gauge", "plain", two);
        assertTrue(wrong.contains("gauge plain of"), wrong);
        assertTrue(wrong.contains("--attribution-gauge takes another one, such as gauge"), wrong);
        wrong = refused("--attribution-gauge", "second", two);
        assertTrue(wrong.contains("nothing is split; add --attribution"), wrong);
    }

    private static String refused(String... args) {
        FakeTerminal terminal = new FakeTerminal();
        String[] all = new String[args.length + 1];
        all[0] = "run";
        System.arraycopy(args, 0, all, 1, args.length);
        assertEquals(2, terminal.run(all));
        assertEquals("", terminal.out());
        return terminal.err();
    }

    /** The second run is part of the first one: the limit of time ends it too. */
    @Test
    void theLimitOfTimeHoldsForTheSecondRun() {
        Scenario scenario = Samples.read(Samples.hut());
        AtomicBoolean second = new AtomicBoolean();
        ShelfRunner.After slow =
                (result, watch) -> {
                    second.set(true);
                    AttributionRun.of(scenario, 1, "gauge", new Slow(watch), 86_400_000);
                };
        List<ShelfCase> cases = new ArrayList<>();
        new ShelfRunner(1, 1_000, false, RunRecorder::run)
                .run(
                        List.of(new ShelfRunner.Job(scenario, 1, "", Observer.NONE, slow)),
                        cases::add);
        assertTrue(second.get(), "the first run ended in time");
        assertEquals(ShelfCase.Ending.TIMED_OUT, cases.get(0).ending());
        assertEquals("it did not end within 1.0 s", cases.get(0).why());
    }

    /** 1,440 simulated minutes of 20 ms each would be half a minute. */
    private record Slow(Observer watch) implements Observer {
        @Override
        public void onMoment(Rig rig) {
            try {
                Thread.sleep(20);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
            watch.onMoment(rig);
        }
    }

    /** One more run serves the tables and the picture; neither changes the other. */
    @Test
    void thePictureShowsTheCausesOverTime() throws IOException {
        String svg = folder.resolve("day.svg").toString();
        String[] drawn = {"run", "--picture", svg, "--picture-shows", "causes,current"};
        String plain = run(1, "run", hut);
        assertEquals(plain, run(1, with(drawn, hut)));
        String text = Files.readString(Path.of(svg));
        assertTrue(text.contains(">where the error comes from, points (gauge)<"), text);
        assertTrue(text.contains(">4 not really full at the start<"), text);
        String both = run(1, with(drawn, "--attribution", hut));
        assertEquals(run(1, "run", "--attribution", hut), both);
        assertEquals(text, Files.readString(Path.of(svg)));
        String exhibit = write("plain.yaml", Samples.hut() + "gauge: {kind: plain-counter}\n");
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(2, terminal.run(with(drawn, exhibit)));
        assertTrue(terminal.err().contains("expected kind core"), terminal.err());
    }

    private static String[] with(String[] args, String... more) {
        return Stream.concat(Stream.of(args), Stream.of(more)).toArray(String[]::new);
    }

    /** Name, words and place of each cause, as the program has them. */
    @Test
    void theGuideHasTheTableOfCauses() throws IOException {
        StringBuilder table = new StringBuilder();
        table.append("| | name in JSON | cause | plain |\n|---|---|---|---|\n");
        for (Cause cause : Cause.values()) {
            int place = Attribution.PLAIN.indexOf(cause) + 1;
            table.append(
                    "| %d | `%s` | %s | %s |\n"
                            .formatted(
                                    cause.ordinal() + 1,
                                    cause.key(),
                                    cause.words(),
                                    place == 0 ? "everything else" : place));
        }
        Path guide = FakeTerminal.scenarios().resolveSibling("gauge-sim/docs/user-guide.md");
        PageSection.check(guide, "causes", table.toString());
    }

    /** The example of the guide is the end of what the program prints. */
    @Test
    void theGuidePrintsWhatTheProgramPrints() throws IOException {
        Path root = FakeTerminal.scenarios().getParent();
        String guide = Files.readString(root.resolve("gauge-sim/docs/user-guide.md"));
        String example = guide.substring(guide.indexOf("### --attribution")).split("```\n", -1)[3];
        assertTrue(example.startsWith("Where the error of gauge comes from"), example);
        String week = root.resolve("scenarios/first-steps/a-week-in-the-hut.yaml").toString();
        String printed = run(0, "run", "--attribution", week);
        assertTrue(printed.endsWith("\n" + example), printed);
    }

    /** A strip between moments far apart would climb where the count was set. */
    @Test
    void aReportSplitsTheErrorAtTheTickOfASetAndTheOneBefore() throws IOException {
        String charged = Samples.hut() + "gauge: {start: 40 %}\n";
        charged = charged.replace("loads:", "chargers: {shore: {current-limit: 20 A}}\nloads:");
        Path page = folder.resolve("page.html");
        String day = write("day.yaml", charged);
        String out = run(0, "run", "--attribution", "--report", page.toString(), day);
        Matcher at = Pattern.compile("0 d (\\d+):(\\d+):(\\d+) +gauge: set to full").matcher(out);
        assertTrue(at.find(), out);
        long seconds =
                Long.parseLong(at.group(1)) * 3_600
                        + Long.parseLong(at.group(2)) * 60
                        + Long.parseLong(at.group(3));
        String text = Files.readString(page);
        assertTrue(text.contains("[" + seconds + "000,"), seconds + " s");
        assertTrue(text.contains("[" + (seconds - 1) + "000,"), seconds + " s less one");
    }
}
