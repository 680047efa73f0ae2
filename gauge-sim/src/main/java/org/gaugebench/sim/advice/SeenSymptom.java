package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.units.ShuntRating;

/** What may be behind one thing seen, with sizes in closed form for the owner's own system. */
public final class SeenSymptom {
    /** A few microvolts are common practice, no source; as in {@link MonthAhead}. */
    private static final double USUAL_ZERO_VOLTS = 5e-6;

    /** An example of a slip, to have a number; nothing follows from it. */
    private static final double SLIP = 0.1;

    private final OwnSystem system;
    private final OwnersGauge gauge;
    private final BatterySpec battery;
    private final double zeroAmps;
    private final double outPerDay;
    private final List<String> assumed = new ArrayList<>();

    private SeenSymptom(OwnSystem system, OwnersGauge gauge, ShuntRating shunt) {
        this.system = system;
        this.gauge = gauge;
        this.battery =
                MonthAhead.read(OwnScenario.of(system, gauge, shunt, 0, 0, OwnScenario.Plan.SHORT))
                        .battery();
        this.outPerDay = system.loads().stream().mapToDouble(OwnLoad::ampHoursPerDay).sum();
        Double told = gauge.zeroAmps();
        this.zeroAmps =
                told == null ? USUAL_ZERO_VOLTS * shunt.microamps() / shunt.microvolts() : told;
        if (told == null) {
            assumed.add("a zero error of 5 uV at the shunt, which is " + Sizing.amps(zeroAmps));
        }
        if (gauge.ownAmps() == null) {
            assumed.add("the gauge's own current is not told, and taken as 10 mA");
        }
        if (gauge.pastShuntAmps() == 0) {
            assumed.add("a load past the shunt is not told, and taken as 100 mA");
        }
    }

    /**
     * Answers.
     *
     * @param seen what the owner sees
     * @param system as it was told
     * @param gauge the owner's
     * @param shunt that is fitted
     */
    public static SymptomResult of(
            Seen seen, OwnSystem system, OwnersGauge gauge, ShuntRating shunt) {
        return new SeenSymptom(system, gauge, shunt).work(seen);
    }

    private SymptomResult work(Seen seen) {
        List<TroubleCause> causes = new ArrayList<>(seen.causes());
        if (gauge.setsFull() == OwnersGauge.SetsFull.NEVER) {
            causes.remove(TroubleCause.FULL_TOO_EARLY);
        }
        if (gauge.afterOff() == OwnersGauge.AfterOff.KEEPS) {
            causes.remove(TroubleCause.FORGETS);
            causes.remove(TroubleCause.STARTS_FULL);
        }
        // What grows day by day stands in order of its size, told before untold; the rest stays
        // where it is.
        List<TroubleCause> rates = new ArrayList<>(causes);
        rates.removeIf(it -> perDay(it) == 0);
        List<TroubleCause> sorted = new ArrayList<>(rates);
        sorted.sort(
                Comparator.comparing(this::isExample)
                        .thenComparing(Comparator.comparingDouble(this::perDay).reversed()));
        List<SymptomResult.Ranked> ranked = new ArrayList<>();
        int next = 0;
        for (TroubleCause each : causes) {
            TroubleCause cause = perDay(each) == 0 ? each : sorted.get(next++);
            ranked.add(new SymptomResult.Ranked(cause, size(cause)));
        }
        String answer;
        if (ranked.isEmpty()) {
            answer =
                    "None of the 18 causes known here goes with what you told of the gauge; look"
                            + " at its supply wire and fuse.";
        } else {
            SymptomResult.Ranked first = ranked.get(0);
            answer =
                    text(
                            "Look first at this, 1 of %d: %s (%s).",
                            ranked.size(), first.cause().words(), first.size());
        }
        return new SymptomResult(
                answer,
                ranked,
                List.of(),
                assumed,
                List.of(
                        "note time and percent twice a day for a week, with a day of nothing on,"
                                + " and ask again with these notes"));
    }

    /** Points a day; 0 where it is no matter of days. */
    private double perDay(TroubleCause cause) {
        double toPoints = 100 / system.ampHours();
        Double own = gauge.ownAmps();
        double past = gauge.pastShuntAmps();
        return toPoints
                * switch (cause) {
                    case ZERO_UP, ZERO_DOWN -> zeroAmps * 24;
                    case OWN_CURRENT -> (own == null ? 0.01 : own) * 24;
                    case PAST_SHUNT -> (past == 0 ? 0.1 : past) * 24;
                    case HEAT -> heatPerDay();
                    case SELF_DISCHARGE ->
                            system.ampHours()
                                    * battery.selfDischargePartsPerMillionPerMonth()
                                    / 1e6
                                    / 30;
                    default -> 0;
                };
    }

    /** Whether its number is for an example current, since none was told. */
    private boolean isExample(TroubleCause cause) {
        return (cause == TroubleCause.OWN_CURRENT && gauge.ownAmps() == null)
                || (cause == TroubleCause.PAST_SHUNT && gauge.pastShuntAmps() == 0);
    }

    private double heatPerDay() {
        double efficiency = battery.coulombicEfficiencyPartsPerMillion() / 1e6;
        Double set = gauge.efficiencySet();
        return Math.max(0, outPerDay / efficiency * ((set == null ? 1 : set) - efficiency));
    }

    private String size(TroubleCause cause) {
        double toPoints = 100 / system.ampHours();
        return switch (cause) {
            case CAPACITY_LARGE, AGED ->
                    text(
                            "10 %% too much on paper leaves %.0f %% on show when flat",
                            slip(1 + SLIP));
            case CAPACITY_SMALL ->
                    text("10 %% too little shows 0 %% with %.0f %% left", 100 * SLIP);
            case FULL_TOO_EARLY ->
                    text("each amp-hour still missing is %.1f points too much", toPoints);
            case FULL_NEVER ->
                    text(
                            "what adds up is never put right: %.1f points a day",
                            (zeroAmps * 24 + heatPerDay()) * toPoints);
            case SCALE -> text("10 %% wrong: %.1f points a day", outPerDay * SLIP * toPoints);
            case REVERSED -> text("%.1f points a day, in use", 2 * outPerDay * toPoints);
            case SMALLEST_STEP -> {
                Double step = gauge.smallestAmps();
                yield text(
                        "%.1f points a day for %s",
                        (step == null ? 0.1 : step) * 24 * toPoints,
                        step == null ? "each 100 mA" : "its smallest step");
            }
            case HOURS_FULL -> {
                double longest = gauge.longestHours() == null ? 99 : gauge.longestHours();
                yield text(
                        "a full battery lasts longer than %.0f h below %s",
                        longest, Sizing.amps(system.ampHours() / longest));
            }
            case STARTS_FULL -> text("up to %.0f Ah too much at once", system.ampHours());
            case FORGETS -> text("up to %.0f Ah too little at once", system.ampHours());
            case VOLTS_DIP -> {
                double most =
                        system.loads().stream().mapToDouble(OwnLoad::surgeAmps).max().orElse(0);
                yield text("%.2f V lost at 10 milliohms", most * 0.01);
            }
            default ->
                    text(
                            "%.2f points a day%s",
                            perDay(cause),
                            !isExample(cause)
                                    ? ""
                                    : cause == TroubleCause.OWN_CURRENT
                                            ? " for each 10 mA"
                                            : " for each 100 mA");
        };
    }

    private static double slip(double factor) {
        return 100 * (1 - 1 / factor);
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
