package org.gaugebench.sim.judge;

import org.gaugebench.core.port.Readout;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Expectation.Reading;

/** One moment of a run in one line: what a bug report needs. */
final class MomentText {
    private MomentText() {}

    static String of(Rig rig, Lane lane, Readout readout) {
        return "at "
                + Figures.moment(rig.timeMillis())
                + " "
                + lane.name()
                + " shows "
                + shown(Reading.STATE_OF_CHARGE, lane, readout, rig)
                + ", true "
                + Figures.of(
                        Reading.STATE_OF_CHARGE,
                        Readings.truth(Reading.STATE_OF_CHARGE, rig.truth()))
                + (lane.hasPower() ? state(readout) : "; it has no power");
    }

    private static String state(Readout readout) {
        return (readout.bandUnknown ? "" : ", band " + Figures.edges(readout))
                + "; "
                + Figures.of(Reading.CURRENT, readout.currentMicroamps)
                + ", "
                + Figures.of(Reading.VOLTAGE, readout.voltageMicrovolts)
                + "; full-charge rule "
                + readout.ruleState.name().toLowerCase(java.util.Locale.ROOT).replace('_', ' ')
                + " ("
                + readout.ruleReason.sentence()
                + ")";
    }

    private static String shown(Reading reading, Lane lane, Readout readout, Rig rig) {
        long value = Readings.shown(reading, lane, readout, rig.truth());
        return value == Readings.NONE ? "not known" : Figures.of(reading, value);
    }
}
