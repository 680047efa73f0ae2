package org.gaugebench.sim.cli;

import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.gaugebench.sim.adopt.AdoptSetup;
import org.gaugebench.sim.adopt.Adoption;
import org.gaugebench.sim.judge.ExpectationResult;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.logs.LogException;
import org.gaugebench.sim.logs.LogOptions;
import org.gaugebench.sim.logs.LogProblem;
import org.gaugebench.sim.logs.LogProfile;
import org.gaugebench.sim.logs.LogReader;
import org.gaugebench.sim.logs.MeasuredLog;
import org.gaugebench.sim.logs.SignCheck;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioException;
import org.gaugebench.sim.scenario.ScenarioReader;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code adopt LOG.csv}: a log of the field becomes a scenario that runs from now on. */
@Command(
        name = "adopt",
        header = "Make a scenario of a log from the field.",
        description = {
            "",
            "Writes NAME.yaml and NAME.csv: the log's current as the truth, its gaps as missing"
                    + " samples, its restarts as restarts, and what a gauge has to do on it. Then"
                    + " runs it once. A log is a measurement, not the truth: what its sensor saw"
                    + " wrong is in it.",
            ""
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:written, and every claim holds",
            " 1:written, and a claim does not hold: a finding, or a wrong option",
            " 2:wrong input or command line; nothing was written",
            "70:a defect of this program"
        },
        footerHeading = "%nExample:%n",
        footer = {
            "  gauge-sim adopt hut.csv --out gauge-tests/scenarios --time time_s \\",
            "    --current current_A --voltage voltage_V --positive charge \\",
            "    --uptime uptime_s --shown shown_percent --shunt \"50 A / 75 mV\" \\",
            "    --chemistry lead-acid-agm --capacity \"60 Ah\" --start \"80 %%\""
        })
final class AdoptCommand implements Callable<Integer> {
    private static final String NAME = "[a-z0-9][a-z0-9-]{0,60}";

    private final Terminal terminal;

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    @Parameters(paramLabel = "LOG.csv", description = "the log, a CSV file with a header row")
    private Path file;

    @Option(
            names = "--out",
            required = true,
            paramLabel = "DIR",
            description = "folder for the two files; made where it does not exist")
    private Path out;

    @Option(
            names = "--name",
            paramLabel = "NAME",
            description = "name of both files (default: that of the log)")
    private @Nullable String name;

    @Option(names = "--force", description = "replace files of that name")
    private boolean force;

    @Mixin private final LogColumnOptions columns = new LogColumnOptions();

    @Mixin private final AdoptOptions told = new AdoptOptions();

    AdoptCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException {
        List<String> wrong = new ArrayList<>();
        String chosen = name == null ? ownName() : name;
        if (!chosen.matches(NAME)) {
            wrong.add(
                    "--name: expected lower-case letters, digits and hyphens such as"
                            + " hut-complaint, but found '%s'".formatted(chosen));
        }
        AdoptSetup setup = told.setup(chosen, columns.hold(), wrong);
        java.time.ZoneId zone = new ReplayArguments(wrong).zone(columns.zone());
        if (setup != null) {
            refuseExisting(setup.name(), wrong);
        }
        if (setup == null || !wrong.isEmpty()) {
            throw new InputException(String.join(System.lineSeparator(), wrong));
        }
        try {
            MeasuredLog log = read(zone, setup);
            return write(log, new Adoption(log, setup), setup);
        } catch (LogException e) {
            throw new InputException(
                    String.join(
                            System.lineSeparator(),
                            e.problems().stream().map(LogProblem::toString).toList()));
        } catch (IOException | UncheckedIOException e) {
            throw new InputException(
                    "--out: cannot write to %s: %s; expected a folder such as gauge-tests"
                            .formatted(out, FileTrouble.words(e)));
        }
    }

    private MeasuredLog read(java.time.@Nullable ZoneId zone, AdoptSetup setup)
            throws LogException {
        LogOptions options =
                new LogOptions(
                        told.columns(columns),
                        columns.isPositiveCharge(),
                        told.currentUnit(),
                        zone);
        MeasuredLog log = LogReader.read(file, options);
        SignCheck sign = new SignCheck(log, new LogProfile(log, setup.hold()));
        if (sign.answer() == SignCheck.Answer.CONTRADICTS) {
            throw new LogException(List.of(SignTrouble.of(log, sign, columns.isPositiveCharge())));
        }
        return log;
    }

    /** The log's name in the letters that a scenario's name has. */
    private String ownName() {
        Path last = file.getFileName();
        String own = last == null ? "" : last.toString();
        return own.replaceFirst("\\.[A-Za-z]{1,4}$", "")
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^a-z0-9]+", "-")
                .replaceAll("^-|-$", "");
    }

    private void refuseExisting(String chosen, List<String> wrong) {
        for (Path place :
                List.of(
                        AdoptedFiles.scenarioPlace(out, chosen),
                        AdoptedFiles.tablePlace(out, chosen))) {
            if (isTheLog(place)) {
                wrong.add(place + " is the log itself; expected another --name or --out");
            } else if (!force && Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
                wrong.add(place + " is there already; expected another --name, or --force");
            }
        }
    }

    private boolean isTheLog(Path place) {
        try {
            return Files.exists(place) && Files.exists(file) && Files.isSameFile(place, file);
        } catch (IOException e) {
            return false;
        }
    }

    private int write(MeasuredLog log, Adoption adoption, AdoptSetup setup)
            throws IOException, InputException {
        RunResult result;
        try (AdoptedFiles files = new AdoptedFiles(out, setup.name(), adoption)) {
            Scenario scenario = ScenarioReader.read(files.scenario());
            result = run(scenario);
            files.keep();
        } catch (ScenarioException e) {
            // Options that contradict each other show only in the whole scenario.
            throw new InputException(
                    "the options make no scenario; nothing was written:"
                            + System.lineSeparator()
                            + String.join(
                                    System.lineSeparator(),
                                    e.problems().stream().map(it -> it.message()).toList()));
        }
        print(log, adoption, setup, result);
        boolean holds = result.expectations().stream().allMatch(each -> each.outcome().isGood());
        return holds ? ExitCodes.OK : ExitCodes.FAILED;
    }

    private RunResult run(Scenario scenario) {
        if (!terminal.errIsTerminal()) {
            return RunRecorder.run(scenario, scenario.seed(), Observer.NONE);
        }
        try (ProgressBar bar = new ProgressBar(terminal.err())) {
            RunResult result = RunRecorder.run(scenario, scenario.seed(), bar);
            bar.clear();
            return result;
        }
    }

    private void print(MeasuredLog log, Adoption adoption, AdoptSetup setup, RunResult result) {
        PrintStream to = terminal.out();
        Path place = AdoptedFiles.scenarioPlace(out, setup.name());
        to.print(String.format(Locale.ROOT, "%s and its table %s.csv\n", place, setup.name()));
        to.print(
                String.format(
                        Locale.ROOT,
                        "  log      %d rows, %s; gaps: %d, restarts: %d\n",
                        log.rows(),
                        Figures.duration(adoption.durationMillis()),
                        adoption.gaps(),
                        adoption.restarts()));
        to.print(
                String.format(
                        Locale.ROOT,
                        "  charge   %.2f Ah in, %.2f Ah out by the log's current\n",
                        adoption.inAmpHours(),
                        adoption.outAmpHours()));
        log.notes().forEach(note -> to.print("  note     " + note + "\n"));
        long held = result.expectations().stream().filter(it -> it.outcome().isGood()).count();
        to.print("  claims   %d of %d hold\n".formatted(held, result.expectations().size()));
        for (ExpectationResult each : result.expectations()) {
            if (!each.outcome().isGood()) {
                to.print(
                        "  %s  %s; found %s\n"
                                .formatted(
                                        each.outcome().words(),
                                        each.expectation().text(),
                                        each.found()));
            }
        }
        if (held < result.expectations().size()) {
            to.print("  A claim fails where the gauge is wrong, or where --start, --capacity or\n");
            to.print("  --efficiency is: the log's count is only as good as they are.\n");
        }
        to.print("  digest   %016x\n".formatted(result.digest()));
        to.print("Read its first lines, write the complaint under 'about', and run it:\n");
        to.print("  gauge-sim run %s\n".formatted(place));
        to.flush();
    }
}
