package org.gaugebench.sim.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.gaugebench.sim.logs.GapCheck;
import org.gaugebench.sim.logs.LogException;
import org.gaugebench.sim.logs.LogOptions;
import org.gaugebench.sim.logs.LogOptions.CurrentUnit;
import org.gaugebench.sim.logs.LogProblem;
import org.gaugebench.sim.logs.LogProfile;
import org.gaugebench.sim.logs.LogReader;
import org.gaugebench.sim.logs.MeasuredLog;
import org.gaugebench.sim.logs.SignCheck;
import org.gaugebench.sim.report.ReplayJson;
import org.gaugebench.sim.report.ReplayOutcome;
import org.gaugebench.sim.report.ReplayText;
import org.gaugebench.sim.report.ReplayTrace;
import org.gaugebench.sim.rig.LogReplay;
import org.gaugebench.sim.rig.ReplayListener;
import org.gaugebench.sim.rig.ReplayResult;
import org.gaugebench.sim.rig.ReplaySetup;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code replay LOG.csv}: the core counts a measured log. Exit codes: 0 counted, 2 wrong input. */
@Command(
        name = "replay",
        header = "Count a measured log with the gauge core.",
        description = {
            "",
            "Compares the charge that the core counts with the log's own counter, where it has"
                    + " one.",
            ""
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:counted",
            " 2:wrong input or command line; nothing was written",
            "70:a defect of this program"
        },
        footerHeading = "%nExample:%n",
        footer = {
            "  gauge-sim replay LOG.csv --time time_s --current current_A \\",
            "    --voltage voltage_V --counter tester_Ah --positive charge \\",
            "    --shunt \"20 A / 60 mV\" --adc \"20 bit, 100 mV\" --capacity \"2.9 Ah\""
        })
public final class ReplayCommand implements Callable<Integer> {
    /** At rest is a current under this part of the shunt's rating. */
    private static final double QUIET_PART = 0.001;

    /** Two hours of work on a slow machine; a log that is longer has a wrong time column. */
    private static final long MOST_TICKS = 2_000_000_000L;

    @Spec private CommandSpec spec;

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    @Parameters(paramLabel = "LOG.csv", description = "the log, a CSV file with a header row")
    private Path file;

    @Mixin private final LogColumnOptions log = new LogColumnOptions();

    @Option(
            names = "--shunt",
            required = true,
            paramLabel = "RATING",
            description = "rating of the modelled shunt, such as \"20 A / 60 mV\"")
    private String shunt;

    @Option(
            names = "--adc",
            required = true,
            paramLabel = "RANGE",
            description = "width and full scale of its converter, such as \"20 bit, 100 mV\"")
    private String adc;

    @Option(
            names = "--capacity",
            required = true,
            paramLabel = "CHARGE",
            description = "capacity declared to the gauge, such as \"2.9 Ah\"")
    private String capacity;

    @Option(
            names = "--start",
            defaultValue = "100 %",
            paramLabel = "PERCENT",
            description = "state of charge declared at the first row (default: ${DEFAULT-VALUE})")
    private String start;

    @Option(
            names = "--tick",
            defaultValue = "1 s",
            paramLabel = "TIME",
            description = "length of a tick, 1 ms to 60 s (default: ${DEFAULT-VALUE})")
    private String tick;

    @Option(
            names = "--gap",
            defaultValue = "15 min",
            paramLabel = "TIME",
            description =
                    "a step between rows longer than this is a gap; accepted only at rest"
                            + " (default: ${DEFAULT-VALUE})")
    private String gap;

    @Option(
            names = "--current-unit",
            converter = ReplayWords.UnitWord.class,
            paramLabel = "A|mA",
            description = "unit of the current column (default: A)")
    private @Nullable CurrentUnit currentUnit;

    @Option(
            names = "--trace",
            paramLabel = "FILE",
            description = "write one CSV row a tick to this file")
    private @Nullable Path trace;

    @Option(names = "--json", description = "print one JSON object instead of the report")
    private boolean json;

    @Override
    public Integer call() {
        List<String> wrong = new ArrayList<>();
        ReplayArguments arguments = new ReplayArguments(wrong);
        ReplaySetup setup = arguments.setup(shunt, adc, capacity, start, tick, log.hold());
        long gapNanos = arguments.gapNanos(gap);
        ZoneId zoneId = arguments.zone(log.zone());
        if (setup == null || !wrong.isEmpty()) {
            return refuse(wrong);
        }
        try {
            return replay(setup, gapNanos, zoneId);
        } catch (LogException e) {
            return refuse(e.problems().stream().map(LogProblem::toString).toList());
        } catch (IOException | UncheckedIOException e) {
            return refuse(List.of("--trace: " + trace + " cannot be written: " + e.getMessage()));
        }
    }

    private int replay(ReplaySetup setup, long gapNanos, @Nullable ZoneId zoneId)
            throws LogException, IOException {
        MeasuredLog measured =
                LogReader.read(
                        file,
                        new LogOptions(
                                log.columns(null, null),
                                log.isPositiveCharge(),
                                currentUnit,
                                zoneId));
        LogProfile profile = new LogProfile(measured, setup.hold());
        double quietAmps = QUIET_PART * setup.shunt().microamps() / 1e6;
        GapCheck gaps = new GapCheck(measured, profile, gapNanos, quietAmps);
        SignCheck sign = new SignCheck(measured, profile);
        checkWhole(measured, setup, gaps, sign);
        ReplayResult result = run(new LogReplay(measured, setup));
        List<String> notes = new ArrayList<>(measured.notes());
        notes.addAll(gaps.notes());
        ReplayOutcome outcome = new ReplayOutcome(measured, result, sign, assumed(setup), notes);
        PrintWriter out = spec.commandLine().getOut();
        out.print(json ? ReplayJson.of(outcome, Version.text()) : ReplayText.of(outcome));
        out.flush();
        return ExitCodes.OK;
    }

    private void checkWhole(MeasuredLog measured, ReplaySetup setup, GapCheck gaps, SignCheck sign)
            throws LogException {
        List<LogProblem> problems = new ArrayList<>(gaps.problems());
        if (sign.answer() == SignCheck.Answer.CONTRADICTS) {
            problems.add(SignTrouble.of(measured, sign, log.isPositiveCharge()));
        }
        if (measured.durationNanos() / 1_000_000 / setup.tickMillis() > MOST_TICKS) {
            problems.add(
                    new LogProblem(
                            measured.file(),
                            0,
                            0,
                            "the log is too long for this tick; check the time"
                                    + " column, or give a longer --tick such as \"60 s\""));
        }
        if (!problems.isEmpty()) {
            throw new LogException(problems);
        }
    }

    private ReplayResult run(LogReplay replay) throws IOException {
        if (trace == null) {
            return replay.run(ReplayListener.NONE);
        }
        try (ReplayTrace rows = new ReplayTrace(trace)) {
            ReplayResult result = replay.run(rows);
            rows.finish();
            return result;
        }
    }

    private List<ReplayOutcome.Assumption> assumed(ReplaySetup setup) {
        List<ReplayOutcome.Assumption> list = new ArrayList<>();
        assume(list, "positive", log.positive().name().toLowerCase(Locale.ROOT), null);
        assume(list, "shunt", setup.shunt().toString(), null);
        assume(list, "adc", setup.converter().toString(), null);
        assume(list, "capacity", capacity, null);
        assume(list, "start", start, "--start");
        assume(list, "tick", tick, "--tick");
        assume(list, "hold", log.hold().name().toLowerCase(Locale.ROOT), "--hold");
        assume(list, "gap", gap, "--gap");
        assume(list, "current-unit", currentUnit == CurrentUnit.MA ? "mA" : "A", "--current-unit");
        String zone = log.zone();
        if (zone != null) {
            assume(list, "zone", zone, null);
        }
        list.add(new ReplayOutcome.Assumption("efficiency", "100 %", true));
        list.add(new ReplayOutcome.Assumption("full rule", "off", true));
        return list;
    }

    private void assume(
            List<ReplayOutcome.Assumption> list,
            String key,
            String value,
            @Nullable String option) {
        boolean asked =
                option == null || spec.commandLine().getParseResult().hasMatchedOption(option);
        list.add(new ReplayOutcome.Assumption(key, value, !asked));
    }

    private int refuse(List<String> messages) {
        PrintWriter err = spec.commandLine().getErr();
        messages.forEach(err::println);
        err.flush();
        return ExitCodes.WRONG_INPUT;
    }
}
