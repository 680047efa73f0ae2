package org.gaugebench.sim.study;

import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.StudySpec;
import org.gaugebench.sim.scenario.Tolerance;

/**
 * What a device is made of, from its number alone: who runs it, when, and beside which others does
 * not matter. Each tolerance has a stream of its own, so that another one in the file shifts none.
 */
public final class DeviceDraws {
    /** A seed in a scenario file has 62 bits. */
    private static final int SPARE_BITS = 2;

    /** Draws beyond what a scenario can hold come once in 16,000; eight in a row never. */
    private static final int MOST_TRIES = 8;

    private DeviceDraws() {}

    private static SeedTree tree(StudySpec spec, int number) {
        return new SeedTree(new SeedTree(spec.seed()).seedOf("device/" + number));
    }

    /** The seed of a device's run: its noise and its weather. */
    public static long seed(StudySpec spec, int number) {
        return tree(spec, number).seedOf("run") >> SPARE_BITS;
    }

    /** Its value of each tolerance, in steps, rounded to the nearest one. */
    public static long[] steps(StudySpec spec, int number) {
        SeedTree tree = tree(spec, number);
        long[] steps = new long[spec.tolerances().size()];
        for (int i = 0; i < steps.length; i++) {
            Tolerance tolerance = spec.tolerances().get(i);
            Distribution.Draws draws =
                    distribution(tolerance).draws(tree.seedOf("tolerance/" + tolerance.address()));
            steps[i] = drawn(tolerance, draws);
        }
        return steps;
    }

    private static long drawn(Tolerance tolerance, Distribution.Draws draws) {
        long step = tolerance.minimum();
        for (int i = 0; i < MOST_TRIES; i++) {
            step = StrictMath.round(draws.next());
            if (step >= tolerance.minimum() && step <= tolerance.maximum()) {
                return step;
            }
        }
        return Math.min(Math.max(step, tolerance.minimum()), tolerance.maximum());
    }

    /** A tolerance as a distribution over steps. */
    public static Distribution distribution(Tolerance it) {
        double lower = it.lower();
        double upper = it.upper();
        return switch (it.kind()) {
            case RECTANGULAR -> new Distribution.Rectangular(lower, upper);
            case NORMAL -> new Distribution.Normal(lower, upper - lower);
            case TRIANGULAR -> new Distribution.Triangular(lower, upper);
            case ARCSINE -> new Distribution.Arcsine(lower, upper);
            case TRAPEZOIDAL ->
                    new Distribution.Trapezoidal(lower, upper, it.topPartsPerMillion() / 1e6);
        };
    }

    /** Every tolerance at its best estimate. */
    public static long[] middle(StudySpec spec) {
        return spec.tolerances().stream()
                .mapToLong(it -> StrictMath.round(distribution(it).mean()))
                .toArray();
    }
}
