package org.gaugebench.sim.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.Sizing;
import org.gaugebench.sim.advice.SizingResult;
import org.gaugebench.sim.report.SizingJson;
import org.gaugebench.sim.report.SizingPicture;
import org.gaugebench.sim.report.SizingText;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code size}: which shunt, and what it costs in accuracy. */
@Command(
        name = "size",
        header = "Which shunt a small system needs, and what it costs in accuracy.",
        description = {
            "",
            "Tell what draws current, the battery and the chargers. On a terminal you are asked"
                    + " for what is missing. No conductor and no fuse is sized: those are questions"
                    + " for your local code.",
            ""
        },
        optionListHeading = "Options:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:a shunt fits",
            " 1:none does, or the one that is there does not",
            " 2:the command line is wrong",
            "70:a defect of this program"
        },
        footerHeading = "%nExample:%n",
        footer = {
            "  gauge-sim size --voltage \"12 V\" --chemistry lead-acid-agm \\",
            "    --capacity \"100 Ah\" --load \"lamp: 1.2 A, 5 h\" \\",
            "    --load \"fridge: 45 W, 8 h, surge 120 W\" --charger \"20 A\""
        })
final class SizeCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    @Mixin private final SystemOptions told = new SystemOptions();

    @Option(
            names = "--picture",
            paramLabel = "SVG",
            description =
                    "draw drop, heat and the cost of an offset of the proposed shunt and its"
                            + " neighbours to this SVG file")
    private @Nullable Path picture;

    @Option(names = "--json", description = "print one JSON object instead of text")
    private boolean json;

    SizeCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException {
        OwnSystem system = told.system(terminal);
        OutputFile drawing = OutputFile.open("--picture", picture, "shunt.svg");
        SizingResult result = Sizing.of(system);
        drawing.keep(() -> SizingPicture.of(result, Version.text()));
        terminal.out()
                .print(
                        json
                                ? SizingJson.of(system, result, Version.text())
                                : SizingText.of(system, result));
        terminal.out().flush();
        return result.findings().isEmpty() ? ExitCodes.OK : ExitCodes.FAILED;
    }
}
