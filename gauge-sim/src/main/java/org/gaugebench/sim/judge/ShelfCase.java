package org.gaugebench.sim.judge;

import java.util.List;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;

/**
 * One scenario of a list of many, and how its run ended.
 *
 * @param scenario what was to run
 * @param seed of every random stream
 * @param ending how the run ended
 * @param result what came of it; null unless it finished
 * @param why for people: why it did not finish; empty where it did
 * @param defect what a run of this program died of, or the program under test; null unless it
 *     crashed or broke off
 * @param tookNanos time on the clock of the machine; differs from run to run
 */
public record ShelfCase(
        Scenario scenario,
        long seed,
        Ending ending,
        @Nullable RunResult result,
        String why,
        @Nullable Throwable defect,
        long tookNanos) {

    /** How a run ends, the worst first. */
    public enum Ending {
        /** A defect of this program stopped it. */
        CRASHED("crashed"),
        /** The program under test ended, took too long for an answer or broke the protocol. */
        BROKE_OFF("broke off"),
        /** It took longer than it was given. */
        TIMED_OUT("timed out"),
        /** It ran to its end, and has a verdict. */
        FINISHED("finished"),
        /** It was not run. */
        SKIPPED("skipped");

        private final String words;

        Ending(String words) {
            this.words = words;
        }

        /** For people and for JSON. */
        public String words() {
            return words;
        }
    }

    /** A run that ended. */
    public static ShelfCase finished(RunResult result, long tookNanos) {
        return new ShelfCase(
                result.scenario(), result.seed(), Ending.FINISHED, result, "", null, tookNanos);
    }

    /** A scenario that is not run. */
    public static ShelfCase skipped(Scenario scenario, long seed, String why) {
        return new ShelfCase(scenario, seed, Ending.SKIPPED, null, why, null, 0);
    }

    /** What it came to in a word or two: the verdict, or how it ended without one. */
    public String verdictWords() {
        return result == null ? ending.words() : result.verdict().words();
    }

    /** Whether nothing is wrong: it passed, or was not asked to run. */
    public boolean isGood() {
        return result == null ? ending == Ending.SKIPPED : result.verdict() == Verdict.PASSED;
    }

    /** Expectations that came out as the scenario says. */
    public long heldCount() {
        return results().stream().filter(each -> each.outcome().isGood()).count();
    }

    /** Every expectation with what became of it; empty where the run did not finish. */
    public List<ExpectationResult> results() {
        return result == null ? List.of() : result.expectations();
    }

    /** The same without events and curves: what lists of thousands keep. */
    public ShelfCase slim() {
        if (result == null) {
            return this;
        }
        return new ShelfCase(scenario, seed, ending, result.slim(), why, defect, tookNanos);
    }
}
