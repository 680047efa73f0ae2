package org.gaugebench.sim.cli;

import java.nio.file.Path;
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
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
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
            ""
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:the same throughout",
            " 1:they differ",
            " 2:wrong input, or two that cannot be compared: other truths, times or columns",
            "70:a defect of this program"
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  gauge-sim compare month.yaml month.yaml#plain",
            "  gauge-sim compare taper-2-percent.yaml taper-4-percent.yaml",
            "  gauge-sim compare before.csv after.csv"
        })
final class CompareCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "A", description = "A scenario or a trace.")
    private String first = "";

    @Parameters(index = "1", paramLabel = "B", description = "Another of the same kind.")
    private String second = "";

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
    public Integer call() throws InputException {
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
