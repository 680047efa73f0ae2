package org.gaugebench.sim.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.gaugebench.sim.advice.WiringPlan;
import org.gaugebench.sim.report.SheetDetails;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.RecordUnit;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What a sheet asks for beyond the system and its gauge. */
final class HandoverOptions {
    private static final int LONGEST_NAME = 120;

    @Option(names = "--name", paramLabel = "TEXT", description = "of the system, for the head")
    private String name = "";

    @Option(
            names = "--source",
            paramLabel = "WORD",
            description =
                    "what charges it: mains, solar or other; drawn; may be given again. How much"
                            + " they give together stands in --charger")
    private List<String> sources = new ArrayList<>();

    @Option(
            names = "--charger-volts",
            paramLabel = "VOLTAGE",
            description = "the charger's highest steady volts, such as \"14.4 V\"; or not-known")
    private @Nullable String chargerVolts;

    @Option(names = "--no-earth", description = "the negative has no earth")
    private boolean noEarth;

    /**
     * The details.
     *
     * @throws InputException with every message, if something is wrong
     */
    SheetDetails details() throws InputException {
        List<String> wrong = new ArrayList<>();
        QuantityArguments arguments = new QuantityArguments(wrong);
        List<WiringPlan.Source> drawn = new ArrayList<>();
        for (String each : sources) {
            WiringPlan.Source source =
                    arguments.optional("--source", each, HandoverOptions::source);
            if (source != null) {
                drawn.add(source);
            }
        }
        if (name.length() > LONGEST_NAME) {
            wrong.add("--name: expected at most %d letters".formatted(LONGEST_NAME));
        }
        if (drawn.size() > 6) {
            wrong.add("--source: expected at most 6, but found " + drawn.size());
        }
        Double volts = null;
        if (chargerVolts != null && !chargerVolts.equals("not-known")) {
            volts =
                    arguments.limited(
                                    "--charger-volts",
                                    chargerVolts,
                                    RecordUnit.MICROVOLTS,
                                    10_000_000,
                                    70_000_000,
                                    "10 V to 70 V, such as \"14.4 V\", or not-known",
                                    0)
                            / 1e6;
        }
        if (!wrong.isEmpty()) {
            throw new InputException(String.join(System.lineSeparator(), wrong));
        }
        return new SheetDetails(name, drawn, volts, !noEarth);
    }

    private static WiringPlan.Source source(String word) throws QuantityException {
        for (WiringPlan.Source each : WiringPlan.Source.values()) {
            if (each.name().toLowerCase(Locale.ROOT).equals(word)) {
                return each;
            }
        }
        throw new QuantityException(
                "expected one of mains, solar, other, but found '" + word + "'");
    }
}
