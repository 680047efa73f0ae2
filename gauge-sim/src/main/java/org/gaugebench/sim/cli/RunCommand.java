package org.gaugebench.sim.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.judge.Verdict;
import org.gaugebench.sim.report.RunJson;
import org.gaugebench.sim.report.TextReport;
import org.gaugebench.sim.report.TraceCsv;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Observers;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Runs scenarios and reports what came of them. */
@Command(
        name = "run",
        header = "Run scenarios and hold the gauge's reading against the truth.",
        description = {
            "",
            "Simulates each scenario and prints the verdict first, then the reading against the"
                    + " truth, a chart, every expectation and the events. All problems of all"
                    + " files are told before anything runs. Several files get one line each, and"
                    + " the whole report only where something does not hold.",
            ""
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:every expectation holds; or a single file that expects nothing (no verdict)",
            " 1:it ran, and an expectation failed, or one of several files expects nothing",
            " 2:wrong input or command line; nothing ran, nothing was written",
            "70:a defect of this program"
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  gauge-sim run scenarios/first-steps/a-week-in-the-hut.yaml",
            "  gauge-sim run scenarios",
            "  gauge-sim run --seed 7 --trace week.csv a-week-in-the-hut.yaml"
        })
final class RunCommand implements Callable<Integer> {
    private static final double NANOS_PER_SECOND = 1e9;

    private final Terminal terminal;

    @Parameters(
            paramLabel = "FILE",
            arity = "1..*",
            description =
                    "Scenario files, folders (every .yaml file below, without parts/) or patterns"
                            + " such as 'scenarios/**/*.yaml'.")
    private List<String> files = new ArrayList<>();

    @Option(
            names = "--seed",
            paramLabel = "N",
            converter = SeedText.class,
            description = "Seed of all noise and clouds, instead of the file's own.")
    private @Nullable Long seed;

    @Option(
            names = "--trace",
            paramLabel = "CSV",
            description = "Write truth and readings over time to this CSV file; one scenario only.")
    private @Nullable Path trace;

    @Option(
            names = "--trace-every",
            paramLabel = "TIME",
            converter = TraceInterval.class,
            defaultValue = "1 min",
            description =
                    "Simulated time between rows of the trace: '10 s', '1 min', or 'tick'"
                            + " for every tick (default: ${DEFAULT-VALUE}).")
    private long traceEveryMillis;

    @Option(
            names = "--trace-ahead",
            description = {
                "Add to each row of the trace what is really left: available charge, and the true"
                        + " times to empty with the load held and as the scenario goes on. Runs"
                        + " ahead from every row: '--trace-every 1 h' keeps that short."
            })
    private boolean traceAhead;

    @Option(
            names = "--json",
            description = "Print one JSON object a scenario, each on a line, instead of text.")
    private boolean json;

    @Option(names = "--full", description = "Print the whole report of each of several files.")
    private boolean full;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help.")
    @SuppressWarnings("unused") // the parser reads it
    private boolean help;

    RunCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException {
        List<Scenario> scenarios = ScenarioLoader.load(ScenarioFiles.expand(files));
        Path place = trace;
        if (place != null && scenarios.size() > 1) {
            throw new InputException(
                    "--trace: one file cannot hold the traces of %s scenarios; run one at a time"
                            .formatted(scenarios.size()));
        }
        List<RunResult> results = new ArrayList<>();
        for (Scenario scenario : scenarios) {
            RunResult result =
                    place == null ? run(scenario, Observer.NONE) : traced(scenario, place);
            results.add(result);
            print(result, scenarios.size() == 1);
        }
        if (results.size() > 1 && !json) {
            summarize(results);
        }
        terminal.out().flush();
        return exitCode(results);
    }

    private RunResult traced(Scenario scenario, Path place) throws InputException {
        try (TraceCsv csv = new TraceCsv(place, traceEveryMillis, traceAhead)) {
            RunResult result = run(scenario, csv);
            csv.keep();
            return result;
        } catch (UncheckedIOException | IOException e) {
            throw new InputException(
                    "--trace: cannot write "
                            + place
                            + ": "
                            + FileTrouble.words(e)
                            + "; expected a file in an existing folder, such as week.csv");
        }
    }

    private RunResult run(Scenario scenario, Observer observer) {
        long startNanos = System.nanoTime();
        RunResult result;
        if (terminal.errIsTerminal()) {
            try (ProgressBar bar = new ProgressBar(terminal.err())) {
                result = simulate(scenario, Observers.both(observer, bar));
            }
        } else {
            result = simulate(scenario, observer);
        }
        if (terminal.errIsTerminal() && !json) {
            tellSpeed(result, (System.nanoTime() - startNanos) / NANOS_PER_SECOND);
        }
        return result;
    }

    private RunResult simulate(Scenario scenario, Observer observer) {
        Long chosen = seed;
        return RunRecorder.run(scenario, chosen == null ? scenario.seed() : chosen, observer);
    }

    /** On standard error, because it differs from run to run. */
    private void tellSpeed(RunResult result, double seconds) {
        terminal.err()
                .println(
                        String.format(
                                Locale.ROOT,
                                "%s simulated in %.2f s, %,.0f times as fast as life",
                                Figures.duration(result.simulatedMillis()),
                                seconds,
                                result.simulatedMillis() / 1e3 / seconds));
    }

    private void print(RunResult result, boolean single) {
        if (json) {
            terminal.out().print(RunJson.of(result, Version.text()) + "\n");
            return;
        }
        if (!single) {
            terminal.out().print(TextReport.verdictLine(result, terminal.ink()) + "\n");
        }
        if (single || full || result.verdict() != Verdict.PASSED) {
            terminal.out().print(single ? "" : "\n");
            terminal.out().print(TextReport.of(result, Version.text(), terminal.ink()));
            terminal.out().print(single ? "" : "\n");
        }
    }

    private void summarize(List<RunResult> results) {
        terminal.out()
                .print(
                        "%s scenarios: %s passed, %s failed, %s without a verdict\n"
                                .formatted(
                                        results.size(),
                                        count(results, Verdict.PASSED),
                                        count(results, Verdict.FAILED),
                                        count(results, Verdict.NO_VERDICT)));
    }

    private static long count(List<RunResult> results, Verdict verdict) {
        return results.stream().filter(r -> r.verdict() == verdict).count();
    }

    /** A list of runs is not green while one of them shows nothing. */
    private static int exitCode(List<RunResult> results) {
        boolean failed = count(results, Verdict.FAILED) > 0;
        boolean hollow = results.size() > 1 && count(results, Verdict.NO_VERDICT) > 0;
        return failed || hollow ? ExitCodes.FAILED : ExitCodes.OK;
    }
}
