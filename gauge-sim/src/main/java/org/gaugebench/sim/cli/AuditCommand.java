package org.gaugebench.sim.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.gaugebench.sim.advice.LogAudit;
import org.gaugebench.sim.advice.OwnAudit;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.OwnersGauge;
import org.gaugebench.sim.advice.SettingsAudit;
import org.gaugebench.sim.advice.SettingsTold;
import org.gaugebench.sim.logs.MeasuredLog;
import org.gaugebench.sim.report.AuditJson;
import org.gaugebench.sim.report.AuditText;
import org.gaugebench.sim.report.LogAuditText;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code audit}: whether a gauge's settings go with battery and charger. */
@Command(
        name = "audit",
        header = "Hold a gauge's settings against battery, charger and the days of a scenario.",
        description = {
            "",
            "Tells which settings do not go with what the gauge is fitted to: the evidence, what"
                    + " comes of it in the run, what to move and to what, and how sure that is."
                    + " Without a file your system is told by options; on a terminal you are asked"
                    + " for what is missing. With --log a log of your own drives the gauge instead"
                    + " of days that are made up.",
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
        footerHeading = "%nExamples:%n",
        footer = {
            "  gauge-sim audit scenarios/first-steps/a-week-in-the-hut.yaml",
            "  gauge-sim audit --voltage \"12 V\" --chemistry lead-acid-agm \\",
            "    --capacity \"100 Ah\" --load \"lamp: 1.2 A, 5 h\" --charger \"20 A\" \\",
            "    --charger-volts \"14.4 V\" --typed-capacity \"50 Ah\"",
            "  gauge-sim audit --log week.csv --log-time time_s --log-current current_A \\",
            "    --log-voltage voltage_V --log-positive charge --voltage \"12 V\" \\",
            "    --chemistry lead-acid-agm --capacity \"60 Ah\" --full-volts \"14.8 V\""
        })
final class AuditCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(
            paramLabel = "FILE",
            arity = "0..*",
            description =
                    "Scenario files, folders or patterns; none for a system of your own, told by"
                            + " the options below.")
    private List<String> files = new ArrayList<>();

    @Option(
            names = "--variant",
            paramLabel = "NAME",
            description = "Of files that make several runs, only the runs that reports call so.")
    private @Nullable String variant;

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    @Option(names = "--json", description = "print one JSON object on a line instead of text")
    private boolean json;

    @Option(
            names = "--scenario",
            description = "print the scenario behind the answer instead, for a system of your own")
    private boolean scenarioOnly;

    @Mixin private final SystemOptions told = new SystemOptions();

    @Mixin private final GaugeOptions gauge = new GaugeOptions();

    @Mixin private final SettingOptions settings = new SettingOptions();

    @Mixin private final LogAuditOptions log = new LogAuditOptions();

    AuditCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException {
        if (log.isWithoutFile()) {
            throw new InputException(
                    "--log is missing: the file of the other --log options; expected for instance"
                            + " --log week.csv");
        }
        if (json && scenarioOnly) {
            throw new InputException(ToldParts.JSON_OR_SCENARIO);
        }
        if (files.isEmpty() && variant != null) {
            throw new InputException(
                    "--variant: a FILE is missing, such as"
                            + " scenarios/first-steps/a-week-in-the-hut.yaml");
        }
        if (files.isEmpty()) {
            return log.isTold() ? ownLog() : own();
        }
        if (log.isTold()) {
            throw new InputException(
                    "expected either a scenario FILE or a log of your own (--log); found both");
        }
        if (told.isAnyTold()) {
            throw new InputException(
                    "expected either a scenario FILE, which tells the system, or the system by"
                            + " options such as --voltage \"12 V\"; found both");
        }
        if (gauge.isAnyTold() || settings.isAnyTold()) {
            throw new InputException(
                    "expected either a scenario FILE, which tells gauge, settings and chargers, or"
                            + " a system of your own by options such as --voltage \"12 V\" and"
                            + " --typed-capacity \"50 Ah\"; found both");
        }
        if (scenarioOnly) {
            throw new InputException(
                    "--scenario: the scenario is in the FILE already; it goes with a system of"
                            + " your own, told by options such as --voltage \"12 V\"");
        }
        List<Scenario> scenarios = ScenarioArguments.load(files, variant, null);
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

    /** Everything that is wrong with the options is told at once, and before the log is read. */
    private int ownLog() throws InputException {
        if (scenarioOnly) {
            throw new InputException(
                    "--scenario: a log is no scenario; 'gauge-sim adopt' makes one of it");
        }
        List<String> wrong = new ArrayList<>();
        OwnersGauge own = ToldParts.keep(wrong, gauge::gauge);
        OwnSystem system = ToldParts.keep(wrong, () -> told.system(terminal));
        ToldParts.refuse(wrong);
        OwnSystem battery = Objects.requireNonNull(system);
        SettingsTold typed = settings.settings(battery);
        ShuntRating shunt = ToldParts.shunt(battery, Objects.requireNonNull(own));
        MeasuredLog measured = log.read(shunt);
        LogAudit.Result result = LogAudit.of(measured, log.hold(), battery, own, typed, shunt);
        terminal.out()
                .print(
                        json
                                ? LogAuditText.json(measured.file(), result, Version.text())
                                : LogAuditText.of(measured.file(), result));
        terminal.out().flush();
        return result.findings().isEmpty() ? ExitCodes.OK : ExitCodes.FAILED;
    }

    private int own() throws InputException {
        OwnersGauge own = gauge.gauge();
        if (told.asks(terminal)) {
            Questions questions = new Questions(terminal);
            told.ask(questions);
            settings.ask(questions);
        }
        OwnSystem system = told.system();
        SettingsTold typed = settings.settings(system);
        ShuntRating shunt = ToldParts.shunt(system, own);
        OwnAudit.Result audit = OwnAudit.of(system, own, typed, shunt);
        String answer = json ? AuditJson.of(audit, Version.text()) : AuditText.of(audit);
        terminal.out().print(scenarioOnly ? audit.text() : answer);
        terminal.out().flush();
        return audit.result().findings().isEmpty() ? ExitCodes.OK : ExitCodes.FAILED;
    }
}
