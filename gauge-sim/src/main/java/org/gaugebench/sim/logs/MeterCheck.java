package org.gaugebench.sim.logs;

import java.util.Locale;
import org.gaugebench.sim.units.Dimension;
import org.jspecify.annotations.Nullable;

/** A check with a meter whose two figures an owner writes down: the meter's and the gauge's. */
public enum MeterCheck {
    /** Everything off: hours by the clock, and by how many amp-hours the gauge moved. */
    ZERO_TEST("zero test", Dimension.DURATION, "24 h", Dimension.CHARGE, "-0.1 Ah"),
    /** A meter in the gauge's supply wire. */
    OWN_CURRENT("own current", Dimension.CURRENT, "12 mA", null, ""),
    /** Everything off: both should be nothing. */
    SCALE_AT_REST("amps at rest", Dimension.CURRENT, "0 A", Dimension.CURRENT, "0.01 A"),
    /** A current of 20 to 50 of the gauge's smallest steps. */
    SCALE_SMALL("amps, small", Dimension.CURRENT, "-2.1 A", Dimension.CURRENT, "-2.0 A"),
    /** A current as in daily use. */
    SCALE_WORKING("amps, in use", Dimension.CURRENT, "-9.8 A", Dimension.CURRENT, "-9.9 A"),
    /** Volts on the battery's posts and on the gauge's screen, the load on. */
    VOLTS_UNDER_LOAD("volts, load on", Dimension.VOLTAGE, "12.41 V", Dimension.VOLTAGE, "12.30 V"),
    /** From full to empty: what the gauge counted. */
    CAPACITY_TEST("capacity test", null, "", Dimension.CHARGE, "92 Ah");

    private final String words;
    private final @Nullable Dimension byMeter;
    private final String meterExample;
    private final @Nullable Dimension byGauge;
    private final String gaugeExample;

    MeterCheck(
            String words,
            @Nullable Dimension byMeter,
            String meterExample,
            @Nullable Dimension byGauge,
            String gaugeExample) {
        this.words = words;
        this.byMeter = byMeter;
        this.meterExample = meterExample;
        this.byGauge = byGauge;
        this.gaugeExample = gaugeExample;
    }

    /** As it stands in a file. */
    public String key() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** For people. */
    public String words() {
        return words;
    }

    /** What the meter's (or the clock's) column holds; null for nothing. */
    public @Nullable Dimension byMeter() {
        return byMeter;
    }

    /** A figure of the meter's column; empty where it holds none. */
    public String meterExample() {
        return meterExample;
    }

    /** What the gauge's column holds; null for nothing. */
    public @Nullable Dimension byGauge() {
        return byGauge;
    }

    /** A figure of the gauge's column; empty where it holds none. */
    public String gaugeExample() {
        return gaugeExample;
    }
}
