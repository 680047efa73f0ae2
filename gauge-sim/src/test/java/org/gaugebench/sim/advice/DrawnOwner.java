package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.gaugebench.core.port.Event;
import org.gaugebench.sim.logs.OwnersNote;
import org.gaugebench.sim.logs.OwnersNote.Word;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.jspecify.annotations.Nullable;

/** Writes down what its owner would: readings, what the charger says it gave, and what happened. */
final class DrawnOwner implements Observer {
    private final DrawnHut hut;
    private final List<long[]> open;
    private final List<OwnersNote> notes = new ArrayList<>();
    private long lastMinute;
    private double charged;
    private boolean set;
    private boolean flat;
    private double worst;

    DrawnOwner(DrawnHut hut, List<long[]> open) {
        this.hut = hut;
        this.open = open;
    }

    List<OwnersNote> notes() {
        return List.copyOf(notes);
    }

    /** How far off a note was, at most; he does not know it. */
    double worstPoints() {
        return worst;
    }

    @Override
    public void onStart(Rig rig) {
        write(rig, 0, Word.CHARGER_FINISHED);
    }

    @Override
    public void onEvent(Lane lane, Event event, long value) {
        set |= event == Event.SET_TO_FULL;
    }

    @Override
    public void onMoment(Rig rig) {
        long minute = rig.timeMillis() / 60_000;
        if (flat || minute == 0) {
            return;
        }
        charged += rig.plant().chargerAmps("shore") / 60;
        flat = rig.truth().stateOfCharge() <= 0.005 || rig.plant().isStarved();
        if (flat) {
            write(rig, minute, Word.RAN_FLAT);
            return;
        }
        boolean ends = open.stream().anyMatch(it -> it[1] == minute);
        boolean charging = open.stream().anyMatch(it -> it[0] < minute && minute < it[1]);
        // Who sees no amp-hours on his charger writes when it is done.
        boolean due =
                minute % 60 == 0
                        && Arrays.stream(hut.hoursOfDay).anyMatch(it -> it == minute / 60 % 24)
                        && (hut.notesCharged || !charging);
        if (hut.isSwitched(minute)) {
            // He writes when he leaves and when he comes back.
            write(rig, minute, hut.isQuiet(lastMinute, minute) ? Word.NOTHING : null);
        } else if (ends) {
            boolean full = rig.truth().stateOfCharge() >= 0.97;
            write(rig, minute, full ? Word.CHARGER_FINISHED : set ? Word.SET_TO_100 : null);
        } else if (due) {
            boolean quiet = hut.isQuiet(lastMinute, minute);
            write(rig, minute, quiet ? Word.NOTHING : set ? Word.SET_TO_100 : null);
        }
    }

    private void write(Rig rig, long minute, @Nullable Word word) {
        double percent = rig.lanes().get(0).read().stateOfChargePartsPerMillion / 1e4;
        double ampHours = rig.lanes().get(0).read().remainingNanocoulombs / 3.6e12;
        double step = hut.rounding;
        worst = Math.max(worst, Math.abs(percent - rig.truth().stateOfCharge() * 100));
        notes.add(
                new OwnersNote(
                        minute / 60.0,
                        StrictMath.rint(percent / step) * step,
                        hut.notesAmpHours ? StrictMath.rint(ampHours * 10) / 10 : null,
                        hut.notesCharged && charged > 0.05
                                ? StrictMath.rint(charged * 10) / 10
                                : null,
                        null,
                        word));
        lastMinute = minute;
        charged = 0;
        set = false;
    }
}
