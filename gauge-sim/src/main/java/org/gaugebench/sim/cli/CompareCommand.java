package org.gaugebench.sim.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.gaugebench.sim.judge.Comparison;
import org.gaugebench.sim.judge.ComparisonException;
import org.gaugebench.sim.judge.GaugeComparison;
import org.gaugebench.sim.judge.TraceComparison;
import org.gaugebench.sim.report.ComparisonText;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Nearest;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Holds two gauges on one truth, or two traces, against each other. */
@Command(
        name = "compare",
        header = "Tell where two gauges on one truth, or two traces, first differ.",
        description = {
            "",
            "A and B are both scenario files, with #GAUGE behind the name for another gauge than"
                    + " the first, or both traces that 'run --trace' wrote. Two gauges of one"
                    + " scenario, or of two scenarios with the same truth and other settings, are"
                    + " compared register by register at every tick; two traces column by column.",
            "",
            "With --device a program and the core, or two programs, go through any number of"
                    + " scenarios in step: the digest of every tick, registers, events, answers and"
                    + " all bytes of the memory have to be the same. Where they part, the first"
                    + " tick is told, with its registers and what went in before.",
            ""
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:the same throughout",
            " 1:they differ",
            " 2:wrong input, or two that cannot be compared: other truths, times or columns",
            " 3:a program cannot be heard or does not keep to the protocol",
            "70:a defect of this program"
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  gauge-sim compare month.yaml month.yaml#plain",
            "  gauge-sim compare taper-2-percent.yaml taper-4-percent.yaml",
            "  gauge-sim compare before.csv after.csv",
            "  gauge-sim compare --device ./my-gauge scenarios"
        })
final class CompareCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(
            paramLabel = "FILE",
            arity = "1..*",
            description =
                    "A and B: two scenarios or two traces. With --device: scenario files, folders"
                            + " or patterns.")
    private List<String> files = new ArrayList<>();

    @Option(
            names = "--device",
            paramLabel = "COMMAND",
            description =
                    "Hold this program against the core, or two against each other where it is"
                            + " said twice; docs/pipe-protocol.md tells how they are asked.")
    private List<String> devices = new ArrayList<>();

    @Option(
            names = "--device-answer",
            paramLabel = "TIME",
            converter = TraceInterval.class,
            description = "Time that a program may take for each answer (default: 10 s).")
    private @Nullable Long answerMillis;

    @Option(
            names = "--vectors",
            paramLabel = "DIR",
            description =
                    "With --device: where they differ, write test vectors up to that tick, a"
                            + " numbered folder for each scenario.")
    private @Nullable Path vectors;

    @Option(
            names = "--threads",
            paramLabel = "N",
            converter = ShelfOptions.ThreadCount.class,
            description =
                    "With --device: scenarios at once (default: as many as the machine has cores)."
                            + " Output does not depend on it.")
    private @Nullable Integer threads;

    @Mixin private final SeedOption seed = new SeedOption();

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    CompareCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    /** A file, and the gauge named behind it or an empty text. */
    private record Named(String file, String gauge) {
        static Named of(String text) {
            int at = text.lastIndexOf('#');
            return at < 0
                    ? new Named(text, "")
                    : new Named(text.substring(0, at), text.substring(at + 1));
        }

        boolean isTrace() {
            return file.toLowerCase(Locale.ROOT).endsWith(".csv");
        }
    }

    @Override
    public Integer call() throws InputException, InterruptedException {
        if (!devices.isEmpty()) {
            Integer wanted = threads;
            int count = wanted == null ? Runtime.getRuntime().availableProcessors() : wanted;
            return new LockStepRun(terminal, seed, devices, answerMillis, vectors)
                    .run(files, count);
        }
        if (vectors != null || threads != null || answerMillis != null) {
            throw new InputException(
                    "compare: --vectors, --threads and --device-answer are for --device; expected"
                            + " for instance --device ./my-gauge");
        }
        if (files.size() != 2) {
            throw new InputException(
                    "compare: expected two files, such as before.csv after.csv, or --device and"
                            + " any number of scenarios; there are "
                            + files.size());
        }
        String first = files.get(0);
        String second = files.get(1);
        Named a = Named.of(first);
        Named b = Named.of(second);
        if (a.isTrace() != b.isTrace()) {
            throw new InputException(
                    "%s and %s: a scenario and a trace cannot be compared; write a trace of the"
                                    .formatted(first, second)
                            + " scenario with 'run --trace' first");
        }
        try {
            Comparison comparison = a.isTrace() ? traces(a, b) : gauges(a, b);
            String what = a.isTrace() ? "rows" : "ticks";
            terminal.out().print(ComparisonText.of(comparison, what));
            terminal.out().flush();
            return comparison.divergences().isEmpty() ? ExitCodes.OK : ExitCodes.FAILED;
        } catch (ComparisonException e) {
            throw new InputException("compare: " + e.getMessage());
        }
    }

    private static Comparison traces(Named a, Named b) throws ComparisonException {
        return TraceComparison.of(
                new TraceComparison.Side(Path.of(a.file()), a.gauge()),
                new TraceComparison.Side(Path.of(b.file()), b.gauge()));
    }

    private Comparison gauges(Named a, Named b) throws InputException, ComparisonException {
        List<Scenario> both =
                List.of(
                        one(a.file(), ScenarioArguments.of(a.file())),
                        one(b.file(), ScenarioArguments.of(b.file())));
        long chosen = seed.of(both.get(0));
        return GaugeComparison.of(
                new GaugeComparison.Side(both.get(0), chosen, gaugeOf(both.get(0), a.gauge())),
                new GaugeComparison.Side(both.get(1), chosen, gaugeOf(both.get(1), b.gauge())));
    }

    private static Scenario one(String file, List<Scenario> scenarios) throws InputException {
        if (scenarios.size() != 1) {
            throw new InputException(
                    "%s stands for %s scenarios; expected one, such as week.yaml"
                            .formatted(file, scenarios.size()));
        }
        return scenarios.get(0);
    }

    private static int gaugeOf(Scenario scenario, String name) throws InputException {
        List<String> names = scenario.gauges().stream().map(GaugeSpec::name).toList();
        if (name.isEmpty()) {
            return 0;
        }
        int at = names.indexOf(name);
        if (at < 0) {
            String nearest = Nearest.of(name, names);
            throw new InputException(
                    "%s has no gauge '%s'; %s"
                            .formatted(
                                    scenario.file(),
                                    name,
                                    nearest == null
                                            ? "it has " + String.join(", ", names)
                                            : "did you mean '" + nearest + "'?"));
        }
        return at;
    }
}
