package org.gaugebench.sim.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.OwnWords;
import org.gaugebench.sim.advice.TypedFields;
import org.gaugebench.sim.advice.TypedSystem;
import org.gaugebench.sim.units.QuantityException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** A small system as options, or as answers where a person can be asked. */
final class SystemOptions {
    @Option(
            names = "--voltage",
            paramLabel = "VOLTAGE",
            description = "of the battery: 12, 24, 36 or 48 V")
    private @Nullable String voltage;

    @Option(
            names = "--chemistry",
            paramLabel = "WORD",
            description = "lead-acid-flooded, lead-acid-agm, lead-acid-gel, lifepo4 or nmc")
    private @Nullable String chemistry;

    @Option(
            names = "--capacity",
            paramLabel = "CHARGE",
            description = "printed on the battery, such as \"100 Ah\"; of all that are in parallel")
    private @Nullable String capacity;

    @Option(
            names = "--usable",
            paramLabel = "PERCENT",
            description = "part of it that you let be drawn, such as \"50 %%\"")
    private @Nullable String usable;

    @Option(
            names = "--load",
            paramLabel = "LOAD",
            description =
                    "may be given again; such as \"lamp: 1.2 A, 5 h\", \"fridge: 45 W, 8 h, surge"
                            + " 120 W\", \"kettle: 1800 W, 10 min, inverter\" or \"phone: 2 charges"
                            + " of 15 Wh, idle 20 mA\"")
    private List<String> loads = new ArrayList<>();

    @Option(
            names = "--inverter",
            paramLabel = "INVERTER",
            description = "such as \"2000 W, 88 %%, surge 4000 W\"")
    private @Nullable String inverter;

    @Option(
            names = "--charger",
            paramLabel = "CURRENT",
            description = "most that a charger gives, such as \"20 A\"; may be given again")
    private List<String> chargers = new ArrayList<>();

    @Option(
            names = "--coldest",
            paramLabel = "TEMPERATURE",
            description = "of the battery while it is needed, such as \"5 °C\"")
    private @Nullable String coldest;

    @Option(
            names = "--shunt",
            paramLabel = "RATING",
            description = "that is there already, such as \"100 A / 75 mV\"")
    private @Nullable String shunt;

    @Option(
            names = "--adc",
            paramLabel = "RANGE",
            description =
                    "width and full scale of the gauge's converter, such as \"20 bit, 100 mV\"")
    private @Nullable String adc;

    /** Whether something is missing without which nothing can be said. */
    private boolean isIncomplete() {
        return voltage == null || chemistry == null || capacity == null;
    }

    /** Whether any of it was told. */
    boolean isAnyTold() {
        return voltage != null || chemistry != null || capacity != null || !loads.isEmpty();
    }

    /**
     * The system.
     *
     * @throws InputException with every message, if something is wrong or missing
     */
    OwnSystem system(Terminal terminal) throws InputException {
        if (asks(terminal)) {
            List<String> wrong = new ArrayList<>();
            wrongSoFar(wrong);
            ToldParts.refuse(wrong);
            ask(new Questions(terminal));
        }
        return system();
    }

    /** Whether something is missing and a person is there to be asked. */
    boolean asks(Terminal terminal) {
        return isIncomplete() && terminal.inIsTerminal() && terminal.errIsTerminal();
    }

    /** The system of what was told and answered. */
    OwnSystem system() throws InputException {
        List<String> wrong = new ArrayList<>();
        OwnSystem system = read(wrong);
        if (system == null || !wrong.isEmpty()) {
            throw new InputException(String.join(System.lineSeparator(), wrong));
        }
        return system;
    }

    /** Answers become options, so that both are read in one way, with the same limits. */
    void ask(Questions questions) throws InputException {
        if (voltage == null) {
            voltage =
                    questions.need(
                            "Volts of the battery",
                            "12 V",
                            it -> {
                                voltage = it;
                                return check("voltage");
                            });
        }
        if (chemistry == null) {
            chemistry =
                    questions.need(
                            "Kind of battery: " + TypedFields.chemistries(),
                            "lead-acid-agm",
                            it -> {
                                chemistry = it;
                                return check("chemistry");
                            });
        }
        if (capacity == null) {
            capacity =
                    questions.need(
                            "Amp-hours printed on it",
                            "100 Ah",
                            it -> {
                                capacity = it;
                                return check("capacity");
                            });
        }
        if (inverter == null) {
            inverter =
                    questions.ask(
                            "Inverter, or empty for none",
                            OwnWords.INVERTER_EXAMPLE,
                            OwnWords::inverter);
        }
        askForLoads(questions);
        if (chargers.isEmpty()) {
            String charger =
                    questions.ask(
                            "Most that the chargers give together, or empty",
                            "20 A",
                            it -> tried(chargers, it, "charger"));
            if (charger != null) {
                chargers.add(charger);
            }
        }
    }

    private void askForLoads(Questions questions) throws InputException {
        while (true) {
            String load =
                    questions.ask(
                            "What draws current, and how long a day; empty for no more",
                            OwnWords.LOAD_EXAMPLE,
                            it -> tried(loads, it, "load", "inverter"));
            if (load == null) {
                return;
            }
            loads.add(load);
        }
    }

    private boolean tried(List<String> list, String answer, String... fields)
            throws QuantityException {
        list.add(answer);
        try {
            return check(fields);
        } finally {
            list.remove(list.size() - 1);
        }
    }

    private boolean check(String... fields) throws QuantityException {
        AnswerCheck.of(Set.of(fields), typed()::read);
        return true;
    }

    /** What is wrong of that which was told; what is missing can still be asked for. */
    void wrongSoFar(List<String> wrong) {
        typed().read(QuantityArguments.ofTold(wrong));
    }

    private @Nullable OwnSystem read(List<String> wrong) {
        return typed().read(new QuantityArguments(wrong));
    }

    private TypedSystem typed() {
        return new TypedSystem(
                voltage, chemistry, capacity, usable, loads, inverter, chargers, coldest, shunt,
                adc);
    }
}
