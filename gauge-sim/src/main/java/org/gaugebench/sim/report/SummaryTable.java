package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.judge.LaneResult;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.judge.ShelfCase;
import org.gaugebench.sim.judge.ShelfCase.Ending;
import org.gaugebench.sim.judge.Verdict;

/**
 * Many runs in one table, the worst first: crashes, time-outs, failures by the number of claims
 * that do not hold, runs without a verdict, and the rest by the worst error of the first gauge.
 */
public final class SummaryTable {
    private static final int VERDICT_WIDTH = 11;
    private static final int HELD_WIDTH = 9;
    private static final int ERROR_WIDTH = 9;
    private static final int NAME_WIDTH = Page.WIDTH - VERDICT_WIDTH - HELD_WIDTH - ERROR_WIDTH;

    private final List<ShelfCase> cases;
    private final Ink ink;
    private final Page page = new Page();

    private SummaryTable(List<ShelfCase> cases, Ink ink) {
        this.cases = cases;
        this.ink = ink;
    }

    /**
     * Writes the table and, as its last line, how many of each kind there were.
     *
     * @param cases in the order in which they were named
     * @param ink for a terminal or for paper
     * @return lines of at most {@value Page#WIDTH} columns
     */
    public static String of(List<ShelfCase> cases, Ink ink) {
        return new SummaryTable(cases, ink).write();
    }

    private String write() {
        List<ShelfCase> ran =
                cases.stream()
                        .filter(each -> each.ending() != Ending.SKIPPED)
                        .sorted(
                                Comparator.comparingInt(SummaryTable::rank)
                                        .thenComparing(c -> c.heldCount() - c.results().size())
                                        .thenComparing(c -> -worstError(c)))
                        .toList();
        String folder = commonFolder(ran);
        if (!ran.isEmpty()) {
            page.line(
                    ink.heading(
                            "%-11s%-9s%-9s%s"
                                    .formatted("worst first", " holds", "error", name(folder))));
        }
        for (ShelfCase each : ran) {
            row(each, folder);
        }
        page.paragraph(0, counts());
        return page.toString();
    }

    private static String name(String folder) {
        return folder.isEmpty() ? "scenario" : shortened("scenario in " + Page.clean(folder));
    }

    private static int rank(ShelfCase each) {
        RunResult result = each.result();
        if (result == null) {
            return each.ending().ordinal() - Ending.values().length;
        }
        return switch (result.verdict()) {
            case FAILED -> 2;
            case NO_VERDICT -> 3;
            case PASSED -> 4;
        };
    }

    private static long worstError(ShelfCase each) {
        RunResult result = each.result();
        return result == null ? 0 : Math.abs(result.lanes().get(0).worstErrorPartsPerMillion());
    }

    /** The folder that all of them lie in, with its separator; empty where there is none. */
    private static String commonFolder(List<ShelfCase> cases) {
        if (cases.isEmpty()) {
            return "";
        }
        String common = cases.get(0).scenario().file();
        for (ShelfCase each : cases) {
            String file = each.scenario().file();
            int same = 0;
            while (same < Math.min(common.length(), file.length())
                    && common.charAt(same) == file.charAt(same)) {
                same++;
            }
            common = common.substring(0, same);
        }
        int end = Math.max(common.lastIndexOf('/'), common.lastIndexOf('\\'));
        return common.substring(0, end + 1);
    }

    private void row(ShelfCase each, String folder) {
        String word = each.verdictWords().toUpperCase(Locale.ROOT);
        String shown =
                each.isGood()
                        ? ink.good(word)
                        : word.startsWith("NO") ? ink.doubtful(word) : ink.bad(word);
        String held = each.results().isEmpty() ? "-" : held(each);
        String file = Page.clean(each.scenario().name().substring(folder.length()));
        page.line(
                shown
                        + " ".repeat(VERDICT_WIDTH - word.length())
                        + "%6s   %6s   %s".formatted(held, error(each), shortened(file)));
    }

    private static String held(ShelfCase each) {
        return each.heldCount() + "/" + each.results().size();
    }

    private static String error(ShelfCase each) {
        RunResult result = each.result();
        if (result == null) {
            return "-";
        }
        LaneResult lane = result.lanes().get(0);
        if (lane.worstAtMillis() < 0) {
            return "-";
        }
        String figure = Figures.decimal(lane.worstErrorPartsPerMillion(), 4, 2);
        return figure.startsWith("-") || figure.equals("0.00") ? figure : "+" + figure;
    }

    /** The end of a path tells files apart. */
    private static String shortened(String file) {
        return file.length() <= NAME_WIDTH
                ? file
                : "..." + file.substring(file.length() - NAME_WIDTH + 3);
    }

    private String counts() {
        List<String> counts = new ArrayList<>();
        counts.add(count(Verdict.PASSED) + " passed");
        counts.add(count(Verdict.FAILED) + " failed");
        counts.add(count(Verdict.NO_VERDICT) + " without a verdict");
        for (Ending ending : Ending.values()) {
            long count = cases.stream().filter(each -> each.ending() == ending).count();
            if (count > 0 && ending != Ending.FINISHED) {
                counts.add(count + " " + ending.words());
            }
        }
        String what = cases.size() == 1 ? "1 scenario: " : cases.size() + " scenarios: ";
        return what + String.join(", ", counts);
    }

    private long count(Verdict verdict) {
        return cases.stream()
                .map(ShelfCase::result)
                .filter(result -> result != null && result.verdict() == verdict)
                .count();
    }
}
