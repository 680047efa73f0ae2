package org.gaugebench.sim.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The cases as one table: how often each rule set to full, and what was true at the first. */
final class FullChargeTable {
    private FullChargeTable() {}

    static String of(List<FullChargeRun> runs) {
        StringBuilder text = new StringBuilder();
        text.append("Set to full: how often, and the true state of charge at the first time.\n");
        text.append(
                "'loose' and 'tighter' are our core with other settings; 'bare' has no guard.\n");
        List<String> head = new ArrayList<>(List.of("ours", "proven by", "after"));
        head.addAll(runs.get(0).rules().stream().skip(1).toList());
        text.append(row("case", "what happens", "at end", head));
        for (FullChargeRun run : runs) {
            List<String> cells = new ArrayList<>();
            BareRule.Fulls ours = run.ours();
            cells.add(cell(ours));
            cells.add(run.proof().replace("PROVEN_BY_", "").toLowerCase(Locale.ROOT));
            cells.add(
                    ours.times == 0
                            ? ""
                            : String.format(Locale.ROOT, "%.1f h", ours.firstMillis / 3.6e6));
            run.rules().stream().skip(1).forEach(rule -> cells.add(cell(run.of(rule))));
            String end = String.format(Locale.ROOT, "%.1f %%", run.endTruePercent());
            text.append(row(run.what().id(), run.what().what(), end, cells));
        }
        return text.toString();
    }

    private static String row(String id, String what, String end, List<String> cells) {
        StringBuilder row =
                new StringBuilder(String.format(Locale.ROOT, "%-10s%-58s%8s", id, what, end));
        for (int i = 0; i < cells.size(); i++) {
            int width = i == 1 ? 10 : i == 2 ? 8 : i < 5 ? 14 : 25;
            row.append("  ").append(String.format(Locale.ROOT, "%-" + width + "s", cells.get(i)));
        }
        return row.toString().stripTrailing() + "\n";
    }

    static String cell(BareRule.Fulls fulls) {
        return fulls.times == 0
                ? "never"
                : String.format(Locale.ROOT, "%d x, %.1f %%", fulls.times, fulls.firstTruePercent);
    }
}
