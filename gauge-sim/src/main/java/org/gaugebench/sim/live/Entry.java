package org.gaugebench.sim.live;

/**
 * One entry of the account book: what came in and went out between two moments, by cause, and the
 * balances at its end. Charge in ampere-hours.
 */
final class Entry {
    /** How much time an entry stands for. */
    enum Grain {
        /** As it was booked: at most an hour. */
        BOOKED,
        /** A day of the run. */
        DAY,
        /** Thirty days of the run. */
        MONTH,
        /** All that is older. */
        BEFORE
    }

    /** Grain of this entry. */
    final Grain grain;

    /** Begin. */
    final long fromMillis;

    /** End. */
    long toMillis;

    /** What came in, by cause. */
    final double[] in;

    /** What went out, by cause; none below 0. */
    final double[] out;

    /** Balance by the gauge; NaN where it shows none. */
    double gauge = Double.NaN;

    /** Lower edge of the gauge's error band; NaN where there is none. */
    double lower = Double.NaN;

    /** Upper edge of the gauge's error band; NaN where there is none. */
    double upper = Double.NaN;

    /** True balance. */
    double truth = Double.NaN;

    Entry(Grain grain, long fromMillis, int causes) {
        this.grain = grain;
        this.fromMillis = fromMillis;
        this.toMillis = fromMillis;
        in = new double[causes];
        out = new double[causes];
    }

    /** Books an amount: above 0 in, below 0 out. */
    void book(int cause, double ampHours) {
        if (ampHours > 0) {
            in[cause] += ampHours;
        } else {
            out[cause] -= ampHours;
        }
    }

    /** Takes a later entry in: sums its amounts, and its balances are those at the end. */
    void take(Entry later) {
        for (int i = 0; i < in.length; i++) {
            in[i] += later.in[i];
            out[i] += later.out[i];
        }
        toMillis = later.toMillis;
        gauge = later.gauge;
        lower = later.lower;
        upper = later.upper;
        truth = later.truth;
    }

    /** Takes the balances of a moment. */
    void close(long millis, Balance balance) {
        toMillis = millis;
        gauge = balance.gauge();
        lower = balance.lower();
        upper = balance.upper();
        truth = balance.truth();
    }

    /** In less out of the causes from one to before another. */
    double net(int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += in[i] - out[i];
        }
        return sum;
    }
}
