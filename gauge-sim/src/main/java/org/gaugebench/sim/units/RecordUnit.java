package org.gaugebench.sim.units;

import java.math.BigDecimal;

/** The integer units that records and settings hold quantities in. */
public enum RecordUnit {
    /** 1 uA. */
    MICROAMPS(Dimension.CURRENT, "1 uA", "0.000001"),
    /** 1 mA. */
    MILLIAMPS(Dimension.CURRENT, "1 mA", "0.001"),
    /** 1 nV. */
    NANOVOLTS(Dimension.VOLTAGE, "1 nV", "0.000000001"),
    /** 1 uV. */
    MICROVOLTS(Dimension.VOLTAGE, "1 uV", "0.000001"),
    /** 1 mV. */
    MILLIVOLTS(Dimension.VOLTAGE, "1 mV", "0.001"),
    /** 1 uOhm. */
    MICROOHMS(Dimension.RESISTANCE, "1 uOhm", "0.000001"),
    /** 1 uW. */
    MICROWATTS(Dimension.POWER, "1 uW", "0.000001"),
    /** 1 uAh. */
    MICROAMP_HOURS(Dimension.CHARGE, "1 uAh", "0.000001"),
    /** 1 mAh. */
    MILLIAMP_HOURS(Dimension.CHARGE, "1 mAh", "0.001"),
    /** 1 ms. */
    MILLIS(Dimension.DURATION, "1 ms", "0.001"),
    /** 1 s. */
    SECONDS(Dimension.DURATION, "1 s", "1"),
    /** 1 min. */
    MINUTES(Dimension.DURATION, "1 min", "60"),
    /** 1 h. */
    HOURS(Dimension.DURATION, "1 h", "3600"),
    /** 1 d. */
    DAYS(Dimension.DURATION, "1 d", "86400"),
    /** 1/1000 °C. */
    MILLICELSIUS(Dimension.TEMPERATURE, "0.001 °C", "0.001"),
    /** 1/1000 K. */
    MILLIKELVIN(Dimension.TEMPERATURE_DIFFERENCE, "0.001 K", "0.001"),
    /** 1/1000 K/W. */
    MILLIKELVIN_PER_WATT(Dimension.TEMPERATURE_RISE_PER_POWER, "0.001 K/W", "0.001"),
    /** 1 ppm. */
    PARTS_PER_MILLION(Dimension.RATIO, "1 ppm", "0.000001"),
    /** 1 uV/K. */
    MICROVOLTS_PER_KELVIN(Dimension.VOLTAGE_PER_TEMPERATURE, "1 uV/K", "0.000001"),
    /** 1 ppm in 30 days. */
    PARTS_PER_MILLION_PER_MONTH(Dimension.RATIO_PER_MONTH, "1 ppm/month", "0.000001"),
    /** 1 mHz. */
    MILLIHERTZ(Dimension.FREQUENCY, "1 mHz", "0.001"),
    /** 1/256 of a count. */
    COUNTS_Q8(Dimension.COUNTS, "1/256 of a count", "0.00390625"),
    /** 1 bit. */
    BITS(Dimension.BITS, "1 bit", "1");

    private final Dimension dimension;
    private final String step;
    private final BigDecimal size;

    RecordUnit(Dimension dimension, String step, String size) {
        this.dimension = dimension;
        this.step = step;
        this.size = new BigDecimal(size);
    }

    /** What this unit measures. */
    public Dimension dimension() {
        return dimension;
    }

    /** One step, for messages: "1 uA". */
    public String step() {
        return step;
    }

    /** One step in the dimension's base unit (A, V, Ohm, W, Ah, s, °C, Hz, parts of one). */
    BigDecimal size() {
        return size;
    }
}
