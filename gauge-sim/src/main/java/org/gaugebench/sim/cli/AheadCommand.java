package org.gaugebench.sim.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.concurrent.Callable;
import org.gaugebench.sim.advice.MonthAhead;
import org.gaugebench.sim.advice.MonthAheadResult;
import org.gaugebench.sim.report.AheadJson;
import org.gaugebench.sim.report.AheadPicture;
import org.gaugebench.sim.report.AheadText;
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

    @Option(names = "--json", description = "print one JSON object instead of text")
    private boolean json;

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
        if (json && scenario) {
            throw new InputException(ToldParts.JSON_OR_SCENARIO);
        }
        OwnParts own = OwnParts.read(terminal, told, gauge, new ArrayList<>());
        MonthAheadResult result = MonthAhead.of(own.system(), own.gauge(), own.shunt());
        draw(result);
        terminal.out()
                .print(
                        scenario
                                ? result.scenario()
                                : json
                                        ? AheadJson.of(own.system(), result, Version.text())
                                        : AheadText.of(own.system(), result));
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
