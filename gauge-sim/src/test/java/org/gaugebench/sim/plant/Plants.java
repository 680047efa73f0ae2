package org.gaugebench.sim.plant;

import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.ChargerSpec;
import org.gaugebench.sim.scenario.ChargerSpec.SunSpec;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.scenario.LoadSpec;

/** Short names for the specs that the plant's tests need. */
final class Plants {
    static final long HOUR = 3_600_000;

    private Plants() {}

    /** 12 V, 100 Ah mat battery, acceptance 2 h, no end current, 100 % efficiency, no losses. */
    static BatterySpec leadAcid(double startPercent) {
        return leadAcid(startPercent, 1, 0);
    }

    static BatterySpec leadAcid(double startPercent, double efficiency, double endPercent) {
        return new BatterySpec(
                Chemistry.LEAD_ACID_AGM,
                12,
                100_000_000,
                Math.round(startPercent * 10_000),
                5_000,
                3_000,
                60_000,
                Math.round(efficiency * 1e6),
                0,
                25_000,
                2 * HOUR,
                Math.round(endPercent * 10_000),
                0,
                0);
    }

    /** 12 V iron phosphate battery: 10 mOhm and no RC pair, 100 % efficiency, no losses. */
    static BatterySpec lithium(double ampHours, double startPercent) {
        return lithium(ampHours, startPercent, 0, 0);
    }

    static BatterySpec lithium(
            double ampHours, double startPercent, double chargeStop, double dischargeStop) {
        return new BatterySpec(
                Chemistry.LIFEPO4,
                12,
                Math.round(ampHours * 1e6),
                Math.round(startPercent * 10_000),
                10_000,
                0,
                0,
                1_000_000,
                0,
                25_000,
                0,
                0,
                Math.round(chargeStop * 1e6),
                Math.round(dischargeStop * 1e6));
    }

    static ChargerSpec charger(String name, double volts, double floatVolts, double amps) {
        return charger(name, volts, floatVolts, amps, 0, 0, 0);
    }

    static ChargerSpec charger(
            String name,
            double volts,
            double floatVolts,
            double amps,
            double millivoltsPerKelvin,
            double floatBelowAmps,
            long absorptionMillis) {
        return new ChargerSpec(
                name,
                true,
                micro(volts),
                micro(floatVolts),
                micro(amps),
                Math.round(millivoltsPerKelvin * 1_000),
                micro(floatBelowAmps),
                absorptionMillis,
                null);
    }

    /** A sun from 6 to 18 o'clock on a controller of 14.4 V. */
    static ChargerSpec solar(double peakAmps, double cloudyPart, double depth) {
        SunSpec sun =
                new SunSpec(micro(peakAmps), 6 * HOUR, 18 * HOUR, micro(cloudyPart), micro(depth));
        return new ChargerSpec("roof", true, micro(14.4), micro(14.4), micro(1_000), 0, 0, 0, sun);
    }

    static LoadSpec load(String name, LoadSpec.Kind kind, double amount) {
        return new LoadSpec(name, true, kind, micro(amount), 0, 0);
    }

    static LoadSpec amps(double amps) {
        return load("load", LoadSpec.Kind.CONSTANT_CURRENT, amps);
    }

    static LoadSpec cycling(double amps, long onMillis, long periodMillis) {
        return new LoadSpec(
                "cycle", true, LoadSpec.Kind.CONSTANT_CURRENT, micro(amps), onMillis, periodMillis);
    }

    static void run(Truth truth, long millis, int tickMillis) {
        for (long done = 0; done < millis; done += tickMillis) {
            truth.step(tickMillis);
        }
    }

    private static long micro(double value) {
        return Math.round(value * 1e6);
    }
}
