package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.MILLIS;

import java.util.List;
import org.gaugebench.sim.units.RecordUnit;

/** Reads one load. */
final class LoadReader {
    static final long YEAR_MILLIS = 366L * 86_400_000;

    /** One amp or watt: the file says how many of them. */
    private static final long UNIT_AMOUNT = 1_000_000;

    private LoadReader() {}

    static LoadSpec read(Block block, String name, BatterySpec battery, ProfileFolder folder) {
        LoadSpec.Kind kind = LoadSpec.Kind.CONSTANT_CURRENT;
        long amount = 1;
        int stated = 0;
        for (LoadSpec.Kind each : LoadSpec.Kind.values()) {
            if (block.has(key(each))) {
                kind = each;
                amount = amount(block, key(each), each);
                stated++;
            }
        }
        boolean follows = block.has(ProfileBlock.KEY);
        ProfileSpec profile = ProfileBlock.ofLoad(block, folder);
        if (follows) {
            stated++;
            boolean power = profile != null && profile.figure() == ProfileSpec.Figure.POWER;
            kind = power ? LoadSpec.Kind.CONSTANT_POWER : LoadSpec.Kind.CONSTANT_CURRENT;
            amount = UNIT_AMOUNT;
        }
        if (stated != 1) {
            block.problem(
                    stated == 0 ? name : follows ? ProfileBlock.KEY : key(kind),
                    "load '"
                            + name
                            + "' needs exactly one of current, power, resistance, profile, such as"
                            + " 'current: 1.2 A'");
        }
        boolean on = block.either("switched", "on", "off", true);
        boolean cycles = block.hasAny("on-for", "every");
        long onMillis = block.quantity("on-for", MILLIS, 1, YEAR_MILLIS, 0);
        long period = block.quantity("every", MILLIS, 1, YEAR_MILLIS, 0);
        LoadTraits traits =
                new LoadTraits(
                        block.quantity("starts-after", MILLIS, 0, YEAR_MILLIS, 0),
                        LoadShapeReader.read(block),
                        ReturningReader.read(block, battery, onMillis, period),
                        profile);
        block.finish();
        if (follows && (cycles || traits.shape() != null || traits.startsAfterMillis() > 0)) {
            block.problem(
                    ProfileBlock.KEY,
                    "the times of a profile are those of the run, and it has a shape of its own;"
                            + " expected no on-for, every, starts-after, pulse-width, ripple or"
                            + " inrush beside it");
        }
        if (cycles && !(block.has("on-for") && block.has("every"))) {
            block.problem(
                    block.has("every") ? "every" : "on-for",
                    "a cycling load needs both, such as 'on-for: 10 min' and 'every: 30 min'");
        } else if (cycles && period > 0 && onMillis >= period) {
            block.problem("on-for", "'on-for' must be shorter than 'every', such as 10 min of 1 h");
        }
        return new LoadSpec(name, on, kind, amount, onMillis, period, traits);
    }

    /** The amount of a load in the unit of its kind. */
    static long amount(Block block, String key, LoadSpec.Kind kind) {
        long largest =
                switch (kind) {
                    case CONSTANT_CURRENT -> ChargerReader.LARGEST_MICROAMPS;
                    case CONSTANT_POWER -> 200_000_000_000L;
                    case CONSTANT_RESISTANCE -> 1_000_000_000_000L;
                };
        return block.quantity(key, unit(kind), 1, largest, 1);
    }

    static String key(LoadSpec.Kind kind) {
        return switch (kind) {
            case CONSTANT_CURRENT -> "current";
            case CONSTANT_POWER -> "power";
            case CONSTANT_RESISTANCE -> "resistance";
        };
    }

    static RecordUnit unit(LoadSpec.Kind kind) {
        return switch (kind) {
            case CONSTANT_CURRENT -> RecordUnit.MICROAMPS;
            case CONSTANT_POWER -> RecordUnit.MICROWATTS;
            case CONSTANT_RESISTANCE -> RecordUnit.MICROOHMS;
        };
    }

    static List<String> kinds() {
        return List.of("current", "power", "resistance");
    }
}
