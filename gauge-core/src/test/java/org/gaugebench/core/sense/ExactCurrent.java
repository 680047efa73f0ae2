package org.gaugebench.core.sense;

import java.math.BigInteger;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** The current of a reading as an exact rational, straight from the definition of the shunt. */
final class ExactCurrent {
    final BigInteger numerator;
    final BigInteger denominator;

    /** (counts x 256 - offset) x fullScale x rated x 1000 / (drop x 2^(bits-1) x 256) microamps. */
    ExactCurrent(GaugeSettings settings, long counts) {
        numerator =
                BigInteger.valueOf(counts * 256 - settings.get(Setting.SHUNT_OFFSET))
                        .multiply(BigInteger.valueOf(settings.get(Setting.SHUNT_FULL_SCALE)))
                        .multiply(BigInteger.valueOf(settings.get(Setting.SHUNT_RATED_CURRENT)))
                        .multiply(BigInteger.valueOf(1_000));
        denominator =
                BigInteger.valueOf(settings.get(Setting.SHUNT_RATED_DROP))
                        .shiftLeft((int) settings.get(Setting.SHUNT_CONVERTER_BITS) + 7);
    }

    /** Whether a figure is off by at most that many thousandths of a microamp. */
    boolean isWithin(int microamps, int thousandths) {
        BigInteger error =
                BigInteger.valueOf(microamps).multiply(denominator).subtract(numerator).abs();
        BigInteger bound = denominator.multiply(BigInteger.valueOf(thousandths));
        return error.multiply(BigInteger.valueOf(1_000)).compareTo(bound) <= 0;
    }

    /** Whether the current is beyond what 32 bits of microamps hold, to 3 uA. */
    boolean isBeyondRange() {
        BigInteger largest = BigInteger.valueOf(CurrentSense.LARGEST_MICROAMPS);
        return numerator.abs().compareTo(largest.multiply(denominator)) > 0;
    }

    static GaugeSettings settings(
            int bits, long ratedMilliamps, long dropMicrovolts, long fullScaleMicrovolts, int off) {
        return GaugeSettings.builder()
                .set(Setting.SHUNT_CONVERTER_BITS, bits)
                .set(Setting.SHUNT_RATED_CURRENT, ratedMilliamps)
                .set(Setting.SHUNT_RATED_DROP, dropMicrovolts)
                .set(Setting.SHUNT_FULL_SCALE, fullScaleMicrovolts)
                .set(Setting.SHUNT_OFFSET, off)
                .build();
    }
}
