package org.gaugebench.sim.cli;

/** A count of devices on standard error while a study runs and a person looks on. */
final class StudyProgress {
    /** Fast devices would draw the line thousands of times in a second. */
    private static final int EVERY = 20;

    private final ProgressLine line;
    private final String what;
    private final boolean wanted;
    private int done;

    StudyProgress(Terminal terminal) {
        this(terminal, "devices");
    }

    /** Counts something else. */
    StudyProgress(Terminal terminal, String what) {
        this.what = what;
        line = new ProgressLine(terminal.err());
        wanted = terminal.errIsTerminal();
    }

    /** One more has run. */
    void next() {
        done++;
        if (wanted && done % EVERY == 0) {
            line.draw(done + " " + what);
        }
    }

    /** Takes the count away. */
    void clear() {
        line.clear();
    }
}
