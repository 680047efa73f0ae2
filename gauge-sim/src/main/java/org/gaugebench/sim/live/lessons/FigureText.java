package org.gaugebench.sim.live.lessons;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Register;
import org.gaugebench.sim.live.lessons.Figure.Kind;
import org.gaugebench.sim.scenario.Expectation.Reading;
import org.gaugebench.sim.scenario.Nearest;
import org.gaugebench.sim.scenario.SettingUnits;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.RecordUnit;
import org.jspecify.annotations.Nullable;

/** Reads a figure as a lesson file writes it. */
final class FigureText {
    static final String EXAMPLE = "truth state-of-charge at 4 h";

    private static final Pattern EVENTS =
            Pattern.compile("([a-z0-9-]+) events ([a-z-]+) from ([^,]+) to ([^,]+)");
    private static final Pattern READING =
            Pattern.compile(
                    "([a-z0-9-]+) (error of |register )?([a-z-]+) at ([^,]+?)(?:, (\\d) digits?)?");

    private FigureText() {}

    static Figure parse(String text) throws QuantityException {
        Matcher events = EVENTS.matcher(text);
        if (events.matches()) {
            Event event = find(events.group(2), Event.values(), SettingUnits::key);
            return new Figure(
                    events.group(1),
                    Kind.EVENTS,
                    null,
                    null,
                    event,
                    time(events.group(3)),
                    time(events.group(4)),
                    FigureUnit.TIMES,
                    0);
        }
        Matcher match = READING.matcher(text);
        if (!match.matches()) {
            throw new QuantityException("'" + text + "' is no figure of a run");
        }
        String how = match.group(2) == null ? "" : match.group(2);
        long at = time(match.group(4));
        if (how.equals("register ")) {
            Register register = find(match.group(3), Register.values(), SettingUnits::key);
            if (!register.unit().equals("nC")) {
                throw new QuantityException("'" + match.group(3) + "' is no sum of charge");
            }
            FigureUnit unit = FigureUnit.AMP_HOURS;
            return new Figure(
                    match.group(1),
                    Kind.REGISTER,
                    null,
                    register,
                    null,
                    at,
                    at,
                    unit,
                    digits(match.group(5), unit));
        }
        Reading reading = find(match.group(3), Reading.values(), Reading::key);
        boolean error = !how.isEmpty();
        if (error && !reading.hasTruth()) {
            throw new QuantityException("'" + reading.key() + "' has no truth to be off from");
        }
        FigureUnit unit = FigureUnit.of(SettingUnits.of(reading));
        if (error && unit == FigureUnit.PERCENT) {
            unit = FigureUnit.POINTS;
        }
        return new Figure(
                match.group(1),
                error ? Kind.ERROR : Kind.READING,
                reading,
                null,
                null,
                at,
                at,
                unit,
                digits(match.group(5), unit));
    }

    private static int digits(@Nullable String text, FigureUnit unit) {
        return text == null ? unit.usualDigits() : Integer.parseInt(text);
    }

    static long time(String text) throws QuantityException {
        return Quantity.parse(text, RecordUnit.MILLIS);
    }

    private static <T> T find(String word, T[] all, Function<T, String> key)
            throws QuantityException {
        List<String> words = Arrays.stream(all).map(key).toList();
        for (T each : all) {
            if (key.apply(each).equals(word)) {
                return each;
            }
        }
        String near = Nearest.of(word, words);
        throw new QuantityException(
                "there is no '%s'%s"
                        .formatted(word, near == null ? "" : ", did you mean '" + near + "'?"));
    }
}
