package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.gaugebench.sim.logs.Durations;
import org.gaugebench.sim.rig.ReplayResult;

/** The report of a replay for people: the answer first, at most 80 columns. */
public final class ReplayText {
    private static final int WIDTH_COLUMNS = 80;
    private static final int LABEL_COLUMNS = 16;
    private static final int MOST_EVENTS = 6;
    private static final long NANOS_PER_MILLI = 1_000_000;

    private final StringBuilder out = new StringBuilder();

    private ReplayText() {}

    /** Writes the report. */
    public static String of(ReplayOutcome outcome) {
        ReplayText text = new ReplayText();
        text.verdict(outcome);
        text.figures(outcome);
        text.events(outcome.result());
        text.out.append('\n').append("Assumed (* = default, nobody asked for it)\n");
        for (ReplayOutcome.Assumption a : outcome.assumed()) {
            text.line("  " + a.key(), (a.isDefault() ? "* " : "  ") + a.value());
        }
        if (!outcome.notes().isEmpty()) {
            text.out.append('\n').append("Noted\n");
            outcome.notes().forEach(note -> text.line("", note));
        }
        return text.out.toString();
    }

    private void verdict(ReplayOutcome outcome) {
        ReplayResult result = outcome.result();
        if (result.clippedTicks() > 0) {
            paragraph(
                    format(
                            "Not all was counted: in %d of %d ticks the current did not fit the"
                                    + " converter. Choose a larger shunt.",
                            result.clippedTicks(), result.ticks()));
        }
        String counted = format("Counted %+.5f Ah", result.countedAmpHours());
        if (!outcome.log().hasCounter()) {
            paragraph(
                    counted
                            + format(
                                    " of %.5f Ah moved; the log names no counter to compare with.",
                                    result.throughputAmpHours()));
            return;
        }
        paragraph(
                counted
                        + format(
                                "; the log's own counter moved by %+.5f Ah. The difference is"
                                        + " %+.5f Ah, %s of the %.5f Ah that moved.",
                                outcome.log().counterMovedAmpHours(),
                                outcome.differenceAmpHours(),
                                percent(result, outcome.differenceAmpHours()),
                                result.throughputAmpHours()));
        if (outcome.counterRunsOpposite()) {
            paragraph(
                    "The log's counter runs the other way round than its current: it may count"
                            + " what is taken out as positive.");
        }
    }

    private void figures(ReplayOutcome outcome) {
        ReplayResult result = outcome.result();
        out.append('\n');
        line("log", outcome.log().file());
        line(
                "length",
                format(
                        "%d rows, %s, %d ticks",
                        outcome.log().rows(),
                        Durations.words(outcome.log().durationNanos()),
                        result.ticks()));
        line(
                "counted",
                format(
                        "%+.5f Ah: %.5f Ah in, %.5f Ah out (before efficiency and limits)",
                        result.countedAmpHours(), result.inAmpHours(), result.outAmpHours()));
        line(
                "integral",
                format(
                        "%+.5f Ah of the log's current under the hold; counted differs by %s",
                        result.integralAmpHours(),
                        percent(result, result.countedAmpHours() - result.integralAmpHours())));
        line(
                "gauge reads",
                format("%.1f %% at the end", result.stateOfChargePartsPerMillion() / 1e4));
        line("one count", format("%.4f mA", result.ampsPerCount() * 1000));
        line("sign", sign(outcome));
        line("digest", String.format("%016x", result.digest()));
    }

    private static String sign(ReplayOutcome outcome) {
        return switch (outcome.sign().answer()) {
            case AGREES -> format("fits the voltage (score %+.2f)", outcome.sign().score());
            case CONTRADICTS ->
                    format("contradicts the voltage (score %+.2f)", outcome.sign().score());
            case CANNOT_TELL ->
                    format(
                            "not proven: the voltage does not tell (score %+.2f, steps %+.2f)",
                            outcome.sign().score(), outcome.sign().steps());
            case NO_VOLTAGE -> "not checked: no --voltage column named";
        };
    }

    private void events(ReplayResult result) {
        int shown = 0;
        for (ReplayResult.TimedEvent e : result.events()) {
            if (shown++ == MOST_EVENTS) {
                line("", (result.events().size() - MOST_EVENTS) + " or more further events");
                return;
            }
            line(
                    shown == 1 ? "events" : "",
                    "at "
                            + Durations.words(e.uptimeMillis() * NANOS_PER_MILLI)
                            + ": "
                            + e.event().sentence()
                            + " ("
                            + e.value()
                            + " "
                            + e.event().unit()
                            + ")");
        }
    }

    /** A percentage with digits enough to tell it from zero. */
    private static String percent(ReplayResult result, double ampHours) {
        double value = result.percentOfThroughput(ampHours);
        return Double.isNaN(value) ? "no percentage" : format("%+.4f %%", value);
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }

    private void paragraph(String text) {
        for (String line : wrapped(text, WIDTH_COLUMNS)) {
            out.append(line).append('\n');
        }
    }

    private void line(String label, String text) {
        String start = label;
        for (String line : wrapped(text, WIDTH_COLUMNS - LABEL_COLUMNS)) {
            out.append(start)
                    .append(" ".repeat(Math.max(1, LABEL_COLUMNS - start.length())))
                    .append(line)
                    .append('\n');
            start = "";
        }
    }

    /** Breaks at spaces; a word longer than the width stands on a line of its own. */
    private static List<String> wrapped(String text, int width) {
        List<String> lines = new ArrayList<>();
        String rest = text;
        while (rest.length() > width) {
            int space = rest.lastIndexOf(' ', width);
            if (space <= rest.length() - rest.stripLeading().length()) {
                space = rest.indexOf(' ', width);
            }
            if (space < 0) {
                break;
            }
            lines.add(rest.substring(0, space));
            rest = rest.substring(space + 1);
        }
        lines.add(rest);
        return lines;
    }
}
