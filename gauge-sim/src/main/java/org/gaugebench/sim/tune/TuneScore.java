package org.gaugebench.sim.tune;

import java.util.Comparator;
import java.util.List;

/**
 * What values of the searched settings come to over all cases.
 *
 * @param candidate the values
 * @param cases one for each case, in their order
 * @param falseFulls in all cases
 * @param missedFulls in all cases
 * @param meanErrorParts mean over the cases of their mean errors: a long run weighs no more
 * @param worstErrorParts the largest of any case
 */
public record TuneScore(
        Candidate candidate,
        List<CaseScore> cases,
        int falseFulls,
        int missedFulls,
        double meanErrorParts,
        long worstErrorParts) {

    /** A tenth of a point: less than a reader of the figure can notice. */
    private static final double MEAN_NOTICED_PARTS = 1_000;

    /** A point: the same of a single worst minute. */
    private static final long WORST_NOTICED_PARTS = 10_000;

    /** What the page shows of a mean. */
    private static final double MEAN_STEP_PARTS = 100;

    /** What the page shows of a worst minute. */
    private static final double WORST_STEP_PARTS = 1_000;

    /**
     * The figures, the better one first. A false full hides an empty battery; a missed one only
     * lets errors grow, and the gauge says that it is overdue.
     */
    private static final Comparator<TuneScore> FIGURES =
            Comparator.comparingInt(TuneScore::falseFulls)
                    .thenComparingInt(TuneScore::missedFulls)
                    .thenComparingLong(TuneScore::meanSteps)
                    .thenComparingLong(TuneScore::worstSteps);

    static TuneScore of(Candidate candidate, List<CaseScore> cases) {
        int falseFulls = 0;
        int missedFulls = 0;
        double mean = 0;
        long worst = 0;
        for (CaseScore each : cases) {
            falseFulls += each.falseFulls();
            missedFulls += each.missedFulls();
            mean += each.meanErrorParts();
            worst = Math.max(worst, each.worstErrorParts());
        }
        return new TuneScore(
                candidate,
                List.copyOf(cases),
                falseFulls,
                missedFulls,
                mean / Math.max(1, cases.size()),
                worst);
    }

    /** The mean error in hundredths of a point, as it is shown. */
    private long meanSteps() {
        return StrictMath.round(meanErrorParts / MEAN_STEP_PARTS);
    }

    /** The worst error in tenths of a point, as it is shown. */
    private long worstSteps() {
        return StrictMath.round(worstErrorParts / WORST_STEP_PARTS);
    }

    /** Whether no full was false and none was missed. */
    public boolean isMet() {
        return falseFulls == 0 && missedFulls == 0;
    }

    /** Whether all four figures are shown alike. */
    boolean isShownLike(TuneScore other) {
        return FIGURES.compare(this, other) == 0;
    }

    /** Whether somebody who uses the gauge would notice that this one has a larger error. */
    public boolean isNoticedInMean(TuneScore other) {
        return meanErrorParts > other.meanErrorParts + MEAN_NOTICED_PARTS;
    }

    /** The same of its worst minute. */
    public boolean isNoticedAtWorst(TuneScore other) {
        return worstErrorParts > other.worstErrorParts + WORST_NOTICED_PARTS;
    }

    /** Whether this one has nothing worse that anybody would notice. */
    boolean isAsGoodAs(TuneScore other) {
        return falseFulls <= other.falseFulls
                && missedFulls <= other.missedFulls
                && !isNoticedInMean(other)
                && !isNoticedAtWorst(other);
    }

    /** Whether nobody would notice which of the two it is. */
    public boolean isLike(TuneScore other) {
        return isAsGoodAs(other) && other.isAsGoodAs(this);
    }

    /** Whether one is better in a figure and worse in none. */
    boolean beats(TuneScore other) {
        return falseFulls <= other.falseFulls
                && missedFulls <= other.missedFulls
                && meanSteps() <= other.meanSteps()
                && worstSteps() <= other.worstSteps()
                && !isShownLike(other);
    }

    /** The same; of equal ones the one nearer to the preset, which needs no reason. */
    static Comparator<TuneScore> order(List<TunedSetting> settings) {
        return FIGURES.thenComparingLong((TuneScore it) -> it.candidate().distance(settings))
                .thenComparing(TuneScore::candidate);
    }
}
