package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.MICROAMPS;
import static org.gaugebench.sim.units.RecordUnit.MICROVOLTS;
import static org.gaugebench.sim.units.RecordUnit.MICROVOLTS_PER_KELVIN;
import static org.gaugebench.sim.units.RecordUnit.MILLIS;
import static org.gaugebench.sim.units.RecordUnit.PARTS_PER_MILLION;

import java.util.List;

/** Reads one charger. */
final class ChargerReader {
    static final long LARGEST_MICROAMPS = 2_000_000_000;
    private static final long DAY_MILLIS = 86_400_000;

    private ChargerReader() {}

    static ChargerSpec read(
            Block block, String name, BatterySpec battery, long tickMillis, ProfileFolder folder) {
        ChargerSpec usual = Defaults.charger(name, battery);
        long absorption = voltage(block, "absorption", usual.absorptionMicrovolts());
        long floating = voltage(block, "float", usual.floatMicrovolts());
        ProfileSpec profile = ProfileBlock.ofCharger(block, folder);
        for (String other : List.of("sun", "wind")) {
            if (profile != null && block.has(other)) {
                block.problem(
                        other,
                        "a charger with a profile has no sun and no wind; take a charger for each");
            }
        }
        // What follows a file is limited by the file, unless something less is asked for.
        long usualLimit =
                profile == null
                        ? usual.currentLimitMicroamps()
                        : Math.max(1, profile.values().largestMicros());
        long limit = block.quantity("current-limit", MICROAMPS, 1, LARGEST_MICROAMPS, usualLimit);
        ChargerSpec charger =
                new ChargerSpec(
                        name,
                        block.either("switched", "on", "off", usual.switchedOn()),
                        absorption,
                        floating,
                        limit,
                        block.quantity(
                                "temperature-coefficient",
                                MICROVOLTS_PER_KELVIN,
                                -250_000,
                                0,
                                usual.microvoltsPerKelvin()),
                        block.quantityOrNone(
                                "float-below",
                                MICROAMPS,
                                1,
                                LARGEST_MICROAMPS,
                                usual.floatBelowMicroamps()),
                        block.quantityOrNone(
                                "absorption-limit",
                                MILLIS,
                                1_000,
                                365 * DAY_MILLIS,
                                usual.absorptionMillis()),
                        block.has("sun") ? sun(block.block("sun", "sun"), limit) : null,
                        ChargerTraitsReader.read(block, absorption, limit, tickMillis, profile));
        block.finish();
        if (floating > absorption) {
            block.problem(
                    block.has("float") ? "float" : "absorption",
                    "'float' must be at most 'absorption', such as 13.6 V under 14.4 V");
        }
        return charger;
    }

    private static ChargerSpec.SunSpec sun(Block block, long limit) {
        ChargerSpec.SunSpec usual = Defaults.sun(limit);
        ChargerSpec.SunSpec sun =
                new ChargerSpec.SunSpec(
                        block.quantity(
                                "peak", MICROAMPS, 1, LARGEST_MICROAMPS, usual.peakMicroamps()),
                        block.quantity("sunrise", MILLIS, 0, DAY_MILLIS, usual.sunriseMillis()),
                        block.quantity("sunset", MILLIS, 0, DAY_MILLIS, usual.sunsetMillis()),
                        part(block, "clouds", usual.cloudsPartsPerMillion()),
                        part(block, "cloud-depth", usual.cloudDepthPartsPerMillion()));
        block.finish();
        if (sun.sunsetMillis() <= sun.sunriseMillis()) {
            block.problem(
                    block.has("sunset") ? "sunset" : "sunrise",
                    "'sunset' must be after 'sunrise', such as 18 h after 6 h");
        }
        return sun;
    }

    private static long voltage(Block block, String key, long usual) {
        return block.quantity(key, MICROVOLTS, 1_000_000, 100_000_000, usual);
    }

    private static long part(Block block, String key, long usual) {
        return block.quantity(key, PARTS_PER_MILLION, 0, Defaults.WHOLE, usual);
    }
}
