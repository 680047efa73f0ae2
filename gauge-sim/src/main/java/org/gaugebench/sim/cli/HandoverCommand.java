package org.gaugebench.sim.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.gaugebench.sim.report.SheetDetails;
import org.gaugebench.sim.report.SystemSheet;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code handover}: everything for one system on one sheet. */
@Command(
        name = "handover",
        header = "Write one sheet for one system: settings, wiring, checks, later.",
        description = {
            "",
            "One HTML file that prints on A4 and Letter, opens on a telephone and needs no network:"
                    + " what to type in, a drawing of this wiring, the first charge, checks with a"
                    + " meter and empty columns, what to look at later, and when not to believe the"
                    + " figure. 'verdict' judges what was written into the columns.",
            ""
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:written",
            " 2:the command line is wrong; nothing was written",
            "70:a defect of this program"
        },
        footerHeading = "%nExample:%n",
        footer = {
            "  gauge-sim handover hut.html --name \"Tide-gauge hut\" --voltage \"12 V\" \\",
            "    --chemistry lead-acid-agm --capacity \"100 Ah\" --load \"lamp: 1.2 A, 5 h\" \\",
            "    --charger \"20 A\" --source solar --charger-volts \"14.4 V\""
        })
final class HandoverCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    @Parameters(paramLabel = "HTML", description = "The file to write.")
    private Path file = Path.of("");

    @Mixin private final HandoverOptions more = new HandoverOptions();

    @Mixin private final SystemOptions told = new SystemOptions();

    @Mixin private final GaugeOptions gauge = new GaugeOptions();

    HandoverCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException {
        OutputFile output = OutputFile.open("the sheet", file, "my-system.html");
        try {
            List<String> wrong = new ArrayList<>();
            SheetDetails details = ToldParts.keep(wrong, more::details);
            OwnParts own = OwnParts.read(terminal, told, gauge, wrong);
            SheetDetails all = Objects.requireNonNull(details);
            output.keep(() -> SystemSheet.html(own.system(), own.gauge(), all, Version.text()));
        } finally {
            output.abandon();
        }
        terminal.out().println(file + " written; open it in a browser, or print it");
        return ExitCodes.OK;
    }
}
