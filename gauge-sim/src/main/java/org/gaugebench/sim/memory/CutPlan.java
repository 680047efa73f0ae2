package org.gaugebench.sim.memory;

import java.util.List;

/**
 * At which memory operations power goes, one cut for each life of the machine: the first before the
 * first restart, the second between the first restart and the second, and so on. After the last cut
 * power stays.
 *
 * @param cuts in the order of the lives
 */
public record CutPlan(List<Cut> cuts) {
    /** Power stays. */
    public static final CutPlan NONE = new CutPlan(List.of());

    /** Keeps the cuts as given. */
    public CutPlan {
        cuts = List.copyOf(cuts);
    }

    /** Power goes once. */
    public static CutPlan at(int operation, Manner manner) {
        return new CutPlan(List.of(new Cut(operation, manner)));
    }

    /** Power goes, comes back, and goes again. */
    public static CutPlan atBoth(int first, Manner firstManner, int second, Manner secondManner) {
        return new CutPlan(List.of(new Cut(first, firstManner), new Cut(second, secondManner)));
    }

    /** What the operation under way leaves behind. A read leaves nothing, whatever the manner. */
    public enum Manner {
        /** The operation had not begun. */
        NOTHING,
        /** The first half of the bytes is done. */
        HALF,
        /** Every byte that the operation covers holds something random. */
        GARBAGE,
        /**
         * The memory answers that all is well and did nothing; power goes at the operation after. A
         * memory that also reads back what it never kept leaves the same bytes as {@link #NOTHING},
         * with the machine that was deceived gone.
         */
        SILENTLY_NOT_WRITTEN
    }

    /**
     * One cut.
     *
     * @param operation counted from 0 at each power-up; reads, erases and programs count alike
     * @param manner what that operation leaves behind
     */
    public record Cut(int operation, Manner manner) {
        /** Refuses an operation before the first. */
        public Cut {
            if (operation < 0) {
                throw new IllegalArgumentException("operation " + operation + " is below 0");
            }
        }
    }
}
