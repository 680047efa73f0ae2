package org.gaugebench.sim.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.gaugebench.sim.advice.Changes;
import org.gaugebench.sim.advice.ChangesResult;
import org.gaugebench.sim.advice.OwnChange;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.OwnersGauge;
import org.gaugebench.sim.advice.TrialLimits;
import org.gaugebench.sim.report.ChangesJson;
import org.gaugebench.sim.report.ChangesText;
import org.gaugebench.sim.units.ShuntRating;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code changed}: what to redo after a change, and how far to believe the figure until then. */
@Command(
        name = "changed",
        header = "What to redo after a change, and how far to believe the figure until then.",
        description = {
            "",
            "Another battery, one more in parallel, weeks in store, winter, or the gauge's wire was"
                    + " off: tells what to redo, and in numbers from runs of your own system how"
                    + " far its figure can be believed until then. Tell the system as it was before"
                    + " the change.",
            ""
        },
        optionListHeading = "Options:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:answered",
            " 2:the command line is wrong",
            "70:a defect of this program"
        },
        footerHeading = "%nExample:%n",
        footer = {
            "  gauge-sim changed --wire-off \"20 min\" --voltage \"12 V\" --chemistry lifepo4 \\",
            "    --capacity \"40 Ah\" --load \"logger: 200 mA, 24 h\" --charger \"5 A\""
        })
final class ChangedCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    @Mixin private final ChangedOptions changed = new ChangedOptions();

    @Mixin private final SystemOptions told = new SystemOptions();

    @Mixin private final GaugeOptions gauge = new GaugeOptions();

    @Option(names = "--json", description = "print one JSON object instead of text")
    private boolean json;

    @Option(
            names = "--scenario",
            description = "print the scenario behind the answer instead, to run and to change")
    private boolean scenario;

    ChangedCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException {
        if (json && scenario) {
            throw new InputException(ToldParts.JSON_OR_SCENARIO);
        }
        List<String> wrong = new ArrayList<>();
        OwnChange change = ToldParts.keep(wrong, () -> changed.change(terminal));
        OwnersGauge own = ToldParts.keep(wrong, gauge::gauge);
        OwnSystem system = ToldParts.keep(wrong, () -> told.system(terminal));
        if (!wrong.isEmpty() || change == null || own == null || system == null) {
            throw new InputException(String.join(System.lineSeparator(), wrong));
        }
        ShuntRating shunt = ToldParts.shunt(system, own);
        String option = change.what().name().toLowerCase(Locale.ROOT).replace('_', '-');
        TrialLimits.check(system, change, option, new QuantityArguments(wrong));
        ToldParts.refuse(wrong);
        ChangesResult result = Changes.of(system, own, shunt, change);
        String text = json ? ChangesJson.of(result, Version.text()) : ChangesText.of(result);
        terminal.out().print(scenario ? result.scenario() : text);
        terminal.out().flush();
        return ExitCodes.OK;
    }
}
