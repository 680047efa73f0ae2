package org.gaugebench.sim.scenario;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.Texts;

/**
 * Seeds from a first to a last, both included.
 *
 * @param first at most the last
 * @param last not under the first; the range holds at most {@value #MOST}
 */
public record SeedRange(long first, long last) {
    /** Most seeds of one range. */
    public static final int MOST = 10_000;

    /** As people write it. */
    public static final String EXAMPLE = "1..100";

    private static final Pattern FORM =
            Pattern.compile("([+-]?\\d{1,17})(?:\\.\\.([+-]?\\d{1,17}))?");

    /**
     * Reads "1..100", or a single seed.
     *
     * @param text as typed
     * @return the range
     * @throws QuantityException with what was expected, where the text is none, falls, or holds
     *     more than {@value #MOST} seeds
     */
    public static SeedRange parse(String text) throws QuantityException {
        Matcher matcher = FORM.matcher(text);
        if (!matcher.matches()) {
            throw new QuantityException(
                    "expected seeds from first to last such as "
                            + EXAMPLE
                            + ", but found '"
                            + Texts.shortened(text)
                            + "'");
        }
        long first = Long.parseLong(matcher.group(1));
        long last = matcher.group(2) == null ? first : Long.parseLong(matcher.group(2));
        if (last < first || last - first >= MOST) {
            throw new QuantityException(
                    "expected at least 1 and at most "
                            + MOST
                            + " seeds that rise, such as "
                            + EXAMPLE
                            + ", but found '"
                            + Texts.shortened(text)
                            + "'");
        }
        return new SeedRange(first, last);
    }

    /** How many seeds. */
    public int size() {
        return (int) (last - first + 1);
    }
}
