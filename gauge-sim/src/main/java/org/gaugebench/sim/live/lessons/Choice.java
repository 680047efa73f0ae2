package org.gaugebench.sim.live.lessons;

import org.gaugebench.sim.units.QuantityException;

/**
 * One answer that a pupil can choose. Whether it is right is not written anywhere: it is right when
 * the run's figure lies in its range.
 *
 * @param letter a, b, c or d
 * @param lesson whose choice it is
 * @param notKnown right when the gauge does not know the figure; the range is then unused
 * @param lowest first value at which it is right, in the figure's smallest step
 * @param highest last such value
 */
public record Choice(String letter, int lesson, boolean notKnown, long lowest, long highest) {
    static final String EXAMPLE = "78 % to 82 %";

    static Choice parse(String letter, int lesson, String text, FigureUnit unit)
            throws QuantityException {
        if (text.equals("not known")) {
            return new Choice(letter, lesson, true, 0, 0);
        }
        if (text.startsWith("at least ")) {
            long lowest = unit.parse(text.substring("at least ".length()));
            return new Choice(letter, lesson, false, lowest, Long.MAX_VALUE);
        }
        String[] ends = text.split(" to ", -1);
        if (ends.length != 2) {
            throw new QuantityException(
                    "'" + text + "' is no range; it says 'A to B', 'at least A' or 'not known'");
        }
        long lowest = unit.parse(ends[0]);
        long highest = unit.parse(ends[1]);
        if (lowest > highest) {
            throw new QuantityException("'" + text + "' ends before it begins");
        }
        return new Choice(letter, lesson, false, lowest, highest);
    }

    /** Whether a figure of a run makes it the right one. */
    public boolean isRightFor(FigureValue value) {
        return value.known()
                ? !notKnown && value.value() >= lowest && value.value() <= highest
                : notKnown;
    }

    /** Whether some figure would make both right. */
    boolean overlaps(Choice other) {
        return (notKnown || other.notKnown)
                ? notKnown && other.notKnown
                : lowest <= other.highest && other.lowest <= highest;
    }

    /** What the pupil reads. */
    public String text(Words words) {
        return words.text(key());
    }

    /** What somebody thinks who chooses it: the reason if it is right, else the misconception. */
    public String thinks(Words words) {
        return words.text(key() + ".thinks");
    }

    private String key() {
        return "lesson-" + lesson + ".choice." + letter;
    }
}
