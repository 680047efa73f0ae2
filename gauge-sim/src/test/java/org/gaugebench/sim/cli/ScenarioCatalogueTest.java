package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentSkipListMap;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.judge.Verdict;
import org.gaugebench.sim.report.Ink;
import org.gaugebench.sim.report.RunJson;
import org.gaugebench.sim.report.TextReport;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * Every scenario on the user's shelf runs, claims something, holds, stands in the catalogue and has
 * the digest it had. All of them run once, on several threads at a time.
 *
 * <p>The digests stand in {@code golden/digests.txt} and the report in README.md. After a change
 * that is meant to move them: {@code mvn verify -Dgolden.update=true} rewrites both, and the
 * difference is what to look at.
 */
class ScenarioCatalogueTest {
    private static final Path SHELF = FakeTerminal.scenarios();
    private static final Path GOLDEN =
            SHELF.resolveSibling("gauge-sim/src/test/resources/golden/digests.txt");
    private static final String FIRST = "first-steps/a-week-in-the-hut.yaml";
    private static final boolean UPDATE = Boolean.getBoolean("golden.update");

    private static final Map<String, RunResult> RESULTS = new ConcurrentSkipListMap<>();

    @BeforeAll
    static void runAll() throws InputException {
        List<Path> files = ScenarioFiles.expand(List.of(SHELF.toString()));
        List<Scenario> scenarios = ScenarioLoader.load(files);
        scenarios.parallelStream()
                .forEach(
                        scenario ->
                                RESULTS.put(
                                        name(Path.of(scenario.file())) + which(scenario),
                                        RunRecorder.run(scenario, scenario.seed(), Observer.NONE)));
    }

    /** A file that varies makes several runs, each with a digest of its own. */
    private static String which(Scenario scenario) {
        return scenario.variant().isEmpty() ? "" : " [" + scenario.variant() + "]";
    }

    private static List<String> files() {
        return RESULTS.keySet().stream()
                .map(name -> name.replaceFirst(" \\[.*", ""))
                .distinct()
                .toList();
    }

    private static String name(Path file) {
        return SHELF.relativize(file).toString().replace('\\', '/');
    }

    @Test
    void everyScenarioClaimsSomethingAndHolds() {
        assertTrue(RESULTS.size() >= 7, RESULTS.keySet().toString());
        RESULTS.forEach(
                (name, result) -> {
                    assertFalse(result.expectations().isEmpty(), name + " claims nothing");
                    assertEquals(
                            Verdict.PASSED,
                            result.verdict(),
                            () -> TextReport.of(result, "test", Ink.PLAIN));
                });
    }

    @Test
    void everyScenarioStandsInTheCatalogueAndNothingElseDoes() throws IOException {
        String catalogue = Files.readString(SHELF.resolve("README.md"));
        List<String> named = new ArrayList<>();
        java.util.regex.Matcher matcher =
                java.util.regex.Pattern.compile("`([a-z-]+/[a-z0-9-]+\\.yaml)`").matcher(catalogue);
        while (matcher.find()) {
            named.add(matcher.group(1));
        }
        assertEquals(files(), named.stream().sorted().distinct().toList());
    }

    @Test
    void everyScenarioSaysInItsHeadWhatToLookAt() throws IOException {
        for (String name : files()) {
            String text = Files.readString(SHELF.resolve(name));
            assertTrue(text.startsWith("# "), name);
            for (String part :
                    List.of("# What happens:", "# What to look at:", "# Why it should")) {
                assertTrue(text.contains(part), name + " lacks '" + part + "'");
            }
        }
    }

    @Test
    void digestsAreWhatTheyWere() throws IOException {
        StringBuilder text = new StringBuilder();
        RESULTS.forEach(
                (name, result) ->
                        text.append(RunJson.hex(result.digest()))
                                .append("  ")
                                .append(name)
                                .append('\n'));
        if (UPDATE) {
            Files.writeString(GOLDEN, text);
        }
        assertEquals(Files.readString(GOLDEN), text.toString(), "-Dgolden.update=true rewrites it");
    }

    @Test
    void theReportInTheReadmeIsTheRealOne() throws IOException {
        Path readme = SHELF.resolveSibling("README.md");
        String page = Files.readString(readme);
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(0, terminal.run("run", SHELF.resolve(FIRST).toString()));
        String report =
                terminal.out()
                        .replace(SHELF.resolve(FIRST).toString(), "scenarios/" + FIRST)
                        .replaceFirst("(?m)^  version .*$", "  version         0.1.0");
        int from = page.indexOf("```text\n") + 8;
        int to = page.indexOf("```\n", from);
        assertTrue(from > 8 && to >= from, "README.md has no text block");
        if (UPDATE) {
            page = page.substring(0, from) + report + page.substring(to);
            Files.write(readme, page.getBytes(StandardCharsets.UTF_8));
            to = page.indexOf("```\n", from);
        }
        assertEquals(report, page.substring(from, to), "-Dgolden.update=true rewrites it");
    }

    @Test
    void aRunAloneGivesWhatItGaveAmongThreads() throws InputException {
        Map<String, String> alone = new TreeMap<>();
        Map<String, String> among = new TreeMap<>();
        for (String name : List.of(FIRST, "edge-cases/isolator-open.yaml")) {
            Scenario scenario = ScenarioLoader.load(List.of(SHELF.resolve(name))).get(0);
            RunResult again = RunRecorder.run(scenario, scenario.seed(), Observer.NONE);
            alone.put(name, TextReport.of(again, "test", Ink.PLAIN));
            among.put(name, TextReport.of(RESULTS.get(name), "test", Ink.PLAIN));
        }
        assertEquals(among, alone);
    }

    @Test
    void anotherSeedIsAnotherRun() throws InputException {
        Scenario scenario = ScenarioLoader.load(List.of(SHELF.resolve(FIRST))).get(0);
        RunResult other = RunRecorder.run(scenario, scenario.seed() + 1, Observer.NONE);
        assertFalse(other.digest() == RESULTS.get(FIRST).digest(), "the seed has no effect");
    }
}
