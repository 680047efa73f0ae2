package org.gaugebench.sim.device;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;

/** Names on the pipe: those of the tables, in lower case with hyphens. */
public final class PipeNames {
    private PipeNames() {}

    /** The name of a constant. */
    public static String of(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Every name of a table, for an encoder that must not make a new one each time. */
    static <E extends Enum<E>> String[] all(E[] constants) {
        String[] names = new String[constants.length];
        for (int i = 0; i < names.length; i++) {
            names[i] = of(constants[i]);
        }
        return names;
    }

    /**
     * Reads a list of names.
     *
     * @param words one or more names, or the one word "all"
     * @param constants of the table
     * @param name of a constant
     * @return in the order of the words
     * @throws IllegalArgumentException with a sentence for people
     */
    static <E> List<E> list(List<String> words, E[] constants, Function<E, String> name) {
        if (words.equals(List.of("all"))) {
            return List.of(constants);
        }
        List<E> found = new ArrayList<>();
        for (String word : words) {
            E one = null;
            for (E each : constants) {
                if (name.apply(each).equals(word)) {
                    one = each;
                }
            }
            if (one == null) {
                throw new IllegalArgumentException(
                        "'%s' is no name of its table; expected one such as '%s'"
                                .formatted(word, name.apply(constants[0])));
            }
            if (found.contains(one)) {
                throw new IllegalArgumentException("'" + word + "' stands there twice");
            }
            found.add(one);
        }
        if (found.isEmpty()) {
            throw new IllegalArgumentException(
                    "a name is missing; expected one such as '%s', or 'all'"
                            .formatted(name.apply(constants[0])));
        }
        return List.copyOf(found);
    }
}
