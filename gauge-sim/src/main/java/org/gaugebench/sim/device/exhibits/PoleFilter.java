package org.gaugebench.sim.device.exhibits;

/** A single pole, stepped exactly for a current that is constant between two samples. */
final class PoleFilter implements HoursFilter {
    private final double timeConstantMillis;
    private boolean seeded;
    private double filteredMicroamps;
    private long stepMillis;
    private double stepPart;

    PoleFilter(double timeConstantMillis, boolean fromZero) {
        this.timeConstantMillis = timeConstantMillis;
        seeded = fromZero;
    }

    /** The first sample stands for no time: at power-up nothing has flowed yet. */
    @Override
    public void add(double microamps, long millis) {
        if (millis <= 0) {
            return;
        }
        if (!seeded) {
            seeded = true;
            filteredMicroamps = microamps;
            return;
        }
        if (millis != stepMillis) {
            stepMillis = millis;
            stepPart = 1 - StrictMath.exp(-millis / timeConstantMillis);
        }
        filteredMicroamps += (microamps - filteredMicroamps) * stepPart;
    }

    @Override
    public double microamps() {
        return filteredMicroamps;
    }
}
