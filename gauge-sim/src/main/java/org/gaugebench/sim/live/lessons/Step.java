package org.gaugebench.sim.live.lessons;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.sim.units.QuantityException;

/**
 * One thing to do on the page.
 *
 * @param number from 1
 * @param lesson whose step it is
 * @param action what the page does when it is asked to help
 * @param atMillis for {@link Action#RUN_TO}: where to stop; 0 otherwise
 * @param target for {@link Action#CHANGE}: what is set, as a scenario's timeline names it; for
 *     {@link Action#LOOK}: "chart", "reading", "ledger" or "events"; empty otherwise
 * @param value for {@link Action#CHANGE}: what it is set to, as a scenario writes it
 */
public record Step(
        int number, int lesson, Action action, long atMillis, String target, String value) {
    static final String EXAMPLE = "run to 4 h";

    private static final Pattern CHANGE = Pattern.compile("change ([a-z0-9.-]+) to (.+)");

    /** What a step asks for. */
    public enum Action {
        /** Everybody writes a prediction down, before the run says more. */
        PREDICT,
        /** The run goes on to a moment. */
        RUN_TO,
        /** The truth is shown beside the reading. */
        REVEAL,
        /** A control is moved. */
        CHANGE,
        /** A part of the page is looked at. */
        LOOK
    }

    static Step parse(int number, int lesson, String text) throws QuantityException {
        if (text.equals("predict")) {
            return new Step(number, lesson, Action.PREDICT, 0, "", "");
        }
        if (text.equals("reveal")) {
            return new Step(number, lesson, Action.REVEAL, 0, "", "");
        }
        if (text.startsWith("run to ")) {
            long at = FigureText.time(text.substring("run to ".length()));
            return new Step(number, lesson, Action.RUN_TO, at, "", "");
        }
        if (text.matches("look at (chart|reading|ledger|events)")) {
            return new Step(
                    number, lesson, Action.LOOK, 0, text.substring("look at ".length()), "");
        }
        Matcher change = CHANGE.matcher(text);
        if (change.matches()) {
            return new Step(number, lesson, Action.CHANGE, 0, change.group(1), change.group(2));
        }
        throw new QuantityException(
                "'"
                        + text
                        + "' is no step; one says 'predict', 'run to TIME', 'reveal', 'change NAME"
                        + " to VALUE' or 'look at chart' (reading, ledger, events)");
    }

    /** What the class reads, at most 45 words. */
    public String text(Words words) {
        return words.text(
                "lesson-" + lesson + (number == 0 ? ".next" : ".step." + number) + ".text");
    }
}
