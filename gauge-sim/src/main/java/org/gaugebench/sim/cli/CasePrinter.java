package org.gaugebench.sim.cli;

import org.gaugebench.sim.judge.Attribution;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.judge.ShelfCase;
import org.gaugebench.sim.judge.ShelfCase.Ending;
import org.gaugebench.sim.report.AttributionText;
import org.gaugebench.sim.report.CaseJson;
import org.gaugebench.sim.report.FailureText;
import org.gaugebench.sim.report.TextReport;
import org.jspecify.annotations.Nullable;

/** Prints cases as they come: all of one that is alone, of many what is not right. */
final class CasePrinter {
    private final Terminal terminal;
    private final boolean single;
    private final boolean json;
    private final boolean full;
    private final Attributing attributing;

    /** Prints with the error split by cause where there is somebody who splits it. */
    CasePrinter(
            Terminal terminal,
            boolean single,
            boolean json,
            boolean full,
            Attributing attributing) {
        this.terminal = terminal;
        this.single = single;
        this.json = json;
        this.full = full;
        this.attributing = attributing;
    }

    void print(ShelfCase each) {
        if (json) {
            terminal.out().print(CaseJson.of(each, attribution(each), Version.text()) + "\n");
        } else if (single || full || !each.isGood()) {
            terminal.out().print(text(each) + (single ? "" : "\n"));
        }
    }

    /** Null where that is not asked for or it did not finish. */
    private @Nullable Attribution attribution(ShelfCase each) {
        RunResult result = each.result();
        return result == null ? null : attributing.told(result);
    }

    private String text(ShelfCase each) {
        RunResult result = each.result();
        if (result != null) {
            Attribution attribution = attribution(each);
            return TextReport.of(result, Version.text(), terminal.ink())
                    + (attribution == null ? "" : AttributionText.of(attribution, terminal.ink()));
        }
        return each.ending() == Ending.SKIPPED
                ? "SKIPPED: %s\n%s\n".formatted(each.scenario().name(), each.why())
                : FailureText.ofUnfinished(each, terminal.ink());
    }
}
