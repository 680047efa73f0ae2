package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.Readout;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;

/** What was true and what two gauges showed, hour by hour. */
public final class Course implements Observer {
    private static final long HOUR_MILLIS = 3_600_000;

    /**
     * One hour's end, in millionths of the charge.
     *
     * @param atMillis from the start
     * @param truth what is really left
     * @param own what the owner's gauge shows
     * @param better what ours shows beside it
     * @param betterLow lower end of what ours says it may be off
     * @param betterHigh upper end of it
     */
    public record Hour(
            long atMillis, long truth, long own, long better, long betterLow, long betterHigh) {
        Hour withOwn(long other) {
            return new Hour(atMillis, truth, other, better, betterLow, betterHigh);
        }
    }

    private final List<Hour> hours = new ArrayList<>();
    private long withHours;
    private long atLimit;

    /** An empty course; give it to a run of two gauges. */
    Course() {}

    /** In order of time, the start first. */
    public List<Hour> hours() {
        return List.copyOf(hours);
    }

    /** Part of the hours to empty that stood at the longest which the owner's gauge shows. */
    double hoursAtLimitPart() {
        return withHours == 0 ? 0 : (double) atLimit / withHours;
    }

    private void countHours(Readout own) {
        if (own.timeToEmptyState == EstimateState.MORE_THAN) {
            atLimit++;
            withHours++;
        } else if (own.timeToEmptyState == EstimateState.ESTIMATE) {
            withHours++;
        }
    }

    @Override
    public void onStart(Rig rig) {
        onMoment(rig);
    }

    @Override
    public void onMoment(Rig rig) {
        if (rig.timeMillis() % HOUR_MILLIS != 0) {
            return;
        }
        countHours(rig.lanes().get(0).read());
        Lane better = rig.lanes().get(1);
        Readout read = better.read();
        hours.add(
                new Hour(
                        rig.timeMillis(),
                        StrictMath.round(rig.truth().stateOfCharge() * 1e6),
                        rig.lanes().get(0).read().stateOfChargePartsPerMillion,
                        read.stateOfChargePartsPerMillion,
                        read.lowerEdgePartsPerMillion,
                        read.upperEdgePartsPerMillion));
    }
}
