package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.gaugebench.sim.advice.ChangesResult.Figure;
import org.gaugebench.sim.advice.TrialRun.Moment;
import org.gaugebench.sim.units.ShuntRating;

/**
 * What a change asks to be redone, and how far the gauge's figure can be believed until then. Every
 * number comes from runs of the owner's own system with a gauge like the owner's.
 */
public final class Changes {
    private static final double HOURS_A_DAY = 24;

    /** New batteries come neither full nor empty; common practice, no source. */
    private static final double AS_DELIVERED_PERCENT = 60;

    /** Somewhere between half and full, where nobody told. */
    private static final double USUAL_SHOWN_PERCENT = 70;

    private static final double USUAL_LITHIUM_STORED_PERCENT = 60;

    /** Lead-acid that stands lower than that for long loses charge for good; common practice. */
    private static final double LEAD_STORED_LEAST_PERCENT = 75;

    private static final double LITHIUM_STORED_LEAST_PERCENT = 20;
    private static final double LONGEST_RUN_DAYS = 60;
    private static final double WARM_CELSIUS = 25;

    /** Less than that nobody reads off a percent and its own error. */
    static final double NOTICED_POINTS = 3;

    private final OwnSystem system;
    private final OwnersGauge gauge;
    private final ShuntRating shunt;
    private final OwnChange change;
    private final MonthAheadResult ahead;
    private final double shown;
    private final double drawPerDay;
    private final List<Figure> figures = new ArrayList<>();
    private final List<String> redo = new ArrayList<>();
    private final List<String> assumed = new ArrayList<>();

    private Changes(
            OwnSystem system,
            OwnersGauge gauge,
            ShuntRating shunt,
            MonthAheadResult ahead,
            OwnChange change) {
        this.system = system;
        this.gauge = gauge;
        this.shunt = shunt;
        this.change = change;
        this.ahead = ahead;
        Double told = change.shownPercent();
        this.shown = told == null ? usualShown() : told;
        this.drawPerDay = system.loads().stream().mapToDouble(OwnLoad::ampHoursPerDay).sum();
    }

    private double usualShown() {
        if (change.what() != OwnChange.What.STORED) {
            return USUAL_SHOWN_PERCENT;
        }
        return system.chemistry().isLeadAcid() ? 100 : USUAL_LITHIUM_STORED_PERCENT;
    }

    /**
     * Answers for a system.
     *
     * @param system as it was told, before the change
     * @param gauge the owner's
     * @param shunt that is fitted
     * @param change what changed; its amount between its own limits
     */
    public static ChangesResult of(
            OwnSystem system, OwnersGauge gauge, ShuntRating shunt, OwnChange change) {
        return of(system, gauge, shunt, MonthAhead.of(system, gauge, shunt), change);
    }

    /** The same, where the month ahead is known already. */
    public static ChangesResult of(
            OwnSystem system,
            OwnersGauge gauge,
            ShuntRating shunt,
            MonthAheadResult ahead,
            OwnChange change) {
        if (!(change.amount() >= change.least() && change.amount() <= change.most())) {
            throw new IllegalArgumentException("an amount out of range: " + change);
        }
        return new Changes(system, gauge, shunt, ahead, change).work();
    }

    private ChangesResult work() {
        return switch (change.what()) {
            case BATTERY_SWAPPED -> swapped();
            case SECOND_BATTERY -> second();
            case STORED -> stored();
            case WINTER -> winter();
            case WIRE_OFF -> wireOff();
        };
    }

    private TrialScenario trial(String title) {
        return trial(title, gauge);
    }

    private TrialScenario trial(String title, OwnersGauge own) {
        return new TrialScenario(system, own, shunt).composed().titled(title);
    }

    // ---- Another battery

    private ChangesResult swapped() {
        tellShown();
        assumed.add(text("the new battery came with %.0f %% in it", AS_DELIVERED_PERCENT));
        // Whatever the new one holds, the old figure says nothing of it.
        double atOnce = Math.max(shown, 100 - shown);
        figure("the old figure on the new battery, off by up to", atOnce, "points");
        figure("set to 100 % before it was charged, off by", 100 - AS_DELIVERED_PERCENT, "points");
        TrialScenario trial =
                discharge(change.amount(), trial("Another battery, the old amp-hours typed in"));
        wrongAmpHours(trial, change.amount(), "the new battery");
        worstCount(change.amount(), WARM_CELSIUS);
        redo.add(
                text(
                        "type in the amp-hours printed on the new battery: %s",
                        ampHours(change.amount())));
        redo.add(
                "another kind of battery: its charger volts, its charge efficiency and what it"
                        + " waits for to set itself to 100 % too");
        redo.add(fullySet());
        redo.add("do the capacity test within a month, and write it down: it is the new measure");
        return result(
                text(
                        "Do not believe the figure until the new battery was fully charged and the"
                                + " gauge set to 100 %%: it may be off by up to %.0f points.",
                        atOnce),
                atOnce,
                trial);
    }

    // ---- One more beside it

    private ChangesResult second() {
        tellShown();
        double both = system.ampHours() + change.amount();
        assumed.add("both batteries are full, alike in kind and age when they are joined");
        TrialScenario trial =
                discharge(both, trial("Two batteries, the amp-hours of one typed in"));
        double off = wrongAmpHours(trial, both, "both batteries");
        worstCount(both, WARM_CELSIUS);
        // One that joins at another charge changes the sum, and nothing was counted.
        double atOnce = Math.max(shown, 100 - shown) * change.amount() / both;
        figure("joined at unequal charge, off at once by up to", atOnce, "points");
        redo.add(
                "charge each to full by itself first; join them when their volts differ by less"
                        + " than 0.1 V, negative last; never another kind or age");
        redo.add(text("type in the sum of what is printed on both: %s", ampHours(both)));
        redo.add(fullySet());
        redo.add(
                "both negatives on the battery's side of the shunt, joined there: a second one on"
                        + " the other side is half a current that does not go through the shunt");
        return result(
                text(
                        "Type in %s and set it to 100 %% when both are full: until then it shows"
                                + " 0 %% with %.0f %% left.",
                        ampHours(both), off),
                atOnce,
                trial);
    }

    /**
     * How far the right amp-hours are off at the end, with a bad answer where none is known; 0
     * where all is.
     */
    private double worstCount(double ampHours, double celsius) {
        OwnersGauge worst = ComposedGauge.worse(gauge);
        if (worst == null) {
            return 0;
        }
        TrialScenario bad = discharge(ampHours, trial("At worst", worst).at(celsius));
        double off = Math.abs(TrialRun.darkOf(TrialRun.of(bad, 10)).error(1));
        figure("right ones, off as the lights go out, at worst", off, "points");
        return off;
    }

    /** From full to flat without a charge, with the wrong and with the right amp-hours. */
    private TrialScenario discharge(double ampHours, TrialScenario trial) {
        double perDay = drawPerDay;
        if (perDay * LONGEST_RUN_DAYS < ampHours) {
            perDay = ampHours / 20 * HOURS_A_DAY;
            String steady =
                    text(
                            "drawn from full to flat in 20 h by %s; your loads would take more than"
                                    + " %.0f days",
                            Sizing.amps(ampHours / 20), LONGEST_RUN_DAYS);
            if (!assumed.contains(steady)) {
                assumed.add(steady);
            }
            trial.withSteadyLoad(ampHours / 20);
        } else {
            trial.withLoads();
        }
        return trial.battery(ampHours, 100)
                .lasting(Math.min(LONGEST_RUN_DAYS, ampHours / perDay * 1.3 + 1))
                .counter("old", 100, system.ampHours())
                .counter("new", 100, ampHours);
    }

    /**
     * Tells what the wrong amp-hours do; answers what is left as 0 % is shown, or shown as flat.
     */
    private double wrongAmpHours(TrialScenario trial, double right, String which) {
        List<Moment> moments = TrialRun.of(trial, 10);
        Moment half = moments.get(0);
        Moment zero = moments.get(0);
        for (Moment each : moments) {
            half = each.truth() >= 50 ? each : half;
            zero = each.shown().get(0) > 0.5 ? each : zero;
        }
        Moment dark = TrialRun.darkOf(moments);
        figure(
                text("%s half empty, typed in as %s: shown", which, ampHours(system.ampHours())),
                half.shown().get(0),
                "%");
        figure(text("the same, typed in as %s: shown", ampHours(right)), half.shown().get(1), "%");
        boolean more = right > system.ampHours();
        double left = more ? zero.truth() : dark.shown().get(0);
        figure(more ? "left as it shows 0 %" : "shown as the lights go out", left, "%");
        return left;
    }

    // ---- Nothing on for weeks

    private ChangesResult stored() {
        tellShown();
        double days = change.amount();
        StoredTrial trial = new StoredTrial(system, shunt, shown, days, zeroAmps());
        TrialScenario fed = trial.fed(gauge);
        Moment on = StoredTrial.end(fed);
        Moment off = StoredTrial.end(trial.unfed(gauge));
        double atOnce = on.error(0);
        figure("really left, its wire on", on.truth(), "%");
        figure("shown then", on.shown().get(0), "%");
        figure("too much by", atOnce, "points");
        Double worst = trial.error(ComposedGauge.worse(gauge));
        if (worst != null) {
            figure("too much by, if what is not known of it is bad", worst, "points");
        }
        if (gauge.isTold()) {
            figure("our gauge beside it would show", on.shown().get(1), "%");
        }
        figure("really left, its wire off", off.truth(), "%");
        double lossPerDay = (shown - on.truth()) / days;
        double least =
                system.chemistry().isLeadAcid()
                        ? LEAD_STORED_LEAST_PERCENT
                        : LITHIUM_STORED_LEAST_PERCENT;
        double until = lossPerDay > 0 ? Math.max(0, (shown - least) / lossPerDay) : 366;
        figure(
                text("until %.0f %% are left, its wire on", least),
                Math.min(366, Math.floor(until)),
                "days");
        double tenAfter = atOnce > 0 ? 10 / (atOnce / days) : 366;
        figure(
                "stored so long the figure stays within 10 points",
                Math.min(366, Math.floor(tenAfter)),
                "days");
        assumed.add("every load and charger off, and the battery at 20 °C");
        redo.add(fullySet());
        redo.add("before that, look at the volts on the posts: far below usual is a sick battery");
        redo.add("in the next store: take the gauge's fused wire off too, first of all");
        return result(
                text(
                        "After %s stored the figure is %.1f points too high: charge fully and set"
                                + " it to 100 %% before you believe it.",
                        days(days), atOnce),
                Math.abs(atOnce),
                fed);
    }

    // ---- Cold

    private ChangesResult winter() {
        double celsius = change.amount();
        assumed.add("the battery itself, not only the air, is at that temperature");
        TrialScenario cold =
                discharge(system.ampHours(), trial("From full to flat in the cold").at(celsius));
        Moment dark = TrialRun.darkOf(TrialRun.of(cold, 10));
        Moment warm =
                TrialRun.darkOf(
                        TrialRun.of(
                                discharge(
                                        system.ampHours(),
                                        trial("From full to flat at 25 °C").at(WARM_CELSIUS)),
                                10));
        double atOnce = Math.abs(dark.error(0));
        figure(text("shown as the lights go out, at %.0f °C", celsius), dark.shown().get(0), "%");
        figure("the same at 25 °C", warm.shown().get(0), "%");
        figure("from full to there, cold", dark.hours() / HOURS_A_DAY, "days");
        figure("from full to there, at 25 °C", warm.hours() / HOURS_A_DAY, "days");
        figure("the count itself is off by then by", dark.error(0), "points");
        double worst = worstCount(system.ampHours(), celsius);
        if (system.chemistry().isLeadAcid()) {
            double shift = OwnSettings.absorptionAt(system, celsius);
            figure("volts to expect as the charger ends", shift, "V");
            redo.add(
                    "a charger that follows the battery's temperature; without one the battery is"
                            + " never full in the cold, and 100 % comes too early");
        } else if (celsius < 0) {
            redo.add("no charging below 0 °C, at no current; warm the battery first");
        }
        if (ColdAnswer.isKept(dark)) {
            redo.add(text("count what is shown less %.0f as what can be drawn", dark.truth()));
        }
        redo.add(
                "nothing on the gauge for the cold: the charge is still there when the battery is"
                        + " warm again");
        return result(ColdAnswer.of(celsius, dark, worst), atOnce, cold);
    }

    // ---- No supply

    private ChangesResult wireOff() {
        tellShown();
        double hours = change.amount();
        WireOff off = new WireOff(system, gauge, shunt, shown, hours);
        figures.addAll(off.figures());
        assumed.addAll(off.assumed());
        redo.add("look at the figure: is it the one from before, 100 %, another, or nothing?");
        redo.add(
                text(
                        "kept: off by at most %.1f points; set by hand, it may be typed in again"
                                + " less what was drawn meanwhile",
                        off.unseen()));
        redo.add("anything else: " + fullySet());
        return result(off.answer(), off.atOnce(), off.scenario());
    }

    // ---- All of them

    private void tellShown() {
        if (change.shownPercent() == null) {
            assumed.add(text("it showed %.0f %% before, and rightly", shown));
        }
    }

    private double zeroAmps() {
        Double told = gauge.zeroAmps();
        return told == null ? MonthAhead.usualZeroAmps(shunt) : told;
    }

    private static String fullySet() {
        return "charge fully, then set it to 100 % (by hand, where it does not do so itself)";
    }

    private void figure(String words, double value, String unit) {
        figures.add(new Figure(words, value, unit));
    }

    private ChangesResult result(String answer, double atOnce, TrialScenario trial) {
        double perDay = ahead.tooHighPerDay() + ahead.eitherWayPerDay();
        int days =
                atOnce >= 10
                        ? 0
                        : (int)
                                Math.min(
                                        MonthAheadResult.MOST_DAYS,
                                        Math.floor((10 - atOnce) / perDay));
        figure("from now on, more each day, up to", perDay, "points");
        figure("and so within 10 points for another", days, "days");
        assumed.add("what adds up each day goes on as before, and nothing else is wrong");
        if (gauge.isTold()) {
            ComposedGauge.of(gauge).words().forEach(it -> assumed.add("your gauge " + it));
        }
        return new ChangesResult(answer, days, atOnce, figures, redo, assumed, trial.text());
    }

    static String ampHours(double value) {
        return value == Math.rint(value) ? text("%.0f Ah", value) : text("%.1f Ah", value);
    }

    static String days(double days) {
        if (days >= 14 && days % 7 == 0) {
            return text("%.0f weeks", days / 7);
        }
        return days == 1 ? "1 day" : text("%.0f days", days);
    }

    static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
