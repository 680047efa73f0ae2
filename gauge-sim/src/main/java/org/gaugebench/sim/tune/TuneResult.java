package org.gaugebench.sim.tune;

import java.util.List;

/**
 * What came of a search.
 *
 * @param task what was asked
 * @param loosest the rule at its loosest, on the cases of the search
 * @param preset the chemistry's preset
 * @param chosen what is recommended
 * @param tried all that was tried, in the order of their values, the loosest included
 * @param frontier of those within the safe range: each that no other one beats, best first
 * @param reasons one for each setting
 * @param unmet cases that the chosen settings do not meet
 * @param otherLoosest the loosest on the seeds that the search never saw
 * @param otherPreset the preset on them
 * @param otherChosen the chosen settings on them
 */
public record TuneResult(
        TuneTask task,
        TuneScore loosest,
        TuneScore preset,
        TuneScore chosen,
        List<TuneScore> tried,
        List<TuneScore> frontier,
        List<TuneReason> reasons,
        List<TuneUnmet> unmet,
        TuneScore otherLoosest,
        TuneScore otherPreset,
        TuneScore otherChosen) {

    /** Whether no full is false and none missed, on all seeds. */
    public boolean isGood() {
        return chosen.isMet() && otherChosen.isMet();
    }

    /** Runs that were made: all candidates on all cases, and three on those of the other seeds. */
    public long runs() {
        return (long) tried.size() * task.cases().size() + 3L * task.others().size();
    }
}
