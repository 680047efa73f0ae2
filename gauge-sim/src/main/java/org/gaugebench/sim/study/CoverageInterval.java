package org.gaugebench.sim.study;

/**
 * An interval that holds the quantity with a stated probability.
 *
 * @param lower end
 * @param upper end
 */
public record CoverageInterval(double lower, double upper) {
    /**
     * The probabilistically symmetric interval of JCGM 101, 7.7.2: as much lies below it as above.
     *
     * @param sorted values in rising order, at least two
     * @param probability above 0, below 1
     */
    public static CoverageInterval symmetric(double[] sorted, double probability) {
        int within = within(sorted.length, probability);
        int below = Math.max(1, (sorted.length - within + 1) / 2);
        return new CoverageInterval(sorted[below - 1], sorted[below + within - 1]);
    }

    /**
     * The shortest interval of JCGM 101, 7.7.3; the lowest of several equally short ones.
     *
     * @param sorted values in rising order, at least two
     * @param probability above 0, below 1
     */
    public static CoverageInterval shortest(double[] sorted, double probability) {
        int within = within(sorted.length, probability);
        int best = 0;
        for (int i = 1; i + within < sorted.length; i++) {
            if (sorted[i + within] - sorted[i] < sorted[best + within] - sorted[best]) {
                best = i;
            }
        }
        return new CoverageInterval(sorted[best], sorted[best + within]);
    }

    /** Values from one end to the other, less one: the q of the supplement. */
    private static int within(int count, double probability) {
        return Math.min(count - 1, (int) (probability * count + 0.5));
    }

    /** Distance of the ends. */
    public double width() {
        return upper - lower;
    }
}
