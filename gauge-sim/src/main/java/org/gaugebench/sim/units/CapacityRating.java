package org.gaugebench.sim.units;

/**
 * A capacity as printed on a battery: charge, and the time over which it was taken out.
 *
 * <p>Everything here counts at the 20 h rate. A figure at another rate belongs to another number of
 * ampere-hours (the 100 h figure of a lead-acid battery is commonly 10 to 25 % higher; common
 * practice, no source), and which number depends on the battery: it is refused, not converted.
 */
public final class CapacityRating {
    /** A text that parses. */
    public static final String EXAMPLE = "60 Ah @ 20 h";

    private static final long RATE_HOURS = 20;

    private CapacityRating() {}

    /**
     * Reads a capacity.
     *
     * @param text such as "60 Ah @ 20 h"; the rate may be left out
     * @param unit microampere-hours or milliampere-hours
     * @return the charge at the 20 h rate
     * @throws QuantityException naming what was expected and what was found
     */
    public static long parse(String text, RecordUnit unit) throws QuantityException {
        int at = text.indexOf('@');
        if (at < 0) {
            return Quantity.parse(text, unit);
        }
        long hours;
        try {
            hours = Quantity.parse(text.substring(at + 1), RecordUnit.HOURS);
        } catch (QuantityException e) {
            throw refusal(text, ": " + e.explanation());
        }
        if (hours != RATE_HOURS) {
            throw refusal(text, "; look up the figure at the 20 h rate");
        }
        return Quantity.parse(text.substring(0, at), unit);
    }

    /**
     * Writes a capacity.
     *
     * @param value number of steps
     * @param unit of the steps
     * @return such as "60 Ah @ 20 h"
     */
    public static String format(long value, RecordUnit unit) {
        return QuantityFormat.format(value, unit) + " @ " + RATE_HOURS + " h";
    }

    private static QuantityException refusal(String text, String why) {
        return new QuantityException(
                "expected a capacity at the 20 h rate such as "
                        + EXAMPLE
                        + ", but found '"
                        + Texts.shortened(text)
                        + "'"
                        + why);
    }
}
