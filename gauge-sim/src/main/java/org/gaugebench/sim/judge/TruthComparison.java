package org.gaugebench.sim.judge;

import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Trust;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.rig.Lane;

/** Keeps one gauge's worst and last error of state of charge: shown minus true. */
final class TruthComparison {
    private final Lane lane;
    private final Track shownPercent = new Track();
    private long worstErrorPartsPerMillion;
    private long worstAtMillis = -1;
    private RuleCoverage rule = RuleCoverage.NONE;

    TruthComparison(Lane lane) {
        this.lane = lane;
    }

    void look(Truth truth, long timeMillis) {
        rule = rule.plus(RuleCoverage.of(lane.inspect()));
        Readout readout = lane.read();
        if (readout.trust == Trust.UNKNOWN) {
            shownPercent.add(Double.NaN);
            return;
        }
        shownPercent.add(readout.stateOfChargePartsPerMillion / 1e4);
        long error =
                readout.stateOfChargePartsPerMillion
                        - StrictMath.round(truth.stateOfCharge() * 1e6);
        if (worstAtMillis < 0 || Math.abs(error) > Math.abs(worstErrorPartsPerMillion)) {
            worstErrorPartsPerMillion = error;
            worstAtMillis = timeMillis;
        }
    }

    LaneResult result() {
        Readout readout = lane.read();
        boolean known = readout.trust != Trust.UNKNOWN;
        return new LaneResult(
                lane.name(),
                known ? readout.stateOfChargePartsPerMillion : Readout.NOT_KNOWN,
                known ? readout.remainingNanocoulombs / 3_600_000 : 0,
                worstErrorPartsPerMillion,
                worstAtMillis,
                shownPercent,
                LaneResult.Belief.of(readout, lane.hasPower()),
                rule.plus(RuleCoverage.of(lane.inspect())));
    }
}
