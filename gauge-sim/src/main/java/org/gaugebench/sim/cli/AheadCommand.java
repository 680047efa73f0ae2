package org.gaugebench.sim.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.gaugebench.sim.advice.MonthAhead;
import org.gaugebench.sim.advice.MonthAheadResult;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.OwnersGauge;
import org.gaugebench.sim.advice.Sizing;
import org.gaugebench.sim.advice.SizingResult;
import org.gaugebench.sim.report.AheadPicture;
import org.gaugebench.sim.report.AheadText;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code ahead}: after how many days a figure should not be believed any more. */
@Command(
        name = "ahead",
        header = "How many days after a full charge a gauge's figure can be believed.",
        description = {
            "",
            "From the system and from what the gauge does: how far its figure leaves the truth each"
                    + " day, for which reasons, and what to change first. What you do not know may"
                    + " be left out; the answer then says what it assumed and how to find out.",
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
            "  gauge-sim ahead --voltage \"12 V\" --chemistry lifepo4 --capacity \"40 Ah\" \\",
            "    --load \"logger: 200 mA, 24 h\" --charger \"5 A\" \\",
            "    --own-current \"12 mA\" --zero-error \"5 mA\""
        })
final class AheadCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    @Mixin private final SystemOptions told = new SystemOptions();

    @Mixin private final GaugeOptions gauge = new GaugeOptions();

    @Option(
            names = "--scenario",
            description = "print the scenario behind the answer instead, to run and to change")
    private boolean scenario;

    @Option(
            names = "--picture",
            paramLabel = "SVG",
            description = "draw the month into this SVG file too")
    private @Nullable Path picture;

    AheadCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException {
        OwnersGauge own = gauge.gauge();
        OwnSystem system = told.system(terminal);
        SizingResult sizing = Sizing.of(system);
        ShuntRating shunt = sizing.chosen();
        if (shunt == null) {
            throw new InputException(
                    "no usual shunt carries these currents; expected the one that is there, such as"
                            + " --shunt \"500 A / 75 mV\"");
        }
        MonthAheadResult result = MonthAhead.of(system, own, shunt);
        draw(result);
        terminal.out().print(scenario ? result.scenario() : AheadText.of(system, result));
        terminal.out().flush();
        return ExitCodes.OK;
    }

    private void draw(MonthAheadResult result) throws InputException {
        if (picture == null) {
            return;
        }
        if (result.course().isEmpty()) {
            throw new InputException(
                    "--picture: nothing to draw, the loads empty this battery within a month");
        }
        OutputFile file = OutputFile.open("--picture", picture, "month.svg");
        try {
            file.keep(() -> AheadPicture.of(result));
        } finally {
            file.abandon();
        }
    }
}
