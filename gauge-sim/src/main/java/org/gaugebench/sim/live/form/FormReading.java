package org.gaugebench.sim.live.form;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.gaugebench.sim.advice.OwnChange;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.OwnersGauge;
import org.gaugebench.sim.advice.Seen;
import org.gaugebench.sim.advice.SettingsTold;
import org.gaugebench.sim.advice.TypedChange;
import org.gaugebench.sim.advice.TypedFields;
import org.gaugebench.sim.advice.TypedGauge;
import org.gaugebench.sim.advice.TypedSettings;
import org.gaugebench.sim.advice.TypedSystem;
import org.gaugebench.sim.logs.OwnersNote;
import org.gaugebench.sim.units.Dimension;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.QuantityException;
import org.jspecify.annotations.Nullable;

/**
 * Reads a form by the same readers as the command line. What is not known is filled in and listed;
 * what is wrong is told with its field.
 */
final class FormReading {
    /** Watts, where loads need one and tell no watts; common practice, no source. */
    private static final BigDecimal USUAL_INVERTER = BigDecimal.valueOf(1_000);

    /** Of the amp-hours; common practice, no source. */
    private static final BigDecimal CHARGER_PART = new BigDecimal("0.1");

    private final MySystem form;
    private final List<Wrong> wrong = new ArrayList<>();
    private final List<String> assumed = new ArrayList<>();
    private final List<String> changeAssumed = new ArrayList<>();
    private final LoadRows loads = new LoadRows(wrong, assumed);
    private final List<Integer> chargerRows = new ArrayList<>();
    private final List<Integer> voltRows = new ArrayList<>();

    /**
     * A field and what is wrong with it.
     *
     * @param field its key; of a row such as "loads.2.hours", counted from 0
     * @param message what was expected, with an example, and what was found
     */
    record Wrong(String field, String message) {}

    /**
     * A form that could be read.
     *
     * @param system as the command line would read it
     * @param gauge the same
     * @param settings the same
     * @param seen what the owner sees, or null
     * @param notes what the owner wrote down, in order of time; perhaps none
     * @param change what the owner changed, or null
     * @param changeAssumed what was filled in of the change, which no other question asks for
     * @param assumed what else was filled in
     */
    record Read(
            OwnSystem system,
            OwnersGauge gauge,
            SettingsTold settings,
            @Nullable Seen seen,
            List<OwnersNote> notes,
            @Nullable OwnChange change,
            List<String> changeAssumed,
            List<String> assumed) {
        /** All that was filled in, here and by whoever answers, each once. */
        List<String> assumedWith(List<String> more) {
            List<String> all = new ArrayList<>(assumed);
            more.stream().filter(each -> !all.contains(each)).forEach(all::add);
            return all;
        }
    }

    private FormReading(MySystem form) {
        this.form = form;
    }

    /**
     * Reads a form.
     *
     * @param wrong grows by everything that is wrong
     * @return null if anything is
     */
    static @Nullable Read read(MySystem form, List<Wrong> wrong) {
        FormReading reading = new FormReading(form);
        Read read = reading.read();
        wrong.addAll(reading.wrong);
        return reading.wrong.isEmpty() ? read : null;
    }

    private @Nullable Read read() {
        TypedFields fields = new TypedFields(new Places());
        String capacity = capacity();
        TypedSystem typed =
                new TypedSystem(
                        known(FormField.VOLTAGE, "12 V", "a battery of 12 V"),
                        known(
                                FormField.CHEMISTRY,
                                "lead-acid-agm",
                                "a sealed lead-acid battery with glass mat"),
                        capacity,
                        text(FormField.USABLE),
                        loads.phrases(form.loads()),
                        inverter(),
                        chargers(capacity),
                        text(FormField.COLDEST),
                        text(FormField.SHUNT),
                        text(FormField.ADC));
        OwnSystem system = typed.read(fields);
        OwnersGauge gauge =
                new TypedGauge(
                                text(FormField.SETS_FULL),
                                text(FormField.PAST_FULL),
                                text(FormField.AFTER_OFF),
                                text(FormField.SMALLEST_AMPS),
                                text(FormField.SMALLEST_AMP_HOURS),
                                text(FormField.LONGEST_HOURS),
                                text(FormField.OWN_CURRENT),
                                text(FormField.ZERO_ERROR),
                                text(FormField.PAST_SHUNT),
                                text(FormField.EFFICIENCY_SET))
                        .read(fields);
        SettingsTold settings =
                new TypedSettings(
                                text(FormField.TYPED_CHEMISTRY),
                                text(FormField.TYPED_CAPACITY),
                                text(FormField.TYPED_SHUNT),
                                text(FormField.FULL_VOLTS),
                                text(FormField.FULL_AMPS),
                                text(FormField.FULL_MINUTES),
                                text(FormField.KEPT_BACK),
                                chargerVolts())
                        .read(
                                fields,
                                system == null ? 100 : system.ampHours(),
                                system == null ? 0 : system.nominalVolts());
        OwnChange change = change(fields, capacity);
        List<OwnersNote> notes = NoteRows.read(form.notes(), wrong);
        return system == null
                ? null
                : new Read(
                        system,
                        gauge,
                        settings,
                        seen(),
                        notes,
                        change,
                        List.copyOf(changeAssumed),
                        List.copyOf(assumed));
    }

    private @Nullable Seen seen() {
        String key = form.text(FormField.SEEN);
        for (Seen each : Seen.values()) {
            if (each.key().equals(key)) {
                return each;
            }
        }
        return null;
    }

    private @Nullable OwnChange change(TypedFields fields, String capacity) {
        String key = form.text(FormField.CHANGED);
        String typed = form.text(FormField.CHANGED_AMOUNT);
        Double shown = TypedChange.shownPercent(fields, text(FormField.SHOWN));
        if (key == null) {
            return null;
        }
        OwnChange.What what =
                OwnChange.What.valueOf(key.toUpperCase(Locale.ROOT).replace('-', '_'));
        String unit =
                switch (what) {
                    case BATTERY_SWAPPED, SECOND_BATTERY -> "Ah";
                    case STORED -> "weeks";
                    case WINTER -> "°C";
                    case WIRE_OFF -> "min";
                };
        String text = typed == null ? usualChange(what, capacity) : LoadRows.withUnit(typed, unit);
        Double amount =
                fields.optional(
                        FormField.CHANGED_AMOUNT.key(), text, it -> TypedChange.amount(what, it));
        return amount == null ? null : new OwnChange(what, amount, shown);
    }

    private String usualChange(OwnChange.What what, String capacity) {
        String usual =
                switch (what) {
                    case BATTERY_SWAPPED, SECOND_BATTERY -> capacity;
                    case STORED -> "8 weeks";
                    case WINTER -> "0 °C";
                    case WIRE_OFF -> "60 min";
                };
        changeAssumed.add("what changed: " + usual);
        return usual;
    }

    /** Messages of the shared readers, at the places of the form. */
    private final class Places implements TypedFields.Trouble {
        @Override
        public void wrong(String field, int place, String message) {
            wrong.add(new Wrong(placeOf(field, place, message), message));
        }

        @Override
        public void missing(String field, String what, String example) {
            wrong.add(
                    new Wrong(
                            placeOf(field, 0, ""),
                            "expected %s, such as %s, but there is nothing"
                                    .formatted(what, example)));
        }

        private String placeOf(String field, int place, String message) {
            return switch (field) {
                case "load" -> {
                    String part =
                            message.contains("is there twice")
                                    ? "name"
                                    : message.contains("a surge is") ? "surge" : "amount";
                    yield "loads." + loads.row(place) + "." + part;
                }
                case "charger" -> "chargers." + chargerRows.get(place) + ".amps";
                case "charger-volts" -> "chargers." + voltRows.get(place) + ".volts";
                case "inverter" -> FormField.INVERTER_WATTS.key();
                case "capacity" ->
                        message.contains("@") && form.text(FormField.RATE) != null
                                ? FormField.RATE.key()
                                : field;
                default -> field;
            };
        }
    }

    /** A field's text; a number that stands alone takes the field's unit. */
    private @Nullable String text(FormField field) {
        String text = form.text(field);
        return text == null ? null : LoadRows.withUnit(text, field.unit());
    }

    private String known(FormField field, String otherwise, String words) {
        String text = text(field);
        if (text == null) {
            assumed.add(words);
            return otherwise;
        }
        return text;
    }

    private String capacity() {
        String text = known(FormField.CAPACITY, "100 Ah", "100 Ah printed on it");
        String rate = form.text(FormField.RATE);
        if (rate == null) {
            assumed.add("the amp-hours are those at the 20 h rate");
            return text;
        }
        return text.contains("@") ? text : text + " @ " + rate;
    }

    /** After the loads, which may need one. */
    private @Nullable String inverter() {
        String watts = text(FormField.INVERTER_WATTS);
        String surge = text(FormField.INVERTER_SURGE);
        String efficiency = text(FormField.INVERTER_EFFICIENCY);
        int before = wrong.size();
        if (watts != null) {
            loads.check(FormField.INVERTER_WATTS.key(), watts, Dimension.POWER);
        }
        if (surge != null) {
            loads.check(FormField.INVERTER_SURGE.key(), surge, Dimension.POWER);
        }
        if (efficiency != null) {
            loads.check(FormField.INVERTER_EFFICIENCY.key(), efficiency, Dimension.RATIO);
        }
        if (watts == null && !loads.needsInverter()) {
            assumed.add("no inverter");
            return null;
        }
        String whole = watts;
        if (whole == null) {
            BigDecimal sum = loads.inverterWatts();
            whole =
                    (sum.signum() > 0 ? sum : USUAL_INVERTER).stripTrailingZeros().toPlainString()
                            + " W";
            assumed.add("an inverter of " + whole + ", as its loads take");
        }
        if (efficiency == null) {
            assumed.add("an inverter that gives 88 % of what it takes");
        }
        if (wrong.size() > before) {
            return null;
        }
        return whole
                + (efficiency == null ? "" : ", " + efficiency)
                + (surge == null ? "" : ", surge " + surge);
    }

    private List<String> chargers(String capacity) {
        List<String> amps = new ArrayList<>();
        for (int i = 0; i < form.chargers().size(); i++) {
            MySystem.Charger row = form.chargers().get(i);
            if (row.equals(MySystem.Charger.NOTHING)) {
                continue;
            }
            String text = row.amps();
            if (text.isEmpty()) {
                text = usualCharger(capacity);
                assumed.add("charger %d: %s, a tenth of the amp-hours".formatted(i + 1, text));
            }
            amps.add(LoadRows.withUnit(text, "A"));
            chargerRows.add(i);
        }
        if (amps.isEmpty()) {
            assumed.add("no charger");
        }
        return amps;
    }

    private static String usualCharger(String capacity) {
        try {
            BigDecimal ampHours =
                    Quantity.parse(capacity.replaceFirst("@.*", ""), Dimension.CHARGE).amount();
            return ampHours.multiply(CHARGER_PART).stripTrailingZeros().toPlainString() + " A";
        } catch (QuantityException e) {
            // The capacity's own message says what is wrong.
            return "10 A";
        }
    }

    private List<String> chargerVolts() {
        List<String> volts = new ArrayList<>();
        for (int i = 0; i < form.chargers().size(); i++) {
            String text = form.chargers().get(i).volts();
            if (!text.isEmpty()) {
                volts.add(LoadRows.withUnit(text, "V"));
                voltRows.add(i);
            }
        }
        return volts;
    }
}
