package org.gaugebench.sim.scenario;

/**
 * The battery of a scenario: what the plant is built from. The gauge never sees this.
 *
 * @param chemistry what it is made of
 * @param nominalVolts 12, 24, 36 or 48
 * @param capacityMicroampHours charge extractable at 25 °C and the 20 h rate when full
 * @param startPartsPerMillion true state of charge at the start
 * @param seriesMicroohms series resistance
 * @param polarizationMicroohms resistance of the RC pair
 * @param polarizationMillis time constant of the RC pair; 0 for none
 * @param coulombicEfficiencyPartsPerMillion stored part of the charge put in
 * @param selfDischargePartsPerMillionPerMonth loss in 30 days at 20 °C
 * @param temperatureMillicelsius of the battery
 * @param acceptanceMillis time constant of the charge acceptance (lead-acid); 0 for no limit
 * @param endCurrentPartsPerMillion gassing current at 2.4 V a cell, per hour of capacity (20,000 =
 *     2 % of C)
 * @param chargeStopMicrovolts voltage at which the protection circuit stops charging; 0 for none
 * @param dischargeStopMicrovolts voltage at which it stops discharging; 0 for none
 * @param traits what goes beyond the plain model
 */
public record BatterySpec(
        Chemistry chemistry,
        int nominalVolts,
        long capacityMicroampHours,
        long startPartsPerMillion,
        long seriesMicroohms,
        long polarizationMicroohms,
        long polarizationMillis,
        long coulombicEfficiencyPartsPerMillion,
        long selfDischargePartsPerMillionPerMonth,
        long temperatureMillicelsius,
        long acceptanceMillis,
        long endCurrentPartsPerMillion,
        long chargeStopMicrovolts,
        long dischargeStopMicrovolts,
        BatteryTraits traits) {

    /** A battery of the plain model. */
    public BatterySpec(
            Chemistry chemistry,
            int nominalVolts,
            long capacityMicroampHours,
            long startPartsPerMillion,
            long seriesMicroohms,
            long polarizationMicroohms,
            long polarizationMillis,
            long coulombicEfficiencyPartsPerMillion,
            long selfDischargePartsPerMillionPerMonth,
            long temperatureMillicelsius,
            long acceptanceMillis,
            long endCurrentPartsPerMillion,
            long chargeStopMicrovolts,
            long dischargeStopMicrovolts) {
        this(
                chemistry,
                nominalVolts,
                capacityMicroampHours,
                startPartsPerMillion,
                seriesMicroohms,
                polarizationMicroohms,
                polarizationMillis,
                coulombicEfficiencyPartsPerMillion,
                selfDischargePartsPerMillionPerMonth,
                temperatureMillicelsius,
                acceptanceMillis,
                endCurrentPartsPerMillion,
                chargeStopMicrovolts,
                dischargeStopMicrovolts,
                BatteryTraits.NONE);
    }

    /** The same battery with other traits. */
    public BatterySpec with(BatteryTraits other) {
        return new BatterySpec(
                chemistry,
                nominalVolts,
                capacityMicroampHours,
                startPartsPerMillion,
                seriesMicroohms,
                polarizationMicroohms,
                polarizationMillis,
                coulombicEfficiencyPartsPerMillion,
                selfDischargePartsPerMillionPerMonth,
                temperatureMillicelsius,
                acceptanceMillis,
                endCurrentPartsPerMillion,
                chargeStopMicrovolts,
                dischargeStopMicrovolts,
                other);
    }
}
