package org.gaugebench.sim.scenario;

/**
 * What a scenario assumes of a chemistry where it says nothing, for a 12 V battery. Voltages and
 * coefficients scale with the nominal voltage; resistances scale with it and against the capacity.
 * Every figure is common practice, no source, unless a line says more.
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
 * @param absorptionMicrovolts charger's set voltage at 25 °C: 2.4 V or 3.55 V a cell
 * @param floatMicrovolts charger's float voltage: 2.27 V or 3.375 V a cell, rounded
 * @param microvoltsPerKelvin -4 mV a lead cell; none for lithium
 * @param absorptionMillis longest absorption
 * @param taperPartsPerMillion charge current at which full is possible
 * @param holdMinutes how long it must hold; lithium's taper lasts minutes, lead's lasts hours
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
        long absorptionMicrovolts,
        long floatMicrovolts,
        long microvoltsPerKelvin,
        long absorptionMillis,
        long taperPartsPerMillion,
        long holdMinutes) {

    private static final long MINUTE = 60_000;
    private static final long HOUR = 60 * MINUTE;

    private static final ChemistryFigures LEAD_ACID_AGM =
            new ChemistryFigures(
                    360_000,
                    480_000,
                    2 * MINUTE,
                    920_000,
                    40_000,
                    2 * HOUR,
                    3_000,
                    0,
                    0,
                    14_400_000,
                    13_600_000,
                    -24_000,
                    8 * HOUR,
                    20_000,
                    60);

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
                    14_200_000,
                    13_500_000,
                    0,
                    2 * HOUR,
                    40_000,
                    10);

    static ChemistryFigures of(Chemistry chemistry) {
        return switch (chemistry) {
            case LEAD_ACID_AGM -> LEAD_ACID_AGM;
            case LIFEPO4 -> LIFEPO4;
        };
    }
}
