package org.gaugebench.sim.cli;

/** A count on standard error while a list of scenarios runs and a person looks on. */
final class ListProgress {
    private final ProgressLine line;
    private final boolean wanted;
    private final int all;
    private int done;

    ListProgress(Terminal terminal, int all) {
        line = new ProgressLine(terminal.err());
        this.wanted = terminal.errIsTerminal();
        this.all = all;
    }

    /** One more is done. */
    void next() {
        done++;
        if (wanted) {
            line.draw(done + " of " + all + " scenarios");
        }
    }

    /** Takes the count away, so that something else can be printed. */
    void clear() {
        line.clear();
    }
}
