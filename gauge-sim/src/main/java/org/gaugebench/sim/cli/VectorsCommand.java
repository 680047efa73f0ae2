package org.gaugebench.sim.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.report.VectorCheck;
import org.gaugebench.sim.report.VectorException;
import org.gaugebench.sim.report.VectorWriter;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes test vectors for a port of the core. */
@Command(
        name = "vectors",
        header = "Write what goes into a gauge and every register after it, as integers.",
        description = {
            "",
            "For testing a port of the core bit by bit: settings, samples, commands and memory of"
                    + " the first gauge, tick by tick, and the registers that have to come out, as"
                    + " CSV files in a folder. The files are read back at once and held against a"
                    + " fresh core.",
            ""
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:written, or with --check the core agrees",
            " 1:with --check, a row does not agree",
            " 2:wrong input or command line; nothing was written",
            "70:a defect of this program"
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  gauge-sim vectors --out vectors --until '1 h' week.yaml",
            "  gauge-sim vectors --check vectors"
        })
final class VectorsCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(
            paramLabel = "FILE",
            arity = "0..1",
            description = "A scenario whose first gauge is the core.")
    private @Nullable String file;

    @Option(
            names = "--out",
            paramLabel = "DIR",
            description = "Folder for the files; made where it does not exist.")
    private @Nullable Path out;

    @Option(
            names = "--until",
            paramLabel = "MOMENT",
            converter = MomentTime.class,
            description = "End there, such as '1 h' or '2 d 03:12:40' (default: the whole run).")
    private @Nullable Long untilMillis;

    @Option(
            names = "--check",
            paramLabel = "DIR",
            description = "Instead of writing, hold a fresh core against the files of a folder.")
    private @Nullable Path check;

    @Mixin private final SeedOption seed = new SeedOption();

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    VectorsCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException {
        Path checked = check;
        Path place = out;
        String scenario = file;
        if (checked != null && scenario == null && place == null) {
            return check(checked);
        }
        if (scenario == null || place == null || checked != null) {
            throw new InputException(
                    "vectors: expected a scenario and --out DIR, or --check DIR alone");
        }
        List<Scenario> scenarios = ScenarioArguments.of(scenario);
        if (scenarios.size() != 1) {
            throw new InputException("vectors: expected one scenario, such as week.yaml");
        }
        return write(scenarios.get(0), place);
    }

    private int check(Path folder) throws InputException {
        if (!Files.isDirectory(folder)) {
            throw new InputException(
                    "--check: there is no folder %s; expected one that 'vectors --out' wrote"
                            .formatted(folder));
        }
        for (String file : VectorCheck.FILES) {
            if (!Files.exists(folder.resolve(file))) {
                throw new InputException(
                        "--check: %s holds no %s; expected a folder that 'vectors --out' wrote"
                                .formatted(folder, file));
            }
        }
        try {
            long rows = VectorCheck.replay(folder);
            terminal.out().print("%s rows, and the core agrees with each\n".formatted(rows));
            terminal.out().flush();
            return ExitCodes.OK;
        } catch (VectorException e) {
            terminal.err().println(e.getMessage());
            return ExitCodes.FAILED;
        }
    }

    private int write(Scenario scenario, Path folder) throws InputException {
        GaugeSpec gauge = scenario.gauges().get(0);
        if (gauge.kind() != GaugeSpec.Kind.CORE) {
            throw new InputException(
                    "%s: the first gauge is a %s; vectors are those of the core"
                            .formatted(scenario.file(), gauge.kind().key()));
        }
        Long until = untilMillis;
        long end = until == null ? scenario.durationMillis() : until;
        if (end > scenario.durationMillis()) {
            throw new InputException(
                    "--until: %s lies after the run, which ends at %s"
                            .formatted(
                                    Figures.moment(end),
                                    Figures.moment(scenario.durationMillis())));
        }
        try {
            Files.createDirectories(folder);
            long chosen = seed.of(scenario);
            try (VectorWriter writer = new VectorWriter(folder, gauge.name(), end)) {
                Rig rig = new Rig(scenario, chosen, writer);
                long rows = writer.run(rig);
                writer.keep();
                terminal.out()
                        .print(
                                "%s rows to %s in %s\n"
                                        .formatted(rows, Figures.moment(rig.timeMillis()), folder));
            }
            int exitCode = check(folder);
            if (exitCode != ExitCodes.OK) {
                throw new IllegalStateException("the vectors do not say all that goes in");
            }
            return exitCode;
        } catch (IOException | UncheckedIOException e) {
            throw new InputException(
                    "--out: cannot write to %s: %s; expected a folder such as vectors"
                            .formatted(folder, FileTrouble.words(e)));
        }
    }
}
