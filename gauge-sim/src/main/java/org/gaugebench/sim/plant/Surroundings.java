package org.gaugebench.sim.plant;

import org.gaugebench.sim.scenario.BatteryTraits.Thermal;

/**
 * What the battery's temperature follows: surroundings, constant or a daily sine, and its own heat.
 *
 * <pre>T' = (ambient + rise x heat - T) / tau</pre>
 *
 * <p>One temperature all through the battery. The step is exact for a constant heat; the
 * surroundings enter by their value in the middle of it.
 */
final class Surroundings {
    private static final double DAY_MILLIS = 86_400_000;

    private final double meanCelsius;
    private final double swingKelvin;
    private final double warmestMillis;
    private final double kelvinPerWatt;
    private final double tauMillis;

    Surroundings(Thermal spec) {
        meanCelsius = spec.ambientMillicelsius() / 1e3;
        swingKelvin = spec.swingMillicelsius() / 1e3;
        warmestMillis = spec.warmestMillis();
        kelvinPerWatt = spec.millikelvinPerWatt() / 1e3;
        tauMillis = spec.timeConstantMillis();
    }

    /** Temperature of the surroundings at an instant. */
    double ambientCelsius(double millis) {
        if (swingKelvin == 0) {
            return meanCelsius;
        }
        double turn = 2 * Math.PI * ((millis - warmestMillis) / DAY_MILLIS);
        return meanCelsius + swingKelvin * StrictMath.cos(turn);
    }

    /**
     * The battery's temperature at the end of a step.
     *
     * @param celsius at its start
     * @param fromMillis start
     * @param toMillis end
     * @param joules heat set free in it
     */
    double after(double celsius, long fromMillis, long toMillis, double joules) {
        double millis = toMillis - fromMillis;
        double watts = joules / (millis / 1e3);
        double target = ambientCelsius(fromMillis + millis / 2) + kelvinPerWatt * watts;
        return target + (celsius - target) * StrictMath.exp(-millis / tauMillis);
    }
}
