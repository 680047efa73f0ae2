package org.gaugebench.sim.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.gaugebench.sim.report.Ink;

/**
 * Where the program writes, and whether a person looks at it.
 *
 * @param out results
 * @param err everything else
 * @param outIsTerminal whether a terminal shows the results
 * @param errIsTerminal whether a terminal shows everything else
 * @param environment variables of the process
 * @param in answers
 * @param inIsTerminal whether a person at a terminal can answer
 */
record Terminal(
        PrintStream out,
        PrintStream err,
        boolean outIsTerminal,
        boolean errIsTerminal,
        Map<String, String> environment,
        InputStream in,
        boolean inIsTerminal) {

    /** One whom nobody can ask. */
    Terminal(
            PrintStream out,
            PrintStream err,
            boolean outIsTerminal,
            boolean errIsTerminal,
            Map<String, String> environment) {
        this(
                out,
                err,
                outIsTerminal,
                errIsTerminal,
                environment,
                InputStream.nullInputStream(),
                false);
    }

    /** The process's own. Always UTF-8, so that one run gives the same bytes on every machine. */
    static Terminal ofProcess() {
        return new Terminal(
                new PrintStream(
                        new FileOutputStream(FileDescriptor.out), false, StandardCharsets.UTF_8),
                new PrintStream(
                        new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8),
                isTerminal(1),
                isTerminal(2),
                System.getenv(),
                System.in,
                isTerminal(0));
    }

    /**
     * Java 17 can only say whether input and output both are a terminal; where the system shows its
     * file descriptors, those say it for each. From Java 22 on the question has another answer, so
     * there the program stays without colour.
     */
    @SuppressWarnings("SystemConsoleNull")
    private static boolean isTerminal(int descriptor) {
        try {
            String target =
                    Files.readSymbolicLink(Path.of("/proc/self/fd/" + descriptor)).toString();
            return target.startsWith("/dev/pts/") || target.startsWith("/dev/tty");
        } catch (IOException | UnsupportedOperationException e) {
            return Runtime.version().feature() < 22 && System.console() != null;
        }
    }

    /** Whether colour may go to the results: a terminal that can, and an owner who wants it. */
    boolean isColourWelcome() {
        boolean refused = !environment.getOrDefault("NO_COLOR", "").isEmpty();
        boolean unable = "dumb".equals(environment.get("TERM"));
        return outIsTerminal && !refused && !unable;
    }

    /** How to mark words in the results. */
    Ink ink() {
        return isColourWelcome() ? Ink.COLOUR : Ink.PLAIN;
    }
}
