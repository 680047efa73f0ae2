package org.gaugebench.sim.plant;

import org.gaugebench.sim.scenario.ChargerSpec;
import org.gaugebench.sim.scenario.LoadSpec;
import org.gaugebench.sim.scenario.LoadTraits;
import org.gaugebench.sim.scenario.LoadTraits.Returning;

/** What a load gives back in a part of its cycle. */
final class Returned implements UnsteadySupply {
    /** A load of the same cycle whose on part is the part of the return; amount one. */
    private final Load window;

    private final double amps;
    private double meanPart;

    Returned(LoadSpec load, Returning returning) {
        amps = returning.microamps() / 1e6;
        window =
                new Load(
                        new LoadSpec(
                                load.name(),
                                load.switchedOn(),
                                LoadSpec.Kind.CONSTANT_CURRENT,
                                1_000_000,
                                returning.forMillis(),
                                load.periodMillis(),
                                new LoadTraits(
                                        load.traits().startsAfterMillis() + returning.afterMillis(),
                                        null)));
    }

    /** As a charger of one stage: up to the current of the return, up to its voltage. */
    static ChargerSpec asCharger(LoadSpec load, Returning returning) {
        long volts = returning.limitMicrovolts();
        return new ChargerSpec(
                load.name(), load.switchedOn(), volts, volts, returning.microamps(), 0, 0, 0, null);
    }

    @Override
    public void adopt(UnsteadySupply other) {
        if (other instanceof Returned it) {
            window.adopt(it.window);
            meanPart = it.meanPart;
        }
    }

    @Override
    public void switchTo(boolean on, long nowMillis) {
        window.switchTo(on, nowMillis);
    }

    @Override
    public double meanAmps(long fromMillis, long toMillis) {
        meanPart = window.meanOver(fromMillis, toMillis);
        return amps * meanPart;
    }

    @Override
    public double ampsAt(long millis, double outputAmps) {
        return window.at(millis) * (meanPart > 0 ? outputAmps / meanPart : amps);
    }

    @Override
    public long nextChangeMillis(long atMillis) {
        return window.nextChangeMillis(atMillis);
    }
}
