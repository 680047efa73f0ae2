package org.gaugebench.sim.scenario;

import org.jspecify.annotations.Nullable;

/**
 * Shunt and converters as they really are; the gauge's settings may say something else.
 *
 * @param shuntRatedMicroamps rated current
 * @param shuntRatedMicrovolts rated drop
 * @param shuntErrorPartsPerMillion how far the shunt's resistance is off, signed
 * @param converterBits width of the shunt converter, sign included
 * @param fullScaleMicrovolts input at its largest code, plus and minus
 * @param gainErrorPartsPerMillion of the converter, signed
 * @param offsetNanovolts input-referred offset, signed
 * @param noiseNanovolts standard deviation of the noise per sample
 * @param voltageConverterBits width of the voltage converter
 * @param voltageFullScaleMicrovolts battery voltage at its largest code
 * @param voltageNoiseMicrovolts standard deviation of the voltage noise per sample
 * @param sampling what a sample stands for
 * @param temperatureFitted whether the gauge gets a temperature
 * @param traits what is wrong with it beyond that
 * @param voltageProfile voltage that it is shown instead of the true one; null for none
 */
public record SensorSpec(
        long shuntRatedMicroamps,
        long shuntRatedMicrovolts,
        long shuntErrorPartsPerMillion,
        int converterBits,
        long fullScaleMicrovolts,
        long gainErrorPartsPerMillion,
        long offsetNanovolts,
        long noiseNanovolts,
        int voltageConverterBits,
        long voltageFullScaleMicrovolts,
        long voltageNoiseMicrovolts,
        Sampling sampling,
        boolean temperatureFitted,
        SensorTraits traits,
        @Nullable ProfileSpec voltageProfile) {

    /** A sensor of which nothing more is said. */
    public SensorSpec(
            long shuntRatedMicroamps,
            long shuntRatedMicrovolts,
            long shuntErrorPartsPerMillion,
            int converterBits,
            long fullScaleMicrovolts,
            long gainErrorPartsPerMillion,
            long offsetNanovolts,
            long noiseNanovolts,
            int voltageConverterBits,
            long voltageFullScaleMicrovolts,
            long voltageNoiseMicrovolts,
            Sampling sampling,
            boolean temperatureFitted) {
        this(
                shuntRatedMicroamps,
                shuntRatedMicrovolts,
                shuntErrorPartsPerMillion,
                converterBits,
                fullScaleMicrovolts,
                gainErrorPartsPerMillion,
                offsetNanovolts,
                noiseNanovolts,
                voltageConverterBits,
                voltageFullScaleMicrovolts,
                voltageNoiseMicrovolts,
                sampling,
                temperatureFitted,
                SensorTraits.NONE,
                null);
    }

    /** What a sample stands for. */
    public enum Sampling {
        /** The converter integrates over the whole tick. */
        INTEGRATED,
        /** The converter looks at one instant, the end of the tick. */
        INSTANTANEOUS
    }
}
