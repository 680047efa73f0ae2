package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.MICROAMPS;
import static org.gaugebench.sim.units.RecordUnit.MILLIS;
import static org.gaugebench.sim.units.RecordUnit.PARTS_PER_MILLION;

import org.gaugebench.sim.scenario.ChargerTraits.WindSpec;
import org.jspecify.annotations.Nullable;

/** Reads and writes the wind behind a charger. */
final class WindReader {
    private static final long HOUR_MILLIS = 3_600_000;
    private static final long USUAL_MEAN = Defaults.WHOLE / 2;
    private static final long USUAL_GUSTINESS = Defaults.WHOLE / 5;
    private static final long USUAL_GUST_MILLIS = 10_000;

    private WindReader() {}

    /**
     * Reads the block "wind" of a charger that has one.
     *
     * @param limitMicroamps the charger's, which is the usual peak
     */
    static @Nullable WindSpec read(Block charger, long limitMicroamps) {
        if (!charger.has("wind")) {
            return null;
        }
        if (charger.has("sun")) {
            charger.problem(
                    "wind",
                    "a charger has 'sun' or 'wind' behind it; expected a charger for each, such as"
                            + " 'panel: {sun: {peak: 6 A}}' and 'turbine: {wind: {peak: 15 A}}'");
        }
        Block block = charger.block("wind", "wind");
        WindSpec wind =
                new WindSpec(
                        block.quantity(
                                "peak",
                                MICROAMPS,
                                1,
                                ChargerReader.LARGEST_MICROAMPS,
                                limitMicroamps),
                        block.quantity("mean", PARTS_PER_MILLION, 1, Defaults.WHOLE, USUAL_MEAN),
                        block.quantity(
                                "gustiness",
                                PARTS_PER_MILLION,
                                0,
                                Defaults.WHOLE / 2,
                                USUAL_GUSTINESS),
                        block.quantity("gust-time", MILLIS, 1_000, HOUR_MILLIS, USUAL_GUST_MILLIS));
        block.finish();
        return wind;
    }

    static void write(@Nullable WindSpec it, long limitMicroamps, Lines lines) {
        if (it == null) {
            return;
        }
        lines.open("wind");
        lines.quantity("peak", MICROAMPS, it.peakMicroamps(), limitMicroamps);
        lines.quantity("mean", PARTS_PER_MILLION, it.meanPartsPerMillion(), USUAL_MEAN);
        lines.quantity(
                "gustiness", PARTS_PER_MILLION, it.gustinessPartsPerMillion(), USUAL_GUSTINESS);
        lines.quantity("gust-time", MILLIS, it.gustMillis(), USUAL_GUST_MILLIS);
        lines.close();
    }
}
