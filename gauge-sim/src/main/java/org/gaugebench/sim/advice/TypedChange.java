package org.gaugebench.sim.advice;

import org.gaugebench.sim.units.CapacityRating;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.RecordUnit;
import org.jspecify.annotations.Nullable;

/** Reads what an owner typed of a change. */
public final class TypedChange {
    private static final String NOT_KNOWN = "not-known";
    private static final TypedFields.Limits SHOWN =
            new TypedFields.Limits(
                    RecordUnit.PARTS_PER_MILLION,
                    10_000,
                    1_000_000,
                    "1 % to 100 %, such as \"70 %\", or not-known");

    private TypedChange() {}

    /**
     * Reads the amount of a change.
     *
     * @param text such as "100 Ah", "8 weeks", "-5 °C" or "20 min"
     * @return in the unit of {@link OwnChange.What}
     */
    public static double amount(OwnChange.What what, String text) throws QuantityException {
        double amount =
                switch (what) {
                    case BATTERY_SWAPPED, SECOND_BATTERY ->
                            CapacityRating.parse(text, RecordUnit.MICROAMP_HOURS) / 1e6;
                    case STORED -> days(text);
                    case WINTER -> Quantity.parse(text, RecordUnit.MILLICELSIUS) / 1e3;
                    case WIRE_OFF -> Quantity.parse(text, RecordUnit.MILLIS) / 3.6e6;
                };
        OwnChange change = new OwnChange(what, amount, null);
        if (amount < change.least() || amount > change.most()) {
            throw new QuantityException("expected " + range(what) + ", but found '" + text + "'");
        }
        return amount;
    }

    /** What the gauge showed before, in percent; null for not known. */
    public static @Nullable Double shownPercent(TypedFields fields, @Nullable String text) {
        return text == null || text.equals(NOT_KNOWN)
                ? null
                : fields.limited("shown", 0, text, SHOWN, 0) / 1e4;
    }

    /** Weeks are how people tell it; the reader of quantities ends at days. */
    private static double days(String text) throws QuantityException {
        String weeks = text.strip().replaceFirst("\\s*weeks?$", "");
        if (!weeks.equals(text.strip())) {
            try {
                return 7 * Quantity.parse(weeks + " d", RecordUnit.MILLIS) / 8.64e7;
            } catch (QuantityException e) {
                throw new QuantityException(
                        "expected a time such as \"8 weeks\" or \"56 d\", but found '"
                                + text
                                + "'");
            }
        }
        return Quantity.parse(text, RecordUnit.MILLIS) / 8.64e7;
    }

    private static String range(OwnChange.What what) {
        return switch (what) {
            case BATTERY_SWAPPED, SECOND_BATTERY -> "0.1 Ah to 10000 Ah";
            case STORED -> "1 d to 366 d, such as \"56 d\" or \"8 weeks\"";
            case WINTER -> "-40 °C to 60 °C";
            case WIRE_OFF -> "1 min to 30 d";
        };
    }
}
