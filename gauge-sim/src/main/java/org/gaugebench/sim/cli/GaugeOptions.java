package org.gaugebench.sim.cli;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.advice.OwnersGauge;
import org.gaugebench.sim.advice.TypedGauge;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** A gauge by what it does, as options; each may be left out or be {@code not-known}. */
final class GaugeOptions {
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
        OwnersGauge gauge =
                new TypedGauge(
                                setsFull,
                                pastFull,
                                afterOff,
                                smallestAmps,
                                longestHours,
                                ownCurrent,
                                zeroError,
                                pastShunt,
                                efficiencySet)
                        .read(new QuantityArguments(wrong));
        if (!wrong.isEmpty()) {
            throw new InputException(String.join(System.lineSeparator(), wrong));
        }
        return gauge;
    }
}
