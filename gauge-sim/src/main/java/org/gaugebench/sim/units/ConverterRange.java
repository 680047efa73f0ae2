package org.gaugebench.sim.units;

/**
 * Width and full scale of an analogue-to-digital converter.
 *
 * @param bits width
 * @param microvolts input at the largest code
 */
public record ConverterRange(int bits, long microvolts) {
    /** A text that parses. */
    public static final String EXAMPLE = "\"20 bit, 100 mV\"";

    private static final int WIDEST = 32;

    /**
     * Reads a range.
     *
     * @param text such as "20 bit, 100 mV"
     * @return the range, 1 to 32 bits and a full scale above zero
     * @throws QuantityException naming what was expected and what was found
     */
    public static ConverterRange parse(String text) throws QuantityException {
        int comma = text.indexOf(',');
        if (comma < 0 || text.indexOf(',', comma + 1) >= 0) {
            throw refusal(text, "");
        }
        long bits;
        long microvolts;
        try {
            bits = Quantity.parse(text.substring(0, comma), RecordUnit.BITS);
            microvolts = Quantity.parse(text.substring(comma + 1), RecordUnit.MICROVOLTS);
        } catch (QuantityException e) {
            throw refusal(text, ": " + e.explanation());
        }
        if (bits < 1 || bits > WIDEST || microvolts <= 0) {
            throw refusal(text, ": 1 to 32 bit and a voltage above zero");
        }
        return new ConverterRange((int) bits, microvolts);
    }

    private static QuantityException refusal(String text, String why) {
        return new QuantityException(
                "expected a converter such as "
                        + EXAMPLE
                        + ", but found '"
                        + Texts.shortened(text)
                        + "'"
                        + why);
    }

    @Override
    public String toString() {
        return QuantityFormat.format(bits, RecordUnit.BITS)
                + ", "
                + QuantityFormat.format(microvolts, RecordUnit.MICROVOLTS);
    }
}
