package org.gaugebench.sim.adopt;

/**
 * What the current of a log counts to: the state of charge at each tick, with the battery's
 * efficiency on what flows in, never above full. Reckoned here once more and not taken from the
 * simulator, so that a scenario can claim that its truth is the log's.
 */
final class ChargeCount {
    private static final double MICROCOULOMBS_PER_MICROAMP_HOUR = 3_600;

    private double inMicroampHours;
    private double outMicroampHours;
    private double lowestMicroampHours;
    private double highestMicroampHours;
    private long lowestMillis;
    private double endMicroampHours;
    private int row;

    ChargeCount(FieldLog log, AdoptSetup setup, double efficiency) {
        double capacity = setup.capacityMicroampHours();
        double charge = capacity * (setup.startPartsPerMillion() / 1e6);
        lowestMicroampHours = charge;
        highestMicroampHours = charge;
        for (long at = 0; at < log.durationMillis(); at += setup.tickMillis()) {
            double flowed =
                    integral(log, at, at + setup.tickMillis())
                            / 1e3
                            / MICROCOULOMBS_PER_MICROAMP_HOUR;
            inMicroampHours += Math.max(flowed, 0);
            outMicroampHours -= Math.min(flowed, 0);
            charge = Math.min(charge + (flowed > 0 ? efficiency * flowed : flowed), capacity);
            highestMicroampHours = Math.max(highestMicroampHours, charge);
            if (charge < lowestMicroampHours) {
                lowestMicroampHours = charge;
                lowestMillis = at;
            }
        }
        endMicroampHours = charge;
    }

    /** Microamps times milliseconds; rows are walked forward only. */
    private double integral(FieldLog log, long from, long to) {
        double sum = 0;
        long at = from;
        while (at < to && row + 1 < log.rows()) {
            long end = Math.min(to, log.millis(row + 1));
            if (end > at) {
                sum += mean(log, at, end) * (end - at);
                at = end;
            }
            if (at == log.millis(row + 1)) {
                row++;
            }
        }
        return sum;
    }

    private double mean(FieldLog log, long from, long to) {
        double before = log.microamps(row);
        if (!log.isLinear()) {
            return before;
        }
        double slope = (log.microamps(row + 1) - before) / (log.millis(row + 1) - log.millis(row));
        return before + slope * ((from + to) / 2.0 - log.millis(row));
    }

    double inAmpHours() {
        return inMicroampHours / 1e6;
    }

    double outAmpHours() {
        return outMicroampHours / 1e6;
    }

    /** Below 0 where the log draws more than the battery can have held. */
    double lowestMicroampHours() {
        return lowestMicroampHours;
    }

    double highestMicroampHours() {
        return highestMicroampHours;
    }

    long lowestMillis() {
        return lowestMillis;
    }

    double endMicroampHours() {
        return endMicroampHours;
    }
}
