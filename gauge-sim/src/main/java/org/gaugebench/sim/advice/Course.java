package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;
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
            long atMillis, long truth, long own, long better, long betterLow, long betterHigh) {}

    private final List<Hour> hours = new ArrayList<>();

    /** An empty course; give it to a run of two gauges. */
    Course() {}

    /** In order of time, the start first. */
    public List<Hour> hours() {
        return List.copyOf(hours);
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
