package org.gaugebench.sim.study;

import java.util.Arrays;
import org.gaugebench.sim.judge.Readings;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.StudySpec;

/** Runs one device and notes the error of its gauge at the moments of the band. */
final class DeviceRun implements Observer {
    private final StudySpec spec;
    private final long[] moments;
    private final long[] errors;
    private int next;
    private long worst = DeviceRow.NONE;
    private long worstAtMillis;
    private long unknownMinutes;

    private DeviceRun(StudySpec spec, long[] moments) {
        this.spec = spec;
        this.moments = moments;
        this.errors = new long[moments.length];
        Arrays.fill(errors, DeviceRow.NONE);
    }

    /**
     * Runs a device from the start to the end.
     *
     * @param scenario of the device, its seed included
     * @param moments of the band, rising
     */
    static DeviceRow of(
            StudySpec spec, Scenario scenario, long[] moments, int number, long[] steps) {
        DeviceRun run = new DeviceRun(spec, moments);
        new Rig(scenario, scenario.seed(), run).run();
        return new DeviceRow(
                number, steps, run.errors, run.worst, run.worstAtMillis, run.unknownMinutes);
    }

    /** Moments of the band of a run: each step from where errors count, and the end. */
    static long[] moments(StudySpec spec, long durationMillis) {
        long first = spec.fromMillis();
        long every = spec.everyMillis();
        int whole = (int) ((durationMillis - first - 1) / every);
        long[] moments = new long[whole + 1];
        for (int i = 0; i < whole; i++) {
            moments[i] = first + (i + 1) * every;
        }
        moments[whole] = durationMillis;
        return moments;
    }

    @Override
    public boolean wantsDigest() {
        return false;
    }

    @Override
    public void onMoment(Rig rig) {
        long now = rig.timeMillis();
        if (now < spec.fromMillis()) {
            return;
        }
        Lane lane = rig.lanes().get(spec.gaugeIndex());
        long shown = Readings.shown(spec.reading(), lane, lane.read(), rig);
        long error = DeviceRow.NONE;
        if (shown == Readings.NONE) {
            unknownMinutes++;
        } else {
            error = shown - Readings.truth(spec.reading(), rig);
            if (worst == DeviceRow.NONE || Math.abs(error) > Math.abs(worst)) {
                worst = error;
                worstAtMillis = now;
            }
        }
        while (next < moments.length && moments[next] <= now) {
            errors[next] = error;
            next++;
        }
    }
}
