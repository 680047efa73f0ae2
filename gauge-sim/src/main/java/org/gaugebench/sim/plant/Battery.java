package org.gaugebench.sim.plant;

import org.gaugebench.sim.scenario.BatterySpec;

/**
 * One battery: open-circuit voltage, series resistance, one RC pair, coulombic efficiency,
 * self-discharge and, for lead-acid, charge acceptance. {@code docs/models.md} states the equations
 * and their sources.
 *
 * <p>All voltages are those at the <em>end</em> of the step if a constant current flows through it
 * (an implicit step), which keeps a voltage-regulated charge stable at any tick.
 *
 * <p>Use: {@link #prepare} once a step, then any question, then {@link #advance}.
 */
final class Battery {
    private static final double SECONDS_PER_HOUR = 3600;
    private static final double SECONDS_PER_MONTH = 30 * 24 * SECONDS_PER_HOUR;

    // Parameters.
    private final double capacityCoulombs;
    private final double efficiency;
    private final double seriesOhms;
    private final double polarizationOhms;
    private final double polarizationSeconds;
    private final double selfDischargePerMonth;
    private final double acceptanceSeconds;
    private final boolean acceptanceLimited;
    private final OpenCircuitCurve curve;
    private final ChargeBranch branch;

    // State.
    private double chargeCoulombs;
    private double polarizationVolts;
    private double temperatureCelsius;

    // Derived from the length of the step and the temperature.
    private int stepMillis;
    private double stepSeconds;
    private double polarizationKept;
    private double polarizationGainOhms;
    private double selfDischargePerStep;
    private double acceptancePerSecond;
    private double stepsPerSecond;

    // Derived at the start of each step.
    private double restVolts;
    private double dischargeOhms;
    private double acceptanceAmps;

    Battery(BatterySpec spec) {
        int cells = spec.chemistry().cellsOf(spec.nominalVolts());
        capacityCoulombs = spec.capacityMicroampHours() / 1e6 * SECONDS_PER_HOUR;
        efficiency = spec.coulombicEfficiencyPartsPerMillion() / 1e6;
        // A battery of no resistance has no current at a given voltage; a microohm does no harm.
        seriesOhms = Math.max(spec.seriesMicroohms(), 1) / 1e6;
        polarizationSeconds = spec.polarizationMillis() / 1e3;
        polarizationOhms = polarizationSeconds > 0 ? spec.polarizationMicroohms() / 1e6 : 0;
        selfDischargePerMonth = spec.selfDischargePartsPerMillionPerMonth() / 1e6;
        acceptanceSeconds = spec.acceptanceMillis() / 1e3;
        acceptanceLimited = spec.chemistry().isLeadAcid() && acceptanceSeconds > 0;
        temperatureCelsius = spec.temperatureMillicelsius() / 1e3;
        OpenCircuitTable table = OpenCircuitTable.of(spec.chemistry());
        curve = new OpenCircuitCurve(table, cells, capacityCoulombs, temperatureCelsius);
        double endCurrentAmps =
                spec.endCurrentPartsPerMillion() / 1e6 * spec.capacityMicroampHours() / 1e6;
        branch = new ChargeBranch(cells, acceptanceLimited ? endCurrentAmps : 0);
        branch.setFullVolts(curve.fullVolts());
        chargeCoulombs = capacityCoulombs * (spec.startPartsPerMillion() / 1e6);
        restVolts = curve.voltsAt(chargeCoulombs);
    }

    /** Moves the battery to a temperature, all through and at once. */
    void setTemperature(double celsius) {
        temperatureCelsius = celsius;
        curve.setTemperature(celsius);
        branch.setFullVolts(curve.fullVolts());
        stepMillis = 0;
    }

    /** Makes ready for a step of a length. */
    void prepare(int millis) {
        if (millis != stepMillis) {
            deriveForStep(millis);
        }
        double openCircuitVolts = curve.voltsAt(chargeCoulombs);
        restVolts = openCircuitVolts + polarizationKept * polarizationVolts;
        dischargeOhms = polarizationGainOhms + seriesOhms + curve.slope() * stepSeconds;
        acceptanceAmps = (capacityCoulombs - chargeCoulombs) * acceptancePerSecond;
    }

    private void deriveForStep(int millis) {
        stepMillis = millis;
        stepSeconds = millis / 1e3;
        stepsPerSecond = 1 / stepSeconds;
        polarizationKept =
                polarizationSeconds > 0 ? StrictMath.exp(-stepSeconds / polarizationSeconds) : 0;
        polarizationGainOhms = polarizationOhms * (1 - polarizationKept);
        double monthlyFactor = StrictMath.pow(2, (temperatureCelsius - 20) / 10);
        // (1 - loss)^(steps in a month x factor) = 1 - loss of the month; expm1 keeps the digits.
        selfDischargePerStep =
                -StrictMath.expm1(
                        StrictMath.log1p(-selfDischargePerMonth)
                                * (monthlyFactor * stepSeconds / SECONDS_PER_MONTH));
        // Mean over the step of a missing charge that decays with the time constant: exact at any
        // tick. Without acceptance limit only what fits is taken.
        double takenPart =
                acceptanceLimited ? -StrictMath.expm1(-stepSeconds / acceptanceSeconds) : 1;
        acceptancePerSecond = takenPart / (stepSeconds * efficiency);
    }

    /** Current that flows at a terminal voltage; positive into the battery. */
    double ampsAt(double terminalVolts) {
        double drive = terminalVolts - restVolts;
        if (drive <= 0) {
            return drive / dischargeOhms;
        }
        if (acceptanceLimited) {
            branch.setSeriesOhms(chargeOhms());
            return branch.chargeAmps(terminalVolts, restVolts, acceptanceAmps);
        }
        return Math.min(drive / chargeOhms(), acceptanceAmps);
    }

    /**
     * Terminal voltage at which a current flows; the inverse of {@link #ampsAt}.
     *
     * @param amps positive into the battery, less than flows at the highest voltage on offer
     */
    double voltsAt(double amps) {
        if (amps <= 0) {
            return restVolts + dischargeOhms * amps;
        }
        if (acceptanceLimited) {
            branch.setSeriesOhms(chargeOhms());
            return branch.voltsAt(amps, restVolts, acceptanceAmps);
        }
        return restVolts + chargeOhms() * amps;
    }

    private double chargeOhms() {
        return polarizationGainOhms + seriesOhms + curve.slope() * (stepSeconds * efficiency);
    }

    /** Whether charge voltage and current belong together by a straight line. */
    boolean isLinearOnCharge() {
        return !acceptanceLimited;
    }

    /** Resistance of that line below or above the rest voltage. */
    double ohms(boolean charging) {
        return charging ? chargeOhms() : dischargeOhms;
    }

    /** Terminal voltage at the end of the step if no current flows. */
    double restVolts() {
        return restVolts;
    }

    /** Most current that can be drawn through the step before the battery is empty. */
    double drawableAmps() {
        return chargeCoulombs * stepsPerSecond;
    }

    /**
     * Moves through the step.
     *
     * @param amps mean current
     * @param terminalVolts at the end of the step
     */
    void advance(double amps, double terminalVolts) {
        double stored = amps;
        if (amps > 0) {
            stored = amps - (acceptanceLimited ? branch.gassingAmps(terminalVolts) : 0);
            stored = efficiency * Math.min(Math.max(stored, 0), acceptanceAmps);
        }
        double next = chargeCoulombs + stored * stepSeconds;
        next -= next * selfDischargePerStep;
        // Branches that are never taken: cheaper in this chain than Math.min and Math.max.
        if (next < 0) {
            next = 0;
        } else if (next > capacityCoulombs) {
            next = capacityCoulombs;
        }
        chargeCoulombs = next;
        polarizationVolts = polarizationKept * polarizationVolts + polarizationGainOhms * amps;
    }

    double temperatureCelsius() {
        return temperatureCelsius;
    }

    double chargeAmpHours() {
        return chargeCoulombs / SECONDS_PER_HOUR;
    }

    double capacityAmpHours() {
        return capacityCoulombs / SECONDS_PER_HOUR;
    }
}
