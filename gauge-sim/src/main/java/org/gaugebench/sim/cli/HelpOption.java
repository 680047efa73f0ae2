package org.gaugebench.sim.cli;

import picocli.CommandLine.Option;

/** The option that every command has. */
final class HelpOption {
    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "Show this help.")
    @SuppressWarnings("unused") // the parser reads it
    private boolean help;

    HelpOption() {}
}
