package org.gaugebench.sim.cli;

import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.gaugebench.sim.logs.GapCheck;
import org.gaugebench.sim.logs.Hold;
import org.gaugebench.sim.logs.LogColumns;
import org.gaugebench.sim.logs.LogException;
import org.gaugebench.sim.logs.LogOptions;
import org.gaugebench.sim.logs.LogOptions.CurrentUnit;
import org.gaugebench.sim.logs.LogProblem;
import org.gaugebench.sim.logs.LogProfile;
import org.gaugebench.sim.logs.LogReader;
import org.gaugebench.sim.logs.MeasuredLog;
import org.gaugebench.sim.logs.SignCheck;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/**
 * A log of one's own for {@code audit}, in the formats of {@code replay}. Its options are named as
 * there with {@code --log-} in front: without it they mean the system.
 */
final class LogAuditOptions {
    private static final long DAY_NANOS = 86_400_000_000_000L;

    /** A second each of some runs; what is longer has a wrong time column. */
    private static final long MOST_DAYS = 400;

    /** At rest is a current under this part of the shunt's rating, as for replay. */
    private static final double QUIET_PART = 0.001;

    @Option(
            names = "--log",
            paramLabel = "LOG.csv",
            description = "a log of your own, a day at least, in the formats of 'replay'")
    private @Nullable Path file;

    @Option(
            names = "--log-time",
            paramLabel = "COLUMN",
            description = "its column of times: seconds, or ISO 8601 date-times")
    private @Nullable String time;

    @Option(
            names = "--log-current",
            paramLabel = "COLUMN",
            description = "its column of the battery current")
    private @Nullable String current;

    @Option(
            names = "--log-voltage",
            paramLabel = "COLUMN",
            description = "its column of the battery voltage in V")
    private @Nullable String voltage;

    @Option(
            names = "--log-temperature",
            paramLabel = "COLUMN",
            description = "its column of the battery temperature in °C, if there is one")
    private @Nullable String temperature;

    @Option(
            names = "--log-positive",
            converter = ReplayWords.DirectionWord.class,
            paramLabel = "charge|discharge",
            description = "what a positive current in the log does to the battery")
    private ReplayWords.@Nullable Direction positive;

    @Option(
            names = "--log-current-unit",
            converter = ReplayWords.UnitWord.class,
            paramLabel = "A|mA",
            description = "unit of its current column (default: A)")
    private @Nullable CurrentUnit currentUnit;

    @Option(
            names = "--log-hold",
            converter = ReplayWords.HoldWord.class,
            defaultValue = "next",
            paramLabel = "next|previous|linear",
            description = "what a row means between rows, as for replay (default: next)")
    private Hold hold = Hold.NEXT;

    @Option(
            names = "--log-gap",
            defaultValue = "15 min",
            paramLabel = "TIME",
            description =
                    "a longer step between rows is a gap; accepted only at rest (default:"
                            + " ${DEFAULT-VALUE})")
    private String gap = "15 min";

    @Option(
            names = "--log-zone",
            paramLabel = "ZONE",
            description = "time zone of its date-times without offset, such as Europe/Amsterdam")
    private @Nullable String zone;

    boolean isTold() {
        return file != null;
    }

    /** Whether anything is said of a log that is not named. */
    boolean isWithoutFile() {
        return file == null
                && (time != null || current != null || voltage != null || positive != null);
    }

    Hold hold() {
        return hold;
    }

    /**
     * Reads the log.
     *
     * @param shunt that is fitted
     * @throws InputException with every message, if it cannot be read or says too little
     */
    MeasuredLog read(ShuntRating shunt) throws InputException {
        List<String> wrong = new ArrayList<>();
        String timeColumn = need(wrong, "--log-time", time, "time_s");
        String currentColumn = need(wrong, "--log-current", current, "current_A");
        String voltageColumn = need(wrong, "--log-voltage", voltage, "voltage_V");
        if (positive == null) {
            wrong.add(
                    "--log-positive is missing: what a positive current does to the battery;"
                            + " expected charge or discharge");
        }
        ReplayArguments arguments = new ReplayArguments(wrong, "--log-");
        long gapNanos = arguments.gapNanos(gap);
        ZoneId zoneId = arguments.zone(zone);
        ToldParts.refuse(wrong);
        LogOptions options =
                new LogOptions(
                        new LogColumns(timeColumn, currentColumn, voltageColumn, temperature, null),
                        positive == ReplayWords.Direction.CHARGE,
                        currentUnit,
                        zoneId);
        try {
            MeasuredLog log = LogReader.read(Objects.requireNonNull(file), options);
            check(log, gapNanos, shunt);
            return log;
        } catch (LogException e) {
            throw new InputException(
                    String.join(
                            System.lineSeparator(),
                            e.problems().stream().map(LogAuditOptions::renamed).toList()));
        }
    }

    private static String need(
            List<String> wrong, String option, @Nullable String column, String example) {
        if (column == null) {
            wrong.add(
                    "%s is missing: the column of the log; expected for instance %s %s"
                            .formatted(option, option, example));
            return "";
        }
        return column;
    }

    /** The readers say what replay calls its options. */
    private static String renamed(LogProblem problem) {
        return problem.toString()
                .replaceAll(
                        "--(?=(time|current|current-unit|voltage|temperature|positive|hold|gap"
                                + "|zone)\\b)",
                        "--log-");
    }

    private void check(MeasuredLog log, long gapNanos, ShuntRating shunt) throws LogException {
        LogProfile profile = new LogProfile(log, hold);
        double quietAmps = QUIET_PART * shunt.microamps() / 1e6;
        List<LogProblem> problems =
                new ArrayList<>(new GapCheck(log, profile, gapNanos, quietAmps).problems());
        SignCheck sign = new SignCheck(log, profile);
        if (sign.answer() == SignCheck.Answer.CONTRADICTS) {
            problems.add(SignTrouble.of(log, sign, positive == ReplayWords.Direction.CHARGE));
        }
        double days = (double) log.durationNanos() / DAY_NANOS;
        if (days < 1) {
            problems.add(
                    whole(
                            log,
                            "the log is %.1f h long; expected a day at least, better a week with a"
                                    + " charge to its end",
                            days * 24));
        }
        if (days > MOST_DAYS) {
            problems.add(
                    whole(
                            log,
                            "the log is %.0f days long, expected at most %d; check its time column",
                            days,
                            MOST_DAYS));
        }
        if (log.peakAmps() > mostAmps(shunt)) {
            problems.add(
                    whole(
                            log,
                            "its current goes up to %.1f A, more than a gauge sees on the shunt %s;"
                                    + " expected the shunt that is fitted, such as --shunt \"500 A"
                                    + " / 75 mV\", or --log-current-unit mA",
                            log.peakAmps(),
                            shunt));
        }
        if (!problems.isEmpty()) {
            throw new LogException(problems);
        }
    }

    /** A shunt carries its rating for long, and a little more for a moment. */
    private static double mostAmps(ShuntRating shunt) {
        return 1.3 * shunt.microamps() / 1e6;
    }

    private static LogProblem whole(MeasuredLog log, String message, Object... values) {
        return new LogProblem(log.file(), 0, 0, String.format(Locale.ROOT, message, values));
    }
}
