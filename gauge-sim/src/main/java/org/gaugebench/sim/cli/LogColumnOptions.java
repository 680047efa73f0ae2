package org.gaugebench.sim.cli;

import org.gaugebench.sim.logs.Hold;
import org.gaugebench.sim.logs.LogColumns;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What a measured log does not say of itself: {@code replay} and {@code adopt} ask the same. */
final class LogColumnOptions {
    @Option(
            names = "--time",
            required = true,
            paramLabel = "COLUMN",
            description = "column of times: seconds, or ISO 8601 date-times")
    private String time = "";

    @Option(
            names = "--current",
            required = true,
            paramLabel = "COLUMN",
            description = "column of the battery current")
    private String current = "";

    @Option(
            names = "--voltage",
            paramLabel = "COLUMN",
            description =
                    "column of the battery voltage in V; lets the sign be checked, and adopt"
                            + " shows it to the gauge")
    private @Nullable String voltage;

    @Option(
            names = "--temperature",
            paramLabel = "COLUMN",
            description = "column of the battery temperature in °C")
    private @Nullable String temperature;

    @Option(
            names = "--counter",
            paramLabel = "COLUMN",
            description = "column of the log's own count in Ah, signed like the current")
    private @Nullable String counter;

    @Option(
            names = "--positive",
            converter = ReplayWords.DirectionWord.class,
            required = true,
            paramLabel = "charge|discharge",
            description = "what a positive current in the log does to the battery")
    private ReplayWords.Direction positive = ReplayWords.Direction.CHARGE;

    @Option(
            names = "--hold",
            converter = ReplayWords.HoldWord.class,
            defaultValue = "next",
            paramLabel = "next|previous|linear",
            description =
                    "what a row means between rows: next = it holds over the interval that ends at"
                        + " it, previous = from the row on, linear = a straight line from row to"
                        + " row (default: ${DEFAULT-VALUE})")
    private Hold hold = Hold.NEXT;

    @Option(
            names = "--zone",
            paramLabel = "ZONE",
            description = "time zone of date-times without offset, such as Europe/Amsterdam")
    private @Nullable String zone;

    /** The columns, with those that tell of the unit that wrote the log. */
    LogColumns columns(@Nullable String uptime, @Nullable String shown) {
        return new LogColumns(time, current, voltage, temperature, counter, uptime, shown);
    }

    ReplayWords.Direction positive() {
        return positive;
    }

    boolean isPositiveCharge() {
        return positive == ReplayWords.Direction.CHARGE;
    }

    Hold hold() {
        return hold;
    }

    @Nullable String zone() {
        return zone;
    }
}
