package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioException;
import org.gaugebench.sim.scenario.ScenarioReader;
import org.gaugebench.sim.units.ShuntRating;

/**
 * How many days after a full charge a count can be believed.
 *
 * <p>What grows day by day is added up as charge: what always makes the gauge show too much as it
 * is, what can go either way by the root of the sum of squares, because independent things rarely
 * all go one way. Then the same days are run, and the run's error stands beside the sum.
 */
public final class MonthAhead {
    private static final double HOURS_A_DAY = 24;
    private static final int MONTH_DAYS = 30;
    private static final int MINUTES_A_DAY = 1_440;

    /** Of the amp-hours, where no charger is told; as a scenario's own. */
    private static final double USUAL_CHARGE = 0.2;

    private static final int MOST_FULL_DAYS = 10;
    private static final int MOST_REST_DAYS = 5;

    /** Half of the smaller limit that is answered for. */
    private static final double STILL_RIGHT_POINTS = 2.5;

    /** Where nobody did a zero test; a few microvolts are common practice, no source. */
    private static final double USUAL_ZERO_VOLTS = 5e-6;

    /** Unequal scales of the two directions; that of the core's own default bound. */
    private static final double USUAL_ASYMMETRY = 0.001;

    /** How well anybody knows the efficiency of lead; that of the core's own default bound. */
    private static final double EFFICIENCY_DOUBT = 0.03;

    private static final double LITHIUM_EFFICIENCY_DOUBT = 0.005;

    private final OwnSystem system;
    private final OwnersGauge gauge;
    private final ShuntRating shunt;
    private final BatterySpec battery;
    private final List<Drift> drifts = new ArrayList<>();
    private final List<String> assumed = new ArrayList<>();
    private final List<String> findOut = new ArrayList<>();
    private final double outPerDay;

    private MonthAhead(OwnSystem system, OwnersGauge gauge, ShuntRating shunt) {
        this.system = system;
        this.gauge = gauge;
        this.shunt = shunt;
        this.battery =
                read(OwnScenario.of(system, gauge, shunt, 0, 0, OwnScenario.Plan.SHORT)).battery();
        this.outPerDay = system.loads().stream().mapToDouble(OwnLoad::ampHoursPerDay).sum();
    }

    /**
     * Answers for a system.
     *
     * @param system as it was told
     * @param gauge the owner's
     * @param shunt that is fitted, such as the one that {@link Sizing} chose
     */
    public static MonthAheadResult of(OwnSystem system, OwnersGauge gauge, ShuntRating shunt) {
        MonthAheadResult result = new MonthAhead(system, gauge, shunt).work();
        OwnersGauge worst = ComposedGauge.worst(gauge);
        if (worst.equals(gauge)) {
            return result;
        }
        int least = new MonthAhead(system, worst, shunt).work().daysWithinTen();
        return result.withLeast(Math.min(least, result.daysWithinTen()));
    }

    static Scenario read(String text) {
        try {
            return ScenarioReader.read("my-system.yaml", text);
        } catch (ScenarioException e) {
            throw new IllegalStateException("our own scenario does not read: " + e.problems(), e);
        }
    }

    private MonthAheadResult work() {
        double zeroAmps = zeroAmps();
        collect(zeroAmps);
        drifts.sort(Comparator.comparingDouble(Drift::ampHoursPerDay).reversed());
        double tooHigh = 0;
        double squares = 0;
        for (Drift each : drifts) {
            double amount = each.ampHoursPerDay();
            tooHigh += each.isEitherWay() ? 0 : amount;
            squares += each.isEitherWay() ? amount * amount : 0;
        }
        double toPoints = 100 / system.ampHours();
        double either = StrictMath.sqrt(squares);
        double perDay = (tooHigh + either) * toPoints;
        OwnScenario.Plan plan = plan();
        String scenario = OwnScenario.of(system, gauge, shunt, inPerDay(), zeroAmps, plan);
        Scenario own = read(scenario);
        Course course = new Course();
        RunResult run = RunRecorder.run(own, own.seed(), course);
        AfterMonth after = AfterMonth.of(run, course, plan, atRest(zeroAmps) * toPoints);
        boolean putRight = isPutRight(after);
        double start = step() * toPoints / 2;
        if (putRight && !gauge.isSetByHand()) {
            start += Math.max(0, Math.max(after.tooEarlyPoints(), after.tooMuchAfterFull()));
        }
        int ten = days((10 - start) / perDay);
        TwoMinuteTests.add(gauge, findOut);
        return new MonthAheadResult(
                ten,
                days((5 - start) / perDay),
                tooHigh * toPoints,
                either * toPoints,
                List.copyOf(drifts),
                scenario,
                month(course, plan),
                ComposedGauge.of(gauge).words(),
                after,
                start,
                putRight,
                ten,
                List.copyOf(assumed),
                List.copyOf(findOut));
    }

    private List<Course.Hour> month(Course course, OwnScenario.Plan plan) {
        if (plan.days() == 0) {
            return List.of();
        }
        List<Course.Hour> month = new ArrayList<>(course.hours().subList(0, plan.days() * 24 + 1));
        if (ComposedGauge.of(gauge).believes()) {
            // It is told a minute later what is in; before that it shows a belief that the wire
            // being off explains, and the month does not.
            Course.Hour first = month.get(0);
            month.set(0, first.withOwn(first.truth()));
        }
        return month;
    }

    /** The month if the loads let it, then a full charge, then use of a quarter of the battery. */
    private OwnScenario.Plan plan() {
        double amps =
                system.chargerAmps() == 0 ? USUAL_CHARGE * system.ampHours() : system.chargerAmps();
        double less = Math.max(amps - outPerDay / HOURS_A_DAY, amps / 4);
        // From 60 %, with what is lost as heat, and half a day for the end of the charge.
        double fullDays = 0.4 * system.ampHours() / efficiency() / less / HOURS_A_DAY + 0.7;
        double restDays = 0.25 * system.ampHours() / Math.max(outPerDay, 1e-9);
        return new OwnScenario.Plan(
                drains() ? 0 : MONTH_DAYS,
                (int) Math.min(MOST_FULL_DAYS, Math.ceil(fullDays)),
                (int) Math.max(1, Math.min(MOST_REST_DAYS, Math.ceil(restDays))));
    }

    private double step() {
        Double step = gauge.smallestAmpHours();
        return step == null ? 0 : step;
    }

    /** What runs on while nothing is charged. */
    private double atRest(double zeroAmps) {
        double sum = zeroAmps * HOURS_A_DAY;
        for (Drift each : drifts) {
            sum +=
                    switch (each.cause()) {
                        case OWN_CURRENT, PAST_SHUNT, SELF_DISCHARGE, SMALLEST_STEP ->
                                each.ampHoursPerDay();
                        default -> 0;
                    };
        }
        return sum;
    }

    /**
     * Whether the figure is right again after a full charge: its owner sets it, or it does so
     * itself, or it stops at 100 % and so comes right.
     */
    private boolean isPutRight(AfterMonth after) {
        return gauge.isSetByHand()
                || after.leftAtOwnFull() != null
                || after.tooMuchAfterFull() < STILL_RIGHT_POINTS;
    }

    private static int days(double exact) {
        return (int) Math.max(0, Math.min(MonthAheadResult.MOST_DAYS, Math.floor(exact)));
    }

    private double zeroAmps() {
        Double told = gauge.zeroAmps();
        if (told != null) {
            return told;
        }
        double amps = usualZeroAmps(shunt);
        assumed.add("a zero error of 5 uV at the shunt, which is " + Sizing.amps(amps));
        findOut.add("zero error: the 24-hour zero test, with every load and charger off");
        return amps;
    }

    /** What a gauge may count while nothing flows, where nobody did a zero test. */
    static double usualZeroAmps(ShuntRating shunt) {
        return USUAL_ZERO_VOLTS * shunt.microamps() / shunt.microvolts();
    }

    private void collect(double zeroAmps) {
        Double own = gauge.ownAmps();
        if (own == null) {
            assumed.add("the gauge's own current is left out");
            findOut.add("its own current: a meter in its supply wire, on the milliamp range");
        } else {
            add(Drift.Cause.OWN_CURRENT, own * HOURS_A_DAY, false);
        }
        add(Drift.Cause.PAST_SHUNT, gauge.pastShuntAmps() * HOURS_A_DAY, false);
        heat();
        add(
                Drift.Cause.SELF_DISCHARGE,
                system.ampHours()
                        * battery.selfDischargePartsPerMillionPerMonth()
                        / 1e6
                        / MONTH_DAYS,
                false);
        add(Drift.Cause.ZERO_ERROR, zeroAmps * HOURS_A_DAY, true);
        add(Drift.Cause.SMALLEST_STEP, belowStep(), false);
        add(Drift.Cause.ASYMMETRY, USUAL_ASYMMETRY * (outPerDay + inPerDay()), true);
        assumed.add("charging and discharging are counted alike to 0.1 %");
        assumed.add("the battery holds what is printed on it");
    }

    private void add(Drift.Cause cause, double ampHoursPerDay, boolean isEitherWay) {
        if (ampHoursPerDay > 0) {
            drifts.add(new Drift(cause, ampHoursPerDay, isEitherWay));
        }
    }

    /** What has to go in each day so that the battery stays where it is. */
    private double inPerDay() {
        Double own = gauge.ownAmps();
        double steady = gauge.pastShuntAmps() + (own == null ? 0 : own);
        double out = outPerDay + steady * HOURS_A_DAY;
        return system.chargerAmps() == 0 ? 0 : out / efficiency();
    }

    private double efficiency() {
        return battery.coulombicEfficiencyPartsPerMillion() / 1e6;
    }

    private void heat() {
        Double told = gauge.efficiencySet();
        double doubt =
                system.chemistry().isLeadAcid() ? EFFICIENCY_DOUBT : LITHIUM_EFFICIENCY_DOUBT;
        if (told == null) {
            assumed.add("it counts all charge put in as charge stored");
            findOut.add("whether it has a setting for charge efficiency, and what it is set to");
        }
        double counted = told == null ? 1 : told;
        double tooMuch = inPerDay() * (counted - efficiency());
        if (tooMuch > 0) {
            add(Drift.Cause.HEAT, tooMuch, false);
        } else {
            add(Drift.Cause.HEAT, inPerDay() * doubt, true);
        }
    }

    /**
     * What is below the smallest step that it shows, minute by minute of the day that is run; taken
     * as not counted, and only if the sum goes out.
     */
    private double belowStep() {
        Double step = gauge.smallestAmps();
        if (step == null) {
            return 0;
        }
        double sum = 0;
        for (int minute = 0; minute < MINUTES_A_DAY; minute++) {
            double hour = minute / 60.0;
            double out = 0;
            for (OwnLoad load : system.loads()) {
                out += hour < load.hoursPerDay() ? load.amps() : load.idleAmps();
            }
            double net = out - SystemLines.chargeAmpsAt(hour, inPerDay());
            sum += Math.abs(net) < step ? net / 60 : 0;
        }
        return Math.max(0, sum);
    }

    /** Whether there is no month to run: a day that takes much runs into the battery's ends. */
    private boolean drains() {
        return (inPerDay() == 0 && outPerDay * MONTH_DAYS > system.ampHours() / 2)
                || outPerDay > system.ampHours() / 3;
    }
}
