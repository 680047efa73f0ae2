package org.gaugebench.sim.device.exhibits;

/** No filter: the current of the last sample. */
final class InstantFilter implements HoursFilter {
    private double lastMicroamps;

    @Override
    public void add(double microamps, long millis) {
        lastMicroamps = microamps;
    }

    @Override
    public double microamps() {
        return lastMicroamps;
    }
}
