package org.gaugebench.sim.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.gaugebench.sim.advice.OwnersGauge;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.RecordUnit;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** A gauge by what it does, as options; each may be left out or be {@code not-known}. */
final class GaugeOptions {
    private static final long MOST_MICROAMPS = 10_000_000_000L;
    private static final String NOT_KNOWN = "not-known";

    @Option(
            names = "--sets-full",
            paramLabel = "WORD",
            description =
                    "on what it sets itself to 100 %%: never, volts, volts-and-current, not-known")
    private @Nullable String setsFull;

    @Option(
            names = "--past-full",
            paramLabel = "WORD",
            description = "what it does past 100 %%: stops, shows-more, hides-more, not-known")
    private @Nullable String pastFull;

    @Option(
            names = "--after-off",
            paramLabel = "WORD",
            description =
                    "what it shows after its wire was off for a minute: keeps, full, guesses,"
                            + " nothing, not-known")
    private @Nullable String afterOff;

    @Option(
            names = "--smallest-amps",
            paramLabel = "CURRENT",
            description = "smallest current that it shows, such as \"100 mA\"")
    private @Nullable String smallestAmps;

    @Option(
            names = "--longest-hours",
            paramLabel = "TIME",
            description = "longest time that it shows, such as \"99 h\"")
    private @Nullable String longestHours;

    @Option(
            names = "--own-current",
            paramLabel = "CURRENT",
            description = "what it draws itself, past the shunt, such as \"12 mA\"")
    private @Nullable String ownCurrent;

    @Option(
            names = "--zero-error",
            paramLabel = "CURRENT",
            description = "what it counts when nothing flows, either way, such as \"5 mA\"")
    private @Nullable String zeroError;

    @Option(
            names = "--past-shunt",
            paramLabel = "CURRENT",
            description = "mean current of what does not go through the shunt, such as \"20 mA\"")
    private @Nullable String pastShunt;

    @Option(
            names = "--efficiency-set",
            paramLabel = "PERCENT",
            description = "charge efficiency that it is set to, such as \"95 %%\"")
    private @Nullable String efficiencySet;

    /**
     * The gauge.
     *
     * @throws InputException with every message, if something is wrong
     */
    OwnersGauge gauge() throws InputException {
        List<String> wrong = new ArrayList<>();
        QuantityArguments arguments = new QuantityArguments(wrong);
        OwnersGauge gauge =
                new OwnersGauge(
                        word(arguments, "--sets-full", setsFull, OwnersGauge.SetsFull.NOT_KNOWN),
                        word(arguments, "--past-full", pastFull, OwnersGauge.PastFull.NOT_KNOWN),
                        word(arguments, "--after-off", afterOff, OwnersGauge.AfterOff.NOT_KNOWN),
                        amps(arguments, "--smallest-amps", smallestAmps),
                        hours(arguments),
                        amps(arguments, "--own-current", ownCurrent),
                        amps(arguments, "--zero-error", zeroError),
                        orZero(amps(arguments, "--past-shunt", pastShunt)),
                        efficiency(arguments));
        if (!wrong.isEmpty()) {
            throw new InputException(String.join(System.lineSeparator(), wrong));
        }
        return gauge;
    }

    private static double orZero(@Nullable Double value) {
        return value == null ? 0 : value;
    }

    private static boolean isKnown(@Nullable String text) {
        return text != null && !text.equals(NOT_KNOWN);
    }

    private static @Nullable Double amps(
            QuantityArguments arguments, String option, @Nullable String text) {
        if (!isKnown(text)) {
            return null;
        }
        String expected = "0 A to 10000 A, or not-known";
        return arguments.limited(option, text, RecordUnit.MICROAMPS, 0, MOST_MICROAMPS, expected, 0)
                / 1e6;
    }

    private @Nullable Double hours(QuantityArguments arguments) {
        if (!isKnown(longestHours)) {
            return null;
        }
        String expected = "1 h to 10000 h, or not-known";
        return (double)
                arguments.limited(
                        "--longest-hours", longestHours, RecordUnit.HOURS, 1, 10_000, expected, 1);
    }

    private @Nullable Double efficiency(QuantityArguments arguments) {
        if (!isKnown(efficiencySet)) {
            return null;
        }
        return arguments.limited(
                        "--efficiency-set",
                        efficiencySet,
                        RecordUnit.PARTS_PER_MILLION,
                        500_000,
                        1_000_000,
                        "50 % to 100 %, or not-known",
                        1_000_000)
                / 1e6;
    }

    private static <E extends Enum<E>> E word(
            QuantityArguments arguments, String option, @Nullable String text, E unknown) {
        E found = arguments.optional(option, text, it -> parse(it, unknown));
        return found == null ? unknown : found;
    }

    private static String key(Enum<?> each) {
        return each.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static <E extends Enum<E>> E parse(String text, E any) throws QuantityException {
        E[] all = any.getDeclaringClass().getEnumConstants();
        for (E each : all) {
            if (key(each).equals(text)) {
                return each;
            }
        }
        throw new QuantityException(
                "expected one of "
                        + Arrays.stream(all)
                                .map(GaugeOptions::key)
                                .collect(Collectors.joining(", "))
                        + ", but found '"
                        + text
                        + "'");
    }
}
