package org.gaugebench.sim.cli;

import java.util.List;
import org.gaugebench.sim.advice.TypedFields;

/** Reads the quantities of a command line; collects what is wrong or missing. */
final class QuantityArguments extends TypedFields {
    /** Messages go into the list. */
    QuantityArguments(List<String> wrong) {
        super(new Options(wrong));
    }

    /** A field is an option here. */
    private record Options(List<String> wrong) implements Trouble {
        @Override
        public void wrong(String field, int place, String message) {
            wrong.add(option(field) + ": " + message);
        }

        @Override
        public void missing(String field, String what, String example) {
            wrong.add(
                    "%s is missing: %s; expected for instance %s %s"
                            .formatted(option(field), what, option(field), example));
        }

        private static String option(String field) {
            return field.startsWith("--") ? field : "--" + field;
        }
    }
}
