package org.gaugebench.core.fixed;

/**
 * Sequence numbers of 32 bits that wrap. They are compared by their difference, so that the number
 * after the largest one counts as newer.
 */
public final class Sequence {
    private Sequence() {}

    /**
     * Whether one number was given out after another.
     *
     * <p><b>Range:</b> any two numbers; the difference wraps modulo 2^32 on purpose. The answer is
     * right while the two were given out less than 2^31 steps apart. Exactly 2^31 apart, both
     * orders answer false: that distance has no meaning, and a ring of slots never has it.
     *
     * @param candidate the number that may be newer
     * @param reference the number it is compared with
     * @return true when the candidate is newer; false when the two are equal
     */
    public static boolean isNewer(int candidate, int reference) {
        return candidate - reference > 0;
    }

    /**
     * The number after a number.
     *
     * <p><b>Range:</b> wraps from 0xFFFFFFFF to 0 on purpose.
     *
     * @param sequence any number
     * @return the next one
     */
    public static int next(int sequence) {
        return sequence + 1;
    }
}
