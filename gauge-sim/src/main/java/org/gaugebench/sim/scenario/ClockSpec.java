package org.gaugebench.sim.scenario;

import org.gaugebench.sim.units.RecordUnit;

/**
 * The millisecond counter of a gauge's machine.
 *
 * @param errorPartsPerMillion how much too fast it runs, signed
 * @param startMillis what it shows at power-up, 0 to 2^32 - 1
 * @param jitterMillis each sample's time is read up to so much too early or too late
 */
public record ClockSpec(long errorPartsPerMillion, long startMillis, long jitterMillis) {
    /** A clock that is right and begins at zero. */
    public static final ClockSpec USUAL = new ClockSpec(0, 0, 0);

    private static final long LAST_MILLIS = 0xFFFF_FFFFL;
    private static final long LARGEST_ERROR = 500_000;
    private static final long LARGEST_JITTER_MILLIS = 60_000;

    static ClockSpec read(Block gauge, ClockSpec usual) {
        if (!gauge.has("clock")) {
            return usual;
        }
        Block block = gauge.block("clock", "clock");
        ClockSpec read =
                new ClockSpec(
                        error(block, "error", 0),
                        block.quantity("start", RecordUnit.MILLIS, 0, LAST_MILLIS, 0),
                        jitter(block, "jitter", 0));
        block.finish();
        return read;
    }

    static long error(Block block, String key, long usual) {
        return block.quantity(
                key, RecordUnit.PARTS_PER_MILLION, -LARGEST_ERROR, LARGEST_ERROR, usual);
    }

    static long jitter(Block block, String key, long usual) {
        return block.quantity(key, RecordUnit.MILLIS, 0, LARGEST_JITTER_MILLIS, usual);
    }

    /** Writes the block where it is not as usual. */
    void write(Lines lines, ClockSpec usual) {
        if (equals(usual)) {
            return;
        }
        lines.open("clock");
        lines.quantity("error", RecordUnit.PARTS_PER_MILLION, errorPartsPerMillion, 0);
        // The unit that the counter has, so that a start near its end reads as what it is.
        lines.value("start", startMillis + " ms", "0 ms");
        lines.quantity("jitter", RecordUnit.MILLIS, jitterMillis, 0);
        lines.close();
    }
}
