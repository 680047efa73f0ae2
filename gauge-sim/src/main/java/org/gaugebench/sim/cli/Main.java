package org.gaugebench.sim.cli;

import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.Callable;
import org.gaugebench.sim.device.PipeFailure;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExecutionException;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.RunLast;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;

/** The program {@code gauge-sim}. */
@Command(
        name = "gauge-sim",
        header = "A bench for the logic inside a battery gauge.",
        description = {
            "",
            "A scenario tells of a battery, its loads and chargers, and a gauge that sees only"
                    + " what its shunt and converter show. This program knows the truth, runs the"
                    + " gauge beside it and says how far the two agree."
        },
        optionListHeading = "%nOptions:%n",
        commandListHeading = "%nCommands:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:all expectations hold",
            " 1:it ran, and an expectation failed",
            " 2:wrong input or command line",
            " 3:a program under test broke off",
            "70:a defect of this program"
        },
        footerHeading = "%nExample:%n",
        footer = {
            "  gauge-sim run scenarios/first-steps/a-week-in-the-hut.yaml",
            "",
            "'gauge-sim COMMAND --help' tells more; gauge-sim stands for",
            "'java -jar gauge-sim/target/gauge-sim.jar'."
        },
        versionProvider = Version.class)
public final class Main implements Callable<Integer> {
    private static final int HELP_WIDTH = 80;

    @Spec private CommandSpec spec;

    private final Terminal terminal;

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    @Option(names = "--version", versionHelp = true, description = "Show the version.")
    @SuppressWarnings("unused") // the parser reads it
    private boolean version;

    @Option(
            names = "--debug",
            scope = ScopeType.INHERIT,
            description = "Show the stack trace of a defect of this program.")
    private boolean debug;

    private Main(Terminal terminal) {
        this.terminal = terminal;
    }

    /**
     * Runs a command and ends the process with its exit code.
     *
     * @param args the command line
     */
    public static void main(String[] args) {
        System.exit(execute(args, Terminal.ofProcess()));
    }

    /** Runs a command; never throws. */
    static int execute(String[] args, Terminal terminal) {
        Main main = new Main(terminal);
        try {
            int exitCode = main.commandLine().execute(args);
            terminal.out().flush();
            return exitCode;
        } catch (Throwable defect) {
            return Trouble.reportDefect(defect, main.debug, terminal);
        }
    }

    /** All commands with all their options, to be looked at. */
    static CommandLine commands() {
        return new Main(Terminal.ofProcess()).commandLine();
    }

    private CommandLine commandLine() {
        CommandLine line = new CommandLine(this);
        line.addSubcommand(new RunCommand(terminal));
        line.addSubcommand(new CheckCommand(terminal));
        line.addSubcommand(new CoversCommand(terminal));
        line.addSubcommand(new ExplainCommand(terminal));
        line.addSubcommand(new CompareCommand(terminal));
        line.addSubcommand(new VectorsCommand(terminal));
        line.addSubcommand(new AgreeCommand(terminal));
        line.addSubcommand(new ReplayCommand());
        line.addSubcommand(new AdoptCommand(terminal));
        line.addSubcommand(new SizeCommand(terminal));
        line.addSubcommand(new AheadCommand(terminal));
        line.addSubcommand(new AuditCommand(terminal));
        line.addSubcommand(new SymptomCommand(terminal));
        line.addSubcommand(new ChangedCommand(terminal));
        line.addSubcommand(new HandoverCommand(terminal));
        line.addSubcommand(new VerdictCommand(terminal));
        line.addSubcommand(new TuneCommand(terminal));
        line.addSubcommand(new LiveCommand(terminal));
        line.addSubcommand(new SheetsCommand(terminal));
        CommandLine study = new CommandLine(new StudyCommand(terminal));
        study.addSubcommand(new StudyMergeCommand(terminal));
        line.addSubcommand(study);
        line.setOut(writer(terminal.out()));
        line.setErr(writer(terminal.err()));
        line.setColorScheme(
                CommandLine.Help.defaultColorScheme(
                        terminal.isColourWelcome() ? Ansi.ON : Ansi.OFF));
        line.setUsageHelpWidth(HELP_WIDTH);
        line.setUsageHelpAutoWidth(false);
        // A file may begin with @; it is not a list of arguments.
        line.setExpandAtFiles(false);
        line.setExecutionStrategy(Main::run);
        line.setParameterExceptionHandler((e, args) -> Trouble.reportUsage(e, terminal));
        line.setExecutionExceptionHandler((e, command, parsed) -> report(e, terminal));
        return line;
    }

    /** Runs the command that was named, unless it would destroy what it is given. */
    private static int run(ParseResult parsed) {
        ParseResult named = parsed;
        boolean asksForHelp = false;
        while (named != null) {
            asksForHelp |= named.isUsageHelpRequested() || named.isVersionHelpRequested();
            if (!named.hasSubcommand() && !asksForHelp) {
                try {
                    OutputClash.refuse(named);
                } catch (InputException e) {
                    CommandLine line = named.commandSpec().commandLine();
                    throw new ExecutionException(line, String.valueOf(e.getMessage()), e);
                }
            }
            named = named.subcommand();
        }
        return new RunLast().execute(parsed);
    }

    private int report(Exception problem, Terminal terminal) {
        if (problem instanceof PipeFailure failure) {
            return Trouble.reportProgram(failure, terminal);
        }
        return problem instanceof InputException
                ? Trouble.reportInput(problem, terminal)
                : Trouble.reportDefect(problem, debug, terminal);
    }

    private static PrintWriter writer(PrintStream stream) {
        return new PrintWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8), true);
    }

    @Override
    public Integer call() {
        return BareStart.answer(
                spec.commandLine(), terminal, BrowserOpener.ofProcess(terminal.environment()));
    }
}
