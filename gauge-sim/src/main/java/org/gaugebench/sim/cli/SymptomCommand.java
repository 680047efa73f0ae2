package org.gaugebench.sim.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.gaugebench.sim.advice.NotesSymptom;
import org.gaugebench.sim.advice.Seen;
import org.gaugebench.sim.advice.SeenSymptom;
import org.gaugebench.sim.advice.SymptomResult;
import org.gaugebench.sim.logs.LogException;
import org.gaugebench.sim.logs.NotesReader;
import org.gaugebench.sim.logs.OwnersNote;
import org.gaugebench.sim.report.SymptomJson;
import org.gaugebench.sim.report.SymptomText;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.Texts;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code symptom}: what may be behind a figure that looks wrong, and which check tells. */
@Command(
        name = "symptom",
        header = "What may be behind a figure that looks wrong, and which check tells.",
        description = {
            "",
            "From one thing seen, or from notes of time and percent: the likely causes in order,"
                    + " each with its size, the check by a meter that tells it from the others, and"
                    + " the scenario that shows it.",
            ""
        },
        optionListHeading = "Options:%n",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            " 0:answered",
            " 2:the command line or the notes are wrong",
            "70:a defect of this program"
        },
        footerHeading = "%nExample:%n",
        footer = {
            "  gauge-sim symptom --seen dark-at-30-percent --voltage \"12 V\" \\",
            "    --chemistry lifepo4 --capacity \"40 Ah\" --load \"logger: 200 mA, 24 h\""
        })
final class SymptomCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    @SuppressWarnings("unused") // the parser reads it
    private final HelpOption help = new HelpOption();

    @Option(
            names = "--seen",
            paramLabel = "WORD",
            description =
                    "below-100-when-charged, falls-with-nothing-on, rises-with-nothing-on,"
                            + " rises-with-loads-on, dark-at-30-percent, light-at-0-percent,"
                            + " hours-never-change, back-at-100-after-off or back-at-0-after-off")
    private @Nullable String seen;

    @Option(
            names = "--notes",
            paramLabel = "CSV",
            description =
                    "notes with columns time, shown and, where there are any, ah (shown as left),"
                            + " charged (Ah since the note before), volts, word (charger-finished,"
                            + " ran-flat, set-to-100, nothing)")
    private @Nullable Path notes;

    @Option(names = "--json", description = "print one JSON object instead of text")
    private boolean json;

    @Mixin private final SystemOptions told = new SystemOptions();

    @Mixin private final GaugeOptions gauge = new GaugeOptions();

    SymptomCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws InputException {
        if (seen == null && notes == null && told.asks(terminal)) {
            seen =
                    new Questions(terminal)
                            .need(
                                    "What looks wrong: " + words(),
                                    "dark-at-30-percent",
                                    SymptomCommand::seen);
        }
        List<String> wrong = new ArrayList<>();
        Seen sight = sight(wrong);
        List<OwnersNote> written = written(wrong);
        OwnParts own = OwnParts.read(terminal, told, gauge, wrong);
        SymptomResult result =
                sight == null
                        ? NotesSymptom.of(written, own.system(), own.gauge(), own.shunt())
                        : SeenSymptom.of(sight, own.system(), own.gauge(), own.shunt());
        terminal.out()
                .print(json ? SymptomJson.of(result, Version.text()) : SymptomText.of(result));
        terminal.out().flush();
        return ExitCodes.OK;
    }

    private @Nullable Seen sight(List<String> wrong) {
        String word = seen;
        if ((word == null) == (notes == null)) {
            wrong.add(
                    "expected either --seen or --notes, such as --seen dark-at-30-percent or"
                            + " --notes my-notes.csv");
        }
        if (word == null) {
            return null;
        }
        try {
            return seen(word);
        } catch (QuantityException e) {
            wrong.add("--seen: " + e.getMessage());
            return null;
        }
    }

    private static Seen seen(String word) throws QuantityException {
        for (Seen each : Seen.values()) {
            if (each.key().equals(word)) {
                return each;
            }
        }
        throw new QuantityException(
                "expected one of %s, but found '%s'".formatted(words(), Texts.shortened(word)));
    }

    private static String words() {
        return Arrays.stream(Seen.values()).map(Seen::key).collect(Collectors.joining(", "));
    }

    private List<OwnersNote> written(List<String> wrong) {
        Path file = notes;
        if (file == null) {
            return List.of();
        }
        try {
            return NotesReader.read(file, file.toString());
        } catch (LogException e) {
            wrong.add(e.getMessage());
            return List.of();
        }
    }
}
