package org.gaugebench.sim.cli;

import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.List;
import org.gaugebench.core.settings.SettingsException;
import org.gaugebench.core.settings.SettingsProblem;
import org.gaugebench.sim.logs.Hold;
import org.gaugebench.sim.rig.ReplaySetup;
import org.gaugebench.sim.units.CapacityRating;
import org.gaugebench.sim.units.ConverterRange;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.RecordUnit;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/** Turns the quantities of a {@code replay} command line into a setup; collects what is wrong. */
final class ReplayArguments {
    private static final int FULL_PARTS_PER_MILLION = 1_000_000;
    private static final long NANOS_PER_MILLI = 1_000_000;

    /** 200 years: nanoseconds still fit 63 bits. */
    private static final long LONGEST_GAP_MILLIS = 200L * 366 * 86_400_000;

    private final List<String> wrong;
    private final String prefix;

    /** Messages go into the list. */
    ReplayArguments(List<String> wrong) {
        this(wrong, "--");
    }

    /** The same where the options of a gap and of a zone begin otherwise. */
    ReplayArguments(List<String> wrong, String prefix) {
        this.wrong = wrong;
        this.prefix = prefix;
    }

    /** One way to read a text. */
    private interface Parser<T> {
        T parse(String text) throws QuantityException;
    }

    /** The setup, or null with a message in the list. */
    @Nullable ReplaySetup setup(
            String shunt, String adc, String capacity, String start, String tick, Hold hold) {
        ShuntRating shuntRating = read("--shunt", shunt, ShuntRating::parse);
        ConverterRange range = read("--adc", adc, ConverterRange::parse);
        Long milliampHours =
                read(
                        "--capacity",
                        capacity,
                        t -> CapacityRating.parse(t, RecordUnit.MILLIAMP_HOURS));
        Long parts = read("--start", start, t -> Quantity.parse(t, RecordUnit.PARTS_PER_MILLION));
        Long millis = read("--tick", tick, t -> Quantity.parse(t, RecordUnit.MILLIS));
        if (parts != null && (parts < 0 || parts > FULL_PARTS_PER_MILLION)) {
            wrong.add("--start: expected 0 % to 100 %, but found '" + start + "'");
        }
        if (millis != null && (millis < 1 || millis > ReplaySetup.LONGEST_TICK_MILLIS)) {
            wrong.add("--tick: expected 1 ms to 60 s, but found '" + tick + "'");
        }
        if (shuntRating != null && shuntRating.microamps() % 1_000 != 0) {
            wrong.add("--shunt: expected a whole number of mA, but found '" + shunt + "'");
        }
        if (!wrong.isEmpty()
                || shuntRating == null
                || range == null
                || milliampHours == null
                || parts == null
                || millis == null) {
            return null;
        }
        return checked(
                new ReplaySetup(shuntRating, range, milliampHours, parts, millis.intValue(), hold));
    }

    private @Nullable ReplaySetup checked(ReplaySetup setup) {
        try {
            setup.settings();
            return setup;
        } catch (SettingsException e) {
            for (SettingsProblem problem : e.problems()) {
                wrong.add(option(problem) + ": " + problem.rule() + ", but is " + problem.value());
            }
            return null;
        }
    }

    private static String option(SettingsProblem problem) {
        return switch (problem.setting()) {
            case SHUNT_RATED_CURRENT, SHUNT_RATED_DROP -> "--shunt: " + problem.setting().key();
            case SHUNT_CONVERTER_BITS, SHUNT_FULL_SCALE -> "--adc: " + problem.setting().key();
            case CAPACITY -> "--capacity";
            default -> problem.setting().key();
        };
    }

    /** Nanoseconds; 0 with a message in the list. */
    long gapNanos(String gap) {
        Long millis = read(prefix + "gap", gap, t -> Quantity.parse(t, RecordUnit.MILLIS));
        if (millis == null) {
            return 0;
        }
        if (millis <= 0 || millis > LONGEST_GAP_MILLIS) {
            wrong.add(
                    prefix
                            + "gap: expected a time above zero such as 15 min, but found '"
                            + gap
                            + "'");
            return 0;
        }
        return millis * NANOS_PER_MILLI;
    }

    /** The zone; null for none given, or with a message in the list. */
    @Nullable ZoneId zone(@Nullable String zone) {
        if (zone == null) {
            return null;
        }
        try {
            return ZoneId.of(zone);
        } catch (DateTimeException e) {
            wrong.add(
                    prefix
                            + "zone: expected a time zone such as Europe/Amsterdam or UTC, but"
                            + " found '"
                            + zone
                            + "'");
            return null;
        }
    }

    private <T> @Nullable T read(String option, String text, Parser<T> parser) {
        try {
            return parser.parse(text);
        } catch (QuantityException e) {
            wrong.add(option + ": " + e.getMessage());
            return null;
        }
    }
}
