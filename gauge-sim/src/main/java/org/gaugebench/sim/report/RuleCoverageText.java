package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.gaugebench.core.port.RuleReason;
import org.gaugebench.core.port.RuleState;
import org.gaugebench.sim.judge.RuleCoverage;
import org.gaugebench.sim.judge.RuleCoverage.Transition;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.judge.ShelfCase;

/** How much of the full-charge rule a list of runs visits, and what nobody visits. */
public final class RuleCoverageText {
    private static final int LABEL_WIDTH = 13;

    private RuleCoverageText() {}

    /** What all gauges of all runs visited together. */
    public static RuleCoverage sum(List<ShelfCase> cases) {
        return cases.stream()
                .map(ShelfCase::result)
                .filter(Objects::nonNull)
                .map(RunResult::ruleCoverage)
                .reduce(RuleCoverage.NONE, RuleCoverage::plus);
    }

    /**
     * Writes it.
     *
     * @param seen of all runs
     * @return lines of at most {@value Page#WIDTH} columns
     */
    public static String of(RuleCoverage seen) {
        List<String> states = new ArrayList<>();
        for (RuleState state : RuleState.values()) {
            if (!seen.has(state)) {
                states.add(RuleCoverage.words(state));
            }
        }
        List<String> transitions = new ArrayList<>();
        for (Transition transition : RuleCoverage.POSSIBLE) {
            if (!seen.has(transition)) {
                transitions.add(transition.toString());
            }
        }
        List<String> reasons = new ArrayList<>();
        for (RuleReason reason : RuleReason.values()) {
            if (!seen.has(reason)) {
                reasons.add(reason.sentence());
            }
        }
        Page page = new Page();
        page.line("What these runs visit of the full-charge rule");
        row(page, "states", RuleState.values().length, states);
        row(page, "transitions", RuleCoverage.POSSIBLE.size(), transitions);
        row(page, "reasons", RuleReason.values().length, reasons);
        for (Transition unforeseen : seen.unforeseen()) {
            page.paragraph(2, "taken though it should not exist: " + unforeseen);
        }
        return page.toString();
    }

    private static void row(Page page, String what, int all, List<String> missing) {
        int seen = all - missing.size();
        page.labelled(
                2,
                LABEL_WIDTH,
                what,
                seen + " of " + all + (missing.isEmpty() ? "" : "; not visited:"));
        for (String each : missing) {
            page.paragraph(2 + LABEL_WIDTH + 2, each);
        }
    }
}
