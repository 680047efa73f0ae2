package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.advice.ChangesResult.Figure;
import org.gaugebench.sim.advice.OwnersGauge.AfterOff;
import org.gaugebench.sim.advice.TrialRun.Moment;
import org.gaugebench.sim.units.ShuntRating;

/**
 * What the gauge shows after its supply wire was off, and how far that is from the truth.
 *
 * <p>Two runs: the first finds the stretch of so many hours in which most flows unseen, the second
 * takes the wire off in just that stretch, from gauges of each kind.
 */
final class WireOff {
    private static final int STEP_MINUTES = 10;

    private final List<Figure> figures = new ArrayList<>();
    private final List<String> assumed = new ArrayList<>();
    private final TrialScenario scenario;
    private final double unseen;
    private final double atOnce;
    private final String answer;

    WireOff(OwnSystem system, OwnersGauge gauge, ShuntRating shunt, double shown, double hours) {
        // It begins somewhere in the first day, so that little else has happened by then.
        double days = 1 + Math.ceil(hours / 24);
        double inPerDay =
                system.chargerAmps() == 0
                        ? 0
                        : system.loads().stream().mapToDouble(OwnLoad::ampHoursPerDay).sum();
        TrialScenario free =
                new TrialScenario(system, gauge, shunt)
                        .composed()
                        .withLoads()
                        .chargedDaily(inPerDay)
                        .battery(system.ampHours(), shown)
                        .lasting(days)
                        .counter("own", shown, system.ampHours());
        List<Moment> moments = TrialRun.of(free, STEP_MINUTES);
        int length = Math.max(1, (int) Math.round(hours * 60 / STEP_MINUTES));
        int from = worst(moments, length);
        // Where less than a step is asked for, the step's part of it.
        long fromMinutes = Math.max(1, (long) from * STEP_MINUTES);
        long toMinutes = fromMinutes + Math.max(1, Math.round(hours * 60));
        // What was shown stood there as the wire went off, hours after the run begins.
        double start = Math.max(0, Math.min(100, 2 * shown - moments.get(from).truth()));
        AfterOff told = gauge.afterOff();
        scenario =
                new TrialScenario(system, gauge, shunt)
                        .composed()
                        .titled("The gauge's wire off in the worst hour of a day")
                        .withLoads()
                        .chargedDaily(inPerDay)
                        .battery(system.ampHours(), start)
                        .lasting(Math.max(1, (toMinutes + 3) / 1_440.0));
        gauges(system, told, start);
        scenario.step(off(told, fromMinutes, toMinutes));
        if (told == AfterOff.ZERO) {
            // It kept nothing, and begins at 0.
            scenario.step(Changes.text("{at: %d min, set: {gauge.declare: 0 %%}}", toMinutes + 1));
        }
        List<Moment> run = TrialRun.of(scenario, 1);
        Moment after = run.get((int) Math.min(run.size() - 1, toMinutes + readAfter(told)));
        Moment before = run.get((int) fromMinutes);
        if (Math.abs(before.truth() - shown) > 1) {
            assumed.add(
                    Changes.text(
                            "the loads of the hours before leave no more than this as the wire goes"
                                    + " off: %.0f %%",
                            before.truth()));
        }
        // Our core or a gauge that keeps its figure: what it lacks afterwards flowed unseen.
        int keeps = told == AfterOff.NOT_KNOWN ? 0 : 1;
        unseen = Math.abs(after.error(keeps) - before.error(keeps));
        figures.add(new Figure("really left as the wire is back", after.truth(), "%"));
        figures.add(new Figure("flowed unseen, at the worst time of day", unseen, "points"));
        atOnce = told == AfterOff.NOT_KNOWN ? anyOfFour(after) : own(told, before, after, shown);
        if (inPerDay > 0) {
            assumed.add("charged from 8 to 14 o'clock, as much as the loads take in a day");
        }
        if (system.loads().isEmpty()) {
            assumed.add("nothing is drawn: no load was told");
        }
        answer = answer(told, time(hours));
    }

    /** What is told is run, with ours beside it; what is not known is run in each of its ways. */
    private void gauges(OwnSystem system, AfterOff told, double start) {
        switch (told) {
            case NOT_KNOWN ->
                    scenario.counter("keeps", start, system.ampHours())
                            .starter("full", start, AfterOff.FULL)
                            .starter("guesses", start, AfterOff.GUESSES);
            case KEEPS -> scenario.counter("own", start, system.ampHours()).beside(start);
            default -> scenario.starter("own", start, told).beside(start);
        }
    }

    private static String off(AfterOff told, long fromMinutes, long toMinutes) {
        String others =
                told == AfterOff.NOT_KNOWN
                        ? "full.power: off, guesses.power: off"
                        : TrialScenario.BESIDE + ".power: off";
        return Changes.text(
                "{from: %d min, to: %d min, set: {gauge.power: off, %s}}",
                fromMinutes, toMinutes, others);
    }

    /** A minute after; one more where it is told first that it begins at 0. */
    private static int readAfter(AfterOff told) {
        return told == AfterOff.ZERO ? 2 : 1;
    }

    private double anyOfFour(Moment after) {
        double full = after.error(1);
        double guess = after.error(2);
        figures.add(new Figure("off by, if it shows what it showed before", unseen, "points"));
        figures.add(new Figure("off by, if it shows 100 %", full, "points"));
        figures.add(new Figure("off by, if it shows 0 %", -after.truth(), "points"));
        figures.add(new Figure("off by, if it guesses from the volts", guess, "points"));
        assumed.add("what it shows afterwards is not known: the worst of four is taken");
        return Math.max(Math.max(unseen, after.truth()), Math.max(Math.abs(full), Math.abs(guess)));
    }

    /**
     * How far the gauge itself is off; what it was off before its wire went is not part of that.
     */
    private double own(AfterOff told, Moment before, Moment after, double shown) {
        double off =
                switch (told) {
                    case KEEPS -> Math.abs(after.error(0) - before.error(0));
                    // Whoever sets it then may set it to anything.
                    case NOTHING -> Math.max(shown, 100 - shown);
                    default -> Math.abs(after.error(0));
                };
        if (told == AfterOff.NOTHING) {
            figures.add(new Figure("shows nothing; set to anything, off by up to", off, "points"));
        } else {
            figures.add(new Figure("shown then", after.shown().get(0), "%"));
            figures.add(new Figure("off by", off, "points"));
        }
        figures.add(
                new Figure("our gauge beside it, which keeps its count, off by", unseen, "points"));
        return off;
    }

    private String answer(AfterOff told, String time) {
        return switch (told) {
            case KEEPS ->
                    Changes.text(
                            "After %s without its wire it shows what it showed before, and is off"
                                    + " by up to %.1f points.",
                            time, atOnce);
            case FULL ->
                    Changes.text(
                            "After %s without its wire it shows 100 %%, %.0f points off: do not"
                                    + " believe it until the battery was fully charged.",
                            time, atOnce);
            case ZERO ->
                    Changes.text(
                            "After %s without its wire it shows 0 %%, %.0f points off: do not"
                                    + " believe it until the battery was fully charged.",
                            time, atOnce);
            case GUESSES ->
                    Changes.text(
                            "After %s without its wire it guesses, here %.0f points off: do not"
                                    + " believe it until the battery was fully charged.",
                            time, atOnce);
            case NOTHING ->
                    Changes.text(
                            "After %s without its wire it knows nothing, and any figure may be off"
                                    + " by up to %.0f points until it is set.",
                            time, atOnce);
            case NOT_KNOWN ->
                    Changes.text(
                            "After %s without its wire the figure may be off by up to %.0f points:"
                                    + " charge fully and set it to 100 %%.",
                            time, atOnce);
        };
    }

    private static int worst(List<Moment> moments, int length) {
        int found = 0;
        double most = -1;
        for (int i = 0; i + length < moments.size(); i++) {
            double moved = Math.abs(moments.get(i + length).truth() - moments.get(i).truth());
            if (moved > most) {
                most = moved;
                found = i;
            }
        }
        return found;
    }

    private static String time(double hours) {
        long minutes = Math.round(hours * 60);
        if (minutes < 60) {
            return minutes == 1 ? "1 minute" : minutes + " minutes";
        }
        if (minutes == 60) {
            return "1 hour";
        }
        return Changes.text(hours % 1 == 0 ? "%.0f hours" : "%.1f hours", hours);
    }

    List<Figure> figures() {
        return figures;
    }

    List<String> assumed() {
        return assumed;
    }

    TrialScenario scenario() {
        return scenario;
    }

    /** What flowed while it did not look, in points. */
    double unseen() {
        return unseen;
    }

    double atOnce() {
        return atOnce;
    }

    String answer() {
        return answer;
    }
}
