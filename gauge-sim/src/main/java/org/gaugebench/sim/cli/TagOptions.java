package org.gaugebench.sim.cli;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.gaugebench.sim.scenario.Nearest;
import org.gaugebench.sim.scenario.Scenario;
import picocli.CommandLine.Option;

/** Chooses scenarios by their tags. */
final class TagOptions {
    @Option(
            names = "--only",
            paramLabel = "TAG",
            description =
                    "Run only scenarios with this tag; given several times, those with any of"
                            + " them.")
    private List<String> only = new ArrayList<>();

    @Option(
            names = "--skip",
            paramLabel = "TAG",
            description = "Leave out scenarios with this tag; may be given several times.")
    private List<String> skip = new ArrayList<>();

    TagOptions() {}

    /**
     * Refuses a tag that no scenario has: a misspelt one would run nothing, or everything, in
     * silence.
     */
    void check(List<Scenario> scenarios) throws InputException {
        Set<String> known = new LinkedHashSet<>();
        for (Scenario scenario : scenarios) {
            known.addAll(scenario.marks().tags());
        }
        List<String> asked = new ArrayList<>(only);
        asked.addAll(skip);
        for (String tag : asked) {
            if (!known.contains(tag)) {
                String option = only.contains(tag) ? "--only" : "--skip";
                throw new InputException(option + ": no scenario has the tag " + hint(tag, known));
            }
        }
    }

    private static String hint(String tag, Set<String> known) {
        String nearest = Nearest.of(tag, known);
        if (nearest != null) {
            return "'" + tag + "'; did you mean '" + nearest + "'?";
        }
        String there = known.isEmpty() ? "none has any" : "there are " + String.join(", ", known);
        return "'" + tag + "'; " + there;
    }

    /** Why a scenario is not to run, or an empty text. */
    String skipReason(Scenario scenario) {
        List<String> tags = scenario.marks().tags();
        for (String tag : skip) {
            if (tags.contains(tag)) {
                return "it has the tag '" + tag + "', --skip";
            }
        }
        return only.isEmpty() || only.stream().anyMatch(tags::contains)
                ? ""
                : "it has not the tag '" + String.join("' or '", only) + "', --only";
    }
}
