package org.gaugebench.sim.cli;

import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.judge.ShelfCase;
import org.gaugebench.sim.judge.ShelfCase.Ending;
import org.gaugebench.sim.report.CaseJson;
import org.gaugebench.sim.report.FailureText;
import org.gaugebench.sim.report.TextReport;

/** Prints cases as they come: all of one that is alone, of many what is not right. */
final class CasePrinter {
    private final Terminal terminal;
    private final boolean single;
    private final boolean json;
    private final boolean full;

    CasePrinter(Terminal terminal, boolean single, boolean json, boolean full) {
        this.terminal = terminal;
        this.single = single;
        this.json = json;
        this.full = full;
    }

    void print(ShelfCase each) {
        if (json) {
            terminal.out().print(CaseJson.of(each, Version.text()) + "\n");
        } else if (single || full || !each.isGood()) {
            terminal.out().print(text(each) + (single ? "" : "\n"));
        }
    }

    private String text(ShelfCase each) {
        RunResult result = each.result();
        if (result != null) {
            return TextReport.of(result, Version.text(), terminal.ink());
        }
        return each.ending() == Ending.SKIPPED
                ? "SKIPPED: %s\n%s\n".formatted(each.scenario().name(), each.why())
                : FailureText.ofUnfinished(each, terminal.ink());
    }
}
