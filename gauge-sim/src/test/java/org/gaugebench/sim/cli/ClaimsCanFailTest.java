package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.gaugebench.sim.judge.ExpectationResult;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioException;
import org.gaugebench.sim.scenario.ScenarioReader;
import org.gaugebench.sim.scenario.ScenarioWriter;
import org.junit.jupiter.api.Test;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/**
 * A claim that nothing can break claims nothing. Each scenario is run again and again with one
 * thing made different; each of its expectations has to turn at least once. {@code .ci/unbreakable}
 * does this for the whole shelf, the normal run for a few files.
 *
 * <p>What stays unbroken stands in {@code golden/unbroken.txt} with the reason why it may.
 */
class ClaimsCanFailTest {
    private static final Path SHELF = FakeTerminal.scenarios();
    private static final Path ARGUED =
            SHELF.resolveSibling("gauge-sim/src/test/resources/golden/unbroken.txt");
    private static final List<String> SLICE =
            List.of(
                    "edge-cases/isolator-open.yaml",
                    "edge-cases/full-and-bouncing.yaml",
                    "edge-cases/swapped-sense-leads.yaml");

    private final AtomicInteger runs = new AtomicInteger();
    private final AtomicInteger claims = new AtomicInteger();

    @Test
    void everyClaimOfTheShelfHasBeenSeenToFail() throws IOException, InputException {
        String pattern = System.getProperty("gaugebench.disturb", "");
        List<Path> files =
                ScenarioFiles.expand(List.of(SHELF.toString())).stream()
                        .filter(file -> wanted(name(file), pattern))
                        .toList();
        List<Scenario> scenarios = ScenarioLoader.load(files);
        Map<String, List<Scenario>> byFile = new LinkedHashMap<>();
        scenarios.forEach(
                scenario ->
                        byFile.computeIfAbsent(
                                        name(Path.of(scenario.file())), f -> new ArrayList<>())
                                .add(scenario));
        SortedMap<String, String> unbroken = new ConcurrentSkipListMap<>();
        byFile.entrySet().parallelStream()
                .forEach(
                        entry -> {
                            Map<String, String> left = unbroken(entry.getKey(), entry.getValue());
                            unbroken.putAll(left);
                            if (!pattern.isEmpty()) {
                                System.out.println(entry.getKey() + ": " + left.size() + " left");
                            }
                        });

        System.out.printf(
                "%d files, %d claims, %d runs with one thing different, %d claims unbroken%n",
                byFile.size(), claims.get(), runs.get(), unbroken.size());
        unbroken.forEach((claim, text) -> System.out.println("  " + claim + "  " + text));
        SortedMap<String, String> argued = argued();
        argued.keySet().removeIf(claim -> !byFile.containsKey(claim.replaceFirst(" #.*", "")));
        assertEquals(argued.keySet(), new TreeSet<>(unbroken.keySet()));
        assertTrue(claims.get() > 0);
    }

    private static boolean wanted(String name, String pattern) {
        return pattern.isEmpty() ? SLICE.contains(name) : name.matches(pattern);
    }

    /** A line each: file, number of the claim, two spaces, the reason. */
    private static SortedMap<String, String> argued() throws IOException {
        SortedMap<String, String> argued = new TreeMap<>();
        for (String line : Files.readAllLines(ARGUED)) {
            if (!line.startsWith("#") && !line.isBlank()) {
                String[] parts = line.split(" {2}", 2);
                assertTrue(parts.length == 2 && parts[1].length() > 10, "no reason: " + line);
                argued.put(parts[0], parts[1]);
            }
        }
        return argued;
    }

    /** A claim counts as broken when one run of the file breaks it: all say the same sentence. */
    private Map<String, String> unbroken(String name, List<Scenario> variants) {
        Scenario first = variants.get(0);
        TreeSet<Integer> left = new TreeSet<>();
        for (int i = 0; i < first.expectations().size(); i++) {
            left.add(i);
        }
        claims.addAndGet(left.size());
        for (Scenario scenario : variants) {
            String resolved = ScenarioWriter.resolved(scenario);
            @SuppressWarnings("unchecked")
            Map<String, Object> tree =
                    (Map<String, Object>)
                            new Load(LoadSettings.builder().build()).loadFromString(resolved);
            for (Disturbance disturbance : Disturbances.of(tree)) {
                if (left.isEmpty()) {
                    return Map.of();
                }
                left.removeAll(broken(scenario, resolved, disturbance));
            }
        }
        Map<String, String> unbroken = new TreeMap<>();
        for (int i : left) {
            unbroken.put("%s #%02d".formatted(name, i + 1), first.expectations().get(i).text());
        }
        return unbroken;
    }

    private List<Integer> broken(Scenario scenario, String resolved, Disturbance disturbance) {
        String text = disturbance.applyTo(resolved);
        if (text == null) {
            return List.of();
        }
        RunResult result;
        try {
            Scenario other = read(scenario.file(), text);
            result = RunRecorder.run(other, scenario.seed(), Observer.NONE);
        } catch (ScenarioException e) {
            return List.of();
        }
        runs.incrementAndGet();
        List<Integer> broken = new ArrayList<>();
        List<ExpectationResult> results = result.expectations();
        for (int i = 0; i < results.size(); i++) {
            // 'Never evaluated' is no answer: the run was shorter than the claim.
            boolean answered =
                    results.get(i).outcome() != ExpectationResult.Outcome.NEVER_EVALUATED;
            if (answered && !results.get(i).outcome().isGood()) {
                broken.add(i);
            }
        }
        return broken;
    }

    /** What names a table is read from a file beside a copy of it. */
    private static Scenario read(String file, String text) throws ScenarioException {
        if (!text.contains("profile: {") && !text.contains("profile:\n")) {
            return ScenarioReader.read(file, text);
        }
        try {
            Path folder = Files.createTempDirectory("claims");
            Path table = Path.of(file.replaceFirst("yaml$", "csv"));
            Path copy = Files.writeString(folder.resolve("scenario.yaml"), text);
            Path beside = Files.copy(table, folder.resolve(table.getFileName()));
            try {
                return ScenarioReader.read(copy);
            } finally {
                Files.delete(copy);
                Files.delete(beside);
                Files.delete(folder);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String name(Path file) {
        return SHELF.relativize(file).toString().replace('\\', '/');
    }
}
