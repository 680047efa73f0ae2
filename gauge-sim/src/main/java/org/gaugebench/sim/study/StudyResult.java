package org.gaugebench.sim.study;

import java.util.List;
import org.gaugebench.sim.scenario.StudySpec;

/**
 * What came of a study.
 *
 * @param spec what was asked
 * @param cases in the order of the study
 */
public record StudyResult(StudySpec spec, List<CaseResult> cases) {
    /** What follows for the claim. */
    public enum Answer {
        /** So many devices keep it. */
        YES,
        /** So many do not. */
        NO,
        /** Too few devices were drawn to tell. */
        NOT_DECIDED,
        /** Nothing is claimed. */
        NOTHING_ASKED
    }

    /** The answer of one case. */
    public Answer answer(CaseResult result) {
        if (!spec.claim().isMade()) {
            return Answer.NOTHING_ASKED;
        }
        double wanted = spec.claim().sharePartsPerMillion() / 1e6;
        return result.inside().lower() >= wanted
                ? Answer.YES
                : result.inside().upper() < wanted ? Answer.NO : Answer.NOT_DECIDED;
    }

    /** Whether nothing that is claimed fails or stays open. */
    public boolean isGood() {
        return cases.stream()
                .map(this::answer)
                .allMatch(it -> it == Answer.YES || it == Answer.NOTHING_ASKED);
    }
}
