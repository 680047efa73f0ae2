package org.gaugebench.sim.cli;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.advice.OwnChange;
import org.gaugebench.sim.advice.TypedChange;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What changed, as options: exactly one of five, and what the gauge showed. */
final class ChangedOptions {
    private static final String EXAMPLE = "--battery-swapped \"100 Ah\" or --wire-off \"20 min\"";

    @Option(
            names = "--battery-swapped",
            paramLabel = "CHARGE",
            description = "another battery; what is printed on the new one, such as \"100 Ah\"")
    private @Nullable String swapped;

    @Option(
            names = "--second-battery",
            paramLabel = "CHARGE",
            description = "one more in parallel; what is printed on it")
    private @Nullable String second;

    @Option(
            names = "--stored",
            paramLabel = "TIME",
            description = "everything off for so long, such as \"56 d\" or \"8 weeks\"")
    private @Nullable String stored;

    @Option(
            names = "--winter",
            paramLabel = "TEMPERATURE",
            description = "of the battery, such as \"-5 °C\"")
    private @Nullable String winter;

    @Option(
            names = "--wire-off",
            paramLabel = "TIME",
            description = "the gauge's own supply was off for so long, such as \"20 min\"")
    private @Nullable String wireOff;

    @Option(
            names = "--shown",
            paramLabel = "PERCENT",
            description = "what the gauge showed before, such as \"70 %%\"; or not-known")
    private @Nullable String shown;

    /** One of five. */
    private record Told(OwnChange.What what, String option, String text) {}

    /**
     * The change.
     *
     * @throws InputException with every message, if something is wrong or missing
     */
    OwnChange change(Terminal terminal) throws InputException {
        List<String> wrong = new ArrayList<>();
        List<Told> told = told();
        if (told.isEmpty() && terminal.inIsTerminal() && terminal.errIsTerminal()) {
            ask(new Questions(terminal));
            told = told();
        }
        if (told.size() != 1) {
            wrong.add("expected exactly one thing that changed, such as " + EXAMPLE);
        }
        QuantityArguments arguments = new QuantityArguments(wrong);
        OwnChange change = null;
        for (Told each : told) {
            Double amount =
                    arguments.optional(
                            each.option(), each.text(), it -> TypedChange.amount(each.what(), it));
            if (amount != null) {
                change =
                        new OwnChange(
                                each.what(), amount, TypedChange.shownPercent(arguments, shown));
            }
        }
        if (!wrong.isEmpty() || change == null) {
            throw new InputException(String.join(System.lineSeparator(), wrong));
        }
        return change;
    }

    private List<Told> told() {
        List<Told> told = new ArrayList<>();
        add(told, OwnChange.What.BATTERY_SWAPPED, "--battery-swapped", swapped);
        add(told, OwnChange.What.SECOND_BATTERY, "--second-battery", second);
        add(told, OwnChange.What.STORED, "--stored", stored);
        add(told, OwnChange.What.WINTER, "--winter", winter);
        add(told, OwnChange.What.WIRE_OFF, "--wire-off", wireOff);
        return told;
    }

    private static void add(
            List<Told> told, OwnChange.What what, String option, @Nullable String text) {
        if (text != null) {
            told.add(new Told(what, option, text));
        }
    }

    private void ask(Questions questions) throws InputException {
        swapped =
                questions.ask(
                        "Another battery: amp-hours printed on the new one; or empty",
                        "100 Ah",
                        it -> TypedChange.amount(OwnChange.What.BATTERY_SWAPPED, it));
        if (swapped == null) {
            second =
                    questions.ask(
                            "One more in parallel: amp-hours printed on it; or empty",
                            "100 Ah",
                            it -> TypedChange.amount(OwnChange.What.SECOND_BATTERY, it));
        }
        if (swapped == null && second == null) {
            stored =
                    questions.ask(
                            "Stored for how long; or empty",
                            "8 weeks",
                            it -> TypedChange.amount(OwnChange.What.STORED, it));
        }
        if (swapped == null && second == null && stored == null) {
            winter =
                    questions.ask(
                            "Winter: the battery's temperature; or empty",
                            "-5 °C",
                            it -> TypedChange.amount(OwnChange.What.WINTER, it));
        }
        if (told().isEmpty()) {
            wireOff =
                    questions.ask(
                            "The gauge's wire was off for how long; or empty",
                            "20 min",
                            it -> TypedChange.amount(OwnChange.What.WIRE_OFF, it));
        }
    }
}
