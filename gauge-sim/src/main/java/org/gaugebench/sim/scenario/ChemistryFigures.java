package org.gaugebench.sim.scenario;

/**
 * What a scenario assumes of a chemistry's battery where it says nothing, for 12 V. Voltages scale
 * with the nominal voltage; resistances scale with it and against the capacity. Every figure is
 * common practice, no source, unless a line says more. What an installer would set, charging
 * voltages among it, stands in the core's {@code ChemistryPreset} alone.
 *
 * @param resistanceMicroohmAmpHours series resistance times capacity; 6 mOhm at 60 Ah of AGM lies
 *     in the band 3 to 6 mOhm at 100 Ah, lithium iron phosphate includes protection and links
 * @param polarizationMicroohmAmpHours the same for the RC pair
 * @param polarizationMillis time constant of the RC pair
 * @param efficiencyPartsPerMillion stored part of the charge put in
 * @param selfDischargePartsPerMillion lost in 30 days at 20 °C
 * @param acceptanceMillis time constant of the charge acceptance; 0 for no limit
 * @param endCurrentPartsPerMillion gassing current at 2.4 V a cell, per hour of capacity
 * @param chargeStopMicrovolts the protection circuit stops charging; 0 for none
 * @param dischargeStopMicrovolts the protection circuit stops discharging; 0 for none
 * @param absorptionMillis longest absorption of a charger for it
 */
record ChemistryFigures(
        long resistanceMicroohmAmpHours,
        long polarizationMicroohmAmpHours,
        long polarizationMillis,
        long efficiencyPartsPerMillion,
        long selfDischargePartsPerMillion,
        long acceptanceMillis,
        long endCurrentPartsPerMillion,
        long chargeStopMicrovolts,
        long dischargeStopMicrovolts,
        long absorptionMillis) {

    private static final long MINUTE = 60_000;
    private static final long HOUR = 60 * MINUTE;

    /** Wider gaps between the plates and antimony in the grids: gasses and loses more. */
    private static final ChemistryFigures LEAD_ACID_FLOODED =
            new ChemistryFigures(
                    500_000,
                    480_000,
                    2 * MINUTE,
                    900_000,
                    60_000,
                    2 * HOUR,
                    10_000,
                    0,
                    0,
                    8 * HOUR);

    private static final ChemistryFigures LEAD_ACID_AGM =
            new ChemistryFigures(
                    360_000, 480_000, 2 * MINUTE, 920_000, 40_000, 2 * HOUR, 3_000, 0, 0, 8 * HOUR);

    /** Like a mat, of more resistance and less self-discharge. */
    private static final ChemistryFigures LEAD_ACID_GEL =
            new ChemistryFigures(
                    450_000, 480_000, 2 * MINUTE, 920_000, 30_000, 2 * HOUR, 3_000, 0, 0, 8 * HOUR);

    private static final ChemistryFigures LIFEPO4 =
            new ChemistryFigures(
                    1_000_000,
                    500_000,
                    MINUTE,
                    995_000,
                    20_000,
                    0,
                    0,
                    14_600_000,
                    10_000_000,
                    2 * HOUR);

    /** The protection circuit: 4.25 V and 2.8 V a cell. */
    private static final ChemistryFigures NMC =
            new ChemistryFigures(
                    1_000_000,
                    500_000,
                    MINUTE,
                    995_000,
                    20_000,
                    0,
                    0,
                    12_750_000,
                    8_400_000,
                    2 * HOUR);

    static ChemistryFigures of(Chemistry chemistry) {
        return switch (chemistry) {
            case LEAD_ACID_FLOODED -> LEAD_ACID_FLOODED;
            case LEAD_ACID_AGM -> LEAD_ACID_AGM;
            case LEAD_ACID_GEL -> LEAD_ACID_GEL;
            case LIFEPO4 -> LIFEPO4;
            case NMC -> NMC;
        };
    }
}
