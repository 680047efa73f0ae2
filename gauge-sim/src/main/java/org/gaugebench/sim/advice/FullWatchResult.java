package org.gaugebench.sim.advice;

import java.util.Locale;
import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.Event;
import org.gaugebench.core.port.Readout;
import org.gaugebench.sim.judge.FullCharge;
import org.gaugebench.sim.judge.LaneResult;
import org.gaugebench.sim.judge.RecordedEvent;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Scenario;

/**
 * How a gauge's 100 % went with a battery's in one run.
 *
 * @param fulls how often it set itself to full
 * @param earlyFulls of them with the battery below {@value #FULL_PARTS} millionths
 * @param lowestTrueParts true state of the earliest of all; 1,000,000 for none
 * @param fullPeriods how often the battery really was full
 * @param meanErrorParts mean of the error's magnitude over whole minutes, in millionths
 * @param worstErrorParts its largest magnitude
 * @param meanHours mean of the time to empty that it showed; 0 where it showed none
 */
record FullWatchResult(
        int fulls,
        int earlyFulls,
        long lowestTrueParts,
        int fullPeriods,
        double meanErrorParts,
        long worstErrorParts,
        double meanHours) {

    static final long FULL_PARTS = FullCharge.FALSE_BELOW_PARTS;

    private static final long BATTERY_IS_FULL = FullCharge.IS_FULL_PARTS;
    private static final long BATTERY_IS_USED = FullCharge.IS_USED_PARTS;

    /** Runs a scenario and watches its main gauge. */
    static FullWatchResult of(Scenario scenario) {
        return of(scenario, 0);
    }

    /** Runs a scenario and watches one of its gauges, by its place from 0. */
    static FullWatchResult of(Scenario scenario, int place) {
        Watch watch = new Watch(place);
        RunResult result = RunRecorder.run(scenario, scenario.seed(), watch);
        String gauge = scenario.gauges().get(place).name();
        int fulls = 0;
        int early = 0;
        long lowest = 1_000_000;
        for (RecordedEvent each : result.events()) {
            if (each.event() == Event.SET_TO_FULL && each.gauge().equals(gauge)) {
                fulls++;
                early += each.truePartsPerMillion() < FULL_PARTS ? 1 : 0;
                lowest = Math.min(lowest, each.truePartsPerMillion());
            }
        }
        LaneResult lane = result.lanes().get(place);
        return new FullWatchResult(
                fulls,
                early,
                lowest,
                watch.fullPeriods,
                watch.minutes == 0 ? 0 : watch.errorSum / watch.minutes,
                Math.abs(lane.worstErrorPartsPerMillion()),
                watch.estimates == 0 ? 0 : watch.hoursSum / watch.estimates);
    }

    /** In plain words. */
    String words() {
        String set =
                fulls == 0
                        ? fullPeriods == 0
                                ? "never set to full; the battery never was full either"
                                : "never set to full, though the battery was full "
                                        + times(fullPeriods)
                        : "set to full "
                                + times(fulls)
                                + (earlyFulls == 0
                                        ? ""
                                        : ", "
                                                + times(earlyFulls)
                                                + " too early, at a true "
                                                + percent(lowestTrueParts));
        return set
                + "; off by "
                + percent((long) meanErrorParts)
                + " in the mean, by "
                + percent(worstErrorParts)
                + " at worst";
    }

    /** Whether this run is clearly worse than another one. */
    boolean isWorseThan(FullWatchResult other) {
        boolean missed = fulls == 0 && other.fulls > 0 && other.earlyFulls == 0;
        // Half a point in the mean or one at worst: what a reader of the figure would notice.
        boolean errs =
                meanErrorParts > other.meanErrorParts + 5_000
                        || worstErrorParts > other.worstErrorParts + 10_000;
        return earlyFulls > other.earlyFulls || missed || errs || hoursDiffer(other);
    }

    /** Whether the hours shown are others, by more than a tenth. */
    boolean hoursDiffer(FullWatchResult other) {
        return Math.abs(meanHours - other.meanHours) > 0.1 * other.meanHours;
    }

    static String times(int count) {
        return count == 1 ? "once" : count == 2 ? "twice" : count + " times";
    }

    static String percent(long partsPerMillion) {
        return String.format(Locale.ROOT, "%.1f %%", partsPerMillion / 1e4);
    }

    private static final class Watch implements Observer {
        private final int place;
        private int fullPeriods;
        private boolean isFull;
        private long minutes;
        private double errorSum;
        private long estimates;
        private double hoursSum;

        Watch(int place) {
            this.place = place;
        }

        @Override
        public void onMoment(Rig rig) {
            long truth = StrictMath.round(rig.truth().stateOfCharge() * 1e6);
            if (!isFull && truth >= BATTERY_IS_FULL) {
                isFull = true;
                fullPeriods++;
            } else if (truth < BATTERY_IS_USED) {
                isFull = false;
            }
            Lane lane = rig.lanes().get(place);
            Readout read = lane.read();
            if (read.stateOfChargePartsPerMillion != Readout.NOT_KNOWN) {
                minutes++;
                errorSum += Math.abs(read.stateOfChargePartsPerMillion - truth);
            }
            if (read.timeToEmptyState == EstimateState.ESTIMATE) {
                estimates++;
                hoursSum += read.timeToEmptyMinutes / 60.0;
            }
        }
    }
}
