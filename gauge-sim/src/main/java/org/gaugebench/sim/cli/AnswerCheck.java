package org.gaugebench.sim.cli;

import java.util.Set;
import java.util.function.Consumer;
import org.gaugebench.sim.advice.TypedFields;
import org.gaugebench.sim.units.QuantityException;
import org.jspecify.annotations.Nullable;

/**
 * Judges an answer as the option of that name is judged, its limits included: who is asked ten
 * things must not hear after the tenth that the third was wrong.
 */
final class AnswerCheck implements TypedFields.Trouble {
    private final Set<String> fields;
    private @Nullable String message;

    private AnswerCheck(Set<String> fields) {
        this.fields = fields;
    }

    /**
     * Reads all that was told so far, with the answer in it.
     *
     * @param fields that the answer can be wrong for; what else is wrong or missing waits
     * @param reading reads it all
     * @throws QuantityException with the first message of these fields
     */
    static void of(Set<String> fields, Consumer<TypedFields> reading) throws QuantityException {
        AnswerCheck check = new AnswerCheck(fields);
        reading.accept(new TypedFields(check));
        String found = check.message;
        if (found != null) {
            throw new QuantityException(found);
        }
    }

    @Override
    public void wrong(String field, int place, String text) {
        keep(field, text);
    }

    @Override
    public void missing(String field, String what, String example) {
        keep(
                field,
                "the %s is missing: %s; expected for instance %s".formatted(field, what, example));
    }

    private void keep(String field, String text) {
        if (fields.contains(field) && message == null) {
            message = text;
        }
    }
}
