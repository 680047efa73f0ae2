package org.gaugebench.sim.units;

/**
 * What is printed on a shunt.
 *
 * @param microamps rated current
 * @param microvolts drop at the rated current
 */
public record ShuntRating(long microamps, long microvolts) {
    /** A text that parses. */
    public static final String EXAMPLE = "100 A / 75 mV";

    /**
     * Reads a rating.
     *
     * @param text such as "100 A / 75 mV"
     * @return the rating, both parts above zero
     * @throws QuantityException naming what was expected and what was found
     */
    public static ShuntRating parse(String text) throws QuantityException {
        int slash = text.indexOf('/');
        if (slash < 0 || text.indexOf('/', slash + 1) >= 0) {
            throw refusal(text, "");
        }
        long microamps;
        long microvolts;
        try {
            microamps = Quantity.parse(text.substring(0, slash), RecordUnit.MICROAMPS);
            microvolts = Quantity.parse(text.substring(slash + 1), RecordUnit.MICROVOLTS);
        } catch (QuantityException e) {
            throw refusal(text, ": " + e.explanation());
        }
        if (microamps <= 0 || microvolts <= 0) {
            throw refusal(text, ": both parts must be above zero");
        }
        return new ShuntRating(microamps, microvolts);
    }

    private static QuantityException refusal(String text, String why) {
        return new QuantityException(
                "expected a shunt rating such as "
                        + EXAMPLE
                        + ", but found '"
                        + Texts.shortened(text)
                        + "'"
                        + why);
    }

    @Override
    public String toString() {
        return QuantityFormat.format(microamps, RecordUnit.MICROAMPS)
                + " / "
                + QuantityFormat.format(microvolts, RecordUnit.MICROVOLTS);
    }
}
