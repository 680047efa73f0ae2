package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.gaugebench.sim.advice.MeterVerdict.Line;
import org.gaugebench.sim.advice.MeterVerdict.Word;
import org.gaugebench.sim.logs.MeterCheck;
import org.gaugebench.sim.logs.MeterReading;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/**
 * Judges what was measured with a meter, and works out the month ahead anew with it: a limit that
 * is no matter of the system is one that nobody should keep.
 */
public final class MeterJudge {
    /** Shorter than that the smallest step of the amp-hours hides any zero error worth knowing. */
    private static final double LEAST_HOURS = 12;

    /** More than that flows into no gauge; somebody measured something else. */
    private static final double MOST_OWN_AMPS = 1;

    /** A meter's milliamp range is good to a few percent and half a milliamp; no source. */
    private static final double OWN_PART = 0.1;

    private static final double OWN_AMPS = 0.0005;

    /** As local rules name it for a drop in cables. */
    private static final double DROP_PART = 0.03;

    /** Two meters differ by so much, for 12 V; common practice, no source. */
    private static final double VOLTS_DOUBT = 0.03;

    private static final double CAPACITY_GOOD = 0.95;

    /** Renew at 80 % of the printed charge (IEEE Std 485); from memory. */
    private static final double CAPACITY_WORN = 0.8;

    private static final double CAPACITY_MOST = 1.05;

    private static final double HOURS_A_MONTH = 720;

    private final OwnSystem system;
    private final OwnersGauge gauge;
    private final ShuntRating shunt;
    private final Map<MeterCheck, MeterReading> readings = new EnumMap<>(MeterCheck.class);
    private final List<String> assumed = new ArrayList<>();
    private @Nullable Double zeroAmps;
    private @Nullable Double ownAmps;

    private MeterJudge(
            OwnSystem system, OwnersGauge gauge, ShuntRating shunt, List<MeterReading> measured) {
        this.system = system;
        this.gauge = gauge;
        this.shunt = shunt;
        this.zeroAmps = gauge.zeroAmps();
        this.ownAmps = gauge.ownAmps();
        measured.forEach(each -> readings.put(each.check(), each));
    }

    /**
     * Judges.
     *
     * @param system as it was told
     * @param gauge the owner's, as it was told before
     * @param shunt that is fitted
     * @param measured at least one reading, each check once
     */
    public static MeterVerdict of(
            OwnSystem system, OwnersGauge gauge, ShuntRating shunt, List<MeterReading> measured) {
        return new MeterJudge(system, gauge, shunt, measured).work();
    }

    private MeterVerdict work() {
        List<Line> lines = new ArrayList<>();
        List<MeterCheck> missing = new ArrayList<>();
        for (MeterCheck each : MeterCheck.values()) {
            MeterReading reading = readings.get(each);
            if (reading == null) {
                missing.add(each);
            } else {
                lines.add(line(reading));
            }
        }
        int before = MonthAhead.of(system, gauge, shunt).daysWithinTen();
        // A count that does not follow the current is worth nothing from the first hour on.
        boolean counts = lines.stream().noneMatch(MeterJudge::isWrongScale);
        int now =
                counts
                        ? MonthAhead.of(system, gauge.measured(ownAmps, zeroAmps), shunt)
                                .daysWithinTen()
                        : 0;
        assumed.add("the meter is right, and nothing changed while both were read");
        if (gauge.smallestAmps() == null) {
            assumed.add("the screen's smallest step is 0.1 A; tell yours");
        }
        return new MeterVerdict(answer(lines, before, now), lines, missing, before, now, assumed);
    }

    private static boolean isWrongScale(Line line) {
        boolean scale =
                line.check() == MeterCheck.SCALE_SMALL || line.check() == MeterCheck.SCALE_WORKING;
        return scale && line.word() == Word.CHANGE;
    }

    private static String answer(List<Line> lines, int before, int now) {
        long change = lines.stream().filter(it -> it.word() == Word.CHANGE).count();
        String days =
                lines.stream().anyMatch(MeterJudge::isWrongScale)
                        ? "do not go by the figure until its amps are right"
                        : now == before
                                ? Changes.text(
                                        "the figure stays within 10 points for %s, as before",
                                        d(now))
                                : Changes.text(
                                        "with what you measured the figure stays within 10 points"
                                                + " for %s, not %s",
                                        d(now), d(before));
        if (change == 0) {
            return Changes.text(
                    "%d of %d checks ask for nothing; %s.", lines.size(), lines.size(), days);
        }
        Line first =
                lines.stream().filter(it -> it.word() == Word.CHANGE).findFirst().orElseThrow();
        return Changes.text(
                "%d of %d %s for something, first the %s: %s; %s.",
                change,
                lines.size(),
                lines.size() == 1 ? "check asks" : change == 1 ? "checks asks" : "checks ask",
                first.check().words(),
                first.found(),
                days);
    }

    private static String d(int days) {
        return days == 0 ? "less than a day" : days == 1 ? "1 day" : days + " days";
    }

    private Line line(MeterReading reading) {
        return switch (reading.check()) {
            case ZERO_TEST -> zeroTest(reading);
            case OWN_CURRENT -> ownCurrent(reading);
            case SCALE_AT_REST -> scale().atRest(reading);
            case SCALE_SMALL -> scale().small(reading);
            case SCALE_WORKING -> scale().working(reading);
            case VOLTS_UNDER_LOAD -> volts(reading);
            case CAPACITY_TEST -> capacity(reading);
        };
    }

    private ScaleJudge scale() {
        return new ScaleJudge(gauge, shunt, readings.get(MeterCheck.SCALE_AT_REST));
    }

    private double pointsAMonth(double amps) {
        return amps * HOURS_A_MONTH / system.ampHours() * 100;
    }

    private Line zeroTest(MeterReading it) {
        double amps = it.gauge() / it.meter();
        String found =
                Changes.text(
                        "%+.2f Ah in %.0f h is %s, %.1f points in a month",
                        it.gauge(),
                        it.meter(),
                        Sizing.amps(Math.abs(amps)),
                        pointsAMonth(Math.abs(amps)));
        if (it.meter() < LEAST_HOURS) {
            return new Line(
                    it.check(),
                    Word.CANNOT_TELL,
                    found,
                    "under 12 h one step of the amp-hours is more than what is looked for",
                    "leave everything off for 24 h");
        }
        if (Math.abs(amps) > TrialLimits.mostZeroAmps(shunt)) {
            return new Line(
                    it.check(),
                    Word.CANNOT_TELL,
                    found,
                    "no zero error is as large as what the shunt carries",
                    "find what was on, or look whether the amp-hours were written down rightly");
        }
        double step = CheckPlan.stepAmpHours(gauge);
        double stepAmps = step / it.meter();
        double reckoned = CheckPlan.zeroAmps(gauge, shunt);
        double limit = Math.max(reckoned, stepAmps);
        // A move by one step of the screen may be no move at all, and the other way round.
        boolean good = Math.abs(amps) <= limit * (1 + 1e-9);
        zeroAmps = good ? gauge.zeroAmps() : Double.valueOf(Math.abs(amps));
        return new Line(
                it.check(),
                good ? Word.GOOD : Word.CHANGE,
                found,
                limit > reckoned
                        ? Changes.text(
                                "%s Ah, one step of the screen, which is more than the %s that"
                                        + " were reckoned with",
                                SystemLines.number(step, 6), Sizing.amps(reckoned))
                        : Changes.text(
                                "%s is what was reckoned with; a month of that is %.1f points",
                                Sizing.amps(limit), pointsAMonth(limit)),
                good
                        ? ""
                        : "everything off again, then its zero adjustment; if that does not hold,"
                                + " look for a load that is still on");
    }

    private Line ownCurrent(MeterReading it) {
        double amps = Math.abs(it.meter());
        String found =
                Changes.text(
                        "%s, %.1f points in a month where it is not counted",
                        Sizing.amps(amps), pointsAMonth(amps));
        if (amps > MOST_OWN_AMPS) {
            return new Line(
                    it.check(),
                    Word.CANNOT_TELL,
                    found,
                    "no gauge draws an ampere",
                    "look where the meter was: in the thin supply wire alone, never across the"
                            + " battery");
        }
        Double told = gauge.ownAmps();
        ownAmps = amps;
        boolean good = told != null && Math.abs(amps - told) <= OWN_PART * told + OWN_AMPS;
        return new Line(
                it.check(),
                good ? Word.GOOD : Word.CHANGE,
                found,
                told == null
                        ? "it was not told before"
                        : Changes.text("told was %s", Sizing.amps(told)),
                good ? "" : Drift.Cause.OWN_CURRENT.remedy());
    }

    private Line volts(MeterReading it) {
        double drop = it.meter() - it.gauge();
        MeterReading working = readings.get(MeterCheck.SCALE_WORKING);
        double amps = working == null ? 0 : Math.abs(working.meter());
        String found =
                Changes.text("%.2f V lost between the posts and the gauge", drop)
                        + (amps == 0
                                ? ""
                                : Changes.text(
                                        ", %.1f milliohms at %.1f A, %.1f W of heat",
                                        drop / amps * 1e3, amps, drop * amps));
        double doubt = VOLTS_DOUBT * system.nominalVolts() / 12;
        if (drop < -doubt) {
            return new Line(
                    it.check(),
                    Word.CANNOT_TELL,
                    found,
                    "under load the gauge cannot see more than the posts have",
                    "was the charger on? measure again, or compare the two meters with all off");
        }
        double limit = DROP_PART * system.nominalVolts();
        boolean good = drop <= limit;
        return new Line(
                it.check(),
                good ? Word.GOOD : Word.CHANGE,
                found,
                Changes.text("%.2f V, 3 %% of %d V", limit, system.nominalVolts()),
                good
                        ? ""
                        : "feel for the warm joint and tighten it; measure piece by piece from the"
                                + " post on");
    }

    private Line capacity(MeterReading it) {
        double part = Math.abs(it.gauge()) / system.ampHours();
        String found =
                Changes.text(
                        "%.1f Ah, %.0f %% of what is printed", Math.abs(it.gauge()), part * 100);
        String why = "95 to 105 % of what is printed; at 80 % it is worn";
        if (part > CAPACITY_MOST) {
            return new Line(
                    it.check(),
                    Word.CANNOT_TELL,
                    found,
                    why,
                    "no battery gives so much: check the amps in use, and whether it began full");
        }
        if (part < CAPACITY_WORN) {
            return new Line(
                    it.check(),
                    Word.CHANGE,
                    found,
                    why,
                    Changes.text(
                            "type in %.0f Ah, and think of another battery", Math.abs(it.gauge())));
        }
        return new Line(
                it.check(),
                part >= CAPACITY_GOOD ? Word.GOOD : Word.CHANGE,
                found,
                why,
                part >= CAPACITY_GOOD ? "" : Changes.text("type in %.0f Ah", Math.abs(it.gauge())));
    }
}
