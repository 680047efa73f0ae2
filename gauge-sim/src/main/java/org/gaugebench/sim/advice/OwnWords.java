package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.gaugebench.sim.units.Dimension;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.Texts;

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
    private static final double LARGEST_WATTS = 1_000_000;

    /** Even without a space in it so much fits into a line of 80 columns, with its figure. */
    private static final int LONGEST_NAME = 60;

    /** What a phrase can tell. */
    private enum Told {
        CURRENT_OR_POWER,
        TIME,
        SURGE,
        IDLE,
        CHARGES,
        EFFICIENCY;

        private String words() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    private final String text;
    private final double volts;
    private final double inverterEfficiency;
    private final List<String> assumed = new ArrayList<>();
    private final Set<Told> told = EnumSet.noneOf(Told.class);
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
        String name = text.substring(0, colon).strip();
        if (name.length() > LONGEST_NAME || name.chars().anyMatch(Character::isISOControl)) {
            throw refusal(text, "a name has one line of at most " + LONGEST_NAME + " letters");
        }
        OwnWords words = new OwnWords(text, nominalVolts * LOADED_PART, inverterEfficiency);
        // An inverter's loads are known only when all phrases are read.
        List<String> phrases = phrases(text.substring(colon + 1));
        words.byInverter = phrases.remove("inverter");
        for (String phrase : phrases) {
            words.phrase(phrase);
        }
        return words.load(name);
    }

    /**
     * Reads an inverter.
     *
     * @param text such as "2000 W, 88 %, surge 4000 W"; all but the watts may be left out
     * @throws QuantityException naming what was expected, with an example, and what was found
     */
    public static OwnInverter inverter(String text) throws QuantityException {
        List<Double> watts = new ArrayList<>();
        List<Double> surges = new ArrayList<>();
        List<Double> efficiencies = new ArrayList<>();
        for (String phrase : phrases(text)) {
            if (phrase.startsWith("surge ")) {
                surges.add(amount(phrase.substring(6), Dimension.POWER));
            } else if (phrase.endsWith("%")) {
                efficiencies.add(amount(phrase, Dimension.RATIO));
            } else {
                watts.add(amount(phrase, Dimension.POWER));
            }
        }
        boolean once = watts.size() == 1 && surges.size() <= 1 && efficiencies.size() <= 1;
        double each = once ? watts.get(0) : 0;
        double surge = surges.isEmpty() ? each : surges.get(0);
        double efficiency =
                efficiencies.isEmpty() ? OwnInverter.USUAL_EFFICIENCY : efficiencies.get(0);
        boolean right =
                each > 0 && each <= LARGEST_WATTS && surge >= each && surge <= LARGEST_WATTS;
        if (!right || efficiency <= 0 || efficiency > 1) {
            throw new QuantityException(
                    "expected an inverter such as "
                            + INVERTER_EXAMPLE
                            + ", but found '"
                            + Texts.shortened(text)
                            + "': watts once, above zero and up to 1000000 W, an efficiency up to"
                            + " 100 %, and a surge that is not less than the watts");
        }
        return new OwnInverter(each, surge, efficiency);
    }

    private static List<String> phrases(String text) {
        List<String> phrases = new ArrayList<>();
        for (String each : text.split(",", -1)) {
            phrases.add(each.strip());
        }
        return phrases;
    }

    private void phrase(String phrase) throws QuantityException {
        Told what = kind(phrase);
        try {
            switch (what) {
                case SURGE -> surgeAmps = amps(phrase.substring(6));
                case IDLE -> idleAmps = amps(phrase.substring(5));
                case CHARGES -> charges(phrase);
                case EFFICIENCY -> efficiency = amount(phrase, Dimension.RATIO);
                case TIME -> hours = amount(phrase, Dimension.DURATION) / 3_600;
                case CURRENT_OR_POWER -> amps = amps(phrase);
            }
        } catch (QuantityException e) {
            // Of several loads nobody could tell which one the phrase belongs to.
            String message = String.valueOf(e.getMessage());
            throw message.contains(text)
                    ? e
                    : new QuantityException(message + ", in '" + Texts.shortened(text) + "'");
        }
        if (!told.add(what)) {
            // The last one would win in silence, and nobody would know which was meant.
            throw refusal(text, "the " + what.words() + " is told twice");
        }
    }

    private static Told kind(String phrase) {
        if (phrase.startsWith("surge ")) {
            return Told.SURGE;
        }
        if (phrase.startsWith("idle ")) {
            return Told.IDLE;
        }
        if (phrase.matches("\\S+ charges? of .*")) {
            return Told.CHARGES;
        }
        if (phrase.endsWith("%")) {
            return Told.EFFICIENCY;
        }
        return phrase.matches(".*(h|min|s|d)") ? Told.TIME : Told.CURRENT_OR_POWER;
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
        if (wattHours == 0 && told.contains(Told.EFFICIENCY)) {
            throw refusal(text, "a percentage goes with charges a day only");
        }
        if (wattHours == 0 && !told.contains(Told.CURRENT_OR_POWER)) {
            throw refusal(text, "a current or a power is missing");
        }
        if (wattHours == 0 && !told.contains(Told.TIME)) {
            throw refusal(text, "how long it is on each day is missing");
        }
        if (hours < 0 || hours > HOURS_A_DAY) {
            throw refusal(text, "a day has 24 h, and no time is below zero");
        }
        if (amps < 0 || amps > LARGEST_AMPS || idleAmps < 0 || idleAmps > LARGEST_AMPS) {
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
                        + Texts.shortened(text)
                        + "': "
                        + why);
    }
}
