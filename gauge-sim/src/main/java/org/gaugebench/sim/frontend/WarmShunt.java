package org.gaugebench.sim.frontend;

import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.scenario.SensorSpec;
import org.gaugebench.sim.scenario.SensorTrait;
import org.gaugebench.sim.scenario.SensorTraits;

/**
 * A shunt that warms: its resistance follows its temperature, its joints make a thermal voltage,
 * and the offset behind it follows the surroundings. Rise and thermal voltage are first-order lags,
 * stepped exactly for a power that is constant over a tick.
 */
final class WarmShunt implements ShuntPath {
    private static final double REFERENCE_CELSIUS = 25;

    // Parameters.
    private final double ohms;
    private final double ratedAmps;
    private double perKelvin;
    private double kelvinPerWatt;
    private double voltsPerKelvin;
    private double settledEmfVolts;
    private double offsetVolts;
    private final Lag rise = new Lag();
    private final Lag emf = new Lag();

    // State.
    private long lastMillis;

    WarmShunt(SensorSpec spec, SensorTraits traits, long offsetNanovolts, long nowMillis) {
        ohms = ShuntModel.ohms(spec);
        ratedAmps = spec.shuntRatedMicroamps() / 1e6;
        lastMillis = nowMillis;
        setOffsetNanovolts(offsetNanovolts);
        configure(traits);
    }

    static boolean isNeeded(SensorTraits traits) {
        return traits.hasAny(
                SensorTrait.SHUNT_TEMPERATURE_COEFFICIENT,
                SensorTrait.OFFSET_DRIFT,
                SensorTrait.THERMAL_EMF);
    }

    /** Takes other figures; what has warmed stays warm. */
    void configure(SensorTraits traits) {
        perKelvin = traits.get(SensorTrait.SHUNT_TEMPERATURE_COEFFICIENT) / 1e6;
        kelvinPerWatt = traits.get(SensorTrait.SHUNT_HEATING) / 1e3;
        voltsPerKelvin = traits.get(SensorTrait.OFFSET_DRIFT) / 1e9;
        settledEmfVolts = traits.get(SensorTrait.THERMAL_EMF) / 1e9;
        rise.setTimeConstant(traits.get(SensorTrait.SHUNT_HEATING_TIME) / 1e3);
        emf.setTimeConstant(traits.get(SensorTrait.THERMAL_EMF_TIME) / 1e3);
    }

    @Override
    public void setOffsetNanovolts(long nanovolts) {
        offsetVolts = nanovolts / 1e9;
    }

    @Override
    public double voltsAt(double amps, Truth truth) {
        double seconds = (truth.timeMillis() - lastMillis) / 1e3;
        lastMillis = truth.timeMillis();
        double mean = truth.meanShuntAmps();
        double load = mean / ratedAmps;
        emf.step(settledEmfVolts * load * load, seconds);
        double surroundings = truth.temperatureCelsius() - REFERENCE_CELSIUS;
        // The heat of this tick is that of the resistance as it stands at its beginning.
        rise.step(mean * mean * ohmsAt(surroundings) * kelvinPerWatt, seconds);
        return amps * ohmsAt(surroundings)
                + emf.value()
                + surroundings * voltsPerKelvin
                + offsetVolts;
    }

    private double ohmsAt(double surroundings) {
        return ohms * (1 + perKelvin * (surroundings + rise.value()));
    }
}
