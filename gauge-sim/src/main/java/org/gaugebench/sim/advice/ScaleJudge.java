package org.gaugebench.sim.advice;

import org.gaugebench.sim.advice.MeterVerdict.Line;
import org.gaugebench.sim.advice.MeterVerdict.Word;
import org.gaugebench.sim.logs.MeterReading;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/** Judges the gauge's amps against a meter's: at rest, small, and in use. */
final class ScaleJudge {
    /** A clamp is good to 2 to 3 %; common practice, no source. */
    private static final double CLAMP_PART = 0.03;

    /** Twenty steps with half a step of doubt on either side. */
    private static final double SMALL_PART = 0.05;

    /** How near a ratio has to come to that of two shunts in a shop. */
    private static final double RATIO_DOUBT = 0.05;

    private static final String AROUND = "look for a negative that does not go through the shunt";

    private final OwnersGauge gauge;
    private final ShuntRating shunt;
    private final @Nullable MeterReading atRest;

    /** With what both showed at rest, if that was looked at. */
    ScaleJudge(OwnersGauge gauge, ShuntRating shunt, @Nullable MeterReading atRest) {
        this.gauge = gauge;
        this.shunt = shunt;
        this.atRest = atRest;
    }

    Line atRest(MeterReading it) {
        double off = it.gauge() - it.meter();
        double step = CheckPlan.stepAmps(gauge);
        boolean flows = Math.abs(it.meter()) > step;
        boolean good = Math.abs(off) <= step && !flows;
        String found =
                Changes.text("%+.2f A on the gauge, %+.2f A by the meter", it.gauge(), it.meter());
        if (flows) {
            return new Line(
                    it.check(),
                    Word.CANNOT_TELL,
                    found,
                    "the meter says that something flows",
                    "find what is still on, or set the clamp to zero first");
        }
        return new Line(
                it.check(),
                good ? Word.GOOD : Word.CHANGE,
                found,
                Changes.text("one step of the screen, %s", Sizing.amps(step)),
                good ? "" : "its zero adjustment, with everything off");
    }

    /** The gauge's amps over the meter's, what it shows at rest taken off; NaN without a meter. */
    private double ratio(MeterReading it) {
        MeterReading rest = atRest;
        double zero = rest == null ? 0 : rest.gauge() - rest.meter();
        return it.meter() == 0 ? Double.NaN : (it.gauge() - zero) / it.meter();
    }

    Line small(MeterReading it) {
        double step = CheckPlan.stepAmps(gauge);
        String found =
                Changes.text("%+.2f A on the gauge, %+.2f A by the meter", it.gauge(), it.meter());
        if (Math.abs(it.meter()) < 10 * step) {
            return new Line(
                    it.check(),
                    Word.CANNOT_TELL,
                    found,
                    Changes.text(
                            "under ten steps of %s half a step is more than 5 %%",
                            Sizing.amps(step)),
                    "take a load of 20 to 50 steps");
        }
        if (Math.abs(it.gauge()) < step / 2) {
            return new Line(
                    it.check(),
                    Word.CHANGE,
                    found,
                    "more than nothing",
                    "it does not show what is small; leave this load on over night and see whether"
                            + " the amp-hours move: else small loads are never counted");
        }
        double ratio = ratio(it);
        double limit = SMALL_PART + step / 2 / Math.abs(it.meter());
        boolean good = Math.abs(ratio - 1) <= limit;
        return new Line(
                it.check(),
                good ? Word.GOOD : Word.CHANGE,
                found,
                "5 % and half a step, for 20 steps have half a step of doubt on either side",
                good ? "" : scaleRemedy(ratio));
    }

    Line working(MeterReading it) {
        double ratio = ratio(it);
        String found =
                Changes.text(
                        "%+.2f A on the gauge, %+.2f A by the meter: %.0f %%",
                        it.gauge(), it.meter(), ratio * 100);
        double step = CheckPlan.stepAmps(gauge);
        if (Math.abs(it.meter()) < 20 * step) {
            return new Line(
                    it.check(),
                    Word.CANNOT_TELL,
                    Changes.text(
                            "%+.2f A on the gauge, %+.2f A by the meter", it.gauge(), it.meter()),
                    Changes.text(
                            "under twenty steps of %s the screen is coarser than the clamp",
                            Sizing.amps(step)),
                    "switch on what you use at most");
        }
        boolean good = Math.abs(ratio - 1) <= CLAMP_PART;
        return new Line(
                it.check(),
                good ? Word.GOOD : Word.CHANGE,
                found,
                "3 %, which is what a clamp is good to",
                good ? "" : scaleRemedy(ratio));
    }

    /** What a wrong ratio says. */
    private String scaleRemedy(double ratio) {
        if (ratio < 0) {
            return "the shunt, or its thin pair, is the other way round: swap the two thin wires";
        }
        for (ShuntRating each : PreferredShunts.all()) {
            double theirs = (double) each.microamps() / each.microvolts();
            double ours = (double) shunt.microamps() / shunt.microvolts();
            double wrong = theirs / ours;
            if (Math.abs(wrong - 1) > RATIO_DOUBT && Math.abs(ratio / wrong - 1) <= RATIO_DOUBT) {
                return Changes.text(
                        "compare what is printed on the shunt with what is typed in: it counts as"
                                + " one of %s would%s",
                        each, ratio < 1 ? "; then " + AROUND : "");
            }
        }
        return ratio < 1
                ? AROUND
                : "the thin pair must end on the shunt's small screws, not on its bolts; then"
                        + " compare the rating typed in";
    }
}
