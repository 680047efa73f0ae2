package org.gaugebench.sim.judge;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Scenario;

/**
 * Two gauges on one truth, held against each other register by register at every tick. Both may
 * stand in one scenario, or each in its own; the truth has to be the same to the last bit.
 */
public final class GaugeComparison {
    private static final Register[] REGISTERS = Register.values();

    private final long[] firstMillis = new long[Registers.COUNT];
    private final long[] firstA = new long[Registers.COUNT];
    private final long[] firstB = new long[Registers.COUNT];
    private final long[] worst = new long[Registers.COUNT];
    private final long[] worstMillis = new long[Registers.COUNT];
    private final long[] counts = new long[Registers.COUNT];
    private final boolean[] usedByA = new boolean[Registers.COUNT];
    private final boolean[] usedByB = new boolean[Registers.COUNT];
    private long moments;
    private long endMillis;

    private GaugeComparison() {}

    /**
     * One side.
     *
     * @param scenario that has the gauge
     * @param seed of every random stream
     * @param gauge its place among the scenario's gauges
     */
    public record Side(Scenario scenario, long seed, int gauge) {
        /** File and gauge, for people. */
        public String name() {
            return scenario.file() + "#" + scenario.gauges().get(gauge).name();
        }

        boolean isCore() {
            return scenario.gauges().get(gauge).kind() == GaugeSpec.Kind.CORE;
        }
    }

    /**
     * Runs both and compares them.
     *
     * @param a one side
     * @param b the other
     * @return where and how far they differ
     * @throws ComparisonException if the truths or the ticks are not the same
     */
    public static Comparison of(Side a, Side b) throws ComparisonException {
        GaugeComparison comparison = new GaugeComparison();
        try (RegisterStream left = new RegisterStream(a.scenario(), a.seed(), a.gauge());
                RegisterStream right = new RegisterStream(b.scenario(), b.seed(), b.gauge())) {
            comparison.run(left, right);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new ComparisonException("the comparison was interrupted");
        }
        return new Comparison(
                a.name(),
                b.name(),
                comparison.moments,
                comparison.endMillis,
                comparison.divergences(a.isCore(), b.isCore()));
    }

    private void run(RegisterStream left, RegisterStream right)
            throws ComparisonException, InterruptedException {
        while (true) {
            boolean leftGoesOn = left.next();
            boolean rightGoesOn = right.next();
            if (!leftGoesOn && !rightGoesOn) {
                return;
            }
            if (leftGoesOn != rightGoesOn) {
                throw new ComparisonException(
                        "one run ends at %s and the other goes on; give both the same duration"
                                .formatted(Figures.moment(endMillis)));
            }
            check(left, right);
            look(left, right);
        }
    }

    private static void check(RegisterStream left, RegisterStream right)
            throws ComparisonException {
        long time = left.cell(RegisterStream.TIME);
        if (time != right.cell(RegisterStream.TIME)) {
            throw new ComparisonException("the ticks are not of the same length; give both one");
        }
        if (left.cell(RegisterStream.TRUTH) != right.cell(RegisterStream.TRUTH)) {
            throw new ComparisonException(
                    "the true charge differs from %s on: these are not two gauges on one truth"
                                    .formatted(Figures.moment(time))
                            + "; battery, loads, chargers, timeline and seed have to be the same");
        }
    }

    private void look(RegisterStream left, RegisterStream right) {
        moments++;
        endMillis = left.cell(RegisterStream.TIME);
        for (int i = 0; i < Registers.COUNT; i++) {
            long a = left.cell(RegisterStream.FIRST_REGISTER + i);
            long b = right.cell(RegisterStream.FIRST_REGISTER + i);
            usedByA[i] |= a != 0;
            usedByB[i] |= b != 0;
            if (a != b) {
                differs(i, a, b);
            }
        }
    }

    private void differs(int i, long a, long b) {
        if (counts[i] == 0) {
            firstMillis[i] = endMillis;
            firstA[i] = a;
            firstB[i] = b;
        }
        counts[i]++;
        long difference = b - a;
        if (Math.abs(difference) > Math.abs(worst[i])) {
            worst[i] = difference;
            worstMillis[i] = endMillis;
        }
    }

    /** A register that stays zero in a gauge that is not the core is one that it does not have. */
    private List<Divergence> divergences(boolean coreA, boolean coreB) {
        List<Divergence> list = new ArrayList<>();
        for (int i = 0; i < Registers.COUNT; i++) {
            boolean inBoth = (coreA || usedByA[i]) && (coreB || usedByB[i]);
            if (counts[i] > 0 && inBoth) {
                list.add(
                        new Divergence(
                                REGISTERS[i].name(),
                                REGISTERS[i].unit(),
                                firstMillis[i],
                                Long.toString(firstA[i]),
                                Long.toString(firstB[i]),
                                BigDecimal.valueOf(worst[i]),
                                worstMillis[i],
                                counts[i]));
            }
        }
        list.sort(Comparator.comparingLong(Divergence::firstMillis));
        return list;
    }
}
