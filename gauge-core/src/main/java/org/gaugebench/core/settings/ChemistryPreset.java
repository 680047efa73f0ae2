package org.gaugebench.core.settings;

/**
 * Settings that follow from a chemistry and a nominal voltage, in our own words and round figures.
 * Sources: charging set-points and open-circuit voltages as published for each chemistry; what has
 * no source says so in {@code docs/rules.md}.
 *
 * <p>Voltages are given for 12 V and scale with the nominal voltage.
 */
public enum ChemistryPreset {
    /** Flooded lead-acid. */
    LEAD_ACID_FLOODED(
            1,
            "lead-acid-flooded",
            new int[] {11_890, 11_958, 12_060, 12_240, 12_450, 12_570, 12_650}),
    /** Lead-acid with the acid held in glass mat. */
    LEAD_ACID_AGM(
            2, "lead-acid-agm", new int[] {11_800, 11_880, 12_000, 12_400, 12_600, 12_720, 12_800}),
    /** Lead-acid with gelled acid. */
    LEAD_ACID_GEL(
            3, "lead-acid-gel", new int[] {11_800, 11_880, 12_000, 12_400, 12_600, 12_720, 12_800}),
    /** Lithium iron phosphate, four cells to 12 V. */
    LIFEPO4(4, "lifepo4", new int[] {8_040, 12_795, 13_034, 13_196, 13_304, 13_369, 14_392}),
    /** Lithium nickel manganese cobalt oxide, three cells to 12 V. */
    NMC(5, "nmc", new int[] {7_500, 10_043, 10_617, 11_220, 11_942, 12_271, 12_600});

    private static final int REFERENCE_MILLIVOLTS = 12_000;
    private static final Setting[] REST_VOLTAGES = {
        Setting.REST_VOLTAGE_0,
        Setting.REST_VOLTAGE_10,
        Setting.REST_VOLTAGE_25,
        Setting.REST_VOLTAGE_50,
        Setting.REST_VOLTAGE_75,
        Setting.REST_VOLTAGE_90,
        Setting.REST_VOLTAGE_100
    };

    private final int code;
    private final String key;

    // Never handed out, so nobody can change it.
    @SuppressWarnings("ImmutableEnumChecker")
    private final int[] restMillivolts;

    ChemistryPreset(int code, String key, int[] restMillivolts) {
        this.code = code;
        this.key = key;
        this.restMillivolts = restMillivolts;
    }

    /**
     * The code that stands in {@link Setting#CHEMISTRY}.
     *
     * @return 1 to 5
     */
    public int code() {
        return code;
    }

    /**
     * The name in scenario files.
     *
     * @return lower-case words joined by hyphens
     */
    public String key() {
        return key;
    }

    /**
     * Whether next to all charge put in comes out again, and temperature moves no voltage.
     *
     * @return true for lithium, false for lead-acid
     */
    public boolean isLithium() {
        return this == LIFEPO4 || this == NMC;
    }

    /**
     * Starts from this chemistry's settings.
     *
     * @param nominalMillivolts nominal voltage of the battery
     * @return a builder with every setting that follows from it
     */
    public GaugeSettings.Builder builder(long nominalMillivolts) {
        GaugeSettings.Builder b = GaugeSettings.builder();
        b.set(Setting.CHEMISTRY, code);
        b.set(Setting.NOMINAL_VOLTAGE, nominalMillivolts);
        for (int i = 0; i < REST_VOLTAGES.length; i++) {
            b.set(REST_VOLTAGES[i], scaled(restMillivolts[i], nominalMillivolts));
        }
        if (isLithium()) {
            lithium(b, nominalMillivolts);
        } else {
            leadAcid(b, nominalMillivolts);
        }
        if (this == NMC) {
            nickelManganeseCobalt(b, nominalMillivolts);
        }
        return b;
    }

    private void leadAcid(GaugeSettings.Builder b, long nominal) {
        b.set(Setting.ABSORPTION, scaled(this == LEAD_ACID_GEL ? 14_200 : 14_400, nominal));
        b.set(Setting.ABSORPTION_MARGIN, scaled(200, nominal));
        b.set(Setting.TEMPERATURE_COEFFICIENT, scaled(-24_000, nominal));
        b.set(Setting.COMPENSATION_LIMIT, scaled(600, nominal));
        b.set(Setting.FLATNESS, scaled(100, nominal));
        b.set(Setting.FLOAT_VOLTAGE, scaled(13_500, nominal));
        b.set(Setting.EMPTY_VOLTAGE, scaled(10_600, nominal));
        b.set(Setting.REST_VOLTAGE_BOUND, scaled(80, nominal));
    }

    private static void lithium(GaugeSettings.Builder b, long nominal) {
        b.set(Setting.COULOMBIC_EFFICIENCY, 995_000);
        b.set(Setting.EFFICIENCY_BOUND, 5_000);
        b.set(Setting.SELF_DISCHARGE_BOUND, 10_000);
        b.set(Setting.CAPACITY_BOUND, 30_000);
        b.set(Setting.ABSORPTION, scaled(14_200, nominal));
        b.set(Setting.ABSORPTION_MARGIN, scaled(200, nominal));
        b.set(Setting.TEMPERATURE_COEFFICIENT, 0);
        b.set(Setting.COMPENSATION_LIMIT, scaled(600, nominal));
        b.set(Setting.TAPER, 40_000);
        b.set(Setting.HOLD, 5);
        b.set(Setting.FLATNESS, scaled(100, nominal));
        b.set(Setting.PLATEAU_HOLD, 0);
        b.set(Setting.FLOAT_VOLTAGE, scaled(13_500, nominal));
        b.set(Setting.FLOAT_HOLD, 240);
        b.set(Setting.FULL_RESIDUAL, 10_000);
        // A cell that is left alone stays above the float threshold from 94 % on: 3.347 V in the
        // published piecewise-linear fit (Sunil, Pattipati and Balasingam 2025).
        b.set(Setting.LATE_RESIDUAL, 60_000);
        b.set(Setting.FULL_OVERDUE, 30);
        // 2.07, 1.94 and 1.89 Ah at C/20, 1C and 2C (open data set of LiFePO4 cells, About:Energy):
        // 1.02.
        b.set(Setting.PEUKERT_EXPONENT, 1_020_000);
        b.set(Setting.USABLE_AT_10, 950_000);
        b.set(Setting.USABLE_AT_0, 800_000);
        b.set(Setting.USABLE_AT_MINUS_20, 600_000);
        b.set(Setting.TAPER_TIME, 15);
        b.set(Setting.EMPTY_VOLTAGE, scaled(11_600, nominal));
        b.set(Setting.EMPTY_CURRENT, 100_000);
        b.set(Setting.REST_VOLTAGE_BOUND, scaled(90, nominal));
    }

    /**
     * 4.20 V a cell is where makers of such cells end a charge (Chen et al., J. Electrochem. Soc.
     * 167, 2020, charge theirs so). The open-circuit curve is steep there, unlike iron phosphate's:
     * at the threshold and a current of the taper, across the plant's resistance, it stands at 97
     * %. A cell held at 4.1 V would be at 92 %: a float proves nothing, and has no path.
     */
    private static void nickelManganeseCobalt(GaugeSettings.Builder b, long nominal) {
        b.set(Setting.ABSORPTION, scaled(12_600, nominal));
        b.set(Setting.ABSORPTION_MARGIN, scaled(100, nominal));
        b.set(Setting.FLOAT_VOLTAGE, 0);
        b.set(Setting.FULL_RESIDUAL, 30_000);
        // 3.07 V a cell: 3 % by the published fit, and 4 % behind a tenth of the capacity drawn.
        b.set(Setting.EMPTY_VOLTAGE, scaled(9_200, nominal));
        // Published curves of two cells of this kind lie up to 45 mV a cell apart.
        b.set(Setting.REST_VOLTAGE_BOUND, scaled(150, nominal));
    }

    private static long scaled(long millivoltsAt12, long nominalMillivolts) {
        return millivoltsAt12 * nominalMillivolts / REFERENCE_MILLIVOLTS;
    }
}
