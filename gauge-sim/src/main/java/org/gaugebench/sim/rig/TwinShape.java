package org.gaugebench.sim.rig;

import java.util.EnumMap;
import java.util.Map;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.scenario.ClockSpec;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.PowerSpec;
import org.gaugebench.sim.scenario.SensorSpec;
import org.gaugebench.sim.scenario.SensorSpec.Sampling;
import org.gaugebench.sim.scenario.SensorTrait;
import org.gaugebench.sim.scenario.SensorTraits;
import org.jspecify.annotations.Nullable;

/** What is left of a scenario's gauge and sensor once all causes up to one are taken away. */
final class TwinShape {
    /** A twin's own scale reaches to four times what the converter does, to clip nothing. */
    private static final double WIDTH = 4;

    /** The core reads no larger current than some 2147 A; beyond it codes would only be coarser. */
    private static final double LARGEST_AMPS = 2_147;

    private static final long WIDE_DROP_MICROVOLTS = 10_000;
    private static final long MOST_BITS = 24;
    private static final long WHOLE = 1_000_000;

    private final Cause last;
    private final Map<Setting, Long> fixed = new EnumMap<>(Setting.class);

    TwinShape(Cause last, GaugeSettings settings, SensorSpec sensor, Truth truth) {
        this.last = last;
        fix(Cause.RULES, Setting.ABSORPTION, 0);
        fix(Cause.RULES, Setting.EMPTY_VOLTAGE, 0);
        fix(Cause.RULES, Setting.REST_TIME, 0);
        fix(Cause.RULES, Setting.MEASURE_CAPACITY, 0);
        fix(Cause.RULES, Setting.MEASURE_EFFICIENCY, 0);
        fix(Cause.CONVERTER, Setting.SHUNT_RATED_DROP, WIDE_DROP_MICROVOLTS);
        fix(Cause.CONVERTER, Setting.SHUNT_FULL_SCALE, wideMicrovolts(settings, sensor));
        fix(Cause.CONVERTER, Setting.SHUNT_CONVERTER_BITS, MOST_BITS);
        // The converter takes it off, in codes of the tested gauge.
        fix(Cause.CONVERTER, Setting.SHUNT_OFFSET, 0);
        // No code of the voltage may spoil a sample: a voltage without rules moves no charge.
        fix(Cause.CONVERTER, Setting.VOLTAGE_CONVERTER_BITS, MOST_BITS);
        fix(Cause.PAST_SHUNT, Setting.OWN_SUPPLY, 0);
        fix(Cause.LOSSES, Setting.COULOMBIC_EFFICIENCY, WHOLE);
        fix(Cause.LOSSES, Setting.SELF_DISCHARGE, 0);
        // Another kind of battery would be a count of nothing, which is a declaration too.
        fix(Cause.START, Setting.CHEMISTRY, settings.get(Setting.CHEMISTRY));
        fix(Cause.START, Setting.NOMINAL_VOLTAGE, settings.get(Setting.NOMINAL_VOLTAGE));
        long milliampHours = StrictMath.round(truth.capacityAmpHours() * 1e3);
        fix(
                Cause.CAPACITY,
                Setting.CAPACITY,
                Math.min(
                        Math.max(milliampHours, Setting.CAPACITY.minimum()),
                        Setting.CAPACITY.maximum()));
    }

    private static long wideMicrovolts(GaugeSettings settings, SensorSpec sensor) {
        double ratedOhms = (double) sensor.shuntRatedMicrovolts() / sensor.shuntRatedMicroamps();
        double amps = WIDTH * sensor.fullScaleMicrovolts() / 1e6 / ratedOhms;
        double ratedAmps = settings.get(Setting.SHUNT_RATED_CURRENT) / 1e3;
        double ratio = Math.min(amps, LARGEST_AMPS) / ratedAmps;
        long microvolts = (long) StrictMath.ceil(WIDE_DROP_MICROVOLTS * ratio);
        return Math.min(
                Math.max(microvolts, WIDE_DROP_MICROVOLTS), Setting.SHUNT_FULL_SCALE.maximum());
    }

    private void fix(Cause cause, Setting setting, long value) {
        if (lacks(cause)) {
            fixed.put(setting, value);
        }
    }

    /** Whether a cause is taken away. */
    boolean lacks(Cause cause) {
        return cause.compareTo(last) <= 0;
    }

    /** What the twin is told where the tested gauge is told this. */
    long valueOf(Setting setting, long told) {
        Long instead = fixed.get(setting);
        return instead == null ? told : instead;
    }

    GaugeSettings settings(GaugeSettings told) {
        GaugeSettings.Builder builder = told.toBuilder();
        fixed.forEach(builder::set);
        return builder.build();
    }

    GaugeSpec gauge(GaugeSpec tested) {
        return new GaugeSpec(
                tested.name(),
                tested.kind(),
                settings(tested.settings()),
                lacks(Cause.START) ? -1 : tested.declaredPartsPerMillion(),
                lacks(Cause.POWER) ? PowerSpec.USUAL : tested.power(),
                lacks(Cause.CLOCK)
                        ? new ClockSpec(0, tested.clock().startMillis(), 0)
                        : tested.clock(),
                tested.mistakes());
    }

    SensorSpec sensor(SensorSpec real) {
        SensorTraits traits = real.traits();
        for (SensorTrait trait : SensorTrait.values()) {
            if (lacks(trait)) {
                traits = traits.with(trait, trait.usual());
            }
        }
        return new SensorSpec(
                real.shuntRatedMicroamps(),
                real.shuntRatedMicrovolts(),
                lacks(Cause.GAIN) ? 0 : real.shuntErrorPartsPerMillion(),
                real.converterBits(),
                real.fullScaleMicrovolts(),
                lacks(Cause.GAIN) ? 0 : real.gainErrorPartsPerMillion(),
                lacks(Cause.OFFSET) ? 0 : real.offsetNanovolts(),
                lacks(Cause.NOISE) ? 0 : real.noiseNanovolts(),
                real.voltageConverterBits(),
                real.voltageFullScaleMicrovolts(),
                real.voltageNoiseMicrovolts(),
                lacks(Cause.CONVERTER) ? Sampling.INTEGRATED : real.sampling(),
                real.temperatureFitted(),
                traits,
                real.voltageProfile());
    }

    /** Whether a trait belongs to a cause that is taken away. */
    boolean lacks(SensorTrait trait) {
        Cause cause = causeOf(trait);
        return cause != null && lacks(cause);
    }

    private static @Nullable Cause causeOf(SensorTrait trait) {
        return switch (trait) {
            case OFFSET_DRIFT, THERMAL_EMF, THERMAL_EMF_TIME -> Cause.OFFSET;
            case SHUNT_TEMPERATURE_COEFFICIENT, SHUNT_HEATING, SHUNT_HEATING_TIME, GAIN_ASYMMETRY ->
                    Cause.GAIN;
            case NONLINEARITY_BOW,
                    NONLINEARITY_S,
                    MISSING_CODES,
                    DEAD_BAND,
                    RANGE_LIMIT,
                    RANGE_HYSTERESIS,
                    RANGE_OFFSET,
                    SAMPLING_INTERVAL,
                    AWAKE_TIME,
                    SAMPLING_PHASE,
                    CONVERSION_TIME,
                    MISSING_SAMPLE_EVERY,
                    REPEATED_SAMPLE_EVERY,
                    BAD_FRAME_EVERY ->
                    Cause.CONVERTER;
            case VOLTAGE_GAIN_ERROR, VOLTAGE_OFFSET, VOLTAGE_SENSE_RESISTANCE -> null;
        };
    }
}
