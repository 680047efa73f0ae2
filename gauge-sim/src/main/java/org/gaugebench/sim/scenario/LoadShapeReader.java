package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.MILLIHERTZ;
import static org.gaugebench.sim.units.RecordUnit.MILLIS;
import static org.gaugebench.sim.units.RecordUnit.PARTS_PER_MILLION;

import java.util.List;
import org.jspecify.annotations.Nullable;

/** Reads and writes what a load does faster than a tick. */
final class LoadShapeReader {
    private static final List<String> KEYS = List.of("pulse-width", "ripple", "inrush");

    /** 100 kHz: the phase of a whole run still fits 64 bits. */
    private static final long HIGHEST_MILLIHERTZ = 100_000_000;

    private static final long WHOLE = Defaults.WHOLE;
    private static final long HALF = WHOLE / 2;
    private static final long LINE_MILLIHERTZ = 50_000;
    private static final long USUAL_PEAK = 6 * WHOLE;
    private static final long USUAL_DECAY_MILLIS = 200;

    private LoadShapeReader() {}

    static @Nullable LoadShape read(Block load) {
        List<String> stated = KEYS.stream().filter(load::has).toList();
        if (stated.isEmpty()) {
            return null;
        }
        if (stated.size() > 1) {
            load.problem(
                    stated.get(1),
                    "a load has at most one of pulse-width, ripple, inrush; take a load for each");
        }
        String key = stated.get(0);
        Block block = load.block(key, key);
        LoadShape shape =
                switch (key) {
                    case "pulse-width" -> pulseWidth(block);
                    case "ripple" -> ripple(block);
                    default -> inrush(block);
                };
        block.finish();
        return shape;
    }

    private static LoadShape pulseWidth(Block block) {
        block.require("frequency", "frequency: 200 Hz");
        return new LoadShape.PulseWidth(
                block.quantity("frequency", MILLIHERTZ, 1, HIGHEST_MILLIHERTZ, LINE_MILLIHERTZ),
                part(block, "duty", 1, WHOLE - 1, HALF),
                part(block, "phase", 0, WHOLE - 1, 0));
    }

    private static LoadShape ripple(Block block) {
        return new LoadShape.Ripple(
                block.quantity(
                        "line-frequency", MILLIHERTZ, 1, HIGHEST_MILLIHERTZ / 2, LINE_MILLIHERTZ),
                part(block, "depth", 1, WHOLE, WHOLE),
                part(block, "phase", 0, WHOLE - 1, 0));
    }

    private static LoadShape inrush(Block block) {
        return new LoadShape.Inrush(
                part(block, "peak", WHOLE + 1, 100 * WHOLE, USUAL_PEAK),
                block.quantity("time-constant", MILLIS, 1, 60_000, USUAL_DECAY_MILLIS));
    }

    private static long part(Block block, String key, long minimum, long maximum, long usual) {
        return block.quantity(key, PARTS_PER_MILLION, minimum, maximum, usual);
    }

    static void write(LoadShape shape, Lines lines) {
        if (shape instanceof LoadShape.PulseWidth it) {
            lines.open("pulse-width");
            lines.quantity("frequency", MILLIHERTZ, it.millihertz(), 0);
            lines.quantity("duty", PARTS_PER_MILLION, it.dutyPartsPerMillion(), HALF);
            lines.quantity("phase", PARTS_PER_MILLION, it.phasePartsPerMillion(), 0);
        } else if (shape instanceof LoadShape.Ripple it) {
            lines.open("ripple");
            lines.quantity("line-frequency", MILLIHERTZ, it.lineMillihertz(), LINE_MILLIHERTZ);
            lines.quantity("depth", PARTS_PER_MILLION, it.depthPartsPerMillion(), WHOLE);
            lines.quantity("phase", PARTS_PER_MILLION, it.phasePartsPerMillion(), 0);
        } else if (shape instanceof LoadShape.Inrush it) {
            lines.open("inrush");
            lines.quantity("peak", PARTS_PER_MILLION, it.peakPartsPerMillion(), USUAL_PEAK);
            lines.quantity("time-constant", MILLIS, it.timeConstantMillis(), USUAL_DECAY_MILLIS);
        }
        lines.close();
    }
}
