package org.gaugebench.sim.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import org.gaugebench.sim.cli.ShelfRunner.Job;
import org.gaugebench.sim.device.PipeCommand;
import org.gaugebench.sim.judge.Attribution;
import org.gaugebench.sim.judge.AttributionRun;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.judge.ShelfCase;
import org.gaugebench.sim.judge.ShelfCase.Ending;
import org.gaugebench.sim.report.AttributionText;
import org.gaugebench.sim.report.JUnitXml;
import org.gaugebench.sim.report.MomentPage;
import org.gaugebench.sim.report.RuleCoverageText;
import org.gaugebench.sim.report.SummaryTable;
import org.gaugebench.sim.report.TraceCsv;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Observers;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.SeedRange;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Runs scenarios and reports what came of them. */
@Command(
        name = "run",
        header = "Run scenarios and hold the gauge's reading against the truth.",
        description = {
            "",
            "Simulates each scenario and prints the verdict first, then the reading against the"
                    + " truth, a chart, every expectation and the events. All problems of all"
                    + " files are told before anything runs. Of several files, those that are not"
                    + " right get the whole report, and a table has them all, the worst first.",
            ""
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:every expectation holds; or a single file that expects nothing (no verdict)",
            " 1:it ran, and an expectation failed or the time was over, or one of several files"
                    + " expects nothing",
            " 2:wrong input or command line; nothing ran, nothing was written",
            " 3:the program of --device ended, took too long or did not keep to the protocol",
            "70:a defect of this program; of several files the others ran all the same"
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  gauge-sim run scenarios/first-steps/a-week-in-the-hut.yaml",
            "  gauge-sim run --only winter --timeout '30 s' --junit verdicts.xml scenarios",
            "  gauge-sim run --seeds 1..100 a-week-in-the-hut.yaml",
            "  gauge-sim run --at '2 d 03:12:00' a-week-in-the-hut.yaml",
            "  gauge-sim run --seed 7 --trace week.csv a-week-in-the-hut.yaml",
            "  gauge-sim run --dump week.vcd a-week-in-the-hut.yaml",
            "  gauge-sim run --picture week.svg a-week-in-the-hut.yaml",
            "  gauge-sim run --report week.html a-week-in-the-hut.yaml",
            "  gauge-sim run --attribution a-week-in-the-hut.yaml",
            "  gauge-sim run --device ./my-gauge scenarios/first-steps"
        })
final class RunCommand implements Callable<Integer> {
    private static final double NANOS_PER_SECOND = 1e9;

    private final Terminal terminal;

    @Mixin private final ScenarioArguments arguments = new ScenarioArguments();
    @Mixin private final ShelfOptions shelf = new ShelfOptions();
    @Mixin private final TagOptions tags = new TagOptions();

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    @Mixin private final SeedOption seed = new SeedOption();
    @Mixin private final PictureOptions picture = new PictureOptions();
    @Mixin private final ReportOptions report = new ReportOptions();
    @Mixin private final DumpOptions dump = new DumpOptions();

    @Mixin private final DeviceOptions device = new DeviceOptions();

    @Option(
            names = "--seeds",
            paramLabel = "A..B",
            converter = SeedRangeText.class,
            description =
                    "Run each scenario once with each of these seeds, such as 1..100, instead of"
                            + " its 'seed' or 'seeds'.")
    private @Nullable SeedRange seeds;

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
            names = "--junit",
            paramLabel = "XML",
            description =
                    "Write the verdicts to this file too, in the XML form of JUnit reports, which"
                            + " continuous-integration servers read.")
    private @Nullable Path junit;

    @Option(
            names = "--at",
            paramLabel = "MOMENT",
            converter = MomentTime.class,
            description =
                    "Show truth, readings and registers at this moment, such as '2 d 03:12:40',"
                            + " instead of the report; one scenario only, and no verdict: exit 0.")
    private @Nullable Long atMillis;

    @Option(
            names = "--rule-coverage",
            description =
                    "Tell which states, transitions and reasons of the full-charge rule no"
                            + " scenario visits.")
    private boolean ruleCoverage;

    @Option(
            names = "--attribution",
            description =
                    "Tell where the gauge's error comes from, cause by cause, at the end, wherever"
                            + " an expectation failed, or at the moment of --at. Runs each"
                            + " scenario once more with a gauge for each cause; the main gauge"
                            + " must be of kind core.")
    private boolean attribution;

    @Option(
            names = "--attribution-gauge",
            paramLabel = "NAME",
            description =
                    "With --attribution or --picture-shows causes: the error of this core gauge"
                            + " instead of the main one.")
    private @Nullable String attributionGauge;

    private Attributing attributing = new Attributing(null, false, false);
    private @Nullable PipeCommand program;

    RunCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException {
        if (seeds != null && seed.isGiven()) {
            throw new InputException(
                    "--seed and --seeds both say which seed to take; expected one of them, such as"
                            + " --seeds "
                            + SeedRange.EXAMPLE);
        }
        List<Scenario> scenarios = arguments.load(seeds);
        boolean drawn = picture.showsCauses() || (attribution && report.isWanted());
        attributing = new Attributing(attributionGauge, attribution, drawn);
        checkAttribution(scenarios);
        boolean single = scenarios.size() == 1;
        Long moment = atMillis;
        MomentTime.check(moment, json, trace, junit, ruleCoverage);
        picture.check(moment != null);
        report.check(moment != null);
        dump.check(moment != null, scenarios);
        program = device.tryOut();
        if (moment != null) {
            return show(alone(scenarios, "--at: a moment belongs to one scenario"), moment);
        }
        Path place = trace;
        if (place != null) {
            return traced(
                    alone(scenarios, "--trace: one file cannot hold the traces of several"), place);
        }
        if (report.isWanted() || picture.isWanted() || dump.isWanted()) {
            String why =
                    report.isWanted()
                            ? "--report: one page shows one run"
                            : "--picture: one picture shows one run";
            return drawn(alone(scenarios, why), Observer.NONE);
        }
        tags.check(scenarios);
        List<Job> jobs = new ArrayList<>();
        for (Scenario scenario : scenarios) {
            String skipReason = tags.skipReason(scenario);
            skipReason = skipReason.isEmpty() ? device.skipReason(scenario) : skipReason;
            jobs.add(new Job(scenario, seed.of(scenario), skipReason, Observer.NONE, attributing));
        }
        Shard part = shelf.shard();
        return run(part == null ? jobs : part.of(jobs), single, each -> {});
    }

    private void checkAttribution(List<Scenario> scenarios) throws InputException {
        if (attributionGauge != null && !attributing.isWanted()) {
            throw new InputException(
                    "--attribution-gauge says whose error to split, but nothing is split; add"
                            + " --attribution");
        }
        if (attributing.isWanted() && device.isWanted()) {
            throw new InputException(
                    "--attribution splits the error of a core, whose causes can be taken away one"
                            + " by one; expected it without --device");
        }
        for (Scenario scenario : scenarios) {
            if (attributing.isWanted()) {
                attributing.gaugeOf(scenario);
            }
        }
    }

    static Scenario alone(List<Scenario> scenarios, String why) throws InputException {
        int count = scenarios.size();
        if (count > 1) {
            Scenario last = scenarios.get(count - 1);
            boolean oneFile = scenarios.stream().allMatch(it -> it.file().equals(last.file()));
            throw new InputException(
                    why
                            + (oneFile
                                    ? "; the file makes %s, choose one with --variant, such as '%s'"
                                            .formatted(count, last.variant())
                                    : "; %s were named, run one at a time".formatted(count)));
        }
        return scenarios.get(0);
    }

    private int show(Scenario scenario, long moment) throws InputException {
        if (moment > scenario.durationMillis()) {
            throw new InputException(
                    "--at: %s lies after the run, which ends at %s"
                            .formatted(
                                    Figures.moment(moment),
                                    Figures.moment(scenario.durationMillis())));
        }
        refuseWithoutCore(scenario);
        terminal.out().print(MomentPage.of(scenario, seed.of(scenario), moment, program));
        if (attribution) {
            String gauge = attributing.gaugeOf(scenario);
            Attribution split =
                    AttributionRun.of(scenario, seed.of(scenario), gauge, Observer.NONE, moment);
            terminal.out().print(AttributionText.of(split, terminal.ink()));
        }
        terminal.out().flush();
        return ExitCodes.OK;
    }

    private void refuseWithoutCore(Scenario scenario) throws InputException {
        String why = device.skipReason(scenario);
        if (!why.isEmpty()) {
            throw new InputException("--device: " + scenario.name() + ": " + why);
        }
    }

    private int traced(Scenario scenario, Path place) throws InputException {
        try (TraceCsv csv = new TraceCsv(place, traceEveryMillis, traceAhead)) {
            int exitCode = drawn(scenario, csv);
            if (exitCode == ExitCodes.OK || exitCode == ExitCodes.FAILED) {
                csv.keep();
            }
            return exitCode;
        } catch (UncheckedIOException | IOException e) {
            throw new InputException(
                    "--trace: cannot write "
                            + place
                            + ": "
                            + FileTrouble.words(e)
                            + "; expected a file in an existing folder, such as week.csv");
        }
    }

    /** Runs one scenario, and draws it if a picture or a page is wanted. */
    private int drawn(Scenario scenario, Observer guest) throws InputException {
        refuseWithoutCore(scenario);
        try (PictureFile file = picture.open();
                DumpFile waves = dump.open(seed.of(scenario));
                ReportFile page = report.open()) {
            Observer all = Observers.both(Observers.both(guest, file.guest()), page.guest());
            all = Observers.both(all, waves.guest());
            Job job = new Job(scenario, seed.of(scenario), "", all, attributing);
            int exitCode =
                    run(
                            List.of(job),
                            true,
                            each -> {
                                waves.take(each);
                                file.take(each, attributing);
                                page.take(each, attributing);
                            });
            waves.keep();
            file.keep();
            page.keep();
            return exitCode;
        }
    }

    private int run(List<Job> jobs, boolean single, Consumer<ShelfCase> also)
            throws InputException {
        OutputFile xml = OutputFile.open("--junit", junit, "verdicts.xml");
        CasePrinter printer = new CasePrinter(terminal, single, json, full, attributing);
        List<ShelfCase> cases = new ArrayList<>();
        long startNanos = System.nanoTime();
        try (ProgressBar bar = single && terminal.errIsTerminal() ? bar() : null) {
            attributing.setProgress(bar == null ? Observer.NONE : bar);
            ListProgress progress = new ListProgress(terminal, single ? 0 : jobs.size());
            ShelfRunner runner = new ShelfRunner(shelf, program);
            runner.run(
                    bar == null ? jobs : watched(jobs, bar),
                    each -> {
                        Throwable defect = each.defect();
                        if (single && each.ending() == Ending.CRASHED && defect != null) {
                            throw defect instanceof RuntimeException e
                                    ? e
                                    : new IllegalStateException(defect);
                        }
                        progress.clear();
                        if (bar != null) {
                            bar.clear();
                        }
                        printer.print(each);
                        also.accept(each);
                        forget(each);
                        cases.add(each.slim());
                        progress.next();
                    });
            progress.clear();
        } catch (RuntimeException | Error e) {
            xml.abandon();
            throw e;
        }
        xml.keep(() -> JUnitXml.of(cases, Version.text()));
        if (terminal.errIsTerminal() && !json) {
            double seconds = (System.nanoTime() - startNanos) / NANOS_PER_SECOND;
            // On standard error, because it differs from run to run.
            terminal.err().println(RunsEnd.speed(cases, seconds));
        }
        if (!single && !json) {
            terminal.out().print(SummaryTable.of(cases, terminal.ink()));
        }
        if (ruleCoverage && !json) {
            terminal.out().print("\n" + RuleCoverageText.of(RuleCoverageText.sum(cases)));
        }
        terminal.out().flush();
        return RunsEnd.exitCode(cases, single);
    }

    private void forget(ShelfCase each) {
        RunResult result = each.result();
        if (result != null) {
            attributing.forget(result);
        }
    }

    private ProgressBar bar() {
        return new ProgressBar(terminal.err());
    }

    private static List<Job> watched(List<Job> jobs, ProgressBar bar) {
        List<Job> watched = new ArrayList<>();
        for (Job job : jobs) {
            watched.add(
                    new Job(
                            job.scenario(),
                            job.seed(),
                            job.skipReason(),
                            Observers.both(job.guest(), bar),
                            job.after()));
        }
        return watched;
    }
}
