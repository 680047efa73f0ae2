package org.gaugebench.sim.cli;

import java.util.List;
import java.util.concurrent.Callable;
import org.gaugebench.sim.advice.SettingsAudit;
import org.gaugebench.sim.report.AuditJson;
import org.gaugebench.sim.report.AuditText;
import org.gaugebench.sim.scenario.Scenario;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code audit}: whether a gauge's settings go with battery and charger. */
@Command(
        name = "audit",
        header = "Hold a gauge's settings against battery, charger and the days of a scenario.",
        description = {
            "",
            "Tells which settings do not go with what the gauge is fitted to: the evidence, what"
                    + " comes of it in the run, what to move and to what, and how sure that is."
                    + " A log of your own becomes a scenario with 'adopt'.",
            ""
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:nothing found",
            " 1:something does not go together",
            " 2:a file cannot be run, or the command line is wrong",
            "70:a defect of this program"
        },
        footerHeading = "%nExample:%n",
        footer = {"  gauge-sim audit scenarios/first-steps/a-week-in-the-hut.yaml"})
final class AuditCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin private final ScenarioArguments arguments = new ScenarioArguments();

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    @Option(names = "--json", description = "print one JSON object on a line instead of text")
    private boolean json;

    AuditCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException {
        List<Scenario> scenarios = arguments.load();
        for (Scenario scenario : scenarios) {
            if (!SettingsAudit.fits(scenario)) {
                throw new InputException(
                        "%s: the main gauge has no settings to audit; expected 'kind: core'"
                                .formatted(scenario.name()));
            }
        }
        boolean found = false;
        boolean first = true;
        for (Scenario scenario : scenarios) {
            SettingsAudit.Result result = SettingsAudit.of(scenario);
            found |= !result.findings().isEmpty();
            if (json) {
                terminal.out().print(AuditJson.of(scenario, result, Version.text()));
            } else {
                terminal.out().print((first ? "" : "\n") + AuditText.of(scenario, result));
            }
            first = false;
        }
        terminal.out().flush();
        return found ? ExitCodes.FAILED : ExitCodes.OK;
    }
}
