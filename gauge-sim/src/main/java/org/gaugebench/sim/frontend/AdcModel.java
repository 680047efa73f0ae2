package org.gaugebench.sim.frontend;

import org.gaugebench.sim.random.GaussianNoise;

/**
 * A converter: gain error, Gaussian noise, rounding to the nearest code (half up) and clipping at
 * the rails. Noise of standard deviation 0 draws nothing from the stream.
 */
final class AdcModel implements Converter {
    private final double codesPerVolt;
    private final double noiseCodes;
    private final int lowestCode;
    private final int highestCode;
    private final GaussianNoise noise;

    private AdcModel(
            double codesPerVolt, double noiseCodes, int lowestCode, int highestCode, long seed) {
        this.codesPerVolt = codesPerVolt;
        this.noiseCodes = noiseCodes;
        this.lowestCode = lowestCode;
        this.highestCode = highestCode;
        noise = new GaussianNoise(seed);
    }

    /**
     * A converter for both signs: full scale is 2^(bits-1) codes.
     *
     * @param bits width, sign included
     * @param fullScaleVolts plus and minus
     * @param gainError relative, signed
     * @param noiseVolts standard deviation, referred to the input
     * @param seed of the noise
     */
    static AdcModel bipolar(
            int bits, double fullScaleVolts, double gainError, double noiseVolts, long seed) {
        int half = 1 << (bits - 1);
        double nominal = half / fullScaleVolts;
        return new AdcModel(nominal * (1 + gainError), noiseVolts * nominal, -half, half - 1, seed);
    }

    /** A converter from zero up: full scale is 2^bits codes. */
    static AdcModel unipolar(int bits, double fullScaleVolts, double noiseVolts, long seed) {
        int codes = 1 << bits;
        double nominal = codes / fullScaleVolts;
        return new AdcModel(nominal, noiseVolts * nominal, 0, codes - 1, seed);
    }

    @Override
    public int convert(double volts) {
        double codes = volts * codesPerVolt;
        if (noiseCodes > 0) {
            codes += noiseCodes * noise.next();
        }
        double rounded = Math.floor(codes + 0.5);
        return (int) Math.min(Math.max(rounded, lowestCode), highestCode);
    }
}
