package org.gaugebench.sim.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a seed. */
final class SeedText implements ITypeConverter<Long> {
    SeedText() {}

    @Override
    public Long convert(String text) {
        try {
            return Long.valueOf(text.strip());
        } catch (NumberFormatException e) {
            throw new TypeConversionException(
                    "'" + text + "' is no seed; expected a whole number of 64 bits such as 42");
        }
    }
}
