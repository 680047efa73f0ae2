package org.gaugebench.sim.explain;

import org.gaugebench.core.port.Readout;
import org.gaugebench.sim.judge.Figures;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.rig.Lane;

/** What a gauge shows, what is true, how sure it is and why, in plain words. */
final class Sentence {
    /** Half a hundredth of a point: less would be told as 0.00. */
    private static final long SMALLEST_TOLD = 50;

    private Sentence() {}

    static String of(Lane lane, Truth truth) {
        long real = StrictMath.round(truth.stateOfCharge() * 1e6);
        String trueWords = Figures.percent(real) + " is true";
        if (!lane.hasPower()) {
            return "%s has no power and shows nothing; %s.".formatted(lane.name(), trueWords);
        }
        Readout it = lane.read();
        long shown = it.stateOfChargePartsPerMillion;
        if (shown < 0) {
            return "%s shows no state of charge, because %s; %s."
                    .formatted(lane.name(), it.trustReason.sentence(), trueWords);
        }
        long error = shown - real;
        String apart =
                Math.abs(error) < SMALLEST_TOLD
                        ? "right to a hundredth of a point"
                        : Figures.decimal(Math.abs(error), 4, 2)
                                + " points too "
                                + (error > 0 ? "high" : "low");
        String sure =
                it.bandUnknown
                        ? "How far it may be off, it cannot say"
                        : "By its own word it is %s %% (19 times in 20)"
                                .formatted(
                                        Figures.edges(
                                                it.lowerEdgePartsPerMillion,
                                                it.upperEdgePartsPerMillion));
        boolean outside =
                !it.bandUnknown
                        && (real < it.lowerEdgePartsPerMillion
                                || real > it.upperEdgePartsPerMillion);
        return "%s shows %s, %s: %s. %s%s, because: %s."
                .formatted(
                        lane.name(),
                        Figures.percent(shown),
                        trueWords,
                        apart,
                        sure,
                        outside ? ", and the truth lies outside" : "",
                        it.trustReason.sentence());
    }
}
