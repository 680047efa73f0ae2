package org.gaugebench.sim.advice;

import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.units.ShuntRating;

/**
 * What a battery can do to somebody, in figures of this battery.
 *
 * @param wattHours that it holds
 * @param shortVolts of it at rest, nearly full
 * @param milliohms of it, inside, without cables
 * @param shortAmps that it gives into a short circuit: volts over ohms
 * @param airCubicMetresPerHour fresh air that it needs on charge; 0 for lithium
 */
public record SystemDangers(
        double wattHours,
        double shortVolts,
        double milliohms,
        double shortAmps,
        double airCubicMetresPerHour) {

    private static final double LEAD_REST_VOLTS = 12.7;
    private static final double LITHIUM_REST_VOLTS = 13.2;
    private static final double NMC_REST_VOLTS = 12.0;
    private static final double LITHIUM_NOMINAL_CELL_VOLTS = 3.2;

    /** Milliamps of gas per amp-hour on boost charge: vented, and valve-regulated lead. */
    private static final double VENTED_GAS_MILLIAMPS = 20;

    private static final double SEALED_GAS_MILLIAMPS = 8;

    /** Of the published rule Q = 0.05 n I C / 1000, in cubic metres an hour. */
    private static final double AIR_FACTOR = 0.05;

    /** Works them out. */
    public static SystemDangers of(OwnSystem system) {
        BatterySpec battery =
                new TrialScenario(system, OwnersGauge.UNKNOWN, new ShuntRating(50_000_000, 75_000))
                        .counter("own", 50, system.ampHours())
                        .read()
                        .battery();
        Chemistry kind = system.chemistry();
        double twelves = system.nominalVolts() / 12.0;
        double rest = kind.isLeadAcid() ? LEAD_REST_VOLTS : LITHIUM_REST_VOLTS;
        double volts = (kind == Chemistry.NMC ? NMC_REST_VOLTS : rest) * twelves;
        double ohms = battery.seriesMicroohms() / 1e6;
        double nominal =
                kind == Chemistry.LIFEPO4
                        ? LITHIUM_NOMINAL_CELL_VOLTS * kind.cellsOf(system.nominalVolts())
                        : system.nominalVolts();
        double gas =
                kind == Chemistry.LEAD_ACID_FLOODED ? VENTED_GAS_MILLIAMPS : SEALED_GAS_MILLIAMPS;
        double air =
                kind.isLeadAcid()
                        ? AIR_FACTOR
                                * kind.cellsOf(system.nominalVolts())
                                * gas
                                * system.ampHours()
                                / 1e3
                        : 0;
        return new SystemDangers(nominal * system.ampHours(), volts, ohms * 1e3, volts / ohms, air);
    }
}
