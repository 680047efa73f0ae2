package org.gaugebench.sim.advice;

import java.util.List;
import org.gaugebench.sim.advice.TrialRun.Moment;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/** A system in store: with the gauge's wire on, with it off, and with a worse gauge. */
final class StoredTrial {
    private final OwnSystem system;
    private final ShuntRating shunt;
    private final double shown;
    private final double days;
    private final double zeroAmps;

    /**
     * Takes a system.
     *
     * @param shown what was shown as it began, rightly
     * @param days that it lasts
     * @param zeroAmps zero error, with its sign
     */
    StoredTrial(OwnSystem system, ShuntRating shunt, double shown, double days, double zeroAmps) {
        this.system = system;
        this.shunt = shunt;
        this.shown = shown;
        this.days = days;
        this.zeroAmps = zeroAmps;
    }

    /** With its wire on; ours stands beside it where anything is told of it. */
    TrialScenario fed(OwnersGauge gauge) {
        TrialScenario trial = trial(gauge, "Stored with the gauge's wire on").zero(zeroAmps);
        trial.counter("own", shown, system.ampHours());
        return gauge.isTold() ? trial.beside(shown) : trial;
    }

    TrialScenario unfed(OwnersGauge gauge) {
        TrialScenario trial = trial(gauge, "Stored with the gauge's wire off").unfed();
        return trial.counter("own", shown, system.ampHours());
    }

    private TrialScenario trial(OwnersGauge gauge, String title) {
        return new TrialScenario(system, gauge, shunt)
                .composed()
                .titled(title)
                .battery(system.ampHours(), shown)
                .lasting(days);
    }

    /** How it stands at the end. */
    static Moment end(TrialScenario trial) {
        List<Moment> moments = TrialRun.of(trial, 60);
        return moments.get(moments.size() - 1);
    }

    /** How far it is off at the end, in points; null for no gauge. */
    @Nullable Double error(@Nullable OwnersGauge gauge) {
        return gauge == null ? null : Double.valueOf(end(fed(gauge)).error(0));
    }
}
