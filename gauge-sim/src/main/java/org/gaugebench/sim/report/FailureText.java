package org.gaugebench.sim.report;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.sim.judge.ExpectationResult;
import org.gaugebench.sim.judge.ExpectationResult.Outcome;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.judge.ShelfCase;
import org.gaugebench.sim.scenario.Scenario;

/** What went wrong, as a report of a defect needs it. */
public final class FailureText {
    /** How the program is called in the commands that are printed. */
    private static final String PROGRAM = "java -jar gauge-sim/target/gauge-sim.jar";

    /** A word of a command: an option with its value, or what stands between two spaces. */
    private static final Pattern WORD =
            Pattern.compile("--(seed|variant|at|trace) ('[^']*'|\\S+)|'[^']*'|\\S+");

    private FailureText() {}

    /** A file name as a shell takes it for one word. */
    static String shellWord(String file) {
        return file.matches("[\\w@%+=:,./-]+") ? file : "'" + file.replace("'", "'\\''") + "'";
    }

    /** What was found, and when. */
    static String whatWasFound(ExpectationResult each) {
        if (each.outcome() == Outcome.NEVER_EVALUATED) {
            return "never evaluated: " + each.detail();
        }
        String link = each.found().equals("never") ? " until " : " at ";
        String when = each.atMillis() < 0 ? "" : link + Figures.moment(each.atMillis());
        String turned =
                each.outcome() == Outcome.HELD_UNEXPECTEDLY
                        ? ", which holds, though expected to fail because "
                                + each.expectation().expectedToFail()
                        : "";
        return "found " + each.found() + when + turned;
    }

    /**
     * The command that shows the moment that decided; the whole run where there is none.
     *
     * @param each a claim that does not hold
     * @param scenario that was run
     * @param seed that was used
     * @return the command without a line break
     */
    public static String command(ExpectationResult each, Scenario scenario, long seed) {
        String moment =
                each.atMillis() < 0 ? "" : " --at '" + Figures.moment(each.atMillis()) + "'";
        return run(scenario, seed, moment);
    }

    /** The command that runs this scenario alone, even one of several runs of its file. */
    static String run(Scenario scenario, long seed, String options) {
        String variant =
                scenario.variant().isEmpty()
                        ? ""
                        : " --variant " + shellWord(Page.clean(scenario.variant()));
        // Seeds of the command line name the run too, but the file knows nothing of them.
        String last = ", " + scenario.variant();
        String option = last.endsWith(", seed=" + seed) ? " run --seeds " : " run --seed ";
        return PROGRAM
                + option
                + seed
                + variant
                + options
                + " "
                + shellWord(Page.clean(scenario.file()));
    }

    /** Adds one claim that does not hold: the claim, the moment, the reason and the command. */
    static void claim(Page page, ExpectationResult each, Scenario scenario, long seed) {
        page.paragraph(2, "- " + each.expectation().text());
        page.paragraph(4, whatWasFound(each));
        if (each.outcome() != Outcome.NEVER_EVALUATED && !each.detail().isEmpty()) {
            page.paragraph(4, each.detail());
        }
        if (!each.expectation().because().isEmpty()) {
            page.paragraph(4, "expected because " + each.expectation().because());
        }
        page.paragraph(4, "written at " + each.expectation().mark());
        if (each.atMillis() >= 0) {
            page.paragraph(4, "to see that moment:");
            command(page, 6, command(each, scenario, seed));
        }
    }

    /** Adds a command, broken between its words where it does not fit one line. */
    static void command(Page page, int indent, String command) {
        String lead = " ".repeat(indent);
        StringBuilder line = new StringBuilder(lead);
        Matcher word = WORD.matcher(command);
        while (word.find()) {
            boolean first = line.length() == lead.length();
            boolean last = word.end() == command.length();
            int wanted = line.length() + word.group().length() + (first ? 0 : 1) + (last ? 0 : 2);
            if (wanted > Page.WIDTH && !first) {
                page.line(line + " \\");
                lead = " ".repeat(indent + 2);
                line = new StringBuilder(lead);
                first = true;
            }
            line.append(first ? "" : " ").append(word.group());
        }
        page.line(line.toString());
    }

    /**
     * A case that has no verdict because it did not come to its end.
     *
     * @param each that crashed or took too long
     * @param ink for a terminal or for paper
     * @return lines of at most {@value Page#WIDTH} columns
     */
    public static String ofUnfinished(ShelfCase each, Ink ink) {
        String word = each.verdictWords().toUpperCase(java.util.Locale.ROOT);
        Page page = new Page();
        page.line(ink.bad(word) + ": no verdict");
        page.paragraph(0, each.scenario().title());
        page.paragraph(0, each.scenario().name());
        page.gap().paragraph(2, each.why());
        page.paragraph(2, "to run it alone:");
        String debug = each.defect() == null ? "" : " --debug";
        command(page, 4, run(each.scenario(), each.seed(), debug));
        return page.toString();
    }
}
