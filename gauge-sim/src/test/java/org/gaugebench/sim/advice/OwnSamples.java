package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.scenario.Chemistry;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/** Systems of the pier for tests of advice. */
public final class OwnSamples {
    private OwnSamples() {}

    /** The hut at the end of the pier, with its loads in words. */
    public static OwnSystem hut(Chemistry chemistry, double chargerAmps, String... loads) {
        return of(12, chemistry, 100, chargerAmps, loads);
    }

    /** Any system. */
    public static OwnSystem of(
            int volts, Chemistry chemistry, double ampHours, double chargerAmps, String... loads) {
        List<OwnLoad> read = new ArrayList<>();
        OwnInverter inverter = null;
        try {
            for (String each : loads) {
                OwnLoad load = OwnWords.load(each, volts, 0.88);
                read.add(load);
                if (load.byInverter()) {
                    inverter = OwnWords.inverter("2000 W, 88 %");
                }
            }
        } catch (QuantityException e) {
            throw new AssertionError(e);
        }
        return new OwnSystem(
                volts, chemistry, ampHours, read, inverter, chargerAmps, null, null, null);
    }

    /** A gauge of which its own current, its zero error and its way after a cut are known. */
    public static OwnersGauge gauge(
            @Nullable Double ownAmps, @Nullable Double zeroAmps, OwnersGauge.AfterOff afterOff) {
        return new OwnersGauge(
                OwnersGauge.SetsFull.NOT_KNOWN,
                OwnersGauge.PastFull.NOT_KNOWN,
                afterOff,
                null,
                null,
                ownAmps,
                zeroAmps,
                0,
                null);
    }

    /** The smallest usual one. */
    public static ShuntRating shunt() {
        return new ShuntRating(50_000_000, 75_000);
    }
}
