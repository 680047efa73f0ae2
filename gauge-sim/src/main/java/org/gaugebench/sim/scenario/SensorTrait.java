package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.COUNTS_Q8;
import static org.gaugebench.sim.units.RecordUnit.MICROOHMS;
import static org.gaugebench.sim.units.RecordUnit.MICROVOLTS;
import static org.gaugebench.sim.units.RecordUnit.MILLIKELVIN_PER_WATT;
import static org.gaugebench.sim.units.RecordUnit.MILLIS;
import static org.gaugebench.sim.units.RecordUnit.NANOVOLTS;
import static org.gaugebench.sim.units.RecordUnit.NANOVOLTS_PER_KELVIN;
import static org.gaugebench.sim.units.RecordUnit.PARTS_PER_MILLION;
import static org.gaugebench.sim.units.RecordUnit.PARTS_PER_MILLION_PER_KELVIN;

import org.gaugebench.sim.units.RecordUnit;

/**
 * What can be wrong with a sensor beyond the plain model: one row each. Reader, writer, timeline
 * and the page on the format go through this table. A trait at its usual value is not there.
 */
public enum SensorTrait {
    /** Change of the shunt channel's offset per kelvin from 25 °C. */
    OFFSET_DRIFT("offset-drift", NANOVOLTS_PER_KELVIN, -100_000, 100_000, 0),
    /** Change of the shunt's resistance per kelvin from 25 °C. */
    SHUNT_TEMPERATURE_COEFFICIENT(
            "shunt-temperature-coefficient", PARTS_PER_MILLION_PER_KELVIN, -10_000, 10_000, 0),
    /** Rise of the shunt above the surroundings for each watt, settled. */
    SHUNT_HEATING("shunt-heating", MILLIKELVIN_PER_WATT, 0, 1_000_000, 0),
    /** Time constant of that rise. */
    SHUNT_HEATING_TIME("shunt-heating-time", MILLIS, 1, 86_400_000, 300_000),
    /** Thermal voltage at the sense points after long rated current; grows with its square. */
    THERMAL_EMF("thermal-emf", NANOVOLTS, -10_000_000, 10_000_000, 0),
    /** Time constant with which it comes and goes. */
    THERMAL_EMF_TIME("thermal-emf-time", MILLIS, 1, 10L * 86_400_000, 3_600_000),
    /** Gain of charge up and of discharge down by this. */
    GAIN_ASYMMETRY("gain-asymmetry", PARTS_PER_MILLION, -100_000, 100_000, 0),
    /** Largest deviation from a straight line, at half scale, the same sign either way. */
    NONLINEARITY_BOW("nonlinearity-bow", PARTS_PER_MILLION, -50_000, 50_000, 0),
    /** Largest deviation from a straight line, at half scale, of the input's sign. */
    NONLINEARITY_S("nonlinearity-s", PARTS_PER_MILLION, -50_000, 50_000, 0),
    /** Each so-manieth code never comes: the one below stands in; 0 for none. */
    MISSING_CODES("missing-codes", COUNTS_Q8, 0, 65_536 * 256, 0),
    /** Inputs nearer to zero than this give no code. */
    DEAD_BAND("dead-band", NANOVOLTS, 0, 100_000_000, 0),
    /** Beyond this input the converter changes to its wide range. */
    RANGE_LIMIT("range-limit", NANOVOLTS, 0, 1_000_000_000, 0),
    /** How far under the limit, in parts of it, it changes back. */
    RANGE_HYSTERESIS("range-hysteresis", PARTS_PER_MILLION, 0, 900_000, 100_000),
    /** Offset of the wide range beyond that of the narrow one. */
    RANGE_OFFSET("range-offset", NANOVOLTS, -100_000_000, 100_000_000, 0),
    /** Gain error of the voltage channel. */
    VOLTAGE_GAIN_ERROR("voltage-gain-error", PARTS_PER_MILLION, -500_000, 500_000, 0),
    /** Offset of the voltage channel. */
    VOLTAGE_OFFSET("voltage-offset", MICROVOLTS, -10_000_000, 10_000_000, 0),
    /** Resistance between the battery and the point at which its voltage is taken. */
    VOLTAGE_SENSE_RESISTANCE("voltage-sense-resistance", MICROOHMS, 0, 10_000_000, 0),
    /** A sample comes each so often; 0 for at every tick. */
    SAMPLING_INTERVAL("sampling-interval", MILLIS, 0, 86_400_000, 0),
    /** The converter looks for so long before each sample; 0 for the whole interval. */
    AWAKE_TIME("awake-time", MILLIS, 0, 86_400_000, 0),
    /** When the first sample comes, within the interval. */
    SAMPLING_PHASE("sampling-phase", MILLIS, 0, 86_400_000, 0),
    /** A converter that has a new code each so often shows the old one until then; 0 for never. */
    CONVERSION_TIME("conversion-time", MILLIS, 0, 3_600_000, 0),
    /** Mean time between samples that do not arrive; 0 for none. */
    MISSING_SAMPLE_EVERY("missing-sample-every", MILLIS, 0, 365L * 86_400_000, 0),
    /** Mean time between samples that come twice; 0 for none. */
    REPEATED_SAMPLE_EVERY("repeated-sample-every", MILLIS, 0, 365L * 86_400_000, 0),
    /** Mean time between frames of garbage; 0 for none. */
    BAD_FRAME_EVERY("bad-frame-every", MILLIS, 0, 365L * 86_400_000, 0);

    private final String key;
    private final RecordUnit unit;
    private final long minimum;
    private final long maximum;
    private final long usual;

    SensorTrait(String key, RecordUnit unit, long minimum, long maximum, long usual) {
        this.key = key;
        this.unit = unit;
        this.minimum = minimum;
        this.maximum = maximum;
        this.usual = usual;
    }

    /** The name in scenario files. */
    public String key() {
        return key;
    }

    /**
     * The trait of that name.
     *
     * @throws IllegalArgumentException if there is none
     */
    public static SensorTrait of(String key) {
        for (SensorTrait trait : values()) {
            if (trait.key.equals(key)) {
                return trait;
            }
        }
        throw new IllegalArgumentException("no trait " + key);
    }

    /** Unit of its value. */
    public RecordUnit unit() {
        return unit;
    }

    /** Smallest value. */
    public long minimum() {
        return minimum;
    }

    /** Largest value. */
    public long maximum() {
        return maximum;
    }

    /** Value of a sensor that has nothing of the kind. */
    public long usual() {
        return usual;
    }
}
