package org.gaugebench.sim.report;

import java.util.List;
import org.gaugebench.sim.judge.ShelfCase;
import org.gaugebench.sim.report.CoverTable.State;

/** A {@link CoverTable} as text, as a table for programs, and as a page for a browser. */
public final class CoverPages {
    private static final int NUMBER_WIDTH = 12;
    private static final int VERDICT_WIDTH = 11;

    private CoverPages() {}

    /** For a terminal: requirement to scenarios with verdicts, and back. */
    public static String text(CoverTable table) {
        Page page = new Page();
        page.line("Requirements and what shows them");
        for (Requirement requirement : table.requirements()) {
            List<ShelfCase> cases = table.evidence().get(requirement.number());
            if (cases == null || cases.isEmpty()) {
                page.labelled(2, NUMBER_WIDTH, requirement.number(), State.NO_SCENARIO.words());
                continue;
            }
            String label = requirement.number();
            for (ShelfCase each : cases) {
                page.labelled(2, NUMBER_WIDTH, label, verdict(each) + each.scenario().name());
                label = "";
            }
        }
        page.gap().line("Scenarios and what they cover");
        for (ShelfCase each : table.cases()) {
            List<String> covers = each.scenario().marks().covers();
            page.paragraph(2, each.verdictWords() + ": " + each.scenario().name());
            page.paragraph(4, covers.isEmpty() ? "nothing" : String.join(", ", covers));
        }
        page.gap();
        if (!table.unknown().isEmpty()) {
            page.paragraph(
                    0,
                    "Numbers that this list does not hold: " + String.join(", ", table.unknown()));
        }
        return page.paragraph(0, counts(table)).toString();
    }

    private static String verdict(ShelfCase each) {
        String word = each.verdictWords() + ":";
        return word + " ".repeat(Math.max(1, VERDICT_WIDTH - word.length()));
    }

    private static String counts(CoverTable table) {
        return "%s %s: %s shown, %s not held, %s without a scenario"
                .formatted(
                        table.requirements().size(),
                        table.requirements().size() == 1 ? "requirement" : "requirements",
                        table.count(State.SHOWN),
                        table.count(State.NOT_HELD),
                        table.count(State.NO_SCENARIO));
    }

    /** For programs: a row for each pair, and one for each requirement without a scenario. */
    public static String csv(CoverTable table) {
        StringBuilder text = new StringBuilder("requirement,state,scenario,verdict,text\n");
        for (Requirement requirement : table.requirements()) {
            rows(table, requirement, text);
        }
        for (String number : table.unknown()) {
            rows(table, new Requirement(number, ""), text);
        }
        return text.toString();
    }

    private static void rows(CoverTable table, Requirement requirement, StringBuilder text) {
        String number = requirement.number();
        List<ShelfCase> cases = table.evidence().getOrDefault(number, List.of());
        String state = table.state(number).words();
        if (cases.isEmpty()) {
            row(text, number, state, "", "", requirement.text());
        }
        for (ShelfCase each : cases) {
            String file = each.scenario().name();
            row(text, number, state, file, each.verdictWords(), requirement.text());
        }
    }

    private static void row(StringBuilder text, String... cells) {
        for (int i = 0; i < cells.length; i++) {
            text.append(i == 0 ? "" : ",").append(cell(Page.clean(cells[i])));
        }
        text.append('\n');
    }

    /** Quoted as RFC 4180 says, where needed. */
    private static String cell(String text) {
        boolean plain = text.chars().noneMatch(c -> c == ',' || c == '"' || c == '\n');
        return plain ? text : '"' + text.replace("\"", "\"\"") + '"';
    }

    /** For a browser: both tables on one page that needs nothing else. */
    public static String html(CoverTable table) {
        StringBuilder html = new StringBuilder();
        html.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
        html.append("<title>What the scenarios cover</title>\n<style>\n");
        html.append("body { font-family: sans-serif; max-width: 60em; margin: 2em auto; }\n");
        html.append("table { border-collapse: collapse; width: 100%; }\n");
        html.append("th, td { text-align: left; vertical-align: top; padding: 0.3em 0.6em;\n");
        html.append("  border-bottom: 1px solid #ccc; }\n</style>\n</head>\n<body>\n");
        html.append("<h1>What the scenarios cover</h1>\n<p>").append(escaped(counts(table)));
        html.append(".</p>\n<h2>Requirements</h2>\n<table>\n");
        html.append("<tr><th>number</th><th>state</th><th>scenarios</th><th>text</th></tr>\n");
        for (Requirement each : table.requirements()) {
            htmlRow(table, each, html);
        }
        for (String number : table.unknown()) {
            htmlRow(table, new Requirement(number, "a number that no list knows"), html);
        }
        html.append("</table>\n<h2>Scenarios</h2>\n<table>\n");
        html.append("<tr><th>scenario</th><th>verdict</th><th>covers</th></tr>\n");
        for (ShelfCase each : table.cases()) {
            html.append("<tr><td>").append(escaped(each.scenario().name()));
            html.append("</td><td>").append(escaped(each.verdictWords())).append("</td><td>");
            html.append(escaped(String.join(", ", each.scenario().marks().covers())));
            html.append("</td></tr>\n");
        }
        return html.append("</table>\n</body>\n</html>\n").toString();
    }

    private static void htmlRow(CoverTable table, Requirement requirement, StringBuilder html) {
        String number = requirement.number();
        html.append("<tr><td>").append(escaped(number)).append("</td><td>");
        html.append(escaped(table.state(number).words())).append("</td><td>");
        for (ShelfCase each : table.evidence().getOrDefault(number, List.of())) {
            html.append(escaped(each.scenario().name() + " (" + each.verdictWords() + ")"));
            html.append("<br>");
        }
        html.append("</td><td>").append(escaped(requirement.text())).append("</td></tr>\n");
    }

    private static String escaped(String text) {
        return Page.clean(text)
                .replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
