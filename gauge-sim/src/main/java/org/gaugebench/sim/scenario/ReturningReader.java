package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.MICROAMPS;
import static org.gaugebench.sim.units.RecordUnit.MICROVOLTS;
import static org.gaugebench.sim.units.RecordUnit.MILLIS;

import org.gaugebench.sim.scenario.LoadTraits.Returning;
import org.gaugebench.sim.units.QuantityFormat;
import org.jspecify.annotations.Nullable;

/** Reads and writes what a load gives back in a part of its cycle. */
final class ReturningReader {
    private static final String KEY = "returns";

    private ReturningReader() {}

    /**
     * Reads the block "returns" of a load that has one.
     *
     * @param onMillis length of the on part, after which the return usually begins
     * @param periodMillis length of the cycle; 0 for a load that does not cycle
     */
    static @Nullable Returning read(
            Block load, BatterySpec battery, long onMillis, long periodMillis) {
        if (!load.has(KEY)) {
            return null;
        }
        if (periodMillis == 0) {
            load.problem(
                    KEY,
                    "charge comes back in a part of a cycle; expected 'on-for: 6 s' and"
                            + " 'every: 1 min' beside it");
        }
        Block block = load.block(KEY, KEY);
        block.require("current", "current: 40 A");
        block.require("for", "for: 3 s");
        Returning returning =
                new Returning(
                        block.quantity("current", MICROAMPS, 1, ChargerReader.LARGEST_MICROAMPS, 1),
                        block.quantity("for", MILLIS, 1, LoadReader.YEAR_MILLIS, 1),
                        block.quantity("after", MILLIS, 0, LoadReader.YEAR_MILLIS, onMillis),
                        block.quantity(
                                "voltage-limit",
                                MICROVOLTS,
                                1_000_000,
                                100_000_000,
                                usualLimit(battery)));
        block.finish();
        if (periodMillis > 0 && returning.afterMillis() + returning.forMillis() > periodMillis) {
            block.problem(
                    block.has("after") ? "after" : "for",
                    "what comes back has to end within the cycle; expected 'after' and 'for'"
                            + " together at most 'every', such as 3 s after 6 s of 1 min");
        }
        return returning;
    }

    private static long usualLimit(BatterySpec battery) {
        return Defaults.charger("", battery).absorptionMicrovolts();
    }

    static void write(LoadSpec load, BatterySpec battery, Lines lines) {
        Returning it = load.traits().returning();
        if (it == null) {
            return;
        }
        lines.open(KEY);
        lines.value("current", QuantityFormat.format(it.microamps(), MICROAMPS));
        lines.value("for", ScenarioWriter.time(it.forMillis()));
        lines.quantity("after", MILLIS, it.afterMillis(), load.onMillis());
        lines.quantity("voltage-limit", MICROVOLTS, it.limitMicrovolts(), usualLimit(battery));
        lines.close();
    }
}
