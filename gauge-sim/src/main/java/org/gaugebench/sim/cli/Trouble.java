package org.gaugebench.sim.cli;

import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;
import org.gaugebench.sim.device.PipeFailure;
import org.gaugebench.sim.report.Page;
import org.gaugebench.sim.scenario.Nearest;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Tells people what went wrong, and what to do, and gives the exit code for it. */
final class Trouble {
    /** What the parser says of a number, in a programmer's words. */
    private static final String NUMBER = "is not an? (long|int)$";

    private static final String WHOLE_NUMBER = "is no whole number; expected one such as 7";

    private Trouble() {}

    /** The command line is wrong: the message, the nearest right word, where to read more. */
    static int reportUsage(ParameterException problem, Terminal terminal) {
        CommandLine command = problem.getCommandLine();
        String name = command.getCommandSpec().qualifiedName();
        if (problem instanceof UnmatchedArgumentException unmatched) {
            String word = unmatched.getUnmatched().get(0);
            terminal.err().println(name + ": " + unknown(word, command));
        } else {
            String message = String.valueOf(problem.getMessage());
            String missing = missing(problem);
            terminal.err()
                    .println(
                            name
                                    + ": "
                                    + (missing.isEmpty()
                                            ? message.replaceAll(NUMBER, WHOLE_NUMBER)
                                            : missing));
        }
        terminal.err().println("'" + name + " --help' shows what there is.");
        return ExitCodes.WRONG_INPUT;
    }

    /** An option without its value, with what its help says of it; else nothing. */
    private static String missing(ParameterException problem) {
        if (problem instanceof MissingParameterException absent
                && absent.getMissing().size() == 1
                && absent.getMissing().get(0) instanceof OptionSpec option) {
            return "%s needs a value behind it, %s: %s"
                    .formatted(
                            option.longestName(),
                            option.paramLabel(),
                            String.join("", option.description()).replace("%%", "%"));
        }
        return "";
    }

    private static String unknown(String word, CommandLine command) {
        boolean isOption = word.startsWith("-");
        Collection<String> known = isOption ? options(command) : command.getSubcommands().keySet();
        if (!isOption && known.isEmpty()) {
            return "'" + word + "' is one word too many";
        }
        String nearest = Nearest.of(isOption ? word.replaceFirst("=.*", "") : word, known);
        return "there is no "
                + (isOption ? "option " : "command ")
                + "'"
                + word
                + "'"
                + (nearest == null
                        ? "; expected one of " + String.join(", ", known)
                        : "; did you mean '" + nearest + "'?");
    }

    private static List<String> options(CommandLine command) {
        return command.getCommandSpec().options().stream()
                .map(option -> option.longestName())
                .collect(Collectors.toList());
    }

    /** The input is wrong: the message tells all. */
    static int reportInput(Exception problem, Terminal terminal) {
        terminal.err().println(problem.getMessage());
        return ExitCodes.WRONG_INPUT;
    }

    /** The program under test did not do its part. */
    static int reportProgram(PipeFailure problem, Terminal terminal) {
        terminal.err().println(Page.clean(String.valueOf(problem.getMessage())));
        for (String line : problem.details()) {
            String clean = Page.clean(line);
            terminal.err().println((line.startsWith(" ") ? "    " : "  ") + clean);
        }
        return ExitCodes.PROGRAM_FAILED;
    }

    /** We are wrong. */
    static int reportDefect(Throwable defect, boolean debug, Terminal terminal) {
        terminal.err().println("gauge-sim has a defect: " + defect);
        terminal.err()
                .println(
                        "Please report it with the command line, the scenario file and the output"
                                + " of --version;");
        if (debug) {
            defect.printStackTrace(terminal.err());
        } else {
            terminal.err().println("the same command with --debug shows where it happened.");
        }
        return ExitCodes.OUR_BUG;
    }
}
