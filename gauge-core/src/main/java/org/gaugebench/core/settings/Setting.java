package org.gaugebench.core.settings;

/**
 * The table of settings, ordered along a sample's way. Validation, the scenario keys, the
 * documentation and (later) the saved copy all read this one table.
 *
 * <p>Defaults are argued from physics in the sentence beside them; they describe a 12 V lead-acid
 * battery of 100 Ah on a 100 A / 75 mV shunt, the commonest first system.
 */
public enum Setting {
    /** Rated current of the shunt; microamps stay within 32 bits up to 2147 A. */
    SHUNT_RATED_CURRENT(
            "shunt-rated-current",
            "mA",
            1_000,
            2_000_000,
            100_000,
            "current at which the shunt drops its rated voltage"),
    /** Rated drop; 60, 75 and 100 mV are usual, DIN 43703 goes to 300 mV. */
    SHUNT_RATED_DROP(
            "shunt-rated-drop",
            "uV",
            10_000,
            300_000,
            75_000,
            "voltage across the shunt at its rated current"),
    /** Width of the shunt converter, sign included. */
    SHUNT_CONVERTER_BITS(
            "shunt-converter-bits",
            "bit",
            12,
            24,
            20,
            "width of the shunt converter, sign included"),
    /** Full scale of the shunt converter, plus and minus. */
    SHUNT_FULL_SCALE(
            "shunt-full-scale",
            "uV",
            10_000,
            1_000_000,
            100_000,
            "input of the shunt converter at its largest code, plus and minus"),
    /** Offset in 1/256 of a count: a whole count would leave 12.5 mA on a coarse shunt. */
    SHUNT_OFFSET(
            "shunt-offset",
            "counts/256",
            -65_536,
            65_536,
            0,
            "reading of the shunt converter at zero current, taken off every sample"),
    /** Width of the voltage converter, which has no sign. */
    VOLTAGE_CONVERTER_BITS(
            "voltage-converter-bits", "bit", 10, 24, 16, "width of the voltage converter"),
    /** Voltage at the largest code of the voltage converter. */
    VOLTAGE_FULL_SCALE(
            "voltage-full-scale",
            "mV",
            5_000,
            100_000,
            65_536,
            "battery voltage at the largest code of the voltage converter"),
    /** Full-charge capacity as declared. */
    CAPACITY(
            "capacity",
            "mAh",
            100,
            10_000_000,
            100_000,
            "declared full-charge capacity at the 20 h rate"),
    /** Part of the charge put in that can be taken out again. */
    COULOMBIC_EFFICIENCY(
            "coulombic-efficiency",
            "ppm",
            500_000,
            1_000_000,
            920_000,
            "part of the charge put in that comes out again"),
    /** The charger's set voltage at 25 °C; 0 switches the full-charge rule off. */
    ABSORPTION(
            "absorption",
            "mV",
            0,
            100_000,
            14_400,
            "the charger's set voltage at 25 °C; 0 switches the full-charge rule off"),
    /** How far under the charger's voltage the threshold lies. */
    ABSORPTION_MARGIN(
            "absorption-margin",
            "mV",
            0,
            5_000,
            200,
            "how far under absorption the full-charge threshold lies"),
    /** Change of the charger's voltage with temperature, for the whole battery. */
    TEMPERATURE_COEFFICIENT(
            "temperature-coefficient",
            "uV/K",
            -250_000,
            0,
            -24_000,
            "change of the absorption voltage per kelvin from 25 °C, whole battery"),
    /** Charge current, in parts of the capacity, at and under which full is possible. */
    TAPER(
            "taper",
            "ppm",
            1_000,
            200_000,
            20_000,
            "charge current per hour of capacity at and under which full is possible"),
    /** How long voltage and current must speak for full. */
    HOLD("hold", "min", 1, 600, 60, "how long voltage and current must speak for full"),
    /** Discharge after which the rule looks for full again. */
    REARM_DISCHARGE(
            "rearm-discharge",
            "ppm",
            1_000,
            500_000,
            20_000,
            "part of the capacity to be discharged before full is looked for again"),
    /** Bound of the current offset; under it there is no time to empty. */
    OFFSET_BOUND(
            "offset-bound",
            "uA",
            1,
            10_000_000,
            10_000,
            "bound of the current offset; no hours while the mean current is within it"),
    /** The last hour a display can show. */
    LONGEST_TIME(
            "longest-time",
            "h",
            1,
            1_000,
            99,
            "longest time to empty that is shown; beyond it reads 'more than'");

    private final String key;
    private final String unit;
    private final long minimum;
    private final long maximum;
    private final long defaultValue;
    private final String meaning;

    Setting(
            String key,
            String unit,
            long minimum,
            long maximum,
            long defaultValue,
            String meaning) {
        this.key = key;
        this.unit = unit;
        this.minimum = minimum;
        this.maximum = maximum;
        this.defaultValue = defaultValue;
        this.meaning = meaning;
    }

    /**
     * The name in scenario files and documents.
     *
     * @return lower-case words joined by hyphens
     */
    public String key() {
        return key;
    }

    /**
     * The unit of the integer.
     *
     * @return an SI symbol, "ppm", "bit" or "counts/256"
     */
    public String unit() {
        return unit;
    }

    /**
     * Smallest value allowed.
     *
     * @return in {@link #unit()}
     */
    public long minimum() {
        return minimum;
    }

    /**
     * Largest value allowed.
     *
     * @return in {@link #unit()}
     */
    public long maximum() {
        return maximum;
    }

    /**
     * Value where the installer says nothing.
     *
     * @return in {@link #unit()}
     */
    public long defaultValue() {
        return defaultValue;
    }

    /**
     * One sentence for people.
     *
     * @return without a full stop
     */
    public String meaning() {
        return meaning;
    }
}
