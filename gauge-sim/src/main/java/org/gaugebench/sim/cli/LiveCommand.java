package org.gaugebench.sim.cli;

import java.io.IOException;
import java.net.BindException;
import java.net.URI;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.gaugebench.sim.live.ClassShelf;
import org.gaugebench.sim.live.Hut;
import org.gaugebench.sim.live.LessonShelf;
import org.gaugebench.sim.live.LiveServer;
import org.gaugebench.sim.live.RunningPage;
import org.gaugebench.sim.live.lessons.Words;
import org.gaugebench.sim.report.Page;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Serves the page for a class. */
@Command(
        name = "live",
        header = "Let a scenario run on a page of this machine, to switch and to watch.",
        description = {
            "",
            "Opens a page for a browser on this machine: truth and reading side by side, a chart,"
                    + " an account book of the charge, and a switch or slider for everything that"
                    + " the scenario can change. Nothing is sent elsewhere and no file is written;"
                    + " what happened can be saved from the page as a scenario that 'run' repeats"
                    + " to the same digest. Ends with the page's Stop, with Ctrl-C, or half an"
                    + " hour after the last window was closed.",
            ""
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:the page has ended, or one runs already and its address was printed",
            " 2:wrong input or command line",
            "70:a defect of this program"
        },
        footerHeading = "%nExamples:%n",
        footer = {
            "  gauge-sim live",
            "  gauge-sim live scenarios/first-steps/a-week-in-the-hut.yaml",
            "  gauge-sim live --port 0 a-week-in-the-hut.yaml"
        })
final class LiveCommand implements Callable<Integer> {
    /** Any free one would do; a fixed one lets a second start find the first. */
    private static final int USUAL_PORT = 20_733;

    private static final int HIGHEST_PORT = 65_535;

    private final Terminal terminal;

    @Parameters(
            arity = "0..1",
            paramLabel = "FILE",
            description = "A scenario; without one, an invented hut at the end of a pier.")
    private @Nullable String file;

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    @Mixin private final SeedOption seed = new SeedOption();

    @Option(
            names = "--port",
            paramLabel = "N",
            description =
                    "Port of the page on this machine; 0 for any free one (default: "
                            + USUAL_PORT
                            + ", or a free one where another program has that).")
    private @Nullable Integer port;

    @Option(names = "--no-browser", description = "Only print the address; open nothing.")
    private boolean isQuiet;

    @Option(
            names = "--words",
            paramLabel = "FILE",
            description =
                    "Texts of page, lessons and sheets in another language; what the file lacks"
                            + " stays English and is listed. 'sheets' writes the list to copy.")
    private @Nullable Path words;

    LiveCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException, InterruptedException {
        Scenario scenario = scenario();
        Integer chosen = port;
        if (chosen != null && (chosen < 0 || chosen > HIGHEST_PORT)) {
            throw new InputException(
                    "--port: a port is 0 to 65535, such as --port 8123; found " + chosen);
        }
        int wanted = chosen == null ? USUAL_PORT : chosen;
        try {
            return serve(LiveServer.open(scenario, seed.of(scenario), wanted, shelf()));
        } catch (BindException e) {
            return taken(scenario, wanted, chosen != null);
        } catch (IOException e) {
            throw new InputException("the page cannot be opened: " + e.getMessage());
        }
    }

    private LessonShelf shelf() throws InputException {
        Words chosen = SheetsCommand.words(words);
        String missing = chosen.missingText();
        if (words != null && !missing.isEmpty()) {
            terminal.err().println(missing);
        }
        return new ClassShelf(chosen);
    }

    private Scenario scenario() throws InputException {
        String named = file;
        if (named == null) {
            return Hut.scenario();
        }
        List<Scenario> scenarios = ScenarioArguments.of(named);
        if (scenarios.size() > 1) {
            throw new InputException(
                    "live: %s makes %d runs; expected a file that makes one, such as %s"
                            .formatted(
                                    named,
                                    scenarios.size(),
                                    "scenarios/first-steps/a-week-in-the-hut.yaml"));
        }
        return scenarios.get(0);
    }

    private int taken(Scenario scenario, int wanted, boolean chosen)
            throws InputException, InterruptedException {
        String title = RunningPage.titleAt(wanted);
        if (title != null) {
            say("A page runs already, with: " + Page.clean(title));
            say("http://127.0.0.1:" + wanted + "/");
            String named = file;
            if (named != null) {
                say(
                        "%s was not opened. To open it, stop that page first (its Stop, or Ctrl-C"
                                        .formatted(named)
                                + " where it was started), then give this command again.");
            }
            show("http://127.0.0.1:" + wanted + "/");
            say(
                    "For a second one beside it: gauge-sim live --port 0"
                            + (named == null ? "" : " " + named));
            return ExitCodes.OK;
        }
        if (chosen) {
            throw new InputException(
                    "--port: another program has port "
                            + wanted
                            + "; expected a free one, or --port 0 for any");
        }
        try {
            return serve(LiveServer.open(scenario, seed.of(scenario), 0, shelf()));
        } catch (IOException e) {
            throw new InputException("the page cannot be opened: " + e.getMessage());
        }
    }

    private int serve(LiveServer server) throws InterruptedException {
        try (server) {
            say("The page is at " + server.address());
            show(server.address());
            say("It ends with its Stop, with Ctrl-C, or half an hour after its last window.");
            server.awaitEnd();
            say("The page has ended.");
        }
        return ExitCodes.OK;
    }

    /** Where no window can open, as over a network, the address that was printed is enough. */
    private void show(String address) {
        if (!isQuiet && !BareStart.isAutomatic(terminal)) {
            BrowserOpener.ofProcess(terminal.environment())
                    .openOrTell(URI.create(address), this::say);
        }
    }

    private void say(String line) {
        terminal.out().println(line);
        terminal.out().flush();
    }
}
