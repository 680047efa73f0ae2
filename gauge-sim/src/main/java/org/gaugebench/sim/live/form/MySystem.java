package org.gaugebench.sim.live.form;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.gaugebench.sim.logs.NoteCells;
import org.gaugebench.sim.logs.OwnersNote;
import org.jspecify.annotations.Nullable;

/**
 * What stands in the form: texts as they were typed. What is not there is not known.
 *
 * @param values of the fields that stand once; none empty
 * @param loads in their order
 * @param chargers in their order
 * @param notes in their order
 */
record MySystem(
        Map<FormField, String> values, List<Load> loads, List<Charger> chargers, List<Note> notes) {
    /** A form of which nothing is filled in. */
    static final MySystem EMPTY = new MySystem(Map.of(), List.of(), List.of(), List.of());

    /** What a load's amount counts. */
    static final List<String> UNITS = List.of("watts", "amps", "phone", "tablet");

    /** Where a charger takes from. */
    static final List<String> SOURCES = List.of("sun", "mains", "alternator");

    /** Keeps its own. */
    MySystem {
        Map<FormField, String> kept = new EnumMap<>(FormField.class);
        kept.putAll(values);
        values = kept;
        loads = List.copyOf(loads);
        chargers = List.copyOf(chargers);
        notes = List.copyOf(notes);
    }

    /** A field's text; null for not known. */
    @Nullable String text(FormField field) {
        return values.get(field);
    }

    /**
     * A row of what draws current; a text is empty where it is not known.
     *
     * @param name as the owner calls it
     * @param amount of its unit
     * @param unit one of {@link #UNITS}
     * @param hours a day
     * @param surge when it starts
     * @param inverter "yes" where the inverter feeds it
     */
    record Load(
            String name, String amount, String unit, String hours, String surge, String inverter) {
        /** Names of the parts, in their order. */
        static final List<String> PARTS =
                List.of("name", "amount", "unit", "hours", "surge", "inverter");

        static Load of(Map<String, String> texts) {
            return new Load(
                    texts.getOrDefault("name", ""),
                    texts.getOrDefault("amount", ""),
                    texts.getOrDefault("unit", UNITS.get(0)),
                    texts.getOrDefault("hours", ""),
                    texts.getOrDefault("surge", ""),
                    texts.getOrDefault("inverter", ""));
        }

        List<String> texts() {
            return List.of(name, amount, unit, hours, surge, inverter);
        }
    }

    /**
     * A row of what charges; a text is empty where it is not known.
     *
     * @param source one of {@link #SOURCES}
     * @param amps most that it gives
     * @param volts highest steady ones
     */
    record Charger(String source, String amps, String volts) {
        /** Names of the parts, in their order. */
        static final List<String> PARTS = List.of("source", "amps", "volts");

        /** A row that was added and not filled in. */
        static final Charger NOTHING = new Charger("", "", "");

        static Charger of(Map<String, String> texts) {
            return new Charger(
                    texts.getOrDefault("source", ""),
                    texts.getOrDefault("amps", ""),
                    texts.getOrDefault("volts", ""));
        }

        List<String> texts() {
            return List.of(source, amps, volts);
        }
    }

    /**
     * A row of what the owner wrote down; a text is empty where nothing was.
     *
     * @param texts of {@link #PARTS}, in their order
     */
    record Note(List<String> texts) {
        /** Names of the parts, in their order. */
        static final List<String> PARTS =
                Arrays.stream(NoteCells.Part.values()).map(NoteCells.Part::key).toList();

        /** What can have happened. */
        static final List<String> WORDS =
                Arrays.stream(OwnersNote.Word.values()).map(OwnersNote.Word::key).toList();

        /** Keeps its own. */
        Note {
            texts = List.copyOf(texts);
        }

        static Note of(Map<String, String> texts) {
            return new Note(PARTS.stream().map(it -> texts.getOrDefault(it, "")).toList());
        }

        String text(NoteCells.Part part) {
            return texts.get(part.ordinal());
        }

        /** Whether it was added and not filled in. */
        boolean isEmpty() {
            return texts.stream().allMatch(String::isEmpty);
        }
    }
}
