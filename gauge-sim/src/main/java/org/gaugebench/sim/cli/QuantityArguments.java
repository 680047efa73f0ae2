package org.gaugebench.sim.cli;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.RecordUnit;
import org.jspecify.annotations.Nullable;

/** Reads the quantities of a command line; collects what is wrong or missing. */
final class QuantityArguments {
    private final List<String> wrong;

    /** Messages go into the list. */
    QuantityArguments(List<String> wrong) {
        this.wrong = wrong;
    }

    /** One way to read a text. */
    interface Parser<T> {
        /** Reads a text. */
        T parse(String text) throws QuantityException;
    }

    /** A value that nobody can guess; null with a message in the list. */
    <T> @Nullable T needed(
            String option, @Nullable String text, String what, String example, Parser<T> parser) {
        if (text == null) {
            wrong.add(
                    "%s is missing: %s; expected for instance %s %s"
                            .formatted(option, what, option, example));
            return null;
        }
        return read(option, text, parser);
    }

    /** A value that may be left out. */
    <T> @Nullable T optional(String option, @Nullable String text, Parser<T> parser) {
        return text == null ? null : read(option, text, parser);
    }

    /** A quantity within limits, or the fallback for none. */
    long limited(
            String option,
            @Nullable String text,
            RecordUnit unit,
            long minimum,
            long maximum,
            String expected,
            long fallback) {
        Long value = optional(option, text, it -> Quantity.parse(it, unit));
        if (value != null && (value < minimum || value > maximum)) {
            wrong.add("%s: expected %s, but found '%s'".formatted(option, expected, text));
        }
        return value == null ? fallback : value;
    }

    private <T> @Nullable T read(String option, String text, Parser<T> parser) {
        try {
            return parser.parse(text);
        } catch (QuantityException e) {
            wrong.add(option + ": " + e.getMessage());
            return null;
        }
    }

    /** A chemistry by its word. */
    static Chemistry chemistry(String word) throws QuantityException {
        for (Chemistry each : Chemistry.values()) {
            if (each.key().equals(word)) {
                return each;
            }
        }
        throw new QuantityException(
                "expected one of "
                        + Arrays.stream(Chemistry.values())
                                .map(Chemistry::key)
                                .collect(Collectors.joining(", "))
                        + ", but found '"
                        + word
                        + "'");
    }
}
