package org.gaugebench.sim.rig;

import org.gaugebench.sim.plant.Truth;

/**
 * The truth at ticks that a gauge was given and has not worked through yet, so that what it then
 * says of one of them is held against the truth of that tick.
 */
final class PastTruth implements Truth {
    private static final int FIGURES = 10;

    private final long[] timesMillis;
    private final double[] figures;
    private int count;
    private int at;

    /**
     * Remembers nothing yet.
     *
     * @param most ticks that a gauge takes at once
     */
    PastTruth(int most) {
        timesMillis = new long[most];
        figures = new double[FIGURES * most];
    }

    void clear() {
        count = 0;
    }

    void add(Truth now) {
        int base = FIGURES * count;
        timesMillis[count++] = now.timeMillis();
        figures[base] = now.meanCurrentAmps();
        figures[base + 1] = now.currentAmps();
        figures[base + 2] = now.meanShuntAmps();
        figures[base + 3] = now.shuntAmps();
        figures[base + 4] = now.batteryVolts();
        figures[base + 5] = now.voltageVolts();
        figures[base + 6] = now.instantVolts();
        figures[base + 7] = now.temperatureCelsius();
        figures[base + 8] = now.chargeAmpHours();
        figures[base + 9] = now.capacityAmpHours();
    }

    /** Looks at the tick that has so many others behind it. */
    PastTruth lookAt(int ticksBehind) {
        at = count - 1 - ticksBehind;
        return this;
    }

    private double figure(int index) {
        return figures[FIGURES * at + index];
    }

    @Override
    public void step(int millis) {
        throw new IllegalStateException("what is past does not move");
    }

    @Override
    public long timeMillis() {
        return timesMillis[at];
    }

    @Override
    public double meanCurrentAmps() {
        return figure(0);
    }

    @Override
    public double currentAmps() {
        return figure(1);
    }

    @Override
    public double meanShuntAmps() {
        return figure(2);
    }

    @Override
    public double shuntAmps() {
        return figure(3);
    }

    @Override
    public double batteryVolts() {
        return figure(4);
    }

    @Override
    public double voltageVolts() {
        return figure(5);
    }

    @Override
    public double instantVolts() {
        return figure(6);
    }

    @Override
    public double temperatureCelsius() {
        return figure(7);
    }

    @Override
    public double chargeAmpHours() {
        return figure(8);
    }

    @Override
    public double capacityAmpHours() {
        return figure(9);
    }
}
