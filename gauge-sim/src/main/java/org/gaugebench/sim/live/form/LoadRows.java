package org.gaugebench.sim.live.form;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.units.Dimension;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.QuantityException;
import org.jspecify.annotations.Nullable;

/**
 * Makes of each row of what draws current the phrase that the command line takes. A part that
 * cannot be read is told at itself.
 */
final class LoadRows {
    /** Watt-hours of a charge, where nobody knows; common practice, no source. */
    private static final String PHONE = "15 Wh";

    private static final String TABLET = "30 Wh";

    private final List<FormReading.Wrong> wrong;
    private final List<String> assumed;
    private final List<Integer> rows = new ArrayList<>();
    private BigDecimal inverterWatts = BigDecimal.ZERO;
    private boolean needsInverter;

    /** Both lists grow. */
    LoadRows(List<FormReading.Wrong> wrong, List<String> assumed) {
        this.wrong = wrong;
        this.assumed = assumed;
    }

    /** The row of the form that a phrase stands for. */
    int row(int phrase) {
        return rows.get(phrase);
    }

    /** Whether any of them runs on the inverter. */
    boolean needsInverter() {
        return needsInverter;
    }

    /** What they take together of the inverter, as far as it is told in watts. */
    BigDecimal inverterWatts() {
        return inverterWatts;
    }

    /** A number that stands alone takes a unit. */
    static String withUnit(String text, String unit) {
        boolean bare = !unit.isEmpty() && text.matches("[+\\-−]?\\d+([.,]\\d+)?");
        return bare ? text + " " + unit : text;
    }

    /**
     * Reads the rows.
     *
     * @return each that can be read, as the command line takes it
     */
    List<String> phrases(List<MySystem.Load> loads) {
        List<String> phrases = new ArrayList<>();
        for (int i = 0; i < loads.size(); i++) {
            MySystem.Load row = loads.get(i);
            boolean empty = row.name().isEmpty() && row.amount().isEmpty() && row.hours().isEmpty();
            String phrase = empty ? null : load(row, "loads." + i + ".", i + 1);
            if (phrase != null) {
                phrases.add(phrase);
                rows.add(i);
            }
        }
        if (phrases.isEmpty()) {
            assumed.add("nothing draws current");
        }
        return phrases;
    }

    /** One load as the command line takes it; null if it is left out or a part of it is wrong. */
    private @Nullable String load(MySystem.Load row, String place, int number) {
        int before = wrong.size();
        String name = row.name().isEmpty() ? "load " + number : row.name();
        if (name.contains(":")) {
            wrong.add(
                    new FormReading.Wrong(
                            place + "name",
                            "expected a name without a colon such as lamp, but found '"
                                    + name
                                    + "'"));
        }
        boolean charges = row.unit().equals("phone") || row.unit().equals("tablet");
        String unit = row.unit().equals("watts") ? "W" : "A";
        StringBuilder phrase = new StringBuilder(name).append(": ");
        if (charges) {
            phrase.append(charges(row, name, place + "amount"));
        } else {
            phrase.append(draw(row.amount(), unit, place + "amount"));
            phrase.append(", ").append(hours(row, name, place + "hours"));
            if (!row.surge().isEmpty()) {
                phrase.append(", surge ").append(draw(row.surge(), unit, place + "surge"));
            }
        }
        if (wrong.size() > before) {
            return null;
        }
        if (row.amount().isEmpty()) {
            assumed.add(name + ": what it draws is not known, and left out");
            return null;
        }
        if (row.inverter().equals("yes")) {
            phrase.append(", inverter");
            needsInverter = true;
            inverterWatts = inverterWatts.add(watts(withUnit(row.amount(), unit)));
        }
        return phrase.toString();
    }

    private static BigDecimal watts(String text) {
        try {
            return Quantity.parse(text, Dimension.POWER).amount();
        } catch (QuantityException e) {
            return BigDecimal.ZERO;
        }
    }

    private String charges(MySystem.Load row, String name, String place) {
        if (row.amount().contains(" of ")) {
            return row.amount();
        }
        if (!row.amount().isEmpty() && !row.amount().matches("\\d{1,2}(\\.\\d{1,3})?")) {
            wrong.add(
                    new FormReading.Wrong(
                            place,
                            "expected charges a day such as 2, or \"2 charges of 15 Wh\", but found"
                                    + " '"
                                    + row.amount()
                                    + "'"));
        }
        String each = row.unit().equals("phone") ? PHONE : TABLET;
        if (!row.amount().isEmpty()) {
            assumed.add(name + ": a charge takes " + each);
        }
        return row.amount() + " charges of " + each;
    }

    /** A current or a power, checked by itself so that the message stands where it belongs. */
    private String draw(String text, String unit, String place) {
        if (text.isEmpty()) {
            return "0 " + unit;
        }
        String whole = withUnit(text, unit);
        boolean power = whole.endsWith("W") || (unit.equals("W") && !whole.matches(".*A\\b.*"));
        check(place, whole, power ? Dimension.POWER : Dimension.CURRENT);
        return whole;
    }

    private String hours(MySystem.Load row, String name, String place) {
        if (row.hours().isEmpty()) {
            if (!row.amount().isEmpty()) {
                assumed.add(name + ": on for 24 h a day");
            }
            return "24 h";
        }
        String whole = withUnit(row.hours(), "h");
        Quantity hours = check(place, whole, Dimension.DURATION);
        boolean isDay =
                hours == null
                        || (hours.amount().signum() >= 0
                                && hours.amount().compareTo(BigDecimal.valueOf(86_400)) <= 0);
        if (!isDay) {
            wrong.add(
                    new FormReading.Wrong(
                            place,
                            "expected 0 h to 24 h a day, such as 5 h, but found '" + whole + "'"));
        }
        return whole;
    }

    /** What a text says; null, and told at its place, if it says nothing. */
    @Nullable Quantity check(String place, String text, Dimension dimension) {
        try {
            return Quantity.parse(text, dimension);
        } catch (QuantityException e) {
            wrong.add(new FormReading.Wrong(place, String.valueOf(e.getMessage())));
            return null;
        }
    }
}
