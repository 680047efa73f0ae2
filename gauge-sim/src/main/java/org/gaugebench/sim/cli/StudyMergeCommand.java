package org.gaugebench.sim.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.gaugebench.sim.scenario.StudySpec;
import org.gaugebench.sim.study.MergedDevices;
import org.gaugebench.sim.study.RowsFile;
import org.gaugebench.sim.study.SimulatedDevices;
import org.gaugebench.sim.study.StudyException;
import org.gaugebench.sim.study.StudyRun;
import org.gaugebench.sim.study.Workers;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code study merge FILE PART...}: the study from devices that several machines have run. */
@Command(
        name = "merge",
        header = "Put together what the shards of a study have run.",
        description = {
            "",
            "Reads the files of all shards, in any order, and prints the same bytes as the study"
                    + " on one machine would. A file that is missing, named twice, damaged or of"
                    + " another study is refused.",
            ""
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:what the study expects holds, or it expects nothing",
            " 1:it does not hold, or too few devices were drawn to tell",
            " 2:wrong input or command line; nothing was written",
            "70:a defect of this program"
        },
        footerHeading = "%nExample:%n",
        footer = {"  gauge-sim study merge a.study part-*.rows"})
final class StudyMergeCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    @Parameters(index = "0", paramLabel = "FILE", description = "The study, a YAML file.")
    private Path file;

    @Parameters(
            index = "1..*",
            arity = "1..*",
            paramLabel = "PART",
            description = "Files that 'study --shard' has written.")
    private List<Path> parts = new ArrayList<>();

    @Mixin private final StudyOutputs outputs = new StudyOutputs();

    StudyMergeCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException {
        StudySpec spec = StudyCommand.read(file);
        return outputs.tell(
                terminal,
                () -> {
                    try (Workers workers = new Workers(outputs.threads(), () -> {})) {
                        List<RowsFile> files = new ArrayList<>();
                        for (Path part : parts) {
                            files.add(RowsFile.read(part, spec));
                        }
                        return StudyRun.of(
                                spec,
                                new MergedDevices(spec, Version.text(), files),
                                new SimulatedDevices(spec, workers));
                    } catch (StudyException e) {
                        throw new InputException(e.explanation());
                    }
                });
    }
}
