package org.gaugebench.core.settings;

/**
 * The table of settings, ordered along a sample's way. Validation, the scenario keys, the
 * documentation and (later) the saved copy all read this one table.
 *
 * <p>Defaults are argued from physics in the sentence beside them; they describe a 12 V lead-acid
 * battery of 100 Ah on a 100 A / 75 mV shunt, the commonest first system.
 */
public enum Setting {
    // What is fitted.
    /**
     * Code of a {@link ChemistryPreset}; kept with the saved state to recognise another battery.
     */
    CHEMISTRY(
            "chemistry",
            new Limits("code", 1, 5, 2),
            "what the battery is made of: 1 flooded, 2 AGM, 3 gel lead-acid, 4 LiFePO4, 5 NMC"),
    /** Kept with the saved state to recognise another battery. */
    NOMINAL_VOLTAGE(
            "nominal-voltage",
            new Limits("mV", 6_000, 96_000, 12_000),
            "nominal voltage of the battery"),
    // Sense: counts to amps and volts.
    /** Rated current of the shunt; microamps stay within 32 bits up to 2147 A. */
    SHUNT_RATED_CURRENT(
            "shunt-rated-current",
            new Limits("mA", 1_000, 2_000_000, 100_000),
            "current at which the shunt drops its rated voltage"),
    /** Rated drop; 60, 75 and 100 mV are usual, DIN 43703 goes to 300 mV. */
    SHUNT_RATED_DROP(
            "shunt-rated-drop",
            new Limits("uV", 10_000, 300_000, 75_000),
            "voltage across the shunt at its rated current"),
    /** Width of the shunt converter, sign included. */
    SHUNT_CONVERTER_BITS(
            "shunt-converter-bits",
            new Limits("bit", 12, 24, 20),
            "width of the shunt converter, sign included"),
    /** Full scale of the shunt converter, plus and minus. */
    SHUNT_FULL_SCALE(
            "shunt-full-scale",
            new Limits("uV", 10_000, 1_000_000, 100_000),
            "input of the shunt converter at its largest code, plus and minus"),
    /** Offset in 1/256 of a count: a whole count would leave 12.5 mA on a coarse shunt. */
    SHUNT_OFFSET(
            "shunt-offset",
            new Limits("counts/256", -65_536, 65_536, 0),
            "reading of the shunt converter at zero current, taken off every sample"),
    /** A tighter limit refuses small standing loads; an offset rarely exceeds it. */
    ZERO_LIMIT(
            "zero-limit",
            new Limits("ppm", 100, 50_000, 2_000),
            "largest reading, in parts of the rated current, that a zero adjustment takes away"),
    /** Width of the voltage converter, which has no sign. */
    VOLTAGE_CONVERTER_BITS(
            "voltage-converter-bits",
            new Limits("bit", 10, 24, 16),
            "width of the voltage converter"),
    /** Voltage at the largest code of the voltage converter. */
    VOLTAGE_FULL_SCALE(
            "voltage-full-scale",
            new Limits("mV", 5_000, 100_000, 65_536),
            "battery voltage at the largest code of the voltage converter"),
    // Charge: amps to ampere-hours.
    /** Full-charge capacity as declared. */
    CAPACITY(
            "capacity",
            new Limits("mAh", 100, 10_000_000, 100_000),
            "declared full-charge capacity at the 20 h rate"),
    /** Part of the charge put in that can be taken out again. */
    COULOMBIC_EFFICIENCY(
            "coulombic-efficiency",
            new Limits("ppm", 500_000, 1_000_000, 920_000),
            "part of the charge put in that comes out again"),
    /** The gauge's own supply does not cross the shunt; 12 mA are 8.64 Ah in 30 days. */
    OWN_SUPPLY(
            "own-supply-current",
            new Limits("uA", 0, 1_000_000, 0),
            "current the gauge draws past the shunt, taken off the count"),
    /** Doubles every 10 K (common practice, seen in two texts); 0 leaves it to the error band. */
    SELF_DISCHARGE(
            "self-discharge",
            new Limits("ppm/month", 0, 500_000, 0),
            "part of the full-charge capacity lost in 30 days at 20 °C, taken off the count"),
    // Band: how wrong the count may be.
    /** Bound of the current offset; under it there is no time to empty. */
    OFFSET_BOUND(
            "offset-bound",
            new Limits("uA", 1, 10_000_000, 10_000),
            "bound of the current offset; no hours while the mean current is within it"),
    /** Class 0.5 of the shunt is the usual one (DIN 43703). */
    GAIN_BOUND(
            "gain-bound",
            new Limits("ppm", 0, 100_000, 5_000),
            "bound of the gain error of shunt and converter together"),
    /** Half the difference of the two gains; does not cancel on the way back, unlike their mean. */
    ASYMMETRY_BOUND(
            "asymmetry-bound",
            new Limits("ppm", 0, 100_000, 1_000),
            "bound of the gain error that is opposite for charge and for discharge"),
    /** Lead-acid varies by several percent with rate and state; lithium hardly. */
    EFFICIENCY_BOUND(
            "efficiency-bound",
            new Limits("ppm", 0, 300_000, 30_000),
            "bound of the error of the coulombic efficiency"),
    /** Lead-acid loses 3 to 6 % a month when new. */
    SELF_DISCHARGE_BOUND(
            "self-discharge-bound",
            new Limits("ppm/month", 0, 500_000, 40_000),
            "bound of the error of the self-discharge"),
    /** A new battery may differ from its label by some percent. */
    CAPACITY_BOUND(
            "capacity-bound",
            new Limits("ppm", 0, 500_000, 50_000),
            "bound of the error of the full-charge capacity"),
    /** Only ever makes the truth lower than the count. */
    UNMEASURED_BOUND(
            "unmeasured-bound",
            new Limits("uA", 0, 10_000_000, 10_000),
            "most current that may flow past the shunt unseen"),
    /** A figure typed in by hand is a guess. */
    DECLARED_RESIDUAL(
            "declared-residual",
            new Limits("ppm", 0, 500_000, 100_000),
            "how far a declared state of charge may be from the truth"),
    /** Without power nothing is counted; a twentieth of the capacity an hour is a usual load. */
    OFF_CURRENT_BOUND(
            "off-current-bound",
            new Limits("ppm", 0, 1_000_000, 50_000),
            "most mean current per hour of capacity while the gauge is without power"),
    // Rules: when may the count be corrected. Full.
    /** The charger's set voltage at 25 °C; 0 switches the full-charge rule off. */
    ABSORPTION(
            "absorption",
            new Limits("mV", 0, 100_000, 14_400),
            "the charger's set voltage at 25 °C; 0 switches the full-charge rule off"),
    /** How far under the charger's voltage the threshold lies. */
    ABSORPTION_MARGIN(
            "absorption-margin",
            new Limits("mV", 0, 5_000, 200),
            "how far under absorption the full-charge threshold lies"),
    /** Change of the charger's voltage with temperature, for the whole battery. */
    TEMPERATURE_COEFFICIENT(
            "temperature-coefficient",
            new Limits("uV/K", -250_000, 0, -24_000),
            "change of the absorption voltage per kelvin from 25 °C, whole battery"),
    /** A sensor that reads -40 °C must not lift the threshold out of reach. */
    COMPENSATION_LIMIT(
            "compensation-limit",
            new Limits("mV", 0, 10_000, 600),
            "largest change of the threshold by temperature, either way"),
    /** Charge current, in parts of the capacity, at and under which full is possible. */
    TAPER(
            "taper",
            new Limits("ppm", 1_000, 200_000, 20_000),
            "charge current per hour of capacity at and under which full is possible"),
    /** How long voltage and current must speak for full. */
    HOLD("hold", new Limits("min", 1, 600, 60), "how long voltage and current must speak for full"),
    /** A source that fails moves the voltage, a full battery does not. */
    FLATNESS(
            "flatness",
            new Limits("mV", 0, 5_000, 100),
            "how much the voltage may move during the hold; 0 for no limit"),
    /** A tired lead-acid battery's current stops falling above the taper. */
    PLATEAU_HOLD(
            "plateau-hold",
            new Limits("min", 0, 600, 60),
            "how long a current above the taper must stand still to prove full; 0 for never"),
    /** Some systems never reach absorption. */
    FLOAT_VOLTAGE(
            "float-voltage",
            new Limits("mV", 0, 100_000, 13_500),
            "the charger's float voltage at 25 °C; 0 switches the float path off"),
    /** How long a float with next to no current proves full. */
    FLOAT_HOLD(
            "float-hold",
            new Limits("min", 1, 20_000, 1_440),
            "how long a float with next to no current proves full"),
    /** Discharge after which the rule looks for full again. */
    REARM_DISCHARGE(
            "rearm-discharge",
            new Limits("ppm", 1_000, 500_000, 20_000),
            "part of the capacity to be discharged before full is looked for again"),
    /** Voltages and filters settle after a restart. */
    QUIET_TIME(
            "quiet-time",
            new Limits("min", 0, 120, 10),
            "time after a restart or a change of settings in which no rule decides"),
    /** A 2 % taper leaves 4 % missing on a lead-acid battery, an hour's hold less. */
    FULL_RESIDUAL(
            "full-residual",
            new Limits("ppm", 0, 200_000, 30_000),
            "how far from full the battery may be when full is proven by taper"),
    /** Plateau, float and late proofs say less. */
    LATE_RESIDUAL(
            "late-residual",
            new Limits("ppm", 0, 300_000, 50_000),
            "how far from full it may be when full is proven any other way"),
    /** Incomplete recharge is what kills lead-acid batteries. */
    FULL_OVERDUE(
            "full-overdue",
            new Limits("d", 0, 365, 7),
            "days without a full charge after which the gauge says so; 0 for never"),
    // Rules: empty and rest.
    /** 1.75 V a lead-acid cell at the 20 h rate, a little above. */
    EMPTY_VOLTAGE(
            "empty-voltage",
            new Limits("mV", 0, 100_000, 10_600),
            "voltage at and under which the battery is empty; 0 switches the empty rule off"),
    /** Lead-acid at C/20, the rate of its rating, and a little room: at C/10 an eighth is left. */
    EMPTY_CURRENT(
            "empty-current",
            new Limits("ppm", 1_000, 1_000_000, 60_000),
            "largest discharge current per hour of capacity at which low voltage means empty"),
    /** What is left at the empty voltage and a small current. */
    EMPTY_STATE(
            "empty-state",
            new Limits("ppm", 0, 200_000, 10_000),
            "state of charge that the empty rule sets"),
    /** How far from that the battery may be. */
    EMPTY_RESIDUAL(
            "empty-residual",
            new Limits("ppm", 0, 300_000, 30_000),
            "how far from that the battery may be"),
    /** Surface charge takes hours to go. */
    REST_TIME(
            "rest-time",
            new Limits("h", 0, 72, 8),
            "rest after which the voltage may correct the count; 0 switches the rest rule off"),
    /** On a flat curve this alone forbids the correction. */
    REST_VOLTAGE_BOUND(
            "rest-voltage-bound",
            new Limits("mV", 1, 5_000, 80),
            "how far the rested voltage may be from the table: meter, hysteresis, ageing"),
    /** Published gel and AGM table at 26.7 °C. */
    REST_VOLTAGE_0(
            "rest-voltage-0", new Limits("mV", 0, 100_000, 11_800), "open-circuit voltage at 0 %"),
    /** Between the published points. */
    REST_VOLTAGE_10(
            "rest-voltage-10",
            new Limits("mV", 0, 100_000, 11_880),
            "open-circuit voltage at 10 %"),
    /** Published gel and AGM table at 26.7 °C. */
    REST_VOLTAGE_25(
            "rest-voltage-25",
            new Limits("mV", 0, 100_000, 12_000),
            "open-circuit voltage at 25 %"),
    /** Published gel and AGM table at 26.7 °C. */
    REST_VOLTAGE_50(
            "rest-voltage-50",
            new Limits("mV", 0, 100_000, 12_400),
            "open-circuit voltage at 50 %"),
    /** Published gel and AGM table at 26.7 °C. */
    REST_VOLTAGE_75(
            "rest-voltage-75",
            new Limits("mV", 0, 100_000, 12_600),
            "open-circuit voltage at 75 %"),
    /** Between the published points. */
    REST_VOLTAGE_90(
            "rest-voltage-90",
            new Limits("mV", 0, 100_000, 12_720),
            "open-circuit voltage at 90 %"),
    /** Published gel and AGM table at 26.7 °C. */
    REST_VOLTAGE_100(
            "rest-voltage-100",
            new Limits("mV", 0, 100_000, 12_800),
            "open-circuit voltage at 100 %"),
    // Rules: what the gauge works out by itself.
    /** Kept beside the declared capacity. */
    MEASURE_CAPACITY(
            "measure-capacity",
            new Limits("switch", 0, 1, 1),
            "1 works out the capacity between anchors, 0 never"),
    /** Kept beside the declared efficiency. */
    MEASURE_EFFICIENCY(
            "measure-efficiency",
            new Limits("switch", 0, 1, 1),
            "1 works out the efficiency from full to full, 0 never"),
    // Estimate: what is left, in hours.
    /** Long enough to average a refrigerator, short enough to follow a day (argued in docs). */
    AVERAGING_TIME(
            "averaging-time",
            new Limits("min", 1, 240, 30),
            "averaging time of the load on which the hours rest"),
    /** Charge that hours do not count on; the percentage goes on below it. */
    KEPT_BACK(
            "kept-back-charge",
            new Limits("ppm", 0, 900_000, 0),
            "part of the capacity below which the hours read zero while the percentage goes on"),
    /** Peukert's exponent, for hours only, never in the count (Doerffel and Sharkh 2006). */
    PEUKERT_EXPONENT(
            "peukert-exponent",
            new Limits("ppm", 1_000_000, 1_600_000, 1_150_000),
            "how much faster charge goes at currents above the rated one; for the hours only"),
    /** The rate at which the capacity is declared. */
    RATED_TIME(
            "rated-time",
            new Limits("h", 1, 120, 20),
            "hours of the rate at which the capacity is declared"),
    /** IEEE 485 gives 0.84 for lead-acid. */
    USABLE_AT_10(
            "usable-at-10",
            new Limits("ppm", 100_000, 1_000_000, 840_000),
            "part of the charge that can be had at 10 °C; for the hours only"),
    /** Between IEEE 485's rows at -1.1 and 1.7 °C. */
    USABLE_AT_0(
            "usable-at-0",
            new Limits("ppm", 100_000, 1_000_000, 710_000),
            "part of the charge that can be had at 0 °C; for the hours only"),
    /** Extrapolated; common practice, no source. */
    USABLE_AT_MINUS_20(
            "usable-at-minus-20",
            new Limits("ppm", 50_000, 1_000_000, 450_000),
            "part of the charge that can be had at -20 °C; for the hours only"),
    /** Time constant of the taper; two hours for lead-acid (from memory). */
    TAPER_TIME(
            "taper-time",
            new Limits("min", 0, 1_440, 120),
            "time constant of the falling charge current; 0 where unknown"),
    /** Alarm level. */
    LOW_CHARGE(
            "low-charge",
            new Limits("ppm", 0, 900_000, 200_000),
            "state of charge at and under which the low-charge alarm comes; 0 for never"),
    /** Else the alarm flickers with every pump. */
    LOW_CHARGE_HYSTERESIS(
            "low-charge-hysteresis",
            new Limits("ppm", 1_000, 200_000, 50_000),
            "how far above that the charge must rise for the alarm to go"),
    /** The display only, never the count. */
    SHOWN_AS_ZERO_BELOW(
            "shown-as-zero-below",
            new Limits("mA", 0, 10_000, 50),
            "smallest current that the display shows; the count takes every one"),
    /** The last hour a display can show. */
    LONGEST_TIME(
            "longest-time",
            new Limits("h", 1, 1_000, 99),
            "longest time to empty that is shown; beyond it reads 'more than'"),
    // Saved state.
    /** What a power cut may lose at most. */
    SAVE_STEP(
            "save-step",
            new Limits("ppm", 1_000, 200_000, 5_000),
            "part of the capacity that may move before the state is saved");

    private final String key;

    // A record of a string and three longs; the checker does not know that records are immutable.
    @SuppressWarnings("ImmutableEnumChecker")
    private final Limits limits;

    private final String meaning;

    Setting(String key, Limits limits, String meaning) {
        this.key = key;
        this.limits = limits;
        this.meaning = meaning;
    }

    /**
     * The name in scenario files and documents.
     *
     * @return lower-case words and figures joined by hyphens
     */
    public String key() {
        return key;
    }

    /** {@return the unit of the integer: an SI symbol, "ppm", "bit" or "counts/256"} */
    public String unit() {
        return limits.unit();
    }

    /** {@return the smallest value allowed, in {@link #unit()}} */
    public long minimum() {
        return limits.minimum();
    }

    /** {@return the largest value allowed, in {@link #unit()}} */
    public long maximum() {
        return limits.maximum();
    }

    /** {@return the value where the installer says nothing, in {@link #unit()}} */
    public long defaultValue() {
        return limits.usual();
    }

    /** {@return one sentence for people, without a full stop} */
    public String meaning() {
        return meaning;
    }
}
