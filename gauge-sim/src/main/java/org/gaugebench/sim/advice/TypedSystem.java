package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.units.CapacityRating;
import org.gaugebench.sim.units.ConverterRange;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.RecordUnit;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/**
 * A small system as its owner typed it, before anything of it is read. Null is what was not told.
 *
 * @param voltage such as "12 V"
 * @param chemistry such as "lead-acid-agm"
 * @param capacity such as "100 Ah" or "100 Ah @ 20 h"
 * @param usable part of it that may be drawn, such as "50 %"
 * @param loads each as {@link OwnWords#load} reads it
 * @param inverter as {@link OwnWords#inverter} reads it
 * @param chargers each a current such as "20 A"
 * @param coldest such as "5 °C"
 * @param shunt such as "100 A / 75 mV"
 * @param converter such as "20 bit, 100 mV"
 */
public record TypedSystem(
        @Nullable String voltage,
        @Nullable String chemistry,
        @Nullable String capacity,
        @Nullable String usable,
        List<String> loads,
        @Nullable String inverter,
        List<String> chargers,
        @Nullable String coldest,
        @Nullable String shunt,
        @Nullable String converter) {

    private static final String VOLTS = "12 V, 24 V, 36 V or 48 V";
    private static final String USABLE = "usable";

    private static final TypedFields.Limits CHARGER =
            new TypedFields.Limits(
                    RecordUnit.MICROAMPS, 0, 10_000_000_000L, "0 A to 10000 A, such as \"20 A\"");
    private static final TypedFields.Limits COLDEST =
            new TypedFields.Limits(
                    RecordUnit.MILLICELSIUS, -60_000, 80_000, "-60 °C to 80 °C, such as \"-5 °C\"");
    private static final TypedFields.Limits PART =
            new TypedFields.Limits(
                    RecordUnit.PARTS_PER_MILLION,
                    100_000,
                    1_000_000,
                    "10 % to 100 %, such as \"80 %\"");

    /** Keeps its own lists. */
    public TypedSystem {
        loads = List.copyOf(loads);
        chargers = List.copyOf(chargers);
    }

    /** Reads a system's voltage. */
    public static int volts(String text) throws QuantityException {
        long microvolts = Quantity.parse(text, RecordUnit.MICROVOLTS);
        if (microvolts < 12_000_000 || microvolts > 48_000_000 || microvolts % 12_000_000 != 0) {
            throw new QuantityException("expected " + VOLTS + ", but found '" + text + "'");
        }
        return (int) (microvolts / 1_000_000);
    }

    /**
     * The system.
     *
     * @param fields is told of everything that is wrong or missing
     * @return null if so much is wrong that there is none
     */
    public @Nullable OwnSystem read(TypedFields fields) {
        Integer volts =
                fields.needed(
                        "voltage",
                        voltage,
                        "the battery's voltage",
                        "\"12 V\"",
                        TypedSystem::volts);
        Chemistry kind =
                fields.needed(
                        "chemistry",
                        chemistry,
                        "what battery it is",
                        "lead-acid-agm",
                        TypedFields::chemistry);
        Long microampHours =
                fields.needed(
                        "capacity",
                        capacity,
                        "what is printed on the battery",
                        "\"100 Ah\"",
                        it -> CapacityRating.parse(it, RecordUnit.MICROAMP_HOURS));
        if (microampHours != null && (microampHours < 100_000 || microampHours > 10_000_000_000L)) {
            fields.wrong(
                    "capacity", 0, "expected 0.1 Ah to 10000 Ah, but found '" + capacity + "'");
        }
        Double part =
                usable == null ? null : fields.limited(USABLE, 0, usable, PART, 1_000_000) / 1e6;
        OwnInverter own = fields.optional("inverter", inverter, OwnWords::inverter);
        double chargerAmps = 0;
        for (int i = 0; i < chargers.size(); i++) {
            chargerAmps += fields.limited("charger", i, chargers.get(i), CHARGER, 0) / 1e6;
        }
        Double cold =
                coldest == null ? null : fields.limited("coldest", 0, coldest, COLDEST, 0) / 1e3;
        ShuntRating rating = fields.optional("shunt", shunt, ShuntRating::parse);
        ConverterRange range = fields.optional("adc", converter, ConverterRange::parse);
        List<OwnLoad> owns = loads(volts == null ? 12 : volts, own, fields);
        if (volts == null || kind == null || microampHours == null) {
            return null;
        }
        return new OwnSystem(
                volts,
                kind,
                microampHours / 1e6,
                owns,
                own,
                chargerAmps,
                cold,
                rating,
                range,
                part);
    }

    private List<OwnLoad> loads(int volts, @Nullable OwnInverter own, TypedFields fields) {
        double efficiency = own == null ? OwnInverter.USUAL_EFFICIENCY : own.efficiency();
        List<OwnLoad> owns = new ArrayList<>();
        Set<String> names = new HashSet<>();
        for (int i = 0; i < loads.size(); i++) {
            OwnLoad load =
                    fields.optional(
                            "load", i, loads.get(i), it -> OwnWords.load(it, volts, efficiency));
            if (load == null) {
                continue;
            }
            if (!names.add(load.name())) {
                fields.wrong(
                        "load",
                        i,
                        "'%s' is there twice; expected another name such as \"%s 2\""
                                .formatted(load.name(), load.name()));
            }
            if (load.byInverter() && inverter == null) {
                fields.missing(
                        "inverter",
                        "what runs '%s'".formatted(load.name()),
                        OwnWords.INVERTER_EXAMPLE);
            }
            owns.add(load);
        }
        return owns;
    }
}
