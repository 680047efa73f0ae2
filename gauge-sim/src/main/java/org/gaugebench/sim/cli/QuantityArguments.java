package org.gaugebench.sim.cli;

import java.util.List;
import org.gaugebench.sim.advice.TypedFields;

/** Reads the quantities of a command line; collects what is wrong or missing. */
final class QuantityArguments extends TypedFields {
    /** Messages go into the list. */
    QuantityArguments(List<String> wrong) {
        this(new Options(wrong, true));
    }

    private QuantityArguments(Options options) {
        super(options);
    }

    /** The same for what was told so far: what is missing is no message. */
    static QuantityArguments ofTold(List<String> wrong) {
        return new QuantityArguments(new Options(wrong, false));
    }

    /** A field is an option here. */
    private record Options(List<String> wrong, boolean isAll) implements Trouble {
        @Override
        public void wrong(String field, int place, String message) {
            wrong.add(option(field) + ": " + message);
        }

        @Override
        public void missing(String field, String what, String example) {
            if (isAll) {
                wrong.add(
                        "%s is missing: %s; expected for instance %s %s"
                                .formatted(option(field), what, option(field), example));
            }
        }

        private static String option(String field) {
            return field.startsWith("--") ? field : "--" + field;
        }
    }
}
