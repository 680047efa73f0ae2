package org.gaugebench.sim.cli;

import java.util.List;
import java.util.concurrent.Callable;
import org.gaugebench.sim.explain.Explainer;
import org.gaugebench.sim.explain.Explanation;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.report.ExplanationJson;
import org.gaugebench.sim.report.ExplanationText;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Nearest;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Lays the arithmetic of one moment open. */
@Command(
        name = "explain",
        header = "Show how a gauge comes to its figures at one moment, integer by integer.",
        description = {
            "",
            "Runs a scenario up to the moment and prints every step from the raw counts to what"
                    + " the display shows, with the integers that went in, so that each line can"
                    + " be worked out again by hand. The numbers of the steps are those of"
                    + " gauge-core/docs/arithmetic.md and rules.md.",
            ""
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:every figure agrees with the core's registers",
            " 2:wrong input or command line; nothing ran",
            "70:a defect of this program; a figure that is not the core's is one"
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  gauge-sim explain --at '2 d 21:56:00' a-week-in-the-hut.yaml",
            "  gauge-sim explain --at '90 min' --gauge second --json two-gauges.yaml"
        })
final class ExplainCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin private final ScenarioArguments arguments = new ScenarioArguments();
    @Mixin private final SeedOption seed = new SeedOption();

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    @Option(
            names = "--at",
            paramLabel = "MOMENT",
            required = true,
            converter = MomentTime.class,
            description =
                    "The moment, such as '2 d 03:12:40' or '51 h'; the first tick at or after it.")
    private long atMillis;

    @Option(
            names = "--gauge",
            paramLabel = "NAME",
            description = "Which core gauge (default: the scenario's first one).")
    private @Nullable String gauge;

    @Option(names = "--json", description = "Print one JSON object instead of text.")
    private boolean json;

    ExplainCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException {
        Scenario scenario =
                RunCommand.alone(arguments.load(), "explain: a moment belongs to one scenario");
        if (atMillis < 0) {
            throw new InputException(
                    "--at: a run begins at 0 d 00:00:00; expected a moment of it, such as '51 h'");
        }
        if (atMillis > scenario.durationMillis()) {
            throw new InputException(
                    "--at: %s lies after the run, which ends at %s"
                            .formatted(
                                    Figures.moment(atMillis),
                                    Figures.moment(scenario.durationMillis())));
        }
        String name = chosen(scenario);
        long chosenSeed = seed.of(scenario);
        Explanation explanation = Explainer.of(scenario, chosenSeed, name, atMillis);
        terminal.out()
                .print(
                        json
                                ? ExplanationJson.of(
                                        scenario, chosenSeed, explanation, Version.text())
                                : ExplanationText.of(scenario, chosenSeed, explanation));
        terminal.out().flush();
        return explanation.contradictions() == 0 ? ExitCodes.OK : ExitCodes.OUR_BUG;
    }

    private String chosen(Scenario scenario) throws InputException {
        List<String> cores = Explainer.gauges(scenario);
        String wanted = gauge == null ? scenario.gauges().get(0).name() : gauge;
        if (cores.contains(wanted)) {
            return wanted;
        }
        for (GaugeSpec each : scenario.gauges()) {
            if (each.name().equals(wanted)) {
                throw new InputException(
                        "--gauge: '%s' is of kind %s; expected one of kind core, whose registers"
                                        .formatted(wanted, each.kind().key())
                                + " can be looked at"
                                + (cores.isEmpty() ? "" : ", such as '" + cores.get(0) + "'"));
            }
        }
        String nearest = Nearest.of(wanted, cores);
        throw new InputException(
                "--gauge: no gauge is called '%s'; %s"
                        .formatted(
                                wanted,
                                nearest != null
                                        ? "did you mean '" + nearest + "'?"
                                        : cores.isEmpty()
                                                ? "and none of this scenario is of kind core"
                                                : "expected one of " + String.join(", ", cores)));
    }
}
