package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.units.Dimension;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.QuantityException;

/**
 * Reads what an owner writes of loads and of an inverter: short phrases between commas, each with
 * its unit, in any order after the first.
 */
public final class OwnWords {
    /** A load that parses. */
    public static final String LOAD_EXAMPLE = "\"lamp: 1.2 A, 5 h\"";

    /** An inverter that parses. */
    public static final String INVERTER_EXAMPLE = "\"2000 W, 88 %, surge 4000 W\"";

    /** A steady load of watts at 12 V draws as from 11.4 V (IEEE Std 1013, 5.2). */
    private static final double LOADED_PART = 0.95;

    /** Of a charger of phones and tablets; common practice, no source. */
    private static final double CONVERTER_EFFICIENCY = 0.85;

    /** How long a phone takes; only its current depends on it. Common practice, no source. */
    private static final double CHARGE_HOURS = 2;

    private static final double LARGEST_AMPS = 10_000;
    private static final double HOURS_A_DAY = 24;

    private final String text;
    private final double volts;
    private final double inverterEfficiency;
    private final List<String> assumed = new ArrayList<>();
    private double amps = -1;
    private double hours = -1;
    private double idleAmps;
    private double surgeAmps;
    private double charges;
    private double wattHours;
    private double efficiency = -1;
    private boolean byPower;
    private boolean byInverter;

    private OwnWords(String text, double volts, double inverterEfficiency) {
        this.text = text;
        this.volts = volts;
        this.inverterEfficiency = inverterEfficiency;
    }

    /**
     * Reads a load.
     *
     * @param text such as "lamp: 1.2 A, 5 h", "fridge: 45 W, 8 h, surge 120 W", "kettle: 1800 W, 10
     *     min, inverter" or "phone: 2 charges of 15 Wh, 90 %, idle 20 mA"
     * @param nominalVolts of the battery
     * @param inverterEfficiency of the inverter that feeds what is fed by one
     * @throws QuantityException naming what was expected, with an example, and what was found
     */
    public static OwnLoad load(String text, int nominalVolts, double inverterEfficiency)
            throws QuantityException {
        int colon = text.indexOf(':');
        if (colon <= 0 || text.substring(0, colon).isBlank()) {
            throw refusal(text, "a name before a colon is missing");
        }
        OwnWords words = new OwnWords(text, nominalVolts * LOADED_PART, inverterEfficiency);
        // An inverter's loads are known only when all phrases are read.
        List<String> phrases = phrases(text.substring(colon + 1));
        words.byInverter = phrases.remove("inverter");
        for (String phrase : phrases) {
            words.phrase(phrase);
        }
        return words.load(text.substring(0, colon).strip());
    }

    /**
     * Reads an inverter.
     *
     * @param text such as "2000 W, 88 %, surge 4000 W"; all but the watts may be left out
     * @throws QuantityException naming what was expected, with an example, and what was found
     */
    public static OwnInverter inverter(String text) throws QuantityException {
        double watts = -1;
        double surge = -1;
        double efficiency = OwnInverter.USUAL_EFFICIENCY;
        for (String phrase : phrases(text)) {
            if (phrase.startsWith("surge ")) {
                surge = amount(phrase.substring(6), Dimension.POWER);
            } else if (phrase.endsWith("%")) {
                efficiency = amount(phrase, Dimension.RATIO);
            } else {
                watts = amount(phrase, Dimension.POWER);
            }
        }
        boolean wrong = watts <= 0 || efficiency <= 0 || efficiency > 1;
        if (wrong || (surge >= 0 && surge < watts)) {
            throw new QuantityException(
                    "expected an inverter such as "
                            + INVERTER_EXAMPLE
                            + ", but found '"
                            + text
                            + "': watts above zero, an efficiency up to 100 %, and a surge that is"
                            + " not less than the watts");
        }
        return new OwnInverter(watts, Math.max(watts, surge), efficiency);
    }

    private static List<String> phrases(String text) {
        List<String> phrases = new ArrayList<>();
        for (String each : text.split(",", -1)) {
            phrases.add(each.strip());
        }
        return phrases;
    }

    private void phrase(String phrase) throws QuantityException {
        if (phrase.startsWith("surge ")) {
            surgeAmps = amps(phrase.substring(6));
        } else if (phrase.startsWith("idle ")) {
            idleAmps = amps(phrase.substring(5));
        } else if (phrase.matches("\\S+ charges? of .*")) {
            charges(phrase);
        } else if (phrase.endsWith("%")) {
            efficiency = amount(phrase, Dimension.RATIO);
        } else if (phrase.matches(".*(h|min|s|d)")) {
            hours = amount(phrase, Dimension.DURATION) / 3_600;
        } else {
            amps = amps(phrase);
        }
    }

    private void charges(String phrase) throws QuantityException {
        String[] parts = phrase.split(" charges? of ", 2);
        try {
            charges = Double.parseDouble(parts[0]);
            wattHours = Double.parseDouble(parts[1].replaceFirst(" *Wh$", ""));
        } catch (NumberFormatException e) {
            throw refusal(text, "expected charges a day such as \"2 charges of 15 Wh\"");
        }
        boolean right = parts[1].endsWith("Wh") && charges >= 0 && charges <= 100;
        if (!right || !(wattHours > 0) || wattHours > 10_000) {
            throw refusal(text, "expected charges a day such as \"2 charges of 15 Wh\"");
        }
    }

    /** A current, or the current that a power draws. */
    private double amps(String phrase) throws QuantityException {
        if (phrase.endsWith("W")) {
            double watts = amount(phrase, Dimension.POWER);
            byPower = true;
            return watts / volts / (byInverter ? inverterEfficiency : 1);
        }
        return amount(phrase, Dimension.CURRENT);
    }

    private OwnLoad load(String name) throws QuantityException {
        if (wattHours > 0) {
            if (amps >= 0 || hours >= 0) {
                throw refusal(text, "charges a day stand instead of a current and a time");
            }
            if (efficiency == -1) {
                efficiency = CONVERTER_EFFICIENCY;
                assumed.add("its charger gives 85 % of what it takes");
            }
            if (!(efficiency > 0 && efficiency <= 1)) {
                throw refusal(text, "an efficiency lies above 0 % and up to 100 %");
            }
            assumed.add("a charge takes 2 h");
            byPower = true;
            amps = wattHours / CHARGE_HOURS / volts / efficiency;
            hours = charges * CHARGE_HOURS;
        }
        if (amps < 0 || hours < 0) {
            throw refusal(
                    text,
                    amps < 0
                            ? "a current or a power is missing"
                            : "how long it is on each day is missing");
        }
        if (hours > HOURS_A_DAY) {
            throw refusal(text, "a day has 24 h");
        }
        if (amps > LARGEST_AMPS || idleAmps < 0 || idleAmps > LARGEST_AMPS) {
            throw refusal(text, "currents lie between 0 A and 10000 A");
        }
        if (surgeAmps != 0 && surgeAmps < amps) {
            throw refusal(text, "a surge is not less than what it draws for long");
        }
        if (byPower) {
            assumed.add("a power draws as from 95 % of the battery's nominal voltage");
        }
        return new OwnLoad(
                name,
                amps,
                hours,
                idleAmps,
                Math.max(amps, surgeAmps),
                byInverter,
                assumed.stream().map(each -> name + ": " + each).toList());
    }

    private static double amount(String text, Dimension dimension) throws QuantityException {
        return Quantity.parse(text, dimension).amount().doubleValue();
    }

    private static QuantityException refusal(String text, String why) {
        return new QuantityException(
                "expected a load such as "
                        + LOAD_EXAMPLE
                        + ", \"fridge: 45 W, 8 h, surge 120 W\" or \"phone: 2 charges of 15 Wh\","
                        + " but found '"
                        + text
                        + "': "
                        + why);
    }
}
