package org.gaugebench.sim.frontend;

import org.gaugebench.sim.units.ConverterRange;
import org.gaugebench.sim.units.ShuntRating;

/**
 * A shunt and converters without error: what is left is quantisation, to the nearest code with
 * halves upward ({@code floor(x + 0.5)}), and the rails.
 *
 * <p>The shunt converter reaches full scale plus and minus; its codes are two's complement. The
 * voltage converter has no sign.
 */
public final class IdealFrontEnd {
    private final double countsPerAmp;
    private final int highestShuntCounts;
    private final double countsPerVolt;
    private final int highestVoltageCounts;
    private long clippedSamples;

    /**
     * Derives the scales.
     *
     * @param shunt what is printed on the shunt
     * @param converter width and full scale of the shunt converter, at most 32 bits
     * @param voltageBits width of the voltage converter, at most 24
     * @param voltageFullScaleVolts voltage just above its largest code
     */
    public IdealFrontEnd(
            ShuntRating shunt,
            ConverterRange converter,
            int voltageBits,
            double voltageFullScaleVolts) {
        double microvoltsPerAmp = shunt.microvolts() * 1e6 / shunt.microamps();
        long codes = 1L << (converter.bits() - 1);
        countsPerAmp = microvoltsPerAmp * codes / converter.microvolts();
        highestShuntCounts = (int) (codes - 1);
        countsPerVolt = (1L << voltageBits) / voltageFullScaleVolts;
        highestVoltageCounts = (1 << voltageBits) - 1;
    }

    /** Counts of a current in amps; positive into the battery. */
    public int shuntCounts(double amps) {
        double code = StrictMath.floor(amps * countsPerAmp + 0.5);
        if (code > highestShuntCounts) {
            clippedSamples++;
            return highestShuntCounts;
        }
        if (code < -highestShuntCounts - 1) {
            clippedSamples++;
            return -highestShuntCounts - 1;
        }
        return (int) code;
    }

    /** Counts of a voltage in volts. */
    public int voltageCounts(double volts) {
        double code = StrictMath.floor(volts * countsPerVolt + 0.5);
        return (int) Math.min(Math.max(code, 0), highestVoltageCounts);
    }

    /** Current of one code, in amps. */
    public double ampsPerCount() {
        return 1 / countsPerAmp;
    }

    /** Samples whose current did not fit the shunt converter. */
    public long clippedSamples() {
        return clippedSamples;
    }
}
