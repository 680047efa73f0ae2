package org.gaugebench.sim.report;

import java.util.List;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.Readout;
import org.gaugebench.sim.judge.ExpectationResult;
import org.gaugebench.sim.judge.ExpectationResult.Outcome;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.judge.LaneResult;
import org.gaugebench.sim.judge.RecordedEvent;
import org.gaugebench.sim.judge.RefusedCommand;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.judge.TestedProgram;
import org.gaugebench.sim.judge.Verdict;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.ScenarioWriter;

/**
 * A run as a person reads it, verdict first. The same run gives the same text to the last byte:
 * nothing in it depends on the clock or the machine.
 */
public final class TextReport {
    private static final int MOST_EVENTS_AT_AN_END = 12;
    private static final int OUTCOME_WIDTH = 8;
    private static final int GAUGE_WIDTH = 16;

    private final RunResult result;
    private final String version;
    private final Ink ink;
    private final Page page = new Page();

    private TextReport(RunResult result, String version, Ink ink) {
        this.result = result;
        this.version = version;
        this.ink = ink;
    }

    /**
     * Writes the whole report.
     *
     * @param result what came of the run
     * @param version of this program
     * @param ink for a terminal or for paper
     * @return lines of at most {@value Page#WIDTH} columns
     */
    public static String of(RunResult result, String version, Ink ink) {
        return new TextReport(result, version, ink).write();
    }

    /**
     * Writes the verdict alone, in one line, for lists of many runs.
     *
     * @param result what came of the run
     * @param ink for a terminal or for paper
     * @return one line without its line end
     */
    public static String verdictLine(RunResult result, Ink ink) {
        return verdictWord(result, ink)
                + " ".repeat(Math.max(1, 12 - result.verdict().words().length()))
                + Page.clean(result.scenario().name())
                + " ("
                + heldOf(result)
                + ")";
    }

    /** How many expectations hold, of how many. */
    static String heldOf(RunResult result) {
        long held = result.expectations().stream().filter(r -> r.outcome().isGood()).count();
        return result.expectations().isEmpty()
                ? "expects nothing"
                : held + " of " + result.expectations().size() + " expectations hold";
    }

    private static String verdictWord(RunResult result, Ink ink) {
        return switch (result.verdict()) {
            case PASSED -> ink.good("PASSED");
            case FAILED -> ink.bad("FAILED");
            case NO_VERDICT -> ink.doubtful("NO VERDICT");
        };
    }

    private String write() {
        verdict();
        readingAgainstTruth();
        chart();
        expectations();
        events();
        refused();
        origin();
        return page.toString();
    }

    private void heading(String words) {
        page.gap().line(ink.heading(words));
    }

    private void verdict() {
        page.line(verdictWord(result, ink) + ": " + heldOf(result));
        page.paragraph(0, result.scenario().title());
        page.paragraph(0, result.scenario().name());
        if (result.verdict() == Verdict.NO_VERDICT) {
            page.gap();
            page.paragraph(0, "The file expects nothing, so this run proves nothing.");
        }
        if (result.verdict() != Verdict.FAILED) {
            return;
        }
        page.gap();
        for (ExpectationResult each : result.expectations()) {
            if (!each.outcome().isGood()) {
                FailureText.claim(page, each, FailureText.Again.of(result));
            }
        }
        page.gap();
        page.paragraph(0, "To see it again, with every minute in a file:");
        FailureText.command(
                page, 2, FailureText.run(FailureText.Again.of(result), " --trace trace.csv"));
    }

    private void readingAgainstTruth() {
        heading("Reading against truth (state of charge; errors in percentage points)");
        page.line(
                "  %-16s%9s %11s %9s   %s".formatted("", "at end", "true", "error", "worst error"));
        for (LaneResult lane : result.lanes()) {
            long truth = result.finalTruePartsPerMillion();
            boolean known = lane.finalPartsPerMillion() != Readout.NOT_KNOWN;
            String shown = known ? Figures.percent(lane.finalPartsPerMillion()) : "not known";
            String error = known ? points(lane.finalPartsPerMillion() - truth) : "-";
            String worst =
                    lane.worstAtMillis() < 0
                            ? "never known"
                            : points(lane.worstErrorPartsPerMillion())
                                    + " at "
                                    + Figures.moment(lane.worstAtMillis());
            String name = Page.clean(lane.gauge());
            if (name.length() >= GAUGE_WIDTH) {
                page.line("  " + name);
                name = "";
            }
            page.line(
                    "  %-16s%9s %11s %9s   %s"
                            .formatted(name, shown, Figures.percent(truth), error, worst));
        }
        for (int i = 0; i < result.lanes().size(); i++) {
            belief(result.lanes().get(i), result.scenario().gauges().get(i).kind());
        }
        StringBuilder charge = new StringBuilder("Charge left at the end: true ");
        charge.append(ampHours(result.finalTrueMicroampHours()));
        for (LaneResult lane : result.lanes()) {
            charge.append(", ").append(lane.gauge()).append(' ');
            charge.append(
                    lane.finalPartsPerMillion() == Readout.NOT_KNOWN
                            ? "not known"
                            : ampHours(lane.finalMicroampHours()));
        }
        page.paragraph(2, charge.toString());
    }

    private void belief(LaneResult lane, GaugeSpec.Kind kind) {
        String words = beliefWords(lane, kind);
        if (!words.isEmpty()) {
            page.paragraph(2, words);
        }
    }

    /** What the gauge says of itself: "62 %, 57 to 65: counted from a proven anchor". */
    static String beliefWords(LaneResult lane, GaugeSpec.Kind kind) {
        if (!lane.belief().hasPower()) {
            return lane.gauge() + " has no power at the end";
        }
        if (kind != GaugeSpec.Kind.CORE) {
            return "";
        }
        LaneResult.Belief belief = lane.belief();
        StringBuilder text = new StringBuilder(lane.gauge()).append(" says ");
        if (lane.finalPartsPerMillion() == Readout.NOT_KNOWN) {
            text.append("not known");
        } else {
            text.append(Figures.decimal(lane.finalPartsPerMillion(), 4, 0)).append(" %, ");
            text.append(
                    belief.lowerPartsPerMillion() < 0
                            ? "band unknown"
                            : Figures.edges(
                                    belief.lowerPartsPerMillion(), belief.upperPartsPerMillion()));
        }
        text.append(": ").append(belief.reason().sentence());
        for (Fault fault : belief.faults()) {
            text.append("; fault: ").append(fault.sentence());
        }
        return text.toString();
    }

    /** An error in points, with its sign. */
    static String points(long partsPerMillion) {
        String figure = Figures.decimal(partsPerMillion, 4, 2);
        return figure.startsWith("-") || figure.equals("0.00") ? figure : "+" + figure;
    }

    /** A charge, with its unit. */
    static String ampHours(long microampHours) {
        return Figures.decimal(microampHours, 6, 2) + " Ah";
    }

    private void chart() {
        heading("State of charge over time");
        ChargeChart.draw(result, page);
    }

    private void expectations() {
        heading("Expectations");
        if (result.expectations().isEmpty()) {
            page.paragraph(2, "none");
        }
        for (ExpectationResult each : result.expectations()) {
            expectation(each);
        }
    }

    private void expectation(ExpectationResult each) {
        boolean held = each.outcome().isGood();
        String word = held ? each.outcome() == Outcome.HELD ? "held" : "fails" : "FAILED";
        page.labelled(
                2,
                OUTCOME_WIDTH,
                held ? ink.good(word) : ink.bad(word),
                word.length(),
                each.expectation().text());
        int indent = 2 + OUTCOME_WIDTH;
        page.paragraph(indent, FailureText.whatWasFound(each));
        if (each.outcome() == Outcome.FAILED_AS_EXPECTED) {
            page.paragraph(indent, "as expected, because " + each.expectation().expectedToFail());
        }
    }

    private void events() {
        List<RecordedEvent> events = result.events();
        heading("Events");
        if (events.isEmpty()) {
            page.paragraph(2, "none");
        }
        List<EventGroup> groups = EventGroup.of(events);
        int size = groups.size();
        boolean cut = size > 2 * MOST_EVENTS_AT_AN_END + 1;
        for (int i = 0; i < size; i++) {
            if (cut && i == MOST_EVENTS_AT_AN_END) {
                int last = size - MOST_EVENTS_AT_AN_END;
                int left = groups.subList(i, last).stream().mapToInt(EventGroup::count).sum();
                page.line("  ... " + left + " events in between; --json lists them ...");
                i = last;
            }
            event(groups.get(i));
        }
        if (result.eventsDropped() > 0) {
            page.paragraph(2, "and %s more, not kept".formatted(result.eventsDropped()));
        }
    }

    private void refused() {
        if (result.refused().isEmpty()) {
            return;
        }
        heading("Commands that were refused");
        int shown = Math.min(result.refused().size(), MOST_EVENTS_AT_AN_END);
        for (RefusedCommand each : result.refused().subList(0, shown)) {
            page.labelled(
                    2,
                    GAUGE_WIDTH + 2,
                    Figures.moment(each.atMillis()),
                    each.gauge() + ": " + each.commandWords() + ": " + each.reason());
        }
        if (shown < result.refused().size()) {
            page.paragraph(2, "and %s more".formatted(result.refused().size() - shown));
        }
    }

    private void event(EventGroup group) {
        RecordedEvent event = group.first();
        String again =
                group.count() == 1
                        ? ""
                        : "; and %s more of these until %s"
                                .formatted(
                                        group.count() - 1, Figures.moment(group.last().atMillis()));
        String shown =
                event.shownPartsPerMillion() == Readout.NOT_KNOWN
                        ? "not known"
                        : Figures.percent(event.shownPartsPerMillion());
        page.labelled(
                2,
                GAUGE_WIDTH + 2,
                Figures.moment(event.atMillis()),
                "%s: %s%s; shown %s, true %s%s"
                        .formatted(
                                event.gauge(),
                                event.event().sentence(),
                                EventFigure.of(event),
                                shown,
                                Figures.percent(event.truePartsPerMillion()),
                                again));
    }

    private void origin() {
        heading("Where this comes from");
        TestedProgram program = result.program();
        if (program != null) {
            page.labelled(
                    2,
                    GAUGE_WIDTH,
                    "program",
                    "%s, '%s', in the place of %s"
                            .formatted(program.name(), program.command(), program.gauge()));
        }
        page.labelled(2, GAUGE_WIDTH, "simulated", simulated());
        page.labelled(2, GAUGE_WIDTH, "seed", Long.toString(result.seed()));
        page.labelled(2, GAUGE_WIDTH, "digest", RunJson.hex(result.digest()));
        page.labelled(2, GAUGE_WIDTH, "scenario", ScenarioWriter.digest(result.scenario()));
        page.labelled(2, GAUGE_WIDTH, "version", version);
    }

    private String simulated() {
        return simulated(result);
    }

    /** How much time was simulated, in which ticks. */
    static String simulated(RunResult result) {
        return "%s, %s ticks of %s"
                .formatted(
                        Figures.duration(result.simulatedMillis()),
                        result.ticks(),
                        Figures.duration(result.scenario().tickMillis()));
    }
}
