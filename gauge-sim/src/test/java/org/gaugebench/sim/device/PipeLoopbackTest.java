package org.gaugebench.sim.device;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.gaugebench.house.TopLevelRule;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.judge.TestedProgram;
import org.gaugebench.sim.report.Ink;
import org.gaugebench.sim.report.RunJson;
import org.gaugebench.sim.report.TextReport;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.Variants;
import org.junit.jupiter.api.Test;

/**
 * The core behind the pipe and the core in our own process must not differ in one bit of a register
 * nor in one letter of a report: then the pipe loses nothing, store traffic and cuts included.
 *
 * <p>{@code -Dgaugebench.pipeFolder=scenarios} takes the whole shelf instead of the lessons.
 */
class PipeLoopbackTest {
    private static final Path SHELF = TopLevelRule.projectRoot().resolve("scenarios");

    /** In turn, so that each form meets some of the scenarios. */
    private static final List<String[]> HELLOS =
            List.of(
                    new String[] {"form frames", "batch 256", "restart message"},
                    new String[] {"batch 64", "answer each"},
                    new String[] {"form frames", "batch 1024", "answer each"},
                    new String[] {"batch 50", "restart message"},
                    new String[] {"form frames", "batch 7"});

    private static List<Scenario> read(Path place) throws Exception {
        List<Scenario> found = new ArrayList<>();
        try (Stream<Path> files = Files.walk(place)) {
            for (Path file : files.sorted().toList()) {
                boolean isScenario = file.toString().endsWith(".yaml");
                if (isScenario && !file.toString().contains("parts")) {
                    found.addAll(Variants.read(file, null));
                }
            }
        }
        found.removeIf(it -> it.gauges().stream().noneMatch(PipeLoopbackTest::isCore));
        return found;
    }

    private static boolean isCore(GaugeSpec gauge) {
        return gauge.kind() == GaugeSpec.Kind.CORE;
    }

    private static RunResult withoutProgram(RunResult it) {
        return new RunResult(
                it.scenario(),
                it.seed(),
                it.ticks(),
                it.simulatedMillis(),
                it.digest(),
                it.verdict(),
                it.expectations(),
                it.events(),
                it.eventsDropped(),
                it.refused(),
                it.lanes(),
                it.finalTruePartsPerMillion(),
                it.finalTrueMicroampHours(),
                it.truePercent(),
                null);
    }

    static void check(Scenario scenario, String... hello) {
        RunResult here = RunRecorder.run(scenario, scenario.seed(), Observer.NONE);
        PipeCommand command = JavaProgram.of(PipeCore.class, hello);
        RunResult there = RunRecorder.run(scenario, scenario.seed(), Observer.NONE, command);
        String what = scenario.name() + " with " + List.of(hello);
        assertEquals(here.digest(), there.digest(), what);
        String gauge =
                scenario.gauges().stream()
                        .filter(PipeLoopbackTest::isCore)
                        .findFirst()
                        .orElseThrow()
                        .name();
        assertEquals(
                new TestedProgram(gauge, "the core behind a pipe", "PipeCore"), there.program());
        RunResult alike = withoutProgram(there);
        assertEquals(
                TextReport.of(here, "1", Ink.PLAIN), TextReport.of(alike, "1", Ink.PLAIN), what);
        assertEquals(RunJson.of(here, "1"), RunJson.of(alike, "1"), what);
    }

    @Test
    void aFolderRunsToTheLastBitAsInOurOwnProcess() throws Exception {
        Path folder = SHELF.getParent().resolve(property());
        List<Scenario> scenarios = read(folder);
        assertFalse(scenarios.size() < 10, "found " + scenarios.size());
        // Each starts a machine of its own and waits for it: two at a time take half as long.
        IntStream.range(0, scenarios.size())
                .parallel()
                .forEach(i -> check(scenarios.get(i), HELLOS.get(i % HELLOS.size())));
    }

    private static String property() {
        return System.getProperty("gaugebench.pipeFolder", "scenarios/teaching");
    }

    @Test
    void aCutInASaveReachesTheProgramInEitherWayOfStartingAgain() throws Exception {
        String cut = "edge-cases/a-cut-in-the-middle-of-a-save.yaml";
        for (Scenario scenario : read(SHELF.resolve(cut))) {
            check(scenario, "form frames", "batch 256");
            check(scenario, "form frames", "batch 256", "restart message");
            check(scenario, "restart message", "batch 100");
            check(scenario, "batch 100", "answer each");
        }
    }

    @Test
    void faultsOfAMemoryReachTheProgramAtTheirTimeThoughTicksComeInBatches() throws Exception {
        for (Scenario scenario : read(SHELF.resolve("edge-cases/a-memory-that-dies.yaml"))) {
            check(scenario, "form frames", "batch 1024", "restart message");
            check(scenario, "batch 1024");
        }
    }
}
