package org.gaugebench.core.band;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** The band at every corner of the settings, against decimals without a width. */
class ErrorBandProperties {
    private static final MathContext DIGITS = new MathContext(60, RoundingMode.HALF_EVEN);
    private static final long LARGEST = 1L << 61;
    private static final long LONGEST = 1L << 39;

    /** The widest converter step: 12 bits, 1 V full scale, 2,000 A at 10 mV. */
    private static final int WIDEST_STEP_MICROAMPS = 98_000_000;

    private static final Setting[] BOUNDS = {
        Setting.CAPACITY,
        Setting.COULOMBIC_EFFICIENCY,
        Setting.OFFSET_BOUND,
        Setting.GAIN_BOUND,
        Setting.ASYMMETRY_BOUND,
        Setting.EFFICIENCY_BOUND,
        Setting.SELF_DISCHARGE_BOUND,
        Setting.CAPACITY_BOUND,
        Setting.UNMEASURED_BOUND,
        Setting.SHUNT_RATED_CURRENT
    };

    /** Seven sums in the order of {@link ErrorBand#resume}. */
    record Sums(long residual, long millis, long net, long gross, long in, long gap, long warm) {
        ErrorBand band(GaugeSettings settings, long step) {
            ErrorBand band = new ErrorBand(settings, step);
            band.resume(residual, millis, net, gross, in, gap, warm);
            return band;
        }

        Sums noMoreThan(long most) {
            return new Sums(
                    residual,
                    millis,
                    Math.max(net, -most),
                    Math.min(gross, most),
                    Math.min(in, most),
                    Math.min(gap, most),
                    warm);
        }

        Sums plus(int which, long more) {
            return new Sums(
                    residual + (which == 0 ? more % 1_000 : 0),
                    millis + (which == 1 ? more : 0),
                    net - (which == 2 ? more : 0),
                    gross + (which == 3 ? more : 0),
                    in + (which == 4 ? more : 0),
                    gap + (which == 5 ? more : 0),
                    warm + (which == 6 ? more : 0));
        }
    }

    @Provide
    Arbitrary<GaugeSettings> settings() {
        Arbitrary<Long> parts = Arbitraries.longs().between(0, 1_000_000);
        return parts.list()
                .ofSize(BOUNDS.length)
                .map(
                        list -> {
                            GaugeSettings.Builder b = GaugeSettings.builder();
                            for (int i = 0; i < BOUNDS.length; i++) {
                                long range = BOUNDS[i].maximum() - BOUNDS[i].minimum();
                                b.set(
                                        BOUNDS[i],
                                        BOUNDS[i].minimum() + range * list.get(i) / 1_000_000);
                            }
                            return b.build();
                        });
    }

    @Provide
    Arbitrary<Sums> sums() {
        Arbitrary<Long> charge =
                Arbitraries.oneOf(
                        Arbitraries.longs().between(0, LARGEST),
                        Arbitraries.longs().between(0, 1_000_000_000_000_000L));
        return Combinators.combine(
                        Arbitraries.longs().between(0, 999_999),
                        Arbitraries.longs().between(0, LONGEST),
                        charge,
                        charge,
                        charge,
                        charge,
                        Arbitraries.longs().between(0, LONGEST << 8))
                .as((r, t, n, g, i, gap, w) -> new Sums(r, t, -n, g, i, gap, w));
    }

    @Property
    void theBandIsTheExactOneRoundedUp(
            @ForAll("settings") GaugeSettings settings,
            @ForAll("sums") Sums sums,
            @ForAll @IntRange(min = 0, max = WIDEST_STEP_MICROAMPS) int step,
            @ForAll boolean putIn,
            @ForAll @IntRange(min = 0, max = 1_000_000) int charge) {
        Sums s =
                putIn
                        ? new Sums(
                                sums.residual,
                                sums.millis,
                                -sums.net,
                                sums.gross,
                                sums.in,
                                sums.gap,
                                sums.warm)
                        : sums;
        ErrorBand band = s.band(settings, step);
        long nanocoulombs = settings.get(Setting.CAPACITY) * 3_600 * charge;
        band.update(nanocoulombs);
        double high = exactHigh(settings, s, (step + 1) / 2, charge);
        double low = high + flow(settings, settings.get(Setting.UNMEASURED_BOUND), s.millis);
        assertClose(Math.min(high, 1e6), band.highSidePartsPerMillion());
        assertClose(Math.min(low, 1e6), band.lowSidePartsPerMillion());
        assertTrue(band.lowSidePartsPerMillion() >= band.highSidePartsPerMillion());
    }

    @Property
    void aLargerCapacityNeverNarrowsTheBand(
            @ForAll("settings") GaugeSettings settings,
            @ForAll("sums") Sums sums,
            @ForAll @IntRange(min = 0, max = WIDEST_STEP_MICROAMPS) int step,
            @ForAll @IntRange(min = 0, max = 1_000_000) int charge,
            @ForAll @LongRange(min = 100, max = 10_000_000) long milliampHours) {
        long before = settings.get(Setting.CAPACITY);
        long after = Math.max(before, milliampHours);
        // Saturated, two sums no longer differ by what they differed by.
        Sums s = sums.noMoreThan(LARGEST / after * before);
        ErrorBand old = s.band(settings, step);
        old.update(before * 3_600 * charge);
        GaugeSettings changed = settings.toBuilder().set(Setting.CAPACITY, after).build();
        ErrorBand band = s.band(changed, step);
        band.capacityChanged(before, after);
        band.update(after * 3_600 * charge);
        // Offset, half step and change of the count are each rounded up by as much as 1 ppm under
        // the old capacity and counted 1.155 times; current past the shunt is rounded up once.
        int rounding = 5;
        assertTrue(band.lowSidePartsPerMillion() >= old.lowSidePartsPerMillion() - rounding);
        assertTrue(band.highSidePartsPerMillion() >= old.highSidePartsPerMillion() - rounding);
    }

    @Property
    void aSmallerCapacityLeavesTheSums(
            @ForAll("settings") GaugeSettings settings, @ForAll("sums") Sums sums) {
        ErrorBand band = sums.band(settings, 0);
        band.capacityChanged(settings.get(Setting.CAPACITY) + 1, settings.get(Setting.CAPACITY));
        band.capacityChanged(0, settings.get(Setting.CAPACITY));
        assertEquals(sums.gap, band.gapNanocoulombs());
        assertEquals(sums.net, band.netNanocoulombs());
        assertEquals(sums.gross, band.grossNanocoulombs());
        assertEquals(sums.in, band.inNanocoulombs());
    }

    /** Never narrower; wider by the roundings up, each within a ppm, and by 1.155 for 1.1547. */
    private static void assertClose(double exact, int side) {
        assertTrue(side >= exact - 1e-3, side + " is narrower than " + exact);
        double most = exact * 1.000_3 + 2 * BandRig.ROUNDING;
        assertTrue(side <= most && side <= 1_000_000, side + " is wider than " + most);
    }

    private static double flow(GaugeSettings settings, long microamps, long millis) {
        return Math.min(1e6, parts(settings, microamps).doubleValue() * millis);
    }

    private static BigDecimal parts(GaugeSettings settings, long nanocoulombs) {
        return BigDecimal.valueOf(nanocoulombs)
                .divide(BigDecimal.valueOf(settings.get(Setting.CAPACITY) * 3_600), DIGITS);
    }

    private static double exactHigh(GaugeSettings g, Sums s, long halfStep, int charge) {
        double loss = (1_000_000 - g.get(Setting.COULOMBIC_EFFICIENCY)) / 1e6;
        double gross = parts(g, s.gross).doubleValue();
        double change =
                parts(g, s.net)
                        .subtract(parts(g, s.in).multiply(BigDecimal.valueOf(loss)))
                        .abs()
                        .doubleValue();
        double moved = Math.max(change, Math.min(1_000_000 - charge, gross));
        double[] terms = {
            s.residual,
            flow(g, g.get(Setting.OFFSET_BOUND), s.millis),
            flow(g, halfStep, s.millis),
            g.get(Setting.GAIN_BOUND) / 1e6 * change,
            g.get(Setting.ASYMMETRY_BOUND) / 1e6 * gross,
            g.get(Setting.EFFICIENCY_BOUND) / 1e6 * parts(g, s.in).doubleValue(),
            g.get(Setting.SELF_DISCHARGE_BOUND) * (s.warm / 256.0) / 2_592_000_000.0,
            g.get(Setting.CAPACITY_BOUND) / 1e6 * moved
        };
        double squares = 0;
        for (double term : terms) {
            squares += Math.min(term, 1e6) * Math.min(term, 1e6);
        }
        return BandRig.COVERAGE * Math.sqrt(squares) + Math.min(1e6, parts(g, s.gap).doubleValue());
    }

    /** More of any sum, net counted downwards as after a full anchor, never narrows a side. */
    @Property
    void moreOfAnySumNeverNarrowsTheBand(
            @ForAll("settings") GaugeSettings settings,
            @ForAll("sums") Sums sums,
            @ForAll @IntRange(min = 0, max = 6) int which,
            @ForAll @LongRange(min = 0, max = 1_000_000_000_000L) long more,
            @ForAll @IntRange(min = 0, max = 1_000_000) int charge) {
        long nanocoulombs = settings.get(Setting.CAPACITY) * 3_600 * charge;
        ErrorBand before = sums.band(settings, 1_000);
        ErrorBand after = sums.plus(which, more).band(settings, 1_000);
        before.update(nanocoulombs);
        after.update(nanocoulombs);
        assertTrue(after.lowSidePartsPerMillion() >= before.lowSidePartsPerMillion());
        assertTrue(after.highSidePartsPerMillion() >= before.highSidePartsPerMillion());
    }

    /** However much is added, the sums stop and the band is the whole. */
    @Property
    void sumsSaturateAndNeverTurnRound(
            @ForAll("settings") GaugeSettings settings,
            @ForAll @LongRange(min = 1L << 59, max = LARGEST) long charge,
            @ForAll @IntRange(min = 16, max = 16_384) int warmth) {
        ErrorBand band = new ErrorBand(settings, WIDEST_STEP_MICROAMPS);
        band.anchor(0);
        for (int i = 0; i < 20; i++) {
            band.add(LONGEST / 8, charge, charge / 2, warmth);
            band.addUnmeasured(LONGEST);
            band.addOffTime(Long.MAX_VALUE, 10_000_000_000L);
            band.update(0);
            assertEquals(1_000_000, band.highSidePartsPerMillion());
            assertEquals(1_000_000, band.lowSidePartsPerMillion());
        }
        assertEquals(LONGEST, band.millis());
        assertEquals(1L << 62, band.grossNanocoulombs());
        assertEquals(1L << 62, band.netNanocoulombs());
        assertEquals(1L << 62, band.inNanocoulombs());
        assertEquals(1L << 62, band.gapNanocoulombs());
        assertEquals(LONGEST << 8, band.warmMillisQ8());
    }
}
