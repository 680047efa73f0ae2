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
        scenario =
                new TrialScenario(system, gauge, shunt)
                        .titled("The gauge's wire off in the worst hour of a day")
                        .withLoads()
                        .chargedDaily(inPerDay)
                        .battery(system.ampHours(), start)
                        .lasting(Math.max(1, (toMinutes + 2) / 1_440.0))
                        .counter("keeps", start, system.ampHours())
                        .starter("full", start, "start-at-full")
                        .starter("guesses", start, "voltage-guess-at-start")
                        .step(
                                Changes.text(
                                        "{from: %d min, to: %d min, set: {gauge.power: off,"
                                                + " full.power: off, guesses.power: off}}",
                                        fromMinutes, toMinutes));
        List<Moment> run = TrialRun.of(scenario, 1);
        Moment after = run.get((int) Math.min(run.size() - 1, toMinutes + 1));
        Moment before = run.get((int) fromMinutes);
        unseen = Math.abs(after.error(0) - before.error(0));
        if (Math.abs(before.truth() - shown) > 1) {
            assumed.add(
                    Changes.text(
                            "the loads of the hours before leave no more than this as the wire goes"
                                    + " off: %.0f %%",
                            before.truth()));
        }
        double full = after.error(1);
        double guess = after.error(2);
        figures.add(new Figure("really left as the wire is back", after.truth(), "%"));
        figures.add(new Figure("flowed unseen, at the worst time of day", unseen, "points"));
        figures.add(new Figure("off by, if it shows what it showed before", unseen, "points"));
        figures.add(new Figure("off by, if it shows 100 %", full, "points"));
        figures.add(new Figure("off by, if it shows 0 %", -after.truth(), "points"));
        figures.add(new Figure("off by, if it guesses from the volts", guess, "points"));
        AfterOff told = gauge.afterOff();
        double worst =
                Math.max(
                        Math.max(unseen, after.truth()), Math.max(Math.abs(full), Math.abs(guess)));
        atOnce =
                switch (told) {
                    case KEEPS -> unseen;
                    case FULL -> Math.abs(full);
                    case ZERO -> after.truth();
                    case GUESSES -> Math.abs(guess);
                    case NOTHING -> Math.max(shown, 100 - shown);
                    case NOT_KNOWN -> worst;
                };
        if (told == AfterOff.NOT_KNOWN) {
            assumed.add("what it shows afterwards is not known: the worst of four is taken");
        }
        if (inPerDay > 0) {
            assumed.add("charged from 8 to 14 o'clock, as much as the loads take in a day");
        }
        if (system.loads().isEmpty()) {
            assumed.add("nothing is drawn: no load was told");
        }
        answer = answer(told, time(hours));
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
