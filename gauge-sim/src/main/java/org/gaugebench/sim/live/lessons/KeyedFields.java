package org.gaugebench.sim.live.lessons;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.sim.scenario.Nearest;
import org.gaugebench.sim.units.QuantityException;
import org.jspecify.annotations.Nullable;

/**
 * Takes the keys of a lesson or a plan one by one. What is asked for is a valid key; {@link
 * #finish()} reports the others.
 */
final class KeyedFields {
    private static final Pattern NUMBERS = Pattern.compile("\\d{1,2}(, \\d{1,2})*");

    private final KeyedText text;
    private final Set<String> asked = new TreeSet<>();
    private final Map<String, String> texts = new LinkedHashMap<>();

    KeyedFields(KeyedText text) {
        this.text = text;
    }

    /**
     * Reads a value or says why not.
     *
     * @param <T> what it reads
     */
    interface Parser<T> {
        /** Reads a value. */
        T parse(String value) throws QuantityException;
    }

    boolean has(String key) {
        asked.add(key);
        return text.entries().containsKey(key);
    }

    /** A text that people read; goes into the list of words. */
    void words(String key, String example) {
        KeyedText.Entry entry = entry(key, example);
        if (entry != null) {
            texts.put(key, entry.value());
        }
    }

    /** A value, or the fallback with a problem added if it is missing or wrong. */
    <T> T value(String key, String example, Parser<T> parser, T fallback) {
        return read(key, example, parser).orElse(fallback);
    }

    /** A value, or nothing with a problem added if it is missing or wrong. */
    <T> Optional<T> read(String key, String example, Parser<T> parser) {
        KeyedText.Entry entry = entry(key, example);
        if (entry == null) {
            return Optional.empty();
        }
        try {
            return Optional.of(parser.parse(entry.value()));
        } catch (QuantityException e) {
            String message = e.explanation() + "; expected such as '" + example + "'";
            text.problem(entry, message);
            return Optional.empty();
        }
    }

    private KeyedText.@Nullable Entry entry(String key, String example) {
        asked.add(key);
        KeyedText.Entry entry = text.entries().get(key);
        if (entry == null) {
            text.problem(1, 1, "'" + key + "' is missing; expected '" + example + "'");
        }
        return entry;
    }

    int whole(String key, int lowest, int highest) {
        return value(
                key,
                key + " = " + highest,
                it -> {
                    if (!it.matches("\\d{1,6}")
                            || Integer.parseInt(it) < lowest
                            || Integer.parseInt(it) > highest) {
                        throw new QuantityException(
                                "'%s' is no whole number from %d to %d"
                                        .formatted(it, lowest, highest));
                    }
                    return Integer.parseInt(it);
                },
                lowest);
    }

    /** Numbers with commas between, or the word none. */
    List<Integer> numbers(String key) {
        return value(
                key,
                key + " = 1, 7",
                it -> {
                    List<Integer> numbers = new ArrayList<>();
                    if (it.equals("none")) {
                        return numbers;
                    }
                    if (!NUMBERS.matcher(it).matches()) {
                        throw new QuantityException("'%s' is no list of numbers".formatted(it));
                    }
                    for (String number : it.split(", ", -1)) {
                        numbers.add(Integer.valueOf(number));
                    }
                    return numbers;
                },
                List.of());
    }

    /** What stands between a beginning and an optional end of the keys, in file order. */
    List<String> parts(String beginning) {
        Pattern pattern = Pattern.compile(Pattern.quote(beginning) + "([a-z0-9-]+)(\\..*)?");
        Set<String> parts = new LinkedHashSet<>();
        for (String key : text.entries().keySet()) {
            Matcher match = pattern.matcher(key);
            if (match.matches()) {
                parts.add(match.group(1));
            }
        }
        return List.copyOf(parts);
    }

    /** Numbers behind a beginning; they have to run on from the first one in the file. */
    int count(String beginning, int first, int fewest, int most) {
        List<String> parts = parts(beginning);
        for (int i = 0; i < parts.size(); i++) {
            if (!parts.get(i).equals(Integer.toString(first + i))) {
                problem(
                        beginning + parts.get(i),
                        "expected '%s%d' here: they are numbered from %d"
                                .formatted(beginning, first + i, first));
                return 0;
            }
        }
        if (parts.size() < fewest || parts.size() > most) {
            problem(
                    beginning + first,
                    "%d of '%s%d' and so on; expected %d to %d"
                            .formatted(parts.size(), beginning, first, fewest, most));
            return 0;
        }
        return parts.size();
    }

    /** Adds a problem at a key, or at the head of the text where the key is missing. */
    void problem(String key, String message) {
        KeyedText.Entry at = null;
        for (KeyedText.Entry entry : text.entries().values()) {
            if (entry.key().equals(key) || (at == null && entry.key().startsWith(key + "."))) {
                at = entry;
            }
        }
        if (at == null) {
            text.problem(1, 1, message);
        } else {
            text.problem(at, message);
        }
    }

    /** The texts that people read, in the order in which they were asked for. */
    Map<String, String> texts() {
        return texts;
    }

    /** Reports every key that nobody asked for, and throws if anything was found. */
    void finish() throws TextException {
        for (KeyedText.Entry entry : text.entries().values()) {
            if (!asked.contains(entry.key())) {
                String near = Nearest.of(entry.key(), asked);
                text.problem(
                        entry.line(),
                        1,
                        "there is no key '"
                                + entry.key()
                                + "'; "
                                + (near == null
                                        ? "expected one of: " + String.join(", ", asked)
                                        : "did you mean '" + near + "'?"));
            }
        }
        text.throwIfAny();
    }
}
