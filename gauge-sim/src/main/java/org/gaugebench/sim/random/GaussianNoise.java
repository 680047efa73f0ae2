package org.gaugebench.sim.random;

/**
 * Standard normal deviates by the ziggurat method of Marsaglia and Tsang, "The ziggurat method for
 * generating random variables", Journal of Statistical Software 5 (2000) 8, with 256 layers on
 * {@link SplitMix64}.
 *
 * <p>One 64-bit draw serves a deviate in about 99 % of cases. Layer and position come from disjoint
 * bits: taking both from the same bits correlates them, as Doornik points out ("An improved
 * ziggurat method to generate normal random samples", 2005).
 *
 * <p>The tables come from {@link StrictMath}, so a seed gives the same deviates on any machine.
 */
public final class GaussianNoise {
    static final int LAYERS = 256;

    /** Start of the tail for 256 layers, as Marsaglia and Tsang print it. */
    static final double TAIL_START = 3.654152885361009;

    private static final double TWO_TO_53 = 0x1.0p53;

    /** Right edge of each layer; entry 0 is the width of the base if it were a rectangle. */
    static final double[] EDGES = edges();

    /** Height of the density at each edge, entry 0 unused. */
    private static final double[] HEIGHTS = heights();

    private static final double[] SCALES = scales();
    private static final long[] SURE_LIMITS = sureLimits();

    private final SplitMix64 source;

    /**
     * Starts a sequence.
     *
     * @param seed of the stream, from {@link SeedTree}
     */
    public GaussianNoise(long seed) {
        this(new SplitMix64(seed));
    }

    private GaussianNoise(SplitMix64 source) {
        this.source = source;
    }

    /** A sequence that will go on with the same deviates. */
    public GaussianNoise copy() {
        return new GaussianNoise(source.copy());
    }

    /** The next deviate: mean 0, standard deviation 1. */
    public double next() {
        long bits = source.nextLong();
        int layer = (int) bits & (LAYERS - 1);
        long position = bits >> 10;
        if (Math.abs(position) < SURE_LIMITS[layer]) {
            return position * SCALES[layer];
        }
        return nextAtTheEdge(layer, position);
    }

    private double nextAtTheEdge(int firstLayer, long firstPosition) {
        int layer = firstLayer;
        long position = firstPosition;
        while (true) {
            double value = position * SCALES[layer];
            if (Math.abs(position) < SURE_LIMITS[layer]) {
                return value;
            }
            if (layer == 0) {
                return position < 0 ? -tail() : tail();
            }
            double height =
                    HEIGHTS[layer] + source.nextDouble() * (HEIGHTS[layer + 1] - HEIGHTS[layer]);
            if (height < density(value)) {
                return value;
            }
            long bits = source.nextLong();
            layer = (int) bits & (LAYERS - 1);
            position = bits >> 10;
        }
    }

    /** Marsaglia's exact method beyond the tail's start; 1 - u is never zero. */
    private double tail() {
        double beyond;
        double check;
        do {
            beyond = -StrictMath.log(1 - source.nextDouble()) / TAIL_START;
            check = -StrictMath.log(1 - source.nextDouble());
        } while (check + check < beyond * beyond);
        return TAIL_START + beyond;
    }

    private static double density(double x) {
        return StrictMath.exp(-0.5 * x * x);
    }

    /**
     * Area of each layer: the base rectangle and the tail beyond it. The tail is the density times
     * Mills' ratio, whose continued fraction 1/(x + 1/(x + 2/(x + ...))) has converged to the last
     * bit after 100 terms at this x.
     */
    private static double layerArea() {
        double fraction = TAIL_START;
        for (int term = 100; term >= 1; term--) {
            fraction = TAIL_START + term / fraction;
        }
        return density(TAIL_START) * (TAIL_START + 1 / fraction);
    }

    private static double[] edges() {
        double area = layerArea();
        double[] edges = new double[LAYERS + 1];
        edges[0] = area / density(TAIL_START);
        edges[1] = TAIL_START;
        for (int i = 2; i < LAYERS; i++) {
            double height = density(edges[i - 1]) + area / edges[i - 1];
            edges[i] = StrictMath.sqrt(-2 * StrictMath.log(height));
        }
        edges[LAYERS] = 0;
        return edges;
    }

    private static double[] heights() {
        double[] heights = new double[LAYERS + 1];
        for (int i = 1; i <= LAYERS; i++) {
            heights[i] = density(EDGES[i]);
        }
        return heights;
    }

    private static double[] scales() {
        double[] scales = new double[LAYERS];
        for (int i = 0; i < LAYERS; i++) {
            scales[i] = EDGES[i] / TWO_TO_53;
        }
        return scales;
    }

    private static long[] sureLimits() {
        long[] limits = new long[LAYERS];
        for (int i = 0; i < LAYERS; i++) {
            limits[i] = (long) (EDGES[i + 1] / EDGES[i] * TWO_TO_53);
        }
        return limits;
    }
}
