package org.gaugebench.core.band;

import java.util.SplittableRandom;
import org.gaugebench.core.charge.ChargeAccumulator;
import org.gaugebench.core.charge.SelfDischarge;
import org.gaugebench.core.charge.StateOfCharge;
import org.gaugebench.core.sense.CurrentSense;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/**
 * One gauge whose every error is drawn from the rectangle of its bound, and beside it the truth in
 * floating point. Count and band are the core's own code, fed with one converted sample a minute.
 *
 * <p>The battery is known at hour 0 to its anchor's residual. It is then cycled by 40 Ah a day
 * through 100 Ah at about 60 %: 12 h of discharge from 80 to 40 %, 12 h of charge that bring the
 * count back. The truth drifts, and stops at empty and at full as a battery does; where the
 * anchor's residual puts it above 100 % it starts there, so that the residual has two sides, and is
 * held to 100 % from the time at which it has come down to that.
 */
final class CoverageDevice {
    /** Days with a line in the table. */
    static final int[] DAYS = {1, 7, 14, 30};

    private static final int MINUTES_PER_HOUR = 60;
    private static final int MINUTES_PER_DAY = 1_440;
    private static final int MINUTE_MILLIS = 60_000;
    private static final double MINUTES_PER_MONTH = 43_200;
    private static final double NANOCOULOMBS_PER_MICROAMP_MINUTE = 60_000;
    private static final int WHOLE = 1_000_000;
    private static final double SWING = 0.4;

    // The core.
    private final CurrentSense sense;
    private final ChargeAccumulator count;
    private final SelfDischarge selfDischarge;
    private final StateBand band;
    private final long capacityNanocoulombs;

    // The truth.
    private final double trueCapacityNanocoulombs;
    private final double trueEfficiency;
    private final double lostNanocoulombsPerMinute;
    private final double dischargeMicroamps;
    private final double chargeMicroamps;
    private final int dischargeCounts;
    private final int chargeCounts;
    private double trueNanocoulombs;

    // The verdict.
    private final double[] errors = new double[DAYS.length];
    private final double[] lowSides = new double[DAYS.length];
    private final double[] highSides = new double[DAYS.length];
    private boolean alwaysInside = true;
    private int unknownFromMinute = Integer.MAX_VALUE;

    /**
     * Draws a device.
     *
     * @param settings the bounds, and what the gauge believes
     * @param start where the anchor sets the count: full, or the state of the empty anchor
     * @param random this device's own
     */
    CoverageDevice(GaugeSettings settings, Start start, SplittableRandom random) {
        capacityNanocoulombs = settings.get(Setting.CAPACITY) * 3_600_000_000L;
        long efficiencyPpm = settings.get(Setting.COULOMBIC_EFFICIENCY);
        sense = new CurrentSense(settings);
        count = new ChargeAccumulator(capacityNanocoulombs, efficiencyPpm);
        selfDischarge =
                new SelfDischarge(settings.get(Setting.SELF_DISCHARGE), capacityNanocoulombs);
        band = new StateBand(settings, sense.microampsFromCounts(1));

        double capacity = capacityNanocoulombs;
        double offset = drawn(random, settings, Setting.OFFSET_BOUND);
        double gain = drawn(random, settings, Setting.GAIN_BOUND) / WHOLE;
        double asymmetry = drawn(random, settings, Setting.ASYMMETRY_BOUND) / WHOLE;
        double capacityError = drawn(random, settings, Setting.CAPACITY_BOUND) / WHOLE;
        trueCapacityNanocoulombs = capacity * (1 + capacityError);
        trueEfficiency =
                (efficiencyPpm + drawn(random, settings, Setting.EFFICIENCY_BOUND)) / WHOLE;
        double monthly =
                (settings.get(Setting.SELF_DISCHARGE)
                                + drawn(random, settings, Setting.SELF_DISCHARGE_BOUND))
                        / WHOLE;
        // One-sided: past the shunt nothing flows in.
        double unmeasured = settings.get(Setting.UNMEASURED_BOUND) * random.nextDouble();
        lostNanocoulombsPerMinute =
                monthly / MINUTES_PER_MONTH * trueCapacityNanocoulombs
                        + unmeasured * NANOCOULOMBS_PER_MICROAMP_MINUTE;
        double residual = drawn(random, settings, start.residual) / WHOLE;
        double declared = start.isFull() ? 1 : settings.get(Setting.EMPTY_STATE) / (double) WHOLE;
        trueNanocoulombs = trueCapacityNanocoulombs * (declared + residual);

        // What the gauge must read for its count to swing by 40 % in 12 h; the truth follows.
        double outMicroamps = capacity * SWING / 12 / 3_600_000;
        double step = microampsPerCount(settings);
        dischargeCounts = (int) Math.round(-outMicroamps / step);
        chargeCounts = (int) Math.round(outMicroamps * WHOLE / efficiencyPpm / step);
        dischargeMicroamps = truth(dischargeCounts, step, gain - asymmetry, offset, random);
        chargeMicroamps = truth(chargeCounts, step, gain + asymmetry, offset, random);
        count.setTo((long) (capacity * declared), start.isFull());
        band.anchor(settings.get(start.residual));
    }

    /** Rectangular, from minus the bound to the bound. */
    private static double drawn(SplittableRandom random, GaugeSettings settings, Setting bound) {
        return settings.get(bound) * (2 * random.nextDouble() - 1);
    }

    private static double microampsPerCount(GaugeSettings settings) {
        double fullScaleMicroamps =
                settings.get(Setting.SHUNT_FULL_SCALE)
                        * (settings.get(Setting.SHUNT_RATED_CURRENT) * 1_000.0)
                        / settings.get(Setting.SHUNT_RATED_DROP);
        return fullScaleMicroamps / (1L << (settings.get(Setting.SHUNT_CONVERTER_BITS) - 1));
    }

    /** The current that the converter reads as these counts, from anywhere within their step. */
    private static double truth(
            int counts, double step, double gain, double offset, SplittableRandom random) {
        return ((counts + random.nextDouble() - 0.5) * step - offset) / (1 + gain);
    }

    /** Runs 30 days, or until the band says "unknown": from there on nothing is claimed. */
    void run() {
        int discharge = sense.microampsFromCounts(dischargeCounts);
        int charge = sense.microampsFromCounts(chargeCounts);
        int days = DAYS[DAYS.length - 1];
        int line = 0;
        boolean out = count.chargeNanocoulombs() > capacityNanocoulombs / 2;
        for (int minute = 1; minute <= days * MINUTES_PER_DAY; minute++) {
            long shown = count.settledNanocoulombs();
            if (shown >= capacityNanocoulombs / 100 * 80) {
                out = true;
            } else if (shown <= capacityNanocoulombs / 100 * 40) {
                out = false;
            }
            step(out ? discharge : charge, out ? dischargeMicroamps : chargeMicroamps);
            if (minute % MINUTES_PER_HOUR != 0) {
                continue;
            }
            judge();
            if (band.isUnknown()) {
                unknownFromMinute = minute;
                return;
            }
            if (minute == DAYS[line] * MINUTES_PER_DAY) {
                errors[line] = error();
                lowSides[line] = band.sums().lowSidePartsPerMillion();
                highSides[line] = band.sums().highSidePartsPerMillion();
                line++;
            }
        }
    }

    private void step(int readMicroamps, double trueMicroamps) {
        long inBefore = count.inNanocoulombs();
        long outBefore = count.outNanocoulombs();
        count.add(readMicroamps, MINUTE_MILLIS);
        int warmth = SelfDischarge.WARMTH_AT_20_CELSIUS_Q8;
        count.settleMinute(selfDischarge.minuteNanocoulombs(warmth));
        band.add(
                MINUTE_MILLIS,
                count.inNanocoulombs() - inBefore,
                count.outNanocoulombs() - outBefore,
                warmth);
        double moved = trueMicroamps * NANOCOULOMBS_PER_MICROAMP_MINUTE;
        double stored = trueMicroamps > 0 ? moved * trueEfficiency : moved;
        double most = Math.max(trueCapacityNanocoulombs, trueNanocoulombs);
        double next = trueNanocoulombs + stored - lostNanocoulombsPerMinute;
        trueNanocoulombs = Math.max(0, Math.min(most, next));
    }

    private void judge() {
        band.update(shownPartsPerMillion(), count.chargeNanocoulombs());
        double truth = truePartsPerMillion();
        alwaysInside &=
                band.isUnknown()
                        || (truth >= band.lowerEdgePartsPerMillion()
                                && truth <= band.upperEdgePartsPerMillion());
    }

    private int shownPartsPerMillion() {
        return StateOfCharge.partsPerMillion(count.chargeNanocoulombs(), capacityNanocoulombs);
    }

    private double truePartsPerMillion() {
        return trueNanocoulombs / trueCapacityNanocoulombs * WHOLE;
    }

    private double error() {
        return truePartsPerMillion() - shownPartsPerMillion();
    }

    /** Whether the band claimed anything on that day of {@link #DAYS}. */
    boolean isKnown(int line) {
        return unknownFromMinute > DAYS[line] * MINUTES_PER_DAY;
    }

    /** Truth minus count on that day, ppm. */
    double error(int line) {
        return errors[line];
    }

    double lowSide(int line) {
        return lowSides[line];
    }

    double highSide(int line) {
        return highSides[line];
    }

    /** Whether the truth was inside at every whole hour at which the band claimed anything. */
    boolean isAlwaysInside() {
        return alwaysInside;
    }

    /** The anchor at hour 0. */
    enum Start {
        /** Proven full by the taper. */
        FULL(Setting.FULL_RESIDUAL),
        /** Set by the empty rule. */
        EMPTY(Setting.EMPTY_RESIDUAL);

        private final Setting residual;

        Start(Setting residual) {
            this.residual = residual;
        }

        boolean isFull() {
            return this == FULL;
        }
    }
}
