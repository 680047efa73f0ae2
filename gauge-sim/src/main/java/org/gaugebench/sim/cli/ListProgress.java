package org.gaugebench.sim.cli;

import java.io.PrintStream;

/** A count on standard error while a list of scenarios runs and a person looks on. */
final class ListProgress {
    private final PrintStream err;
    private final boolean wanted;
    private final int all;
    private int done;
    private int drawnLength;

    ListProgress(Terminal terminal, int all) {
        this.err = terminal.err();
        this.wanted = terminal.errIsTerminal();
        this.all = all;
    }

    /** One more is done. */
    void next() {
        done++;
        if (wanted) {
            String line = done + " of " + all + " scenarios";
            err.print("\r" + line);
            err.flush();
            drawnLength = line.length();
        }
    }

    /** Takes the count away, so that something else can be printed. */
    void clear() {
        if (drawnLength > 0) {
            err.print("\r" + " ".repeat(drawnLength) + "\r");
            err.flush();
            drawnLength = 0;
        }
    }
}
