package org.gaugebench.sim.advice;

import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.RecordUnit;
import org.gaugebench.sim.units.Texts;
import org.jspecify.annotations.Nullable;

/**
 * Reads what a person typed, field by field, in one way for a command line and for a form. What is
 * wrong goes to whoever asked, with its field; reading goes on, so that all of it is told at once.
 */
public class TypedFields {
    private final Trouble trouble;

    /** Messages go to {@code trouble}. */
    public TypedFields(Trouble trouble) {
        this.trouble = trouble;
    }

    /** Who is told what is wrong. */
    public interface Trouble {
        /**
         * A text that cannot be read.
         *
         * @param field its key, such as "capacity"
         * @param place from 0 where a field may be given again; else 0
         * @param message what was expected, with an example, and what was found
         */
        void wrong(String field, int place, String message);

        /**
         * A text that nobody can guess.
         *
         * @param field its key
         * @param what it would say
         * @param example of it
         */
        void missing(String field, String what, String example);
    }

    /** One way to read a text. */
    public interface Parser<T> {
        /** Reads a text. */
        T parse(String text) throws QuantityException;
    }

    /** A value that nobody can guess; null with a message if it is not there. */
    public final <T> @Nullable T needed(
            String field, @Nullable String text, String what, String example, Parser<T> parser) {
        if (text == null) {
            trouble.missing(field, what, example);
            return null;
        }
        return optional(field, text, parser);
    }

    /** A value that may be left out. */
    public final <T> @Nullable T optional(String field, @Nullable String text, Parser<T> parser) {
        return optional(field, 0, text, parser);
    }

    /** The same for a field that may be given again. */
    public final <T> @Nullable T optional(
            String field, int place, @Nullable String text, Parser<T> parser) {
        if (text == null) {
            return null;
        }
        try {
            return parser.parse(text);
        } catch (QuantityException e) {
            trouble.wrong(field, place, String.valueOf(e.getMessage()));
            return null;
        }
    }

    /** A quantity within limits, or the fallback for none. */
    public final long limited(
            String field,
            @Nullable String text,
            RecordUnit unit,
            long minimum,
            long maximum,
            String expected,
            long fallback) {
        return limited(field, 0, text, new Limits(unit, minimum, maximum, expected), fallback);
    }

    /** The same for a field that may be given again. */
    final long limited(
            String field, int place, @Nullable String text, Limits limits, long fallback) {
        Long value = optional(field, place, text, it -> steps(it, limits));
        if (value != null && (value < limits.minimum() || value > limits.maximum())) {
            trouble.wrong(
                    field, place, "expected %s, but found '%s'".formatted(limits.expected(), text));
        }
        return value == null ? fallback : value;
    }

    /** Whoever types half a step hears of the step, and of what could be typed instead. */
    private static long steps(String text, Limits limits) throws QuantityException {
        Quantity typed = Quantity.parse(text, limits.unit().dimension());
        try {
            return typed.in(limits.unit());
        } catch (QuantityException e) {
            throw new QuantityException(
                    "%s; expected %s, but found '%s'"
                            .formatted(e.getMessage(), limits.expected(), text));
        }
    }

    /** What a quantity may be. */
    record Limits(RecordUnit unit, long minimum, long maximum, String expected) {}

    /** Tells that something is wrong with a field. */
    final void wrong(String field, int place, String message) {
        trouble.wrong(field, place, message);
    }

    /** Tells that something is missing. */
    final void missing(String field, String what, String example) {
        trouble.missing(field, what, example);
    }

    /** A chemistry by its word, in letters of any size: makers print LiFePO4. */
    public static Chemistry chemistry(String word) throws QuantityException {
        for (Chemistry each : Chemistry.values()) {
            if (each.key().equalsIgnoreCase(word.strip())) {
                return each;
            }
        }
        throw noSuch(chemistries(), word);
    }

    /** The words of all chemistries, with commas between. */
    public static String chemistries() {
        return Arrays.stream(Chemistry.values())
                .map(Chemistry::key)
                .collect(Collectors.joining(", "));
    }

    /** One of an enum's words, in small letters with hyphens. */
    public static <E extends Enum<E>> E word(String text, Class<E> type) throws QuantityException {
        for (E each : type.getEnumConstants()) {
            if (key(each).equals(text)) {
                return each;
            }
        }
        throw noSuch(words(type), text);
    }

    /** All words of an enum, with commas between. */
    public static <E extends Enum<E>> String words(Class<E> type) {
        return Arrays.stream(type.getEnumConstants())
                .map(TypedFields::key)
                .collect(Collectors.joining(", "));
    }

    private static String key(Enum<?> each) {
        return each.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static QuantityException noSuch(String all, String found) {
        return new QuantityException(
                "expected one of " + all + ", but found '" + Texts.shortened(found) + "'");
    }
}
