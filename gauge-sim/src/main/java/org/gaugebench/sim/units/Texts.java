package org.gaugebench.sim.units;

/** Foreign text made safe to show inside a one-line message. */
public final class Texts {
    private static final int LONGEST = 40;

    private Texts() {}

    /**
     * At most 40 characters of a text, on one line.
     *
     * @param text from outside
     * @return the text with control characters as spaces and its tail as an ellipsis
     */
    public static String shortened(String text) {
        int[] codePoints = text.codePoints().limit(LONGEST + 1L).toArray();
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < Math.min(LONGEST, codePoints.length); i++) {
            out.appendCodePoint(Character.isISOControl(codePoints[i]) ? ' ' : codePoints[i]);
        }
        return codePoints.length > LONGEST ? out.append("...").toString() : out.toString();
    }
}
