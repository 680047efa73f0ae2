package org.gaugebench.sim.report;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.sim.device.PipeFailure;
import org.gaugebench.sim.judge.ExpectationResult;
import org.gaugebench.sim.judge.ExpectationResult.Outcome;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.judge.ShelfCase;
import org.gaugebench.sim.judge.ShelfCase.Ending;
import org.gaugebench.sim.judge.TestedProgram;
import org.gaugebench.sim.scenario.Scenario;

/** What went wrong, as a report of a defect needs it. */
public final class FailureText {
    /** How the program is called in the commands that are printed. */
    private static final String PROGRAM = "java -jar gauge-sim/target/gauge-sim.jar";

    /** A word as a shell reads it. */
    private static final String SHELL_WORD = "(?:'[^']*'|\"[^\"]*\"|\\\\.|[^\\s'\"\\\\])+";

    /** A word of a command: an option with its value, or what stands between two spaces. */
    private static final Pattern WORD =
            Pattern.compile("(?:--(?:seed|variant|at|trace|device) )?" + SHELL_WORD);

    private FailureText() {}

    /**
     * What a command must say to run a scenario again.
     *
     * @param scenario that was run
     * @param seed that was used
     * @param device the command of a program under test, as the user wrote it; empty for none
     */
    record Again(Scenario scenario, long seed, String device) {
        static Again of(RunResult result) {
            TestedProgram program = result.program();
            return new Again(
                    result.scenario(), result.seed(), program == null ? "" : program.command());
        }

        static Again of(ShelfCase each) {
            RunResult result = each.result();
            if (result != null) {
                return of(result);
            }
            String device = each.defect() instanceof PipeFailure it ? it.commandText() : "";
            return new Again(each.scenario(), each.seed(), device);
        }
    }

    /** A file name as a shell takes it for one word. */
    static String shellWord(String file) {
        if (file.matches("[\\w@%+=:,./-]+")) {
            return file;
        }
        // Quotes of the other kind where nothing in it means something in them.
        boolean isPlainInDouble = file.indexOf('\'') >= 0 && !file.matches(".*[\"$`\\\\!].*");
        return isPlainInDouble ? '"' + file + '"' : "'" + file.replace("'", "'\\''") + "'";
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
        return command(each, new Again(scenario, seed, ""));
    }

    private static String command(ExpectationResult each, Again again) {
        String moment =
                each.atMillis() < 0 ? "" : " --at '" + Figures.moment(each.atMillis()) + "'";
        return run(again, moment);
    }

    /** The command that runs this scenario alone, even one of several runs of its file. */
    static String run(Again again, String options) {
        Scenario scenario = again.scenario();
        long seed = again.seed();
        String device =
                again.device().isEmpty()
                        ? ""
                        : " --device " + shellWord(Page.clean(again.device()));
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
                + device
                + options
                + " "
                + shellWord(Page.clean(scenario.file()));
    }

    /** Adds one claim that does not hold: the claim, the moment, the reason and the command. */
    static void claim(Page page, ExpectationResult each, Again again) {
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
            command(page, 6, command(each, again));
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
        if (each.defect() instanceof PipeFailure failure) {
            failure.details().forEach(line -> page.paragraph(line.startsWith(" ") ? 6 : 4, line));
        }
        page.paragraph(2, "to run it alone:");
        String debug = each.ending() == Ending.CRASHED ? " --debug" : "";
        command(page, 4, run(Again.of(each), debug));
        return page.toString();
    }
}
