package org.gaugebench.sim.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashSet;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The resolved text and the digest. */
class ScenarioWriterTest {
    private static Scenario read(String text) throws ScenarioException {
        return ScenarioReader.read("hut.yaml", text);
    }

    @ParameterizedTest
    @ValueSource(strings = {Samples.SMALLEST, Samples.EVERYTHING})
    void theResolvedTextReadsBackToAnEqualScenario(String text) throws ScenarioException {
        Scenario first = read(text);
        String resolved = ScenarioWriter.resolved(first);
        assertEquals(Samples.withoutMarks(first), Samples.withoutMarks(read(resolved)));
        assertEquals(resolved, ScenarioWriter.resolved(read(resolved)));
    }

    @ParameterizedTest
    @ValueSource(strings = {Samples.SMALLEST, Samples.EVERYTHING})
    void everyLineMarkedAsDefaultCanBeLeftOut(String text) throws ScenarioException {
        Scenario first = read(text);
        String resolved = ScenarioWriter.resolved(first);
        String shorter =
                resolved.lines()
                        .filter(line -> !line.endsWith("# default"))
                        .filter(line -> !line.matches("(gauge|  polarization):"))
                        .collect(Collectors.joining("\n"));
        // The headings of emptied blocks went too; a heading that keeps lines would orphan them.
        if (text.equals(Samples.SMALLEST)) {
            assertTrue(shorter.length() < resolved.length() / 4, shorter);
            assertEquals(Samples.withoutMarks(first), Samples.withoutMarks(read(shorter)));
        } else {
            String kept =
                    resolved.lines()
                            .filter(line -> !line.endsWith("# default"))
                            .collect(Collectors.joining("\n"));
            assertEquals(Samples.withoutMarks(first), Samples.withoutMarks(read(kept)));
        }
    }

    /** Otherwise a round trip could lose a field that never differed from its default. */
    @Test
    void theFullSampleSetsEveryKeyThatTheReaderKnows() throws ScenarioException {
        Set<String> written = new LinkedHashSet<>();
        for (String line : ScenarioWriter.resolved(read(Samples.EVERYTHING)).lines().toList()) {
            if (line.endsWith("# default")) {
                written.add(line.strip());
            }
        }
        // A lithium battery cannot have the efficiency of lead: TraitsReaderTest has one that does.
        assertTrue(written.remove("efficiency-near-full: constant  # default"));
        Set<String> allowed =
                written.stream()
                        .filter(line -> line.matches("(gauge|from|to|switched|kind|start): .*"))
                        .collect(Collectors.toSet());
        written.removeAll(allowed);
        // What is left are core settings: they go through one loop over one table.
        Set<String> keys =
                java.util.Arrays.stream(org.gaugebench.core.settings.Setting.values())
                        .map(org.gaugebench.core.settings.Setting::key)
                        .collect(Collectors.toSet());
        written.removeIf(line -> keys.contains(line.substring(0, line.indexOf(':'))));
        assertEquals(Set.of(), written);
    }

    @Test
    void theDigestDoesNotSeeLayoutOrWords() throws ScenarioException {
        String other =
                """
                # a comment
                title: "Another title"
                about: Words
                format: 1
                sensor:
                  shunt: 100A/75mV
                duration: 24 h
                battery:
                  capacity: 60000 mAh @ 20 h
                  chemistry: lead-acid-agm
                """;
        assertEquals(
                ScenarioWriter.digest(read(Samples.SMALLEST)),
                ScenarioWriter.digest(ScenarioReader.read("other.yaml", other)));
        assertTrue(ScenarioWriter.digest(read(Samples.SMALLEST)).matches("[0-9a-f]{16}"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "seed: 2",
                "tick: 2 s",
                "gauge: {hold: 61 min}",
                "loads: {lamp: {current: 1 A}}",
                "expect: [{at: 1 d, reading: current, at-most: 1 A}]"
            })
    void theDigestSeesEverythingElse(String added) throws ScenarioException {
        assertNotEquals(
                ScenarioWriter.digest(read(Samples.SMALLEST)),
                ScenarioWriter.digest(read(Samples.SMALLEST + added + "\n")));
    }

    @Test
    void whatAScenarioIsFiledUnderIsForPeopleOnly() throws ScenarioException {
        assertEquals(
                ScenarioWriter.digest(read(Samples.SMALLEST)),
                ScenarioWriter.digest(
                        read(Samples.SMALLEST + "tags: [a]\ncovers: [F4]\nsymptom: b\n")));
        String claim = "expect: [{at: 1 d, reading: current, at-most: 1 A";
        assertNotEquals(
                ScenarioWriter.digest(read(Samples.SMALLEST + claim + "}]\n")),
                ScenarioWriter.digest(
                        read(Samples.SMALLEST + claim + ", expected-to-fail: a}]\n")));
    }

    @Test
    void aReasonIsForPeopleOnly() throws ScenarioException {
        String with = Samples.EVERYTHING.replace("\"a: b\"", "another");
        assertEquals(
                ScenarioWriter.digest(read(Samples.EVERYTHING)), ScenarioWriter.digest(read(with)));
        assertFalse(Samples.EVERYTHING.equals(with));
    }
}
