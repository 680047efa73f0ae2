package org.gaugebench.sim.frontend;

import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.random.GaussianNoise;
import org.gaugebench.sim.random.SeedTree;
import org.gaugebench.sim.scenario.SensorSpec;

/**
 * A shunt converter without steps, for a twin: it works out the current that the tested gauge would
 * read from an endless code, and hands it on in codes of the twin's own wide scale. What one code
 * leaves is owed to the next, so that no sum of codes is wrong by more than half a code.
 */
public final class IdealConverter implements Converter {
    /** Half of 24 bits, without the two codes that mean "clipped". */
    private static final int HIGHEST_CODE = (1 << 23) - 2;

    private static final int COUNT_PARTS = 256;

    private final double codesPerVolt;
    private final double noiseCodes;
    private final GaussianNoise noise;
    private final double trueMicroampsPerCode;
    private double microampsPerCode;
    private double offsetCodes;
    private double twinMicroampsPerCode;
    private double owedMicroamps;

    /**
     * A converter of a sensor with its gain error and the noise of the tested gauge.
     *
     * @param spec with what is wrong with it
     * @param seeds of the run
     * @param lane name of the tested gauge, whose noise it is
     * @param told settings of the twin, which name its wide scale
     */
    public IdealConverter(SensorSpec spec, SeedTree seeds, String lane, GaugeSettings told) {
        double nominal = (1L << (spec.converterBits() - 1)) / (spec.fullScaleMicrovolts() / 1e6);
        codesPerVolt = nominal * (1 + spec.gainErrorPartsPerMillion() / 1e6);
        noiseCodes = spec.noiseNanovolts() / 1e9 * nominal;
        noise = new GaussianNoise(seeds.seedOf(FrontEnd.shuntNoise(lane)));
        double ratedOhms = (double) spec.shuntRatedMicrovolts() / spec.shuntRatedMicroamps();
        trueMicroampsPerCode = 1e6 / (nominal * ratedOhms);
        microampsPerCode = trueMicroampsPerCode;
        twinMicroampsPerCode = microampsPerCode(told);
    }

    /**
     * Takes other settings.
     *
     * @param tested what the tested gauge was told
     * @param twin what the twin was told
     * @param ownScale whether the tested gauge's idea of the scale is taken, not the true one
     * @param ownOffset whether its idea of the offset is taken, not none
     */
    public void follow(
            GaugeSettings tested, GaugeSettings twin, boolean ownScale, boolean ownOffset) {
        microampsPerCode = ownScale ? microampsPerCode(tested) : trueMicroampsPerCode;
        offsetCodes = ownOffset ? (double) tested.get(Setting.SHUNT_OFFSET) / COUNT_PARTS : 0;
        twinMicroampsPerCode = microampsPerCode(twin);
    }

    private static double microampsPerCode(GaugeSettings settings) {
        return (double) settings.get(Setting.SHUNT_FULL_SCALE)
                / (1L << (settings.get(Setting.SHUNT_CONVERTER_BITS) - 1))
                * (settings.get(Setting.SHUNT_RATED_CURRENT) * 1e3)
                / settings.get(Setting.SHUNT_RATED_DROP);
    }

    @Override
    public int convert(double volts) {
        double codes = volts * codesPerVolt;
        if (noiseCodes > 0) {
            codes += noiseCodes * noise.next();
        }
        double microamps = (codes - offsetCodes) * microampsPerCode + owedMicroamps;
        double code = Math.floor(microamps / twinMicroampsPerCode + 0.5);
        if (Math.abs(code) > HIGHEST_CODE) {
            owedMicroamps = 0;
            return code > 0 ? HIGHEST_CODE : -HIGHEST_CODE;
        }
        // The core reads whole microamps, halves away from zero.
        double read = Math.floor(Math.abs(code) * twinMicroampsPerCode + 0.5);
        owedMicroamps = microamps - Math.copySign(read, code);
        return (int) code;
    }
}
