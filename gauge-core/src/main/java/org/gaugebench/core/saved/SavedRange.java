package org.gaugebench.core.saved;

import org.gaugebench.core.port.Trust;
import org.gaugebench.core.sense.ShuntAdjustment;
import org.gaugebench.core.settings.Setting;

/**
 * What a core can have written into a field (M7). A right check word proves only that the bytes are
 * those that somebody wrote: a fault in that somebody, or another maker's record, may hold any
 * figure, and a sum near the end of its width would wrap some ticks later.
 *
 * <p>The ranges hold for all settings, so that a record is judged alike before and after a change
 * of settings; what the settings of now narrow further is clamped where it is taken over. Each
 * range is closed: from figures within it a gauge comes only to figures within it, because every
 * sum saturates at its end. So no core refuses its own record.
 *
 * <p>No record of Java: what the compiler adds to one allocates.
 */
final class SavedRange {
    private static final long NANOCOULOMBS_PER_MILLIAMP_HOUR = 3_600_000_000L;

    /** Where the error band stops to add time up: 17 years. */
    private static final long LONGEST_BAND_MILLIS = 1L << 39;

    /** And charge: {@code FixedMath.saturatingAdd}. */
    private static final long LARGEST_BAND_NANOCOULOMBS = 1L << 62;

    static final SavedRange CAPACITY =
            new SavedRange(
                    "nC",
                    Setting.CAPACITY.minimum() * NANOCOULOMBS_PER_MILLIAMP_HOUR,
                    Setting.CAPACITY.maximum() * NANOCOULOMBS_PER_MILLIAMP_HOUR);

    /** The count, and what is counted towards a part of the capacity. */
    static final SavedRange CHARGE = new SavedRange("nC", 0, CAPACITY.highestValue);

    /** Sums over a life saturate at the end of their width. */
    static final SavedRange CHARGE_SUM = new SavedRange("nC", 0, Long.MAX_VALUE);

    static final SavedRange ENERGY_SUM = new SavedRange("uJ", 0, Long.MAX_VALUE);
    static final SavedRange LIFETIME = new SavedRange("ms", 0, Long.MAX_VALUE);
    static final SavedRange TIMES = new SavedRange("times", 0, Integer.MAX_VALUE);

    static final SavedRange BAND_TIME = new SavedRange("ms", 0, LONGEST_BAND_MILLIS);
    static final SavedRange BAND_WARM_TIME = new SavedRange("ms/256", 0, LONGEST_BAND_MILLIS << 8);
    static final SavedRange BAND_SUM = new SavedRange("nC", 0, LARGEST_BAND_NANOCOULOMBS);
    static final SavedRange BAND_NET =
            new SavedRange("nC", -LARGEST_BAND_NANOCOULOMBS, LARGEST_BAND_NANOCOULOMBS);

    static final SavedRange PART = new SavedRange("ppm", 0, 1_000_000);
    static final SavedRange EARLY_END = new SavedRange("ppm", -1, 1_000_000);

    /** Where D7's time saturates. */
    static final SavedRange MINUTES = new SavedRange("min", 0, 1L << 40);

    static final SavedRange ZERO_ADJUSTMENT =
            new SavedRange(
                    "counts/256",
                    -ShuntAdjustment.LARGEST_ZERO_COUNTS_Q8,
                    ShuntAdjustment.LARGEST_ZERO_COUNTS_Q8);

    static final SavedRange SPAN_ADJUSTMENT =
            new SavedRange(
                    "ppm",
                    -ShuntAdjustment.LARGEST_GAIN_PARTS_PER_MILLION,
                    ShuntAdjustment.LARGEST_GAIN_PARTS_PER_MILLION);

    /** Sixteen bits of what a floor cut off. */
    static final SavedRange REMAINDER = new SavedRange("nC/65536", 0, 65_535);

    /** C5: 110 % of the largest capacity. */
    static final SavedRange MEASURED_CAPACITY =
            new SavedRange("mAh", 0, Setting.CAPACITY.maximum() / 10 * 11);

    /**
     * C2 asks for at least five hours in at most three days: 14.4 times the largest capacity over
     * 0.8 are 180,000,000.
     */
    static final SavedRange EVIDENCE_CAPACITY = new SavedRange("mAh", 0, 180_000_000);

    /**
     * C3 asks for more in than out, and divides by whole millionths of at least 30 % of the
     * smallest capacity, 1.08e11 nC: at most 1,000,000 and a hundred-thousandth of that.
     */
    static final SavedRange EVIDENCE_EFFICIENCY = new SavedRange("ppm", 0, 1_000_010);

    static final SavedRange VOLTAGE =
            new SavedRange("uV", 0, Setting.VOLTAGE_FULL_SCALE.maximum() * 1_000);

    /** Symmetric, as the core narrows: {@code FixedMath.clampToInt}. */
    static final SavedRange CURRENT = new SavedRange("uA", -Integer.MAX_VALUE, Integer.MAX_VALUE);

    static final SavedRange TRUST_CODE = new SavedRange("code", 0, Trust.values().length - 1);

    /** Any byte: all but 0 read as true. */
    static final SavedRange FLAG = new SavedRange("flag", Byte.MIN_VALUE, Byte.MAX_VALUE);

    boolean holds(long value) {
        return value >= lowestValue && value <= highestValue;
    }

    private final String unit;
    private final long lowestValue;
    private final long highestValue;

    private SavedRange(String unit, long lowestValue, long highestValue) {
        this.unit = unit;
        this.lowestValue = lowestValue;
        this.highestValue = highestValue;
    }

    /** An SI symbol or a plain word. */
    String unit() {
        return unit;
    }

    /** The lowest figure, in that unit. */
    long lowestValue() {
        return lowestValue;
    }

    /** The highest. */
    long highestValue() {
        return highestValue;
    }
}
