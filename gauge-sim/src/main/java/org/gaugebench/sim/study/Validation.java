package org.gaugebench.sim.study;

/**
 * Whether first-order limits may be used: the comparison of JCGM 101, clause 8, which holds both
 * ends of the interval against those of the Monte Carlo method.
 *
 * @param lowerGap distance of the lower ends
 * @param upperGap distance of the upper ends
 * @param tolerance numerical tolerance that both have to keep
 * @param answer what follows
 */
public record Validation(double lowerGap, double upperGap, double tolerance, Answer answer) {
    /** What follows. */
    public enum Answer {
        /** First-order limits may be used. */
        AGREES,
        /** First-order limits are not to be used. */
        DIFFERS,
        /** The Monte Carlo limits themselves are not known well enough to tell. */
        NOT_DECIDED
    }

    /**
     * Compares.
     *
     * @param first limits of first order
     * @param drawn limits of the Monte Carlo method
     * @param tolerance as {@link NumericalTolerance} has it
     * @param lowerDoubt twice the standard error of the drawn lower limit
     * @param upperDoubt of the upper one
     */
    public static Validation of(
            CoverageInterval first,
            CoverageInterval drawn,
            double tolerance,
            double lowerDoubt,
            double upperDoubt) {
        double lower = StrictMath.abs(first.lower() - drawn.lower());
        double upper = StrictMath.abs(first.upper() - drawn.upper());
        boolean differs = lower - lowerDoubt > tolerance || upper - upperDoubt > tolerance;
        boolean agrees = lower <= tolerance && upper <= tolerance;
        boolean known = lowerDoubt <= tolerance && upperDoubt <= tolerance;
        return new Validation(
                lower,
                upper,
                tolerance,
                differs ? Answer.DIFFERS : agrees && known ? Answer.AGREES : Answer.NOT_DECIDED);
    }
}
