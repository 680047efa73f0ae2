package org.gaugebench.sim.cli;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.gaugebench.sim.advice.OwnInverter;
import org.gaugebench.sim.advice.OwnLoad;
import org.gaugebench.sim.advice.OwnSystem;
import org.gaugebench.sim.advice.OwnWords;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.units.CapacityRating;
import org.gaugebench.sim.units.ConverterRange;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.RecordUnit;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** A small system as options, or as answers where a person can be asked. */
final class SystemOptions {
    private static final String VOLTS = "12 V, 24 V, 36 V or 48 V";

    @Option(
            names = "--voltage",
            paramLabel = "VOLTAGE",
            description = "of the battery: 12, 24, 36 or 48 V")
    private @Nullable String voltage;

    @Option(names = "--chemistry", paramLabel = "WORD", description = "such as lead-acid-agm")
    private @Nullable String chemistry;

    @Option(
            names = "--capacity",
            paramLabel = "CHARGE",
            description = "printed on the battery, such as \"100 Ah\"; of all that are in parallel")
    private @Nullable String capacity;

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

    /**
     * The system.
     *
     * @throws InputException with every message, if something is wrong or missing
     */
    OwnSystem system(Terminal terminal) throws InputException {
        if (isIncomplete() && terminal.inIsTerminal() && terminal.errIsTerminal()) {
            ask(new Questions(terminal));
        }
        List<String> wrong = new ArrayList<>();
        OwnSystem system = read(wrong);
        if (system == null || !wrong.isEmpty()) {
            throw new InputException(String.join(System.lineSeparator(), wrong));
        }
        return system;
    }

    /** Answers become options, so that both are read in one way. */
    private void ask(Questions questions) throws InputException {
        if (voltage == null) {
            voltage = questions.need("Volts of the battery", "12 V", SystemOptions::volts);
        }
        if (chemistry == null) {
            chemistry =
                    questions.need(
                            "Kind of battery", "lead-acid-agm", QuantityArguments::chemistry);
        }
        if (capacity == null) {
            capacity =
                    questions.need(
                            "Amp-hours printed on it",
                            "100 Ah",
                            it -> CapacityRating.parse(it, RecordUnit.MICROAMP_HOURS));
        }
        if (inverter == null) {
            inverter =
                    questions.ask(
                            "Inverter, or empty for none",
                            OwnWords.INVERTER_EXAMPLE,
                            OwnWords::inverter);
        }
        while (loads.isEmpty() || !loads.get(loads.size() - 1).isEmpty()) {
            String load =
                    questions.ask(
                            "What draws current, and how long a day; empty for no more",
                            OwnWords.LOAD_EXAMPLE,
                            it -> OwnWords.load(it, 12, 1));
            if (load == null) {
                break;
            }
            loads.add(load);
        }
        if (chargers.isEmpty()) {
            String charger =
                    questions.ask(
                            "Most that the chargers give together, or empty",
                            "20 A",
                            it -> Quantity.parse(it, RecordUnit.MICROAMPS));
            if (charger != null) {
                chargers.add(charger);
            }
        }
    }

    private static int volts(String text) throws QuantityException {
        long microvolts = Quantity.parse(text, RecordUnit.MICROVOLTS);
        if (microvolts < 12_000_000 || microvolts > 48_000_000 || microvolts % 12_000_000 != 0) {
            throw new QuantityException("expected " + VOLTS + ", but found '" + text + "'");
        }
        return (int) (microvolts / 1_000_000);
    }

    private @Nullable OwnSystem read(List<String> wrong) {
        QuantityArguments arguments = new QuantityArguments(wrong);
        Integer volts =
                arguments.needed(
                        "--voltage", voltage, "the battery's voltage", "\"12 V\"", it -> volts(it));
        Chemistry kind =
                arguments.needed(
                        "--chemistry",
                        chemistry,
                        "what battery it is",
                        "lead-acid-agm",
                        QuantityArguments::chemistry);
        Long microampHours =
                arguments.needed(
                        "--capacity",
                        capacity,
                        "what is printed on the battery",
                        "\"100 Ah\"",
                        it -> CapacityRating.parse(it, RecordUnit.MICROAMP_HOURS));
        if (microampHours != null && (microampHours < 100_000 || microampHours > 10_000_000_000L)) {
            wrong.add("--capacity: expected 0.1 Ah to 10000 Ah, but found '" + capacity + "'");
        }
        OwnInverter own = arguments.optional("--inverter", inverter, OwnWords::inverter);
        double chargerAmps = 0;
        for (String each : chargers) {
            chargerAmps +=
                    arguments.limited(
                                    "--charger",
                                    each,
                                    RecordUnit.MICROAMPS,
                                    0,
                                    10_000_000_000L,
                                    "0 A to 10000 A",
                                    0)
                            / 1e6;
        }
        Double cold = null;
        if (coldest != null) {
            cold =
                    arguments.limited(
                                    "--coldest",
                                    coldest,
                                    RecordUnit.MILLICELSIUS,
                                    -60_000,
                                    80_000,
                                    "-60 °C to 80 °C",
                                    0)
                            / 1e3;
        }
        ShuntRating rating = arguments.optional("--shunt", shunt, ShuntRating::parse);
        ConverterRange range = arguments.optional("--adc", adc, ConverterRange::parse);
        List<OwnLoad> owns = loads(volts == null ? 12 : volts, own, arguments, wrong);
        if (!wrong.isEmpty() || volts == null || kind == null || microampHours == null) {
            return null;
        }
        return new OwnSystem(
                volts, kind, microampHours / 1e6, owns, own, chargerAmps, cold, rating, range);
    }

    private List<OwnLoad> loads(
            int volts, @Nullable OwnInverter own, QuantityArguments arguments, List<String> wrong) {
        double efficiency = own == null ? OwnInverter.USUAL_EFFICIENCY : own.efficiency();
        List<OwnLoad> owns = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (String each : loads) {
            OwnLoad load =
                    arguments.optional("--load", each, it -> OwnWords.load(it, volts, efficiency));
            if (load == null) {
                continue;
            }
            if (!names.add(load.name())) {
                wrong.add(
                        "--load: '%s' is there twice; expected another name such as \"%s 2\""
                                .formatted(load.name(), load.name()));
            }
            if (load.byInverter() && own == null) {
                wrong.add(
                        "--load: '%s' runs by the inverter, but --inverter is missing; expected"
                                        .formatted(load.name())
                                + " for instance --inverter "
                                + OwnWords.INVERTER_EXAMPLE);
            }
            owns.add(load);
        }
        return owns;
    }
}
