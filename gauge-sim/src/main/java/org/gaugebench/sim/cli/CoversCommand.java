package org.gaugebench.sim.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.gaugebench.sim.cli.ShelfRunner.Job;
import org.gaugebench.sim.judge.ShelfCase;
import org.gaugebench.sim.report.CoverPages;
import org.gaugebench.sim.report.CoverTable;
import org.gaugebench.sim.report.Requirement;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Tells which scenarios show which requirements. */
@Command(
        name = "covers",
        header = "Tell which requirements the scenarios show, and which none shows.",
        description = {
            "",
            "Runs the scenarios and lists, for each requirement, those that name it under"
                    + " 'covers:' with their verdict, and back. The requirements are the numbered"
                    + " rules of the core's rules.md, or those of a file of your own.",
            ""
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:told; with --require-all, every requirement is shown",
            " 1:with --require-all, a requirement has no scenario or one that does not pass",
            " 2:wrong input or command line; nothing was written",
            "70:a defect of this program"
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  gauge-sim covers scenarios",
            "  gauge-sim covers --requirements ours.csv --require-all --html c.html tests"
        })
final class CoversCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin private final ScenarioArguments arguments = new ScenarioArguments();
    @Mixin private final TagOptions tags = new TagOptions();
    @Mixin private final ShelfOptions shelf = new ShelfOptions();

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    @Option(
            names = "--requirements",
            paramLabel = "CSV",
            description =
                    "Your own requirements instead of the core's rules: a number and a text in"
                            + " each row.")
    private @Nullable Path requirements;

    @Option(
            names = "--require-all",
            description = "End with 1 unless every requirement is named and all that name it pass.")
    private boolean requireAll;

    @Option(
            names = "--csv",
            paramLabel = "FILE",
            description = "Write a row for each requirement and scenario to this file.")
    private @Nullable Path csv;

    @Option(
            names = "--html",
            paramLabel = "HTML",
            description = "Write a page for a browser to this file.")
    private @Nullable Path html;

    CoversCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException {
        List<Requirement> rules = Requirement.rules();
        List<Requirement> asked =
                requirements == null ? rules : RequirementsFile.read(requirements);
        List<Job> jobs = new ArrayList<>();
        List<Scenario> scenarios = arguments.load();
        tags.check(scenarios);
        for (Scenario scenario : scenarios) {
            // What is left out is no evidence, for a requirement or against it.
            if (tags.skipReason(scenario).isEmpty()) {
                jobs.add(new Job(scenario, scenario.seed()));
            }
        }
        Shard part = shelf.shard();
        OutputFile table = OutputFile.open("--csv", csv, "covers.csv");
        OutputFile page = openPage(table);
        List<ShelfCase> cases = new ArrayList<>();
        ListProgress progress = new ListProgress(terminal, jobs.size());
        new ShelfRunner(shelf, null)
                .run(
                        part == null ? jobs : part.of(jobs),
                        each -> {
                            cases.add(each.slim());
                            progress.next();
                        });
        progress.clear();
        CoverTable covers = CoverTable.of(asked, rules, cases);
        table.keep(() -> CoverPages.csv(covers));
        page.keep(() -> CoverPages.html(covers));
        terminal.out().print(CoverPages.text(covers));
        terminal.out().flush();
        boolean whole = covers.count(CoverTable.State.SHOWN) == asked.size();
        return requireAll && !whole ? ExitCodes.FAILED : ExitCodes.OK;
    }

    private OutputFile openPage(OutputFile table) throws InputException {
        try {
            return OutputFile.open("--html", html, "covers.html");
        } catch (InputException e) {
            table.abandon();
            throw e;
        }
    }
}
