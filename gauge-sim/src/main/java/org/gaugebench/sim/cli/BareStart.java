package org.gaugebench.sim.cli;

import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/**
 * What happens when somebody starts the program and says nothing. A double click has no terminal to
 * answer in, so it opens the page; in a terminal a few lines say what to type; a script that forgot
 * its command is told so and ends.
 */
final class BareStart {
    private static final String LIVE = "live";

    private static final String SHORT_HELP =
            """
            gauge-sim live         opens the page in your browser
            gauge-sim run FILE     runs a scenario and says how far gauge and truth agree
            gauge-sim --help       shows every command
            """;

    private BareStart() {}

    /**
     * Answers a command line without a word.
     *
     * @param line the program, with its commands
     * @param terminal where the answer goes
     * @param opener knows whether a window can open here
     * @return the exit code
     */
    static int answer(CommandLine line, Terminal terminal, BrowserOpener opener) {
        if (terminal.inIsTerminal() || terminal.outIsTerminal()) {
            terminal.out().print(SHORT_HELP);
            return ExitCodes.OK;
        }
        if (line.getSubcommands().containsKey(LIVE)
                && opener.hasDesktop()
                && !isAutomatic(terminal)) {
            return line.execute(LIVE);
        }
        throw new ParameterException(line, "No command given; expected one such as 'run'.");
    }

    /** Build servers set this variable (common practice, no source): nobody would see a page. */
    static boolean isAutomatic(Terminal terminal) {
        return !terminal.environment().getOrDefault("CI", "").isEmpty();
    }
}
