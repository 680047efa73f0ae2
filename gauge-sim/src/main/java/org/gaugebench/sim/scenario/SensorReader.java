package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.MICROVOLTS;
import static org.gaugebench.sim.units.RecordUnit.NANOVOLTS;
import static org.gaugebench.sim.units.RecordUnit.PARTS_PER_MILLION;

import java.util.List;
import java.util.Locale;
import org.gaugebench.sim.units.ConverterRange;
import org.gaugebench.sim.units.ShuntRating;

/** Reads the shunt and the converters as they really are. */
final class SensorReader {
    static final long LARGEST_OFFSET_NANOVOLTS = 100_000_000;
    private static final long LARGEST_ERROR = 500_000;
    private static final ShuntRating STANDING_IN = new ShuntRating(100_000_000, 75_000);

    private SensorReader() {}

    static SensorSpec read(Block block, ProfileFolder folder) {
        block.require("shunt", "shunt: " + ShuntRating.EXAMPLE);
        ShuntRating shunt =
                block.parsed("shunt", ShuntRating.EXAMPLE, ShuntRating::parse, STANDING_IN);
        SensorSpec usual = Defaults.sensor(shunt.microamps(), shunt.microvolts());
        ConverterRange converter =
                converter(
                        block,
                        "converter",
                        12,
                        new ConverterRange(usual.converterBits(), usual.fullScaleMicrovolts()));
        ConverterRange voltageConverter =
                converter(
                        block,
                        "voltage-converter",
                        10,
                        new ConverterRange(
                                usual.voltageConverterBits(), usual.voltageFullScaleMicrovolts()));
        SensorSpec sensor =
                new SensorSpec(
                        shunt.microamps(),
                        shunt.microvolts(),
                        error(block, "shunt-error", usual.shuntErrorPartsPerMillion()),
                        converter.bits(),
                        converter.microvolts(),
                        error(block, "gain-error", usual.gainErrorPartsPerMillion()),
                        block.quantity(
                                "offset",
                                NANOVOLTS,
                                -LARGEST_OFFSET_NANOVOLTS,
                                LARGEST_OFFSET_NANOVOLTS,
                                usual.offsetNanovolts()),
                        block.quantity("noise", NANOVOLTS, 0, 100_000_000, usual.noiseNanovolts()),
                        voltageConverter.bits(),
                        voltageConverter.microvolts(),
                        block.quantity(
                                "voltage-noise",
                                MICROVOLTS,
                                0,
                                10_000_000,
                                usual.voltageNoiseMicrovolts()),
                        block.choice(
                                "sampling",
                                List.of(SensorSpec.Sampling.values()),
                                SensorReader::key,
                                usual.sampling()),
                        block.either(
                                "temperature-sensor", "fitted", "none", usual.temperatureFitted()),
                        SensorTraits.read(block),
                        ProfileBlock.ofVoltage(block, folder));
        block.finish();
        return sensor;
    }

    static String key(SensorSpec.Sampling sampling) {
        return sampling.name().toLowerCase(Locale.ROOT);
    }

    private static ConverterRange converter(
            Block block, String key, int fewestBits, ConverterRange usual) {
        ConverterRange range =
                block.parsed(key, ConverterRange.EXAMPLE, ConverterRange::parse, usual);
        if (range.bits() >= fewestBits && range.bits() <= 24) {
            return range;
        }
        block.valueProblem(
                key, "'" + key + "' must have " + fewestBits + " to 24 bit, but is " + range);
        return usual;
    }

    private static long error(Block block, String key, long usual) {
        return block.quantity(key, PARTS_PER_MILLION, -LARGEST_ERROR, LARGEST_ERROR, usual);
    }
}
