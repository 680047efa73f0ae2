package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.core.port.Readout;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;

/** Looks at every tick of a run and keeps what a picture of it needs. */
public final class PictureTrace implements Observer {
    /** Most gauges drawn: beyond that, lines are no longer told apart. */
    static final int MOST_GAUGES = 6;

    /**
     * One series of the picture.
     *
     * @param series which
     * @param truth what is really so
     * @param shown by each gauge drawn, the one under test first
     * @param lower edge of the first gauge's band
     * @param upper edge of it
     */
    record Strip(
            PictureSeries series,
            PictureCurve truth,
            List<PictureCurve> shown,
            PictureCurve lower,
            PictureCurve upper) {}

    private final List<PictureSeries> shows;
    private final List<Strip> strips = new ArrayList<>();
    private boolean endIsOpen = true;

    /**
     * Prepares a picture.
     *
     * @param shows what it shows, from top to bottom
     */
    public PictureTrace(List<PictureSeries> shows) {
        this.shows = List.copyOf(shows);
    }

    List<Strip> strips() {
        return strips;
    }

    @Override
    public Observer forTicks() {
        return this;
    }

    @Override
    public void onStart(Rig rig) {
        long duration = rig.scenario().durationMillis();
        int gauges = Math.min(MOST_GAUGES, rig.lanes().size());
        for (PictureSeries series : shows) {
            List<PictureCurve> shown = new ArrayList<>();
            for (int i = 0; i < gauges; i++) {
                shown.add(new PictureCurve(duration));
            }
            strips.add(
                    new Strip(
                            series,
                            new PictureCurve(duration),
                            shown,
                            new PictureCurve(duration),
                            new PictureCurve(duration)));
        }
        // Nothing has flowed before the first tick: a line that begins at zero would be a spike.
        look(rig, strips.stream().filter(it -> it.series != PictureSeries.CURRENT).toList());
    }

    @Override
    public void onTick(Rig rig) {
        look(rig, strips);
    }

    private static void look(Rig rig, List<Strip> strips) {
        long now = rig.timeMillis();
        for (Strip strip : strips) {
            if (strip.series != PictureSeries.TIME_TO_EMPTY) {
                strip.truth.add(now, strip.series.truth(rig));
            }
        }
        int gauges = strips.isEmpty() ? 0 : strips.get(0).shown.size();
        for (int i = 0; i < gauges; i++) {
            Lane lane = rig.lanes().get(i);
            Readout readout = lane.read();
            for (Strip strip : strips) {
                strip.shown.get(i).add(now, strip.series.shown(lane, readout, rig));
                if (i == 0 && strip.series.hasBand()) {
                    int lower = readout.lowerEdgePartsPerMillion;
                    int upper = readout.upperEdgePartsPerMillion;
                    strip.lower.add(now, strip.series.edge(readout, lower, rig));
                    strip.upper.add(now, strip.series.edge(readout, upper, rig));
                }
            }
        }
    }

    /** The true end is found by running a copy of the plant ahead: once, if there is an end. */
    @Override
    public void onMoment(Rig rig) {
        for (Strip strip : strips) {
            if (strip.series == PictureSeries.TIME_TO_EMPTY && endIsOpen) {
                long truth = strip.series.truth(rig);
                strip.truth.add(rig.timeMillis(), truth);
                endIsOpen = truth != PictureSeries.NONE;
            }
        }
    }
}
