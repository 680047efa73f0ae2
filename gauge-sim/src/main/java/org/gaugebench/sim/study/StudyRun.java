package org.gaugebench.sim.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.gaugebench.sim.scenario.StudySpec;
import org.jspecify.annotations.Nullable;

/**
 * Carries a study out: draws devices block by block until the limits are known, and puts the first
 * order beside them. All sums go in order of the devices' numbers, so that neither threads nor
 * shards can be seen in a figure.
 */
public final class StudyRun {
    /** Blocks of a study that does not stop by itself: enough to tell how well it is known. */
    private static final int BLOCKS = 10;

    private static final int SMALLEST_BLOCK = 20;

    /** Two blocks may agree by luck and end the draws too early. */
    private static final int FEWEST_BLOCKS = 5;

    /** Fewer errors than this in a block have no limits to speak of. */
    private static final int FEWEST_KNOWN = 10;

    private final StudySpec spec;
    private final double coverage;
    private final DeviceSource source;
    private final SimulatedDevices simulated;

    private StudyRun(StudySpec spec, DeviceSource source, SimulatedDevices simulated) {
        this.spec = spec;
        this.coverage = spec.coveragePartsPerMillion() / 1e6;
        this.source = source;
        this.simulated = simulated;
    }

    /**
     * Carries it out.
     *
     * @param spec what is asked
     * @param source of the drawn devices
     * @param simulated runs the others, those of the first order
     * @return the same for any source that has the same devices
     * @throws StudyException if a device cannot be had
     */
    public static StudyResult of(StudySpec spec, DeviceSource source, SimulatedDevices simulated)
            throws StudyException {
        StudyRun run = new StudyRun(spec, source, simulated);
        List<CaseResult> cases = new ArrayList<>();
        for (int i = 0; i < spec.cases().size(); i++) {
            cases.add(run.carryOut(i));
        }
        return new StudyResult(spec, List.copyOf(cases));
    }

    private CaseResult carryOut(int caseIndex) throws StudyException {
        StudySpec.Case chosen = spec.cases().get(caseIndex);
        // First, because a scenario that refuses an end of a tolerance refuses it at once.
        FirstOrderRuns first = FirstOrderRuns.of(spec, caseIndex, simulated);
        long[] times = DeviceRun.moments(spec, chosen.durationMillis());
        Blocks[] blocks = new Blocks[times.length];
        Arrays.setAll(blocks, i -> new Blocks());
        int block =
                spec.stop().adaptive()
                        ? spec.stop().block()
                        : Math.max(SMALLEST_BLOCK, spec.devices() / BLOCKS);
        List<DeviceRow> rows = new ArrayList<>();
        boolean enough = false;
        while (!enough && rows.size() < spec.devices()) {
            int from = rows.size();
            int to = Math.min(from + block, spec.devices());
            rows.addAll(source.rows(caseIndex, from + 1, to));
            if (to - from == block) {
                for (int i = 0; i < times.length; i++) {
                    addBlock(blocks[i], errors(rows, i, from, to));
                }
                enough =
                        spec.stop().adaptive()
                                && to >= FEWEST_BLOCKS * block
                                && knownTo(blocks) <= tolerance(blocks);
            }
        }
        double tolerance = tolerance(blocks);
        List<Moment> moments = new ArrayList<>();
        for (int i = 0; i < times.length; i++) {
            moments.add(moment(i, times[i], rows, first, blocks[i], tolerance));
        }
        return new CaseResult(
                chosen.name(),
                chosen.durationMillis(),
                List.copyOf(rows),
                List.copyOf(moments),
                causes(rows, first, times.length),
                block,
                tolerance,
                knownTo(blocks),
                worst(rows),
                inside(rows));
    }

    private void addBlock(Blocks blocks, double[] errors) {
        double[] known = known(errors);
        if (known.length >= FEWEST_KNOWN) {
            double[] sorted = known.clone();
            Arrays.sort(sorted);
            blocks.add(
                    Sample.of(known, 0, known.length),
                    CoverageInterval.symmetric(sorted, coverage));
        }
    }

    /** Twice the standard error of the worst known figure of all moments. */
    private static double knownTo(Blocks[] blocks) {
        double worst = 0;
        boolean any = false;
        for (Blocks each : blocks) {
            if (each.count() > 0) {
                any = true;
                for (double error : each.twiceStandardErrors()) {
                    worst = Math.max(worst, error);
                }
            }
        }
        return any ? worst : Double.POSITIVE_INFINITY;
    }

    private double tolerance(Blocks[] blocks) {
        if (spec.stop().knownTo() > 0) {
            return spec.stop().knownTo();
        }
        double largest = 0;
        for (Blocks each : blocks) {
            largest = Math.max(largest, each.meanUncertainty());
        }
        return NumericalTolerance.of(largest, spec.stop().digits());
    }

    private static double[] errors(List<DeviceRow> rows, int moment, int from, int to) {
        double[] errors = new double[to - from];
        for (int i = from; i < to; i++) {
            long error = rows.get(i).errors()[moment];
            errors[i - from] = error == DeviceRow.NONE ? Double.NaN : error;
        }
        return errors;
    }

    private static double[] known(double[] errors) {
        return Arrays.stream(errors).filter(it -> !Double.isNaN(it)).toArray();
    }

    private Moment moment(
            int index,
            long atMillis,
            List<DeviceRow> rows,
            FirstOrderRuns first,
            Blocks blocks,
            double tolerance) {
        double[] known = known(errors(rows, index, 0, rows.size()));
        double estimate = first.estimate(index);
        double uncertainty = first.uncertainty(index);
        double half = StudentT.coverageFactor(coverage, Double.POSITIVE_INFINITY) * uncertainty;
        CoverageInterval firstLimits = new CoverageInterval(estimate - half, estimate + half);
        double[] percentiles = new double[Moment.LARGEST + 1];
        Arrays.fill(percentiles, Double.NaN);
        if (known.length > 1) {
            double[] sorted = known.clone();
            Arrays.sort(sorted);
            CoverageInterval limits = CoverageInterval.symmetric(sorted, coverage);
            percentiles[Moment.SMALLEST] = sorted[0];
            percentiles[Moment.LOWER] = limits.lower();
            percentiles[Moment.QUARTER] = quantile(sorted, 1);
            percentiles[Moment.MEDIAN] = quantile(sorted, 2);
            percentiles[Moment.THREE_QUARTERS] = quantile(sorted, 3);
            percentiles[Moment.UPPER] = limits.upper();
            percentiles[Moment.LARGEST] = sorted[sorted.length - 1];
        }
        double[] doubts = blocks.twiceStandardErrors();
        return new Moment(
                atMillis,
                Sample.of(known, 0, known.length),
                percentiles,
                estimate,
                uncertainty,
                firstLimits,
                Validation.of(
                        firstLimits,
                        new CoverageInterval(percentiles[Moment.LOWER], percentiles[Moment.UPPER]),
                        tolerance,
                        doubts[2],
                        doubts[3]));
    }

    /** The value below which some quarters of all lie. */
    private static double quantile(double[] sorted, int quarters) {
        return sorted[Math.min(sorted.length - 1, sorted.length * quarters / 4)];
    }

    private List<Cause> causes(List<DeviceRow> rows, FirstOrderRuns first, int moments) {
        int tolerances = spec.tolerances().size();
        double[][] drawn = new double[tolerances + 1][moments];
        Arrays.fill(drawn[tolerances], Double.NaN);
        for (int cause = 0; cause < tolerances; cause++) {
            int[] order = Shares.order(rows, cause);
            for (int moment = 0; moment < moments; moment++) {
                drawn[cause][moment] = Shares.of(errors(rows, moment, 0, rows.size()), order);
            }
        }
        List<Cause> causes = new ArrayList<>();
        for (int cause = 0; cause <= tolerances; cause++) {
            causes.add(first.cause(cause, drawn[cause]));
        }
        return List.copyOf(causes);
    }

    private static @Nullable DeviceRow worst(List<DeviceRow> rows) {
        DeviceRow worst = null;
        for (DeviceRow row : rows) {
            if (row.worst() != DeviceRow.NONE
                    && (worst == null || Math.abs(row.worst()) > Math.abs(worst.worst()))) {
                worst = row;
            }
        }
        return worst;
    }

    private Doubt inside(List<DeviceRow> rows) {
        int inside = 0;
        for (DeviceRow row : rows) {
            boolean known = row.worst() != DeviceRow.NONE;
            inside += known && Math.abs(row.worst()) <= spec.claim().within() ? 1 : 0;
        }
        return new Doubt(inside, rows.size());
    }
}
