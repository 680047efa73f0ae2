package org.gaugebench.sim.cli;

import org.gaugebench.sim.scenario.SeedRange;
import org.gaugebench.sim.units.QuantityException;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads seeds from a first to a last, as {@code seeds} in a file. */
final class SeedRangeText implements ITypeConverter<SeedRange> {
    SeedRangeText() {}

    @Override
    public SeedRange convert(String text) {
        try {
            return SeedRange.parse(text.strip());
        } catch (QuantityException e) {
            throw new TypeConversionException(e.explanation());
        }
    }
}
