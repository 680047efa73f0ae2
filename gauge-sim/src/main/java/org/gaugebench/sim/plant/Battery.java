package org.gaugebench.sim.plant;

import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.BatteryTraits;
import org.gaugebench.sim.scenario.BatteryTraits.Ageing;
import org.gaugebench.sim.scenario.KineticWells;
import org.jspecify.annotations.Nullable;

/**
 * One battery: open-circuit voltage, series resistance, RC pairs, coulombic efficiency,
 * self-discharge and, for lead-acid, charge acceptance; on request wells of available and bound
 * charge, hysteresis, capacity against temperature, wear and a weak cell. {@code docs/models.md}
 * states the equations and their sources.
 *
 * <p>All voltages are those at the <em>end</em> of the step if a constant current flows through it
 * (an implicit step), which keeps a voltage-regulated charge stable at any tick.
 *
 * <p>Use: {@link #prepare} once a step, then any question, then {@link #advance}.
 */
final class Battery {
    private static final double SECONDS_PER_HOUR = 3600;
    private static final double SECONDS_PER_MONTH = 30 * 24 * SECONDS_PER_HOUR;

    /** Cut-off at which capacities of lead-acid batteries are rated, volts a cell. */
    private static final double LEAD_CUT_OFF_CELL_VOLTS = 1.75;

    // Parameters.
    private final BatterySpec spec;
    private final BatteryTraits traits;
    private final OpenCircuitTable table;
    private final CellString string;
    private final @Nullable KineticWells kinetic;
    private final double capacityCoulombs;
    private final double bestEfficiency;
    private final boolean efficiencyFalls;
    private final double ownSeriesOhms;
    private final double polarizationOhms;
    private final double polarizationSeconds;
    private final double slowOhms;
    private final double slowSeconds;
    private final double heatOhms;
    private final boolean heats;
    private final double selfDischargePerMonth;
    private final double acceptanceSeconds;
    private final boolean acceptanceLimited;
    private final OpenCircuitCurve curve;
    private final ChargeBranch branch;
    private final @Nullable OpenCircuitCurve weakCurve;
    private final @Nullable Wells wells;
    private final @Nullable Hysteresis hysteresis;

    // State.
    private double seriesOhms;
    private double chargeCoulombs;
    private double polarizationVolts;
    private double slowVolts;
    private double temperatureCelsius;
    private double heatJoules;

    // Derived from the length of the step and the temperature.
    private int stepMillis;
    private double stepSeconds;
    private double polarizationKept;
    private double polarizationGainOhms;
    private double slowKept;
    private double slowGainOhms;
    private double selfDischargePerStep;
    private double takenPart;
    private double acceptancePerSecond;
    private double stepsPerSecond;

    /** Seconds by which a current moves the charge that the voltage follows. */
    private double heightSeconds;

    /** Charge that the temperature keeps back; below 0 where it gives more than at 25 °C. */
    private double keptBackCoulombs;

    // Derived at the start of each step.
    private double efficiency;
    private double slope;
    private double restVolts;
    private double dischargeOhms;
    private double acceptanceAmps;

    Battery(BatterySpec spec) {
        this(spec, OpenCircuitTable.of(spec.chemistry()));
    }

    /** A battery whose open-circuit voltage is not the chemistry's but, say, a measured one. */
    Battery(BatterySpec spec, OpenCircuitTable table) {
        this(spec, table, Wells.given(spec));
    }

    /** The wells take some work to find: a copy takes them over. */
    private Battery(BatterySpec spec, OpenCircuitTable table, @Nullable KineticWells kinetic) {
        this.spec = spec;
        this.table = table;
        this.kinetic = kinetic;
        traits = spec.traits();
        Ageing wear = traits.ageing();
        double life = 1 - wear.capacityLossPartsPerMillion() / 1e6;
        double growth = 1 + wear.resistanceGrowthPartsPerMillion() / 1e6;
        double newCoulombs = spec.capacityMicroampHours() / 1e6 * SECONDS_PER_HOUR;
        int cells = spec.chemistry().cellsOf(spec.nominalVolts());
        string = new CellString(table, cells, newCoulombs * life, traits.weakCell());
        capacityCoulombs = string.capacity();
        bestEfficiency = spec.coulombicEfficiencyPartsPerMillion() / 1e6;
        efficiency = bestEfficiency;
        efficiencyFalls = traits.efficiencyFallsNearFull();
        // A battery of no resistance has no current at a given voltage; a microohm does no harm.
        ownSeriesOhms = Math.max(spec.seriesMicroohms(), 1) / 1e6 * growth;
        seriesOhms = ownSeriesOhms;
        polarizationSeconds = spec.polarizationMillis() / 1e3;
        polarizationOhms =
                polarizationSeconds > 0 ? spec.polarizationMicroohms() / 1e6 * growth : 0;
        slowSeconds = traits.slowPolarizationMillis() / 1e3;
        slowOhms = slowSeconds > 0 ? traits.slowPolarizationMicroohms() / 1e6 * growth : 0;
        heatOhms = seriesOhms + polarizationOhms + slowOhms;
        heats = traits.thermal() != null;
        selfDischargePerMonth = spec.selfDischargePartsPerMillionPerMonth() / 1e6;
        acceptanceSeconds =
                spec.acceptanceMillis() / 1e3 / (1 - wear.acceptanceLossPartsPerMillion() / 1e6);
        acceptanceLimited = spec.chemistry().isLeadAcid() && acceptanceSeconds > 0;
        temperatureCelsius = spec.temperatureMillicelsius() / 1e3;
        curve = string.curve(temperatureCelsius);
        weakCurve = string.hasWeakCell() ? string.weakCurve(temperatureCelsius) : null;
        double endCurrentAmps =
                spec.endCurrentPartsPerMillion() / 1e6 * spec.capacityMicroampHours() / 1e6;
        branch = new ChargeBranch(string.cells(), acceptanceLimited ? endCurrentAmps : 0);
        chargeCoulombs = capacityCoulombs * (spec.startPartsPerMillion() / 1e6);
        double cutOffCellVolts = spec.chemistry().isLeadAcid() ? LEAD_CUT_OFF_CELL_VOLTS : 0;
        wells =
                kinetic == null
                        ? null
                        : new Wells(kinetic, life, string, cutOffCellVolts, chargeCoulombs);
        hysteresis =
                traits.hysteresisMicrovolts() > 0
                        ? new Hysteresis(
                                traits.hysteresisMicrovolts() / 1e6 * string.cells(),
                                capacityCoulombs)
                        : null;
        setTemperature(temperatureCelsius);
        restVolts = curve.voltsAt(chargeCoulombs);
    }

    Battery copy() {
        Battery twin = new Battery(spec, table, kinetic);
        twin.setTemperature(temperatureCelsius);
        twin.curve.adopt(curve);
        twin.chargeCoulombs = chargeCoulombs;
        twin.polarizationVolts = polarizationVolts;
        twin.slowVolts = slowVolts;
        twin.heatJoules = heatJoules;
        twin.restVolts = restVolts;
        if (wells != null && twin.wells != null) {
            twin.wells.adopt(wells);
        }
        if (hysteresis != null && twin.hysteresis != null) {
            twin.hysteresis.setVolts(hysteresis.volts());
        }
        return twin;
    }

    void setTemperature(double celsius) {
        temperatureCelsius = celsius;
        curve.setTemperature(celsius);
        branch.setFullVolts(curve.fullVolts());
        if (weakCurve != null) {
            weakCurve.setTemperature(celsius);
        }
        keptBackCoulombs =
                traits.capacityFollowsTemperature()
                        ? capacityCoulombs * (1 - UsableCapacity.partAt(spec.chemistry(), celsius))
                        : 0;
        if (wells != null) {
            wells.setFloor(keptBackCoulombs, curve.emptyVolts());
        }
        stepMillis = 0;
    }

    /** Sets the resistance between its terminals and the bus; voltages are then the bus's. */
    void setJointOhms(double ohms) {
        seriesOhms = ownSeriesOhms + ohms;
    }

    double promptOhms() {
        return seriesOhms;
    }

    /** Makes ready for a step of a length. */
    void prepare(int millis) {
        if (millis != stepMillis) {
            deriveForStep(millis);
        }
        double openCircuitVolts;
        if (wells == null) {
            openCircuitVolts = curve.voltsAt(chargeCoulombs);
            slope = curve.slope();
        } else {
            openCircuitVolts = wells.openCircuitVolts(curve);
            slope = wells.slope();
        }
        if (hysteresis != null) {
            openCircuitVolts += hysteresis.volts();
        }
        if (efficiencyFalls) {
            double state = Math.max(chargeCoulombs, 0) / capacityCoulombs;
            efficiency = Math.min(bestEfficiency, FallingEfficiency.at(state));
            acceptancePerSecond = takenPart / (stepSeconds * efficiency);
        }
        restVolts = openCircuitVolts + polarizationKept * polarizationVolts + slowKept * slowVolts;
        dischargeOhms = polarizationGainOhms + slowGainOhms + seriesOhms + slope * heightSeconds;
        acceptanceAmps = (capacityCoulombs - chargeCoulombs) * acceptancePerSecond;
    }

    private void deriveForStep(int millis) {
        stepMillis = millis;
        stepSeconds = millis / 1e3;
        stepsPerSecond = 1 / stepSeconds;
        polarizationKept =
                polarizationSeconds > 0 ? StrictMath.exp(-stepSeconds / polarizationSeconds) : 0;
        polarizationGainOhms = polarizationOhms * (1 - polarizationKept);
        slowKept = slowSeconds > 0 ? StrictMath.exp(-stepSeconds / slowSeconds) : 0;
        slowGainOhms = slowOhms * (1 - slowKept);
        heightSeconds = stepSeconds;
        if (wells != null) {
            heightSeconds = wells.prepare(stepSeconds);
        }
        double monthlyFactor = StrictMath.pow(2, (temperatureCelsius - 20) / 10);
        // (1 - loss)^(steps in a month x factor) = 1 - loss of the month; expm1 keeps the digits.
        selfDischargePerStep =
                -StrictMath.expm1(
                        StrictMath.log1p(-selfDischargePerMonth)
                                * (monthlyFactor * stepSeconds / SECONDS_PER_MONTH));
        // Mean over the step of a missing charge that decays with the time constant: exact at any
        // tick. Without acceptance limit only what fits is taken.
        takenPart = acceptanceLimited ? -StrictMath.expm1(-stepSeconds / acceptanceSeconds) : 1;
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
        return polarizationGainOhms
                + slowGainOhms
                + seriesOhms
                + slope * (heightSeconds * efficiency);
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

    /** Most current that can be drawn through the step before nothing more can be drawn. */
    double drawableAmps() {
        return wells == null
                ? (chargeCoulombs - keptBackCoulombs) * stepsPerSecond
                : wells.drawableAmps();
    }

    /** Tells that a load asked for more than could be drawn, and so got nothing. */
    void refuse() {
        if (wells != null) {
            wells.runDry();
        }
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
        double lost = next * selfDischargePerStep;
        next -= next > 0 ? lost : 0;
        // Branches that are never taken: cheaper in this chain than Math.min and Math.max.
        if (next < 0) {
            next = lowest(next);
        } else if (next > capacityCoulombs) {
            next = capacityCoulombs;
        }
        chargeCoulombs = next;
        polarizationVolts = polarizationKept * polarizationVolts + polarizationGainOhms * amps;
        slowVolts = slowKept * slowVolts + slowGainOhms * amps;
        if (wells != null) {
            chargeCoulombs = wells.advance(stored, Math.max(lost, 0));
        }
        if (hysteresis != null) {
            hysteresis.advance(stored * stepSeconds);
        }
        if (heats) {
            heatJoules += amps * amps * heatOhms * stepSeconds;
        }
    }

    /** A charge below 0 is rounding, unless warmth gives more than the rated charge. */
    private double lowest(double charge) {
        return Math.max(charge, Math.min(keptBackCoulombs, 0));
    }

    /** Joule heat since the last call. */
    double takeHeatJoules() {
        double heat = heatJoules;
        heatJoules = 0;
        return heat;
    }

    /**
     * Voltage that decides whether a protection circuit which looks at every cell opens: that of
     * the lowest cell on discharge and of the highest on charge, times the number of cells.
     */
    double decidingVolts(double amps, double terminalVolts) {
        if (weakCurve == null) {
            return terminalVolts;
        }
        double charge = Math.max(chargeCoulombs, 0);
        double weakOpen = weakCurve.voltsAt(charge);
        double rise = (terminalVolts - curve.voltsAt(charge)) / string.cells();
        double weakVolts = weakOpen + rise;
        double otherVolts = (terminalVolts - weakVolts) / (string.cells() - 1);
        double deciding =
                amps > 0 ? Math.max(weakVolts, otherVolts) : Math.min(weakVolts, otherVolts);
        return deciding * string.cells();
    }

    /**
     * Charge that a constant current draws from here at the present temperature, in ampere-hours.
     *
     * @param amps drawn, above 0
     */
    double drawableAmpHours(double amps) {
        double coulombs =
                wells == null
                        ? chargeCoulombs - keptBackCoulombs
                        : amps * wells.secondsToEmpty(amps);
        return Math.max(coulombs, 0) / SECONDS_PER_HOUR;
    }

    /** Current of the 20 h rate. */
    double twentyHourAmps() {
        return capacityAmpHours() / 20;
    }

    double temperatureCelsius() {
        return temperatureCelsius;
    }

    double chargeAmpHours() {
        return Math.max(chargeCoulombs, 0) / SECONDS_PER_HOUR;
    }

    double capacityAmpHours() {
        return capacityCoulombs / SECONDS_PER_HOUR;
    }
}
