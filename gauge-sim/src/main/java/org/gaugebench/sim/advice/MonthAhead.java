package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.gaugebench.sim.judge.RunRecorder;
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
        this.battery = read(OwnScenario.of(system, gauge, shunt, 0, 0, 1)).battery();
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
        return new MonthAhead(system, gauge, shunt).work();
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
        int ten = days(10 / perDay);
        String scenario = scenario(zeroAmps);
        return new MonthAheadResult(
                ten,
                days(5 / perDay),
                tooHigh * toPoints,
                either * toPoints,
                List.copyOf(drifts),
                scenario,
                course(scenario),
                List.copyOf(assumed),
                List.copyOf(findOut));
    }

    private static int days(double exact) {
        return (int) Math.min(MonthAheadResult.MOST_DAYS, Math.floor(exact));
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
        add(Drift.Cause.SMALLEST_STEP, belowStep(), true);
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

    /** Loads that stand below the smallest step, which a gauge may or may not count. */
    private double belowStep() {
        Double step = gauge.smallestAmps();
        if (step == null) {
            return 0;
        }
        double standing = 0;
        for (OwnLoad load : system.loads()) {
            if (load.amps() < step && load.hoursPerDay() >= HOURS_A_DAY) {
                standing += load.amps();
            }
            standing += load.idleAmps() < step ? load.idleAmps() : 0;
        }
        return standing < step ? standing * HOURS_A_DAY : 0;
    }

    private String scenario(double zeroAmps) {
        return OwnScenario.of(system, gauge, shunt, inPerDay(), zeroAmps, MONTH_DAYS);
    }

    private List<Course.Hour> course(String text) {
        // A day that takes more than a third of the battery runs into its ends.
        boolean drains = inPerDay() == 0 && outPerDay * MONTH_DAYS > system.ampHours() / 2;
        if (drains || outPerDay > system.ampHours() / 3) {
            return List.of();
        }
        Scenario scenario = read(text);
        Course course = new Course();
        RunRecorder.run(scenario, scenario.seed(), course);
        return course.hours();
    }
}
