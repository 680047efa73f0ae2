package org.gaugebench.sim.live.lessons;

/**
 * What a run gave for a figure.
 *
 * @param known whether the gauge knew it at all
 * @param moreThan whether it is a limit: there is more than that
 * @param value in the figure's smallest step; 0 where it is not known
 */
public record FigureValue(boolean known, boolean moreThan, long value) {
    /** Stands for what a gauge does not know. */
    static final FigureValue UNKNOWN = new FigureValue(false, false, 0);

    /** As a class reads it. */
    public String shown(Figure figure, Words words) {
        if (!known) {
            return words.text("number.not-known");
        }
        String text = figure.unit().shown(value, figure.digits(), words);
        return moreThan ? words.text("number.more-than", text) : text;
    }
}
