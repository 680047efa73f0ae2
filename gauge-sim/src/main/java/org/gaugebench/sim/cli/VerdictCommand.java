package org.gaugebench.sim.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.gaugebench.sim.advice.MeterJudge;
import org.gaugebench.sim.advice.MeterVerdict;
import org.gaugebench.sim.logs.LogException;
import org.gaugebench.sim.logs.MeterReading;
import org.gaugebench.sim.logs.MeterReadings;
import org.gaugebench.sim.report.VerdictJson;
import org.gaugebench.sim.report.VerdictText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code verdict}: what the figures in a sheet's columns mean. */
@Command(
        name = "verdict",
        header = "Judge what was measured with a meter, check by check.",
        description = {
            "",
            "Reads what was written into the empty columns of the sheet of 'handover' and says of"
                + " each check: good, change, or cannot tell; with the figure, the limit and its"
                + " reason, and what to do. The file is CSV, with the header check,meter,gauge and"
                + " a row for each check done: zero-test,24 h,-0.1 Ah; own-current,12 mA,;"
                + " scale-at-rest,0 A,0.01 A; scale-small,-2.1 A,-2.0 A; scale-working,-9.8 A,-9.9"
                + " A; volts-under-load,12.41 V,12.30 V; capacity-test,,92 Ah.",
            ""
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:no check asks for a change",
            " 1:one does",
            " 2:the file or the command line is wrong",
            "70:a defect of this program"
        },
        footerHeading = "%nExample:%n",
        footer = {
            "  gauge-sim verdict my-checks.csv --voltage \"12 V\" --chemistry lifepo4 \\",
            "    --capacity \"40 Ah\" --load \"logger: 200 mA, 24 h\" --charger \"5 A\""
        })
final class VerdictCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    @Parameters(paramLabel = "CSV", description = "What was measured.")
    private Path file = Path.of("");

    @Mixin private final SystemOptions told = new SystemOptions();

    @Mixin private final GaugeOptions gauge = new GaugeOptions();

    @Option(names = "--json", description = "print one JSON object instead of text")
    private boolean json;

    VerdictCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException {
        List<String> wrong = new ArrayList<>();
        List<MeterReading> measured = ToldParts.keep(wrong, this::measured);
        OwnParts own = OwnParts.read(terminal, told, gauge, wrong);
        MeterVerdict verdict =
                MeterJudge.of(
                        own.system(), own.gauge(), own.shunt(), Objects.requireNonNull(measured));
        terminal.out()
                .print(json ? VerdictJson.of(verdict, Version.text()) : VerdictText.of(verdict));
        terminal.out().flush();
        return verdict.toChange() == 0 ? ExitCodes.OK : ExitCodes.FAILED;
    }

    private List<MeterReading> measured() throws InputException {
        try {
            return MeterReadings.read(file, file.toString());
        } catch (LogException e) {
            throw new InputException(String.valueOf(e.getMessage()));
        }
    }
}
