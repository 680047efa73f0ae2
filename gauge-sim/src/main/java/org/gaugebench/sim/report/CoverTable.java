package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.gaugebench.sim.judge.ShelfCase;

/**
 * Which scenarios are evidence for which requirements, and what they came to.
 *
 * @param requirements that are asked for, in their own order
 * @param cases in the order in which they were named
 * @param evidence for each number that is asked for or covered, the scenarios that name it; those
 *     asked for first
 * @param unknown numbers that scenarios name and no list knows
 */
public record CoverTable(
        List<Requirement> requirements,
        List<ShelfCase> cases,
        Map<String, List<ShelfCase>> evidence,
        List<String> unknown) {

    /**
     * Puts them together.
     *
     * @param requirements that are asked for
     * @param known numbers that are no mistake though nobody asks for them
     * @param cases that ran
     */
    public static CoverTable of(
            List<Requirement> requirements, List<Requirement> known, List<ShelfCase> cases) {
        Map<String, List<ShelfCase>> evidence = new LinkedHashMap<>();
        for (Requirement requirement : requirements) {
            evidence.put(requirement.number(), new ArrayList<>());
        }
        for (ShelfCase each : cases) {
            for (String number : each.scenario().marks().covers()) {
                evidence.computeIfAbsent(number, n -> new ArrayList<>()).add(each);
            }
        }
        List<String> unknown = new ArrayList<>(evidence.keySet());
        requirements.forEach(r -> unknown.remove(r.number()));
        known.forEach(r -> unknown.remove(r.number()));
        return new CoverTable(requirements, cases, evidence, List.copyOf(unknown));
    }

    /** What is asked of a requirement. */
    public enum State {
        /** A scenario names it, and all that do pass. */
        SHOWN("shown"),
        /** A scenario that names it does not pass. */
        NOT_HELD("not held"),
        /** No scenario names it. */
        NO_SCENARIO("no scenario");

        private final String words;

        State(String words) {
            this.words = words;
        }

        /** For people and programs. */
        public String words() {
            return words;
        }
    }

    /** How a requirement stands. */
    public State state(String number) {
        List<ShelfCase> cases = evidence.getOrDefault(number, List.of());
        if (cases.isEmpty()) {
            return State.NO_SCENARIO;
        }
        return cases.stream().allMatch(c -> c.verdictWords().equals("passed"))
                ? State.SHOWN
                : State.NOT_HELD;
    }

    /** How many of those asked for stand so. */
    public long count(State state) {
        return requirements.stream().filter(r -> state(r.number()) == state).count();
    }
}
