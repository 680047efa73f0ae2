package org.gaugebench.sim.cli;

import java.io.PrintStream;

/** A line on standard error that is drawn over again, and taken away before anything else. */
final class ProgressLine {
    private final PrintStream err;
    private int drawnLength;

    ProgressLine(PrintStream err) {
        this.err = err;
    }

    void draw(String line) {
        err.print("\r" + line + " ".repeat(Math.max(0, drawnLength - line.length())));
        err.flush();
        drawnLength = line.length();
    }

    /** Takes the line away, so that something else can be printed. */
    void clear() {
        if (drawnLength > 0) {
            err.print("\r" + " ".repeat(drawnLength) + "\r");
            err.flush();
            drawnLength = 0;
        }
    }
}
