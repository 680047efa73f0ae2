package org.gaugebench.sim.advice;

import java.math.RoundingMode;
import java.util.List;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.units.Dimension;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.RecordUnit;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/**
 * What an owner typed of the settings of a gauge, before anything of it is read. Null and
 * "not-known" are what nobody knows.
 *
 * @param chemistry such as "lead-acid-agm"
 * @param capacity such as "100 Ah"
 * @param shunt such as "100 A / 75 mV"
 * @param fullVolts such as "14.2 V"; "0 V" for never
 * @param fullAmps such as "2 A" or "2 %"
 * @param fullMinutes such as "30 min"
 * @param keptBack such as "50 %"
 * @param chargerVolts each such as "14.4 V"
 */
public record TypedSettings(
        @Nullable String chemistry,
        @Nullable String capacity,
        @Nullable String shunt,
        @Nullable String fullVolts,
        @Nullable String fullAmps,
        @Nullable String fullMinutes,
        @Nullable String keptBack,
        List<String> chargerVolts) {

    /** Nothing is typed at all. */
    public static final TypedSettings NOTHING =
            new TypedSettings(null, null, null, null, null, null, null, List.of());

    private static final String NOT_KNOWN = "not-known";
    private static final TypedFields.Limits CHARGER =
            new TypedFields.Limits(
                    RecordUnit.MICROVOLTS,
                    1_000_000,
                    100_000_000,
                    "1 V to 100 V, such as \"14.4 V\", or not-known");

    /** Keeps its own list. */
    public TypedSettings {
        chargerVolts = List.copyOf(chargerVolts);
    }

    /** Reads a current, or a part of the amp-hours, and says which by its dimension. */
    public static Quantity fullAmps(String text) throws QuantityException {
        return Quantity.parse(
                text, text.strip().endsWith("%") ? Dimension.RATIO : Dimension.CURRENT);
    }

    /**
     * The settings.
     *
     * @param fields is told of everything that is wrong
     * @param printedAmpHours stand for the amp-hours that the gauge is told, where nothing is said
     * @param nominalVolts of the system that the chargers charge; 0 for not known
     */
    public SettingsTold read(TypedFields fields, double printedAmpHours, int nominalVolts) {
        Chemistry kind =
                isKnown(chemistry)
                        ? fields.optional("typed-chemistry", chemistry, TypedFields::chemistry)
                        : null;
        Long milliampHours =
                setting(
                        fields,
                        "typed-capacity",
                        capacity,
                        Setting.CAPACITY,
                        RecordUnit.MILLIAMP_HOURS,
                        "0.1 Ah to 10000 Ah");
        ShuntRating rating =
                isKnown(shunt) ? fields.optional("typed-shunt", shunt, this::settable) : null;
        Long volts =
                setting(
                        fields,
                        "full-volts",
                        fullVolts,
                        Setting.ABSORPTION,
                        RecordUnit.MILLIVOLTS,
                        "0 V to 95 V");
        Long minutes =
                setting(
                        fields,
                        "full-minutes",
                        fullMinutes,
                        Setting.HOLD,
                        RecordUnit.MINUTES,
                        "1 min to 600 min");
        Long kept =
                setting(
                        fields,
                        "kept-back",
                        keptBack,
                        Setting.KEPT_BACK,
                        RecordUnit.PARTS_PER_MILLION,
                        "0 % to 90 %");
        double ampHours = milliampHours == null ? printedAmpHours : milliampHours / 1e3;
        return new SettingsTold(
                kind,
                milliampHours,
                rating,
                volts,
                taper(fields, ampHours),
                minutes,
                kept,
                highest(fields, nominalVolts));
    }

    private static boolean isKnown(@Nullable String text) {
        return text != null && !text.equals(NOT_KNOWN);
    }

    private static @Nullable Long setting(
            TypedFields fields,
            String field,
            @Nullable String text,
            Setting setting,
            RecordUnit unit,
            String expected) {
        if (!isKnown(text)) {
            return null;
        }
        // What is added to the volts still has to fit into the setting.
        long most = setting == Setting.ABSORPTION ? 95_000 : setting.maximum();
        return fields.limited(
                field,
                0,
                text,
                new TypedFields.Limits(unit, setting.minimum(), most, expected + ", or not-known"),
                setting.minimum());
    }

    private ShuntRating settable(String text) throws QuantityException {
        ShuntRating read = ShuntRating.parse(text);
        boolean fits =
                read.microamps() % 1_000 == 0
                        && read.microamps() / 1_000 >= Setting.SHUNT_RATED_CURRENT.minimum()
                        && read.microamps() / 1_000 <= Setting.SHUNT_RATED_CURRENT.maximum()
                        && read.microvolts() >= Setting.SHUNT_RATED_DROP.minimum()
                        && read.microvolts() <= Setting.SHUNT_RATED_DROP.maximum();
        if (!fits) {
            throw new QuantityException(
                    "expected 1 A to 2000 A and 10 mV to 300 mV, such as 100 A / 75 mV, but found '"
                            + text
                            + "'");
        }
        return read;
    }

    private @Nullable Long taper(TypedFields fields, double ampHours) {
        String text = fullAmps;
        if (!isKnown(text)) {
            return null;
        }
        Quantity told = fields.optional("full-amps", text, TypedSettings::fullAmps);
        if (told == null) {
            return null;
        }
        double part = told.amount().setScale(9, RoundingMode.HALF_EVEN).doubleValue();
        long parts =
                StrictMath.round(
                        1e6 * (told.dimension() == Dimension.RATIO ? part : part / ampHours));
        if (parts < Setting.TAPER.minimum() || parts > Setting.TAPER.maximum()) {
            fields.wrong(
                    "full-amps",
                    0,
                    "expected 0.1 % to 20 % of the amp-hours, such as 2 % or 2 A of 100 Ah, but"
                            + " found '"
                            + text
                            + "'");
        }
        return parts;
    }

    /**
     * The highest volts of all chargers. None charges with less than the system's volts, or with
     * more than half as much again: the strongest equalising charge of flooded lead-acid stays
     * below 1.4 times (common practice, no source).
     */
    private @Nullable Long highest(TypedFields fields, int nominalVolts) {
        TypedFields.Limits limits =
                nominalVolts == 0
                        ? CHARGER
                        : new TypedFields.Limits(
                                RecordUnit.MICROVOLTS,
                                nominalVolts * 1_000_000L,
                                nominalVolts * 1_500_000L,
                                "%d V to %d V on a system of %d V, or not-known"
                                        .formatted(
                                                nominalVolts, nominalVolts * 3 / 2, nominalVolts));
        Long highest = null;
        for (int i = 0; i < chargerVolts.size(); i++) {
            if (isKnown(chargerVolts.get(i))) {
                long each = fields.limited("charger-volts", i, chargerVolts.get(i), limits, 0);
                highest = highest == null ? each : Math.max(highest, each);
            }
        }
        return highest;
    }
}
