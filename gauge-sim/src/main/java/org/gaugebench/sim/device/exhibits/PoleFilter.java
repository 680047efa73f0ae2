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

    @Override
    public void add(double microamps, long millis) {
        if (!seeded) {
            seeded = true;
            filteredMicroamps = microamps;
            return;
        }
        if (millis != stepMillis) {
            stepMillis = millis;
            stepPart = millis <= 0 ? 0 : 1 - StrictMath.exp(-millis / timeConstantMillis);
        }
        filteredMicroamps += (microamps - filteredMicroamps) * stepPart;
    }

    @Override
    public double microamps() {
        return filteredMicroamps;
    }
}
