package org.gaugebench.sim.frontend;

import org.gaugebench.sim.scenario.SensorTrait;
import org.gaugebench.sim.scenario.SensorTraits;

/**
 * A converter with what data sheets call errors: dead band, gain by sign, deviation from a straight
 * line, codes that never come, and two ranges that do not meet. Dead band and bends act on the
 * input, the plain converter behind makes the code.
 */
final class FlawedConverter implements Converter {
    /** Counts come in steps of 1/256. */
    private static final int COUNT_BITS = 8;

    private final Converter behind;
    private final double fullScaleVolts;

    // Parameters.
    private double deadBandVolts;
    private int missingEach;
    private double asymmetry;
    private double bowVolts;
    private double curveVolts;
    private double upVolts;
    private double downVolts;
    private double wideOffsetVolts;

    // State.
    private boolean wide;

    FlawedConverter(Converter behind, double fullScaleVolts, SensorTraits traits) {
        this.behind = behind;
        this.fullScaleVolts = fullScaleVolts;
        configure(traits);
    }

    static boolean isNeeded(SensorTraits traits) {
        return traits.hasAny(
                SensorTrait.DEAD_BAND,
                SensorTrait.GAIN_ASYMMETRY,
                SensorTrait.NONLINEARITY_BOW,
                SensorTrait.NONLINEARITY_S,
                SensorTrait.MISSING_CODES,
                SensorTrait.RANGE_LIMIT);
    }

    /** Takes other figures; the range stays. */
    void configure(SensorTraits traits) {
        missingEach = (int) (traits.get(SensorTrait.MISSING_CODES) >> COUNT_BITS);
        deadBandVolts = traits.get(SensorTrait.DEAD_BAND) / 1e9;
        asymmetry = traits.get(SensorTrait.GAIN_ASYMMETRY) / 1e6;
        bowVolts = traits.get(SensorTrait.NONLINEARITY_BOW) / 1e6 * fullScaleVolts;
        curveVolts = traits.get(SensorTrait.NONLINEARITY_S) / 1e6 * fullScaleVolts;
        long limit = traits.get(SensorTrait.RANGE_LIMIT);
        upVolts = limit == 0 ? Double.POSITIVE_INFINITY : limit / 1e9;
        downVolts = upVolts * (1 - traits.get(SensorTrait.RANGE_HYSTERESIS) / 1e6);
        wideOffsetVolts = traits.get(SensorTrait.RANGE_OFFSET) / 1e9;
    }

    @Override
    public int convert(double volts) {
        double size = Math.abs(volts);
        wide = wide ? size > downVolts : size > upVolts;
        int code = behind.convert(size < deadBandVolts ? 0 : bent(volts, size));
        return missingEach > 0 && code % missingEach == 0 ? code - 1 : code;
    }

    private double bent(double volts, double size) {
        double x = Math.min(size / fullScaleVolts, 1);
        // Zero at no input and at full scale, one at half scale.
        double arch = 4 * x * (1 - x);
        double sign = Math.signum(volts);
        return volts * (1 + sign * asymmetry)
                + arch * (bowVolts + sign * curveVolts)
                + (wide ? wideOffsetVolts : 0);
    }
}
