package org.gaugebench.sim.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import org.gaugebench.sim.report.FreshFile;
import org.gaugebench.sim.scenario.Nearest;
import org.gaugebench.sim.scenario.ScenarioException;
import org.gaugebench.sim.scenario.ScenarioWriter;
import org.gaugebench.sim.scenario.StudyReader;
import org.gaugebench.sim.scenario.StudySpec;
import org.gaugebench.sim.study.DeviceRow;
import org.gaugebench.sim.study.RowsFile;
import org.gaugebench.sim.study.SimulatedDevices;
import org.gaugebench.sim.study.StudyException;
import org.gaugebench.sim.study.StudyRun;
import org.gaugebench.sim.study.Workers;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code study FILE}: what the tolerances of parts do to the error of a gauge. */
@Command(
        name = "study",
        header = "Tell what the tolerances of parts do to the error of a gauge.",
        description = {
            "",
            "Draws devices whose parts differ as the study says, runs each through its scenario,"
                    + " and holds the limits of their errors against those of first-order"
                    + " propagation. Tells which cause has which share, and which device is the"
                    + " worst. 'study merge' puts together what several machines have run.",
            ""
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n",
        commandListHeading = "%nCommands:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:what the study expects holds, or it expects nothing",
            " 1:it does not hold, or too few devices were drawn to tell",
            " 2:wrong input or command line; nothing was written",
            "70:a defect of this program"
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  gauge-sim study --picture bands.svg \\",
            "    scenarios/tolerance/a-month-of-microvolts.study",
            "  gauge-sim study a.study --device 512 > device.yaml",
            "  gauge-sim study a.study --shard 2/4 --rows part-2.rows",
            "  gauge-sim study merge a.study part-*.rows"
        })
final class StudyCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    @Parameters(paramLabel = "FILE", arity = "0..1", description = "The study, a YAML file.")
    private @Nullable Path file;

    @Mixin private final StudyOutputs outputs = new StudyOutputs();

    @Option(
            names = "--device",
            paramLabel = "NUMBER",
            description =
                    "Print the scenario of this device, its seed included, instead of running the"
                            + " study.")
    private @Nullable Integer device;

    @Option(
            names = "--variant",
            paramLabel = "NAME",
            description = "With --device, of a study that varies: which case.")
    private @Nullable String variant;

    @Option(
            names = "--shard",
            paramLabel = "I/N",
            converter = Shard.Text.class,
            description =
                    "Run the I-th of N parts of the devices only, and write them to the file of"
                            + " --rows.")
    private @Nullable Shard shard;

    @Option(
            names = "--rows",
            paramLabel = "FILE",
            description = "With --shard: where the devices go, for 'study merge'.")
    private @Nullable Path rows;

    StudyCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException {
        Path study = file;
        if (study == null) {
            throw new InputException(
                    "no study was named; expected one such as"
                            + " scenarios/tolerance/a-month-of-microvolts.study");
        }
        StudySpec spec = read(study);
        Integer number = device;
        if (number != null) {
            return show(spec, number);
        }
        if (variant != null) {
            throw new InputException("--variant goes with --device only");
        }
        Shard part = shard;
        Path place = rows;
        if ((part == null) != (place == null)) {
            throw new InputException(
                    "--shard and --rows go together, such as --shard 2/4 --rows part-2.rows");
        }
        if (part != null && place != null) {
            if (outputs.isAny()) {
                throw new InputException(
                        "a shard has devices and no result; ask 'study merge' for --csv,"
                                + " --devices-csv, --picture, --report or --json");
            }
            return runShard(spec, part, place);
        }
        return outputs.tell(
                terminal,
                () -> {
                    StudyProgress progress = new StudyProgress(terminal);
                    try (Workers workers = new Workers(outputs.threads(), progress::next)) {
                        SimulatedDevices devices = new SimulatedDevices(spec, workers);
                        return StudyRun.of(spec, devices, devices);
                    } catch (StudyException e) {
                        throw new InputException(e.explanation());
                    } finally {
                        progress.clear();
                    }
                });
    }

    /** Reads a study, its problems as a user reads them. */
    static StudySpec read(Path file) throws InputException {
        try {
            return StudyReader.read(file);
        } catch (ScenarioException e) {
            throw new InputException(e.render().strip());
        }
    }

    private int show(StudySpec spec, int number) throws InputException {
        if (number < 1 || number > spec.devices()) {
            // One beyond would look like the others, and no result of the study has it.
            throw new InputException(
                    "--device: the study has devices 1 to %s, such as %s; it has none of number %s"
                            .formatted(spec.devices(), spec.devices() / 2, number));
        }
        StudySpec.Case chosen = spec.cases().get(0);
        String wanted = variant;
        if (wanted == null && spec.cases().size() > 1) {
            throw new InputException(
                    "--device: the study has %s cases; choose one with --variant, such as '%s'"
                            .formatted(spec.cases().size(), chosen.name()));
        }
        if (wanted != null) {
            List<String> names = spec.cases().stream().map(StudySpec.Case::name).toList();
            int index = names.indexOf(wanted);
            if (index < 0) {
                String near = Nearest.of(wanted, names);
                throw new InputException(
                        "--variant: no case is called '%s'; %s"
                                .formatted(
                                        wanted,
                                        near == null
                                                ? "the first one is '" + names.get(0) + "'"
                                                : "did you mean '" + near + "'?"));
            }
            chosen = spec.cases().get(index);
        }
        try {
            terminal.out()
                    .print(ScenarioWriter.resolved(SimulatedDevices.device(spec, chosen, number)));
            terminal.out().flush();
            return ExitCodes.OK;
        } catch (StudyException e) {
            throw new InputException(e.explanation());
        }
    }

    private int runShard(StudySpec spec, Shard part, Path place) throws InputException {
        List<Integer> numbers = part.of(IntStream.rangeClosed(1, spec.devices()).boxed().toList());
        StudyProgress progress = new StudyProgress(terminal);
        try (FreshFile fresh = new FreshFile(place);
                Workers workers = new Workers(outputs.threads(), progress::next)) {
            SimulatedDevices devices = new SimulatedDevices(spec, workers);
            List<List<DeviceRow>> all = new ArrayList<>();
            for (int i = 0; i < spec.cases().size(); i++) {
                all.add(devices.rows(i, numbers));
            }
            RowsFile.write(fresh.writer(), spec, Version.text(), all);
            fresh.keep();
            progress.clear();
            terminal.out()
                    .println(
                            "%s devices of part %s written to %s"
                                    .formatted(numbers.size(), part, place));
            terminal.out().flush();
            return ExitCodes.OK;
        } catch (StudyException e) {
            throw new InputException(e.explanation());
        } catch (IOException e) {
            throw new InputException(
                    "--rows: cannot write %s: %s; expected a file in an existing folder, such as"
                                    .formatted(place, FileTrouble.words(e))
                            + " part-2.rows");
        } finally {
            progress.clear();
        }
    }
}
