package org.gaugebench.sim.cli;

import java.util.List;
import java.util.concurrent.Callable;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioWriter;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Reads scenarios without running them. */
@Command(
        name = "check",
        header = "Read scenarios without running them, and tell every problem.",
        description = {
            "",
            "Each problem comes with file, line and column, the line itself, what was expected"
                    + " and an example. A good file gets one line.",
            ""
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:every file can be run",
            " 2:a file cannot be run, or the command line is wrong",
            "70:a defect of this program"
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  gauge-sim check scenarios",
            "  gauge-sim check --resolved a-week-in-the-hut.yaml > whole.yaml"
        })
final class CheckCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin private final ScenarioArguments arguments = new ScenarioArguments();

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    @Option(
            names = "--resolved",
            description =
                    "Print the scenario with every default filled in and marked;"
                            + " the output is a scenario again. One file only;"
                            + " of one that varies, each run after a line '# run: ...'.")
    private boolean resolved;

    CheckCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException {
        List<Scenario> scenarios = arguments.load();
        if (resolved && files(scenarios) > 1) {
            throw new InputException(
                    "--resolved prints one scenario; %s were named".formatted(files(scenarios)));
        }
        for (Scenario scenario : scenarios) {
            if (resolved && !scenario.variant().isEmpty()) {
                terminal.out().print("# run: " + scenario.variant() + "\n");
            }
            String text = resolved ? ScenarioWriter.resolved(scenario) : line(scenario);
            terminal.out().print(text.endsWith("\n") ? text : text + "\n");
        }
        terminal.out().flush();
        return ExitCodes.OK;
    }

    private static long files(List<Scenario> scenarios) {
        return scenarios.stream().map(Scenario::file).distinct().count();
    }

    private static String line(Scenario scenario) {
        int expectations = scenario.expectations().size();
        return "%s: good; %s; digest %s"
                .formatted(
                        scenario.name(),
                        switch (expectations) {
                            case 0 -> "expects nothing, so a run gives no verdict";
                            case 1 -> "1 expectation";
                            default -> expectations + " expectations";
                        },
                        ScenarioWriter.digest(scenario));
    }
}
