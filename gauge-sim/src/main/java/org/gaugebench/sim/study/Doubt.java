package org.gaugebench.sim.study;

/**
 * How sure a share of devices is: the interval of E. B. Wilson, "Probable inference, the law of
 * succession, and statistical inference", Journal of the American Statistical Association 22
 * (1927), for 95 %. It stays between 0 and 1 and says something even where no device failed.
 *
 * @param inside devices of that kind
 * @param of so many
 */
public record Doubt(int inside, int of) {
    /** The normal factor of 95 %. */
    private static final double FACTOR = 1.959963984540054;

    /** The share seen. */
    public double share() {
        return (double) inside / of;
    }

    /** Lower end of what the true share may be. */
    public double lower() {
        return end(-1);
    }

    /** Upper end of it. */
    public double upper() {
        return end(1);
    }

    private double end(int side) {
        double square = FACTOR * FACTOR;
        double root = FACTOR * StrictMath.sqrt(share() * (1 - share()) / of + square / 4 / of / of);
        return (share() + square / 2 / of + side * root) / (1 + square / of);
    }
}
