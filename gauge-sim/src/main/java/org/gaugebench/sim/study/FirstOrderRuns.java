package org.gaugebench.sim.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.gaugebench.sim.scenario.StudySpec;
import org.gaugebench.sim.scenario.Tolerance;

/**
 * First-order propagation of a device: runs with one tolerance moved by its standard uncertainty
 * either way (JCGM 100, 5.1.3, note 2), and runs that differ in nothing but the seed.
 */
final class FirstOrderRuns {
    /** Runs that tell what chance does: its standard uncertainty is then known to 13 %. */
    static final int NOISE_RUNS = 30;

    private static final int RUNS_OF_A_TOLERANCE = 4;

    private final StudySpec spec;
    private final int moments;
    private final List<DeviceRow> noise;
    private final List<DeviceRow> moved;
    private final List<long[]> steps;

    private FirstOrderRuns(
            StudySpec spec,
            int moments,
            List<DeviceRow> noise,
            List<DeviceRow> moved,
            List<long[]> steps) {
        this.spec = spec;
        this.moments = moments;
        this.noise = noise;
        this.moved = moved;
        this.steps = steps;
    }

    /** How many runs it takes. */
    static int runs(StudySpec spec) {
        return NOISE_RUNS + RUNS_OF_A_TOLERANCE * spec.tolerances().size();
    }

    static FirstOrderRuns of(StudySpec spec, int caseIndex, SimulatedDevices devices)
            throws StudyException {
        long[] middle = DeviceDraws.middle(spec);
        List<long[]> steps = new ArrayList<>();
        long[] seeds = new long[runs(spec)];
        for (int i = 0; i < NOISE_RUNS; i++) {
            steps.add(middle);
            seeds[i] = DeviceDraws.seed(spec, -i);
        }
        Arrays.fill(seeds, NOISE_RUNS, seeds.length, seeds[0]);
        for (int i = 0; i < middle.length; i++) {
            Tolerance tolerance = spec.tolerances().get(i);
            Distribution it = DeviceDraws.distribution(tolerance);
            double u = it.standardUncertainty();
            double low = Math.max(it.lower(), it.mean() - 2 * u);
            double high = Math.min(it.upper(), it.mean() + 2 * u);
            boolean hasEnds = !Double.isInfinite(it.lower());
            steps.add(with(middle, i, it.mean() - u));
            steps.add(with(middle, i, it.mean() + u));
            steps.add(with(middle, i, hasEnds ? it.lower() : low));
            steps.add(with(middle, i, hasEnds ? it.upper() : high));
        }
        List<DeviceRow> rows = devices.chosen(caseIndex, steps, seeds);
        return new FirstOrderRuns(
                spec,
                rows.get(0).errors().length,
                rows.subList(0, NOISE_RUNS),
                rows.subList(NOISE_RUNS, rows.size()),
                steps.subList(NOISE_RUNS, steps.size()));
    }

    private static long[] with(long[] middle, int index, double value) {
        long[] steps = middle.clone();
        steps[index] = StrictMath.round(value);
        return steps;
    }

    /** What one standard uncertainty of a cause does at a moment; the last cause is the noise. */
    double part(int cause, int moment) {
        if (cause == spec.tolerances().size()) {
            return noise(moment).standardUncertainty();
        }
        int at = cause * RUNS_OF_A_TOLERANCE;
        double below = error(moved.get(at), moment);
        double above = error(moved.get(at + 1), moment);
        double distance = steps.get(at + 1)[cause] - steps.get(at)[cause];
        Distribution it = DeviceDraws.distribution(spec.tolerances().get(cause));
        return (above - below) / distance * it.standardUncertainty();
    }

    private Sample noise(int moment) {
        double[] errors = noise.stream().mapToDouble(it -> error(it, moment)).toArray();
        return Sample.of(errors, 0, errors.length);
    }

    /** The error with everything at its best estimate. */
    double estimate(int moment) {
        return noise(moment).mean();
    }

    double uncertainty(int moment) {
        double variance = 0;
        for (int cause = 0; cause <= spec.tolerances().size(); cause++) {
            double part = part(cause, moment);
            variance += part * part;
        }
        return StrictMath.sqrt(variance);
    }

    /** A cause with its shares of first order; those of the drawn devices come from them. */
    Cause cause(int cause, double[] drawnShare) {
        boolean isNoise = cause == spec.tolerances().size();
        double[] shares = new double[moments];
        for (int moment = 0; moment < moments; moment++) {
            double part = part(cause, moment);
            double whole = uncertainty(moment);
            shares[moment] = part * part / (whole * whole);
        }
        int at = cause * RUNS_OF_A_TOLERANCE;
        int last = moments - 1;
        return new Cause(
                isNoise ? Cause.NOISE : spec.tolerances().get(cause).address(),
                part(cause, last),
                shares,
                drawnShare,
                isNoise ? Double.NaN : error(moved.get(at + 2), last),
                isNoise ? Double.NaN : error(moved.get(at + 3), last));
    }

    private static double error(DeviceRow row, int moment) {
        long error = row.errors()[moment];
        return error == DeviceRow.NONE ? Double.NaN : error;
    }
}
