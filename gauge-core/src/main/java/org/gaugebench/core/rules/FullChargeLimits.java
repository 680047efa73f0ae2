package org.gaugebench.core.rules;

import org.gaugebench.core.charge.StateOfCharge;
import org.gaugebench.core.fixed.FixedMath;
import org.gaugebench.core.port.Sample;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** The full-charge rule's settings turned into microvolts, microamps, nanocoulombs and minutes. */
final class FullChargeLimits {
    private static final int REFERENCE_MILLICELSIUS = 25_000;
    private static final int MILLIKELVIN_PER_KELVIN = 1_000;
    private static final int MICROVOLTS_PER_MILLIVOLT = 1_000;

    /** Float is recognised from a tenth of a volt per 12 V under its set voltage. */
    private static final int FLOAT_MARGIN_DIVISOR = 120;

    final boolean switchedOff;
    final long taperMicroamps;
    final int holdMinutes;
    final long flatnessMicrovolts;
    final int plateauMinutes;
    final int floatMinutes;
    final long floatMicroamps;
    final long rearmNanocoulombs;
    final int rearmEdgePartsPerMillion;
    final long noFlowMicroamps;
    final long someFlowMicroamps;
    final int taperResidualPartsPerMillion;
    final int otherResidualPartsPerMillion;
    final long floatAt25Microvolts;
    private final long thresholdAt25Microvolts;
    private final long aboveRestMicrovolts;
    private final long microvoltsPerKelvin;
    private final long compensationLimitMicrovolts;

    FullChargeLimits(GaugeSettings settings) {
        long absorptionMillivolts = settings.get(Setting.ABSORPTION);
        long capacityMilliampHours = settings.get(Setting.CAPACITY);
        switchedOff = absorptionMillivolts == 0;
        thresholdAt25Microvolts =
                (absorptionMillivolts - settings.get(Setting.ABSORPTION_MARGIN))
                        * MICROVOLTS_PER_MILLIVOLT;
        microvoltsPerKelvin = settings.get(Setting.TEMPERATURE_COEFFICIENT);
        compensationLimitMicrovolts =
                settings.get(Setting.COMPENSATION_LIMIT) * MICROVOLTS_PER_MILLIVOLT;
        // derived: mAh x ppm / 1000 = uA for one hour
        taperMicroamps = capacityMilliampHours * settings.get(Setting.TAPER) / 1_000;
        holdMinutes = (int) settings.get(Setting.HOLD);
        flatnessMicrovolts = settings.get(Setting.FLATNESS) * MICROVOLTS_PER_MILLIVOLT;
        plateauMinutes = (int) settings.get(Setting.PLATEAU_HOLD);
        long floatMillivolts = settings.get(Setting.FLOAT_VOLTAGE);
        floatAt25Microvolts =
                (floatMillivolts - floatMillivolts / FLOAT_MARGIN_DIVISOR)
                        * MICROVOLTS_PER_MILLIVOLT;
        aboveRestMicrovolts =
                (settings.get(Setting.REST_VOLTAGE_100) + settings.get(Setting.REST_VOLTAGE_BOUND))
                                * MICROVOLTS_PER_MILLIVOLT
                        + 1;
        floatMinutes = floatMillivolts == 0 ? 0 : (int) settings.get(Setting.FLOAT_HOLD);
        // derived: 0.5 % of the capacity in one hour
        floatMicroamps = capacityMilliampHours * 5;
        // derived: 1 mAh = 3.6e9 nC
        rearmNanocoulombs =
                StateOfCharge.nanocoulombs(
                        settings.get(Setting.REARM_DISCHARGE),
                        capacityMilliampHours * 3_600_000_000L);
        rearmEdgePartsPerMillion = 1_000_000 - (int) settings.get(Setting.REARM_DISCHARGE);
        // derived: 0.05 % and 0.2 % of the capacity in one hour, never under the offset bound: an
        // offset must not look like flow
        long offsetMicroamps = settings.get(Setting.OFFSET_BOUND);
        noFlowMicroamps = Math.max(capacityMilliampHours / 2, offsetMicroamps);
        someFlowMicroamps = Math.max(capacityMilliampHours * 2, 2 * offsetMicroamps);
        taperResidualPartsPerMillion = (int) settings.get(Setting.FULL_RESIDUAL);
        otherResidualPartsPerMillion = (int) settings.get(Setting.LATE_RESIDUAL);
    }

    /**
     * How far the charger's voltages move with temperature.
     *
     * <p><b>Range:</b> 250,000 uV/K x 2.1e6 mK below 2^40; clamped to the compensation limit on
     * either side; 0 where the temperature is absent.
     */
    long compensationMicrovolts(int temperatureMillicelsius) {
        if (temperatureMillicelsius == Sample.TEMPERATURE_ABSENT) {
            return 0;
        }
        long aboveReference = (long) temperatureMillicelsius - REFERENCE_MILLICELSIUS;
        return FixedMath.clamp(
                FixedMath.divideHalfAwayFromZero(
                        microvoltsPerKelvin * aboveReference, MILLIKELVIN_PER_KELVIN),
                -compensationLimitMicrovolts,
                compensationLimitMicrovolts);
    }

    long floatThresholdMicrovolts(int temperatureMillicelsius) {
        return floatAt25Microvolts + compensationMicrovolts(temperatureMillicelsius);
    }

    /**
     * The lowest voltage that a charger holds: float, or what no rested battery has where no float
     * voltage is known; the threshold where that is lower.
     */
    long chargingMicrovolts(int temperatureMillicelsius) {
        long threshold = thresholdMicrovolts(temperatureMillicelsius);
        return floatMinutes == 0
                ? Math.min(threshold, aboveRestMicrovolts)
                : Math.min(threshold, floatThresholdMicrovolts(temperatureMillicelsius));
    }

    long thresholdMicrovolts(int temperatureMillicelsius) {
        return thresholdAt25Microvolts + compensationMicrovolts(temperatureMillicelsius);
    }
}
