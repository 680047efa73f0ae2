package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.core.port.Readout;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Scenario;

/** What was true and what every gauge showed in a trial, at each so-manieth minute. */
final class TrialRun implements Observer {
    /**
     * One moment.
     *
     * @param hours since the start
     * @param truth what is really left, in percent
     * @param volts at the battery
     * @param amps of the battery, positive into it
     * @param isDark whether nothing more can be drawn as things stand
     * @param shownAmps what the first gauge shows
     * @param shown what each gauge shows, in percent; NaN for nothing
     */
    record Moment(
            double hours,
            double truth,
            double volts,
            double amps,
            boolean isDark,
            double shownAmps,
            List<Double> shown) {

        /** Shown less true, in points; NaN where nothing is shown. */
        double error(int gauge) {
            return shown.get(gauge) - truth;
        }
    }

    private final long everyMillis;
    private final List<Moment> moments = new ArrayList<>();

    private TrialRun(int everyMinutes) {
        this.everyMillis = everyMinutes * 60_000L;
    }

    /** Runs a trial; its moments in order of time, the start first. */
    static List<Moment> of(TrialScenario trial, int everyMinutes) {
        return of(trial.read(), everyMinutes);
    }

    /** Runs a scenario likewise. */
    static List<Moment> of(Scenario scenario, int everyMinutes) {
        TrialRun look = new TrialRun(everyMinutes);
        Rig rig = new Rig(scenario, scenario.seed(), look);
        rig.run();
        rig.end();
        return look.moments;
    }

    /** The first moment at which nothing more can be drawn; the last one if that never comes. */
    static Moment darkOf(List<Moment> moments) {
        return moments.stream()
                .filter(Moment::isDark)
                .findFirst()
                .orElse(moments.get(moments.size() - 1));
    }

    @Override
    public boolean wantsDigest() {
        return false;
    }

    @Override
    public void onStart(Rig rig) {
        onMoment(rig);
    }

    @Override
    public void onMoment(Rig rig) {
        if (rig.timeMillis() % everyMillis != 0) {
            return;
        }
        List<Double> shown = new ArrayList<>();
        for (Lane lane : rig.lanes()) {
            long parts = lane.read().stateOfChargePartsPerMillion;
            shown.add(parts == Readout.NOT_KNOWN ? Double.NaN : parts / 1e4);
        }
        moments.add(
                new Moment(
                        rig.timeMillis() / 3.6e6,
                        rig.truth().stateOfCharge() * 100,
                        rig.truth().batteryVolts(),
                        rig.truth().meanCurrentAmps(),
                        rig.plant().isStarved() || rig.plant().availableAmpHours() <= 0,
                        rig.lanes().get(0).read().currentMicroamps / 1e6,
                        List.copyOf(shown)));
    }
}
