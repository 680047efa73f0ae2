package org.gaugebench.sim.scenario;

import java.util.List;
import org.gaugebench.sim.logs.ProfileColumns;
import org.gaugebench.sim.logs.TimeProfile;
import org.gaugebench.sim.scenario.ProfileSpec.Figure;
import org.gaugebench.sim.units.RecordUnit;
import org.gaugebench.sim.units.Texts;
import org.jspecify.annotations.Nullable;

/** Reads and writes the block that lets a load, a charger or a voltage follow a CSV file. */
final class ProfileBlock {
    static final String KEY = "profile";
    static final String VOLTAGE_KEY = "voltage-profile";

    private static final long LARGEST_MICROWATTS = 200_000_000_000L;
    private static final long LARGEST_MICROVOLTS = 100_000_000;
    private static final long YEAR_MILLIS = 366L * 86_400_000;
    private static final String CONTENT = "0123456789abcdef";

    private ProfileBlock() {}

    /** Whose profile it is. */
    private enum Owner {
        LOAD,
        CHARGER,
        SENSOR;

        /** What can follow a file. */
        List<Figure> figures() {
            return switch (this) {
                case LOAD -> List.of(Figure.CURRENT, Figure.POWER);
                case CHARGER -> List.of(Figure.CURRENT);
                case SENSOR -> List.of(Figure.VOLTAGE);
            };
        }

        /** In which units. */
        List<String> units() {
            return switch (this) {
                case LOAD -> List.of("A", "mA", "uA", "W", "mW", "kW");
                case CHARGER -> List.of("A", "mA", "uA");
                case SENSOR -> List.of("V", "mV");
            };
        }
    }

    /** What a load draws; null where nothing is said of it, or nothing that can be used. */
    static @Nullable ProfileSpec ofLoad(Block load, ProfileFolder folder) {
        return read(load, KEY, Owner.LOAD, folder);
    }

    /** What a charger can give at most. */
    static @Nullable ProfileSpec ofCharger(Block charger, ProfileFolder folder) {
        return read(charger, KEY, Owner.CHARGER, folder);
    }

    /** The voltage that a sensor shows. */
    static @Nullable ProfileSpec ofVoltage(Block sensor, ProfileFolder folder) {
        return read(sensor, VOLTAGE_KEY, Owner.SENSOR, folder);
    }

    private static @Nullable ProfileSpec read(
            Block parent, String key, Owner owner, ProfileFolder folder) {
        if (!parent.has(key)) {
            return null;
        }
        Block block = parent.block(key, key);
        Figure figure = figure(block, owner);
        block.require("file", "file: house.csv");
        block.require("time", "time: time_s");
        block.require("unit", "unit: " + basicUnit(figure));
        String file = block.text("file", "house.csv");
        String time = block.text("time", "time_s");
        String value = block.text(key(figure), key(figure) + "_" + basicUnit(figure));
        String unit = block.choice("unit", owner.units(), it -> it, basicUnit(figure));
        if (!unit.endsWith(basicUnit(figure))) {
            block.valueProblem("unit", "a " + key(figure) + " has no unit '" + unit + "'");
        }
        boolean charge = owner == Owner.CHARGER;
        boolean bothWays = false;
        if (owner != Owner.SENSOR) {
            block.require("positive", "positive: " + (charge ? "charge" : "discharge"));
            charge = block.either("positive", "charge", "discharge", charge);
        }
        if (owner == Owner.LOAD) {
            bothWays = block.either("both-ways", "allowed", "refused", false);
            if (bothWays && figure == Figure.POWER) {
                block.problem("both-ways", "only a current flows both ways; expected 'current'");
            }
        }
        boolean straightLine =
                block.either("between-rows", "straight-line", "held", owner == Owner.SENSOR);
        boolean repeats = block.either("at-end", "repeats", "stops", false);
        long gap = block.quantityOrNone("longest-gap", RecordUnit.MILLIS, 1, YEAR_MILLIS, 0);
        String content = block.text("content", CONTENT);
        block.finish();
        if (file == null || time == null || value == null) {
            return null;
        }
        ProfileColumns columns = columns(time, value, figure, unit, owner, charge, bothWays, gap);
        TimeProfile values = folder.find(block, file, columns);
        if (values == null) {
            return null;
        }
        if (content != null && !content.equals(values.content())) {
            block.valueProblem(
                    "content",
                    "the figures of "
                            + file
                            + " are not those the scenario was written for: their content is "
                            + values.content()
                            + ", not "
                            + Texts.shortened(content)
                            + "; take the line out to accept them");
        }
        return new ProfileSpec(
                file,
                time,
                value,
                figure,
                unit,
                charge,
                straightLine,
                repeats,
                gap,
                bothWays,
                values);
    }

    private static Figure figure(Block block, Owner owner) {
        Figure figure = owner.figures().get(0);
        int stated = 0;
        for (Figure each : owner.figures()) {
            if (block.has(key(each))) {
                figure = each;
                stated++;
            }
        }
        if (stated != 1) {
            String keys =
                    String.join(", ", owner.figures().stream().map(ProfileBlock::key).toList());
            block.problem(
                    key(figure),
                    "a profile needs the name of one column of figures under "
                            + keys
                            + ", such as '"
                            + key(figure)
                            + ": "
                            + key(figure)
                            + "_"
                            + basicUnit(figure)
                            + "'");
        }
        return figure;
    }

    private static ProfileColumns columns(
            String time,
            String value,
            Figure figure,
            String unit,
            Owner owner,
            boolean charge,
            boolean bothWays,
            long gap) {
        long largest =
                switch (figure) {
                    case CURRENT -> ChargerReader.LARGEST_MICROAMPS;
                    case POWER -> LARGEST_MICROWATTS;
                    case VOLTAGE -> LARGEST_MICROVOLTS;
                };
        String otherWay =
                switch (owner) {
                    case LOAD ->
                            "flows into the battery, and a load draws; expected figures of one"
                                    + " sign, the other 'positive', or 'both-ways: allowed'";
                    case CHARGER ->
                            "flows out of the battery, and a charger gives; expected figures of"
                                    + " one sign, or the other 'positive'";
                    case SENSOR -> "is below zero; expected a voltage such as 12.6";
                };
        boolean turned = owner == Owner.LOAD ? charge : owner == Owner.CHARGER && !charge;
        return new ProfileColumns(
                time, value, unit, turned, bothWays ? -largest : 0, largest, otherWay, gap);
    }

    /**
     * Writes the block. For the digest, what is read counts and not how the file writes it down:
     * names of files and columns, unit and sign are left out, the content stands for the figures.
     */
    static void write(@Nullable ProfileSpec it, String key, Lines lines) {
        if (it == null) {
            return;
        }
        boolean sensor = it.figure() == Figure.VOLTAGE;
        lines.open(key);
        if (lines.isCanonical()) {
            lines.value("figure", key(it.figure()));
        } else {
            lines.value("file", Lines.quoted(it.file()));
            lines.value("time", Lines.quoted(it.timeColumn()));
            lines.value(key(it.figure()), Lines.quoted(it.valueColumn()));
            lines.value("unit", it.unit());
            if (!sensor) {
                lines.value("positive", it.positiveIsCharge() ? "charge" : "discharge");
            }
            if (it.bothWays()) {
                lines.value("both-ways", "allowed");
            }
            lines.quantityOrNone("longest-gap", RecordUnit.MILLIS, it.longestGapMillis(), 0);
        }
        lines.value(
                "between-rows",
                it.straightLine() ? "straight-line" : "held",
                sensor ? "straight-line" : "held");
        lines.value("at-end", it.repeats() ? "repeats" : "stops", "stops");
        lines.value("content", Lines.quoted(it.values().content()));
        lines.close();
    }

    static String key(Figure figure) {
        return switch (figure) {
            case CURRENT -> "current";
            case POWER -> "power";
            case VOLTAGE -> "voltage";
        };
    }

    private static String basicUnit(Figure figure) {
        return switch (figure) {
            case CURRENT -> "A";
            case POWER -> "W";
            case VOLTAGE -> "V";
        };
    }
}
