package org.gaugebench.sim.advice;

import java.util.List;
import org.gaugebench.sim.logs.MeterCheck;

/**
 * What the figures in the columns of a sheet mean.
 *
 * @param answer one sentence with a number
 * @param lines one for each check that was done, in the order of the sheet
 * @param missing checks that were not done
 * @param daysBefore days within 10 points, as it was told
 * @param daysNow the same with what was measured
 * @param assumed what was taken where nothing was told
 */
public record MeterVerdict(
        String answer,
        List<Line> lines,
        List<MeterCheck> missing,
        int daysBefore,
        int daysNow,
        List<String> assumed) {

    /** Keeps its own lists. */
    public MeterVerdict {
        lines = List.copyOf(lines);
        missing = List.copyOf(missing);
        assumed = List.copyOf(assumed);
    }

    /** How many ask for something to be done. */
    public long toChange() {
        return lines.stream().filter(it -> it.word() == Word.CHANGE).count();
    }

    /** What came of a check. */
    public enum Word {
        /** Nothing to do. */
        GOOD("good"),
        /** Something to do. */
        CHANGE("change"),
        /** The figures do not say. */
        CANNOT_TELL("cannot tell");

        private final String words;

        Word(String words) {
            this.words = words;
        }

        /** For people. */
        public String words() {
            return words;
        }
    }

    /**
     * One check.
     *
     * @param check which
     * @param word what came of it
     * @param found what was found, with its figure
     * @param why the limit, and its reason
     * @param todo what to do; empty for nothing
     */
    public record Line(MeterCheck check, Word word, String found, String why, String todo) {}
}
