package org.gaugebench.sim.advice;

import org.gaugebench.sim.advice.TrialRun.Moment;

/**
 * What is said of a winter: what the cold keeps back, and never more of the count than is known.
 */
final class ColdAnswer {
    /** A gauge shows whole percents: a count that is off by less than one shows what is there. */
    private static final double RIGHT_POINTS = 1;

    private ColdAnswer() {}

    /**
     * The answer. What is on show as the lights go out is kept back only where the count is right.
     *
     * @param celsius of the battery
     * @param dark as the lights go out, from full, in the cold
     * @param worst points that the count is off by then with a bad answer where none is known
     */
    static String of(double celsius, Moment dark, double worst) {
        String kept =
                isKept(dark)
                        ? Changes.text("the cold keeps %.0f %% back", dark.truth())
                        : "next to nothing is kept back";
        return Changes.text(
                "At %.0f °C the lights go out with %.0f %% on show: %s, and the count %s.",
                celsius, dark.shown().get(0), kept, count(Math.abs(dark.error(0)), worst));
    }

    /** Whether so much is left that somebody notices. */
    static boolean isKept(Moment dark) {
        return dark.truth() >= Changes.NOTICED_POINTS;
    }

    private static String count(double off, double worst) {
        if (Math.max(off, worst) < RIGHT_POINTS) {
            return Changes.text("is right within %.0f point", RIGHT_POINTS);
        }
        boolean isWorse = Math.round(10 * worst) > Math.round(10 * off);
        return Changes.text("is off by %.1f points by then", off)
                + (isWorse ? Changes.text(", at worst by %.1f", worst) : "");
    }
}
