package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.gaugebench.sim.units.ShuntRating;

/**
 * An owner's system as the text of a scenario: the same days again and again, never full; then, if
 * asked for, a minute without supply and a full charge.
 */
final class OwnScenario {
    /** Where neither end hides an error of the count. */
    static final double START_PERCENT = 60;

    private static final String UNSEEN = "unseen";

    /** Names of ours, which no load may have. */
    private static final Set<String> OURS = Set.of("full-charge", "better", UNSEEN);

    private final OwnSystem system;
    private final OwnersGauge gauge;
    private final SystemLines lines;

    private OwnScenario(OwnSystem system, OwnersGauge gauge) {
        this.system = system;
        this.gauge = gauge;
        this.lines = new SystemLines(system, OURS);
    }

    /**
     * What happens when.
     *
     * @param days without a full charge; the gauge's wire is off for a minute at their end
     * @param fullDays on the charger after that, until it ends by itself
     * @param restDays without any charger, so that what was counted beyond full comes to light
     */
    record Plan(int days, int fullDays, int restDays) {
        /** A day to read a system from. */
        static final Plan SHORT = new Plan(1, 0, 0);

        int allDays() {
            return days + fullDays + restDays;
        }

        /** When its wire goes off, in minutes; what it shows then is read two minutes later. */
        long offMinute() {
            return days * 1_440L + 117;
        }

        long fullFromMinute() {
            return days * 1_440L + 120;
        }

        long fullToMinute() {
            return (days + fullDays) * 1_440L;
        }
    }

    /**
     * Writes the scenario.
     *
     * @param system as it was told
     * @param gauge the owner's
     * @param shunt that is fitted
     * @param chargeAmpHoursPerDay to put in each day, so that the battery stays where it is
     * @param zeroAmps zero error, with its sign
     * @param plan what happens when
     */
    static String of(
            OwnSystem system,
            OwnersGauge gauge,
            ShuntRating shunt,
            double chargeAmpHoursPerDay,
            double zeroAmps,
            Plan plan) {
        return new OwnScenario(system, gauge).write(shunt, chargeAmpHoursPerDay, zeroAmps, plan);
    }

    private String write(ShuntRating shunt, double chargePerDay, double zeroAmps, Plan plan) {
        Double told = gauge.ownAmps();
        double own = told == null ? 0 : told;
        double past = gauge.pastShuntAmps();
        lines.line("format: 1");
        lines.line("title: My system, day after day without a full charge");
        about(plan);
        lines.line("duration: %d d", plan.allDays());
        lines.line("tick: 1 min");
        lines.battery(system.ampHours(), START_PERCENT);
        lines.line("sensor:");
        lines.line("  shunt: %s", shunt);
        lines.converter();
        lines.offset(shunt, zeroAmps);
        ComposedGauge composed = ComposedGauge.of(gauge);
        lines.block("gauge", composed.lines(START_PERCENT));
        lines.line("beside:");
        lines.line(
                "  - {name: better, kind: core, start: %s %%,",
                SystemLines.number(START_PERCENT, 0));
        lines.line("     memory: {slots: 2}, coulombic-efficiency: %s", better(own));
        lines.wiring(own, past > 0 ? List.of(UNSEEN + ": 100 %") : List.of());
        system.loads().forEach(lines::load);
        if (past > 0) {
            lines.load(UNSEEN, past);
        }
        lines.loads();
        List<String> chargers = new ArrayList<>();
        List<String> steps = new ArrayList<>(composed.startSteps(START_PERCENT));
        if (SystemLines.flows(chargePerDay / SystemLines.CHARGE_HOURS) && plan.days() > 0) {
            chargers.add(SystemLines.dailyCharger(chargePerDay));
            steps.add(daily(plan));
        }
        if (plan.fullDays() > 0) {
            chargers.add(fullCharger());
            steps.addAll(composed.offSteps(plan.offMinute()));
            full(plan, steps);
        }
        lines.block("chargers", chargers);
        lines.list("timeline", steps);
        return lines.toString();
    }

    private void about(Plan plan) {
        if (plan.fullDays() == 0) {
            lines.line(
                    "about: The count is right at the start; look at how far it is off at the"
                            + " end.");
            return;
        }
        lines.line("about: |");
        lines.line(
                "  The count is right at the start; look at how far it is off after %d d.",
                plan.days());
        lines.line("  Then the gauge's wire is off for a minute, the battery is charged until the");
        lines.line(
                "  charger ends by itself, and %d d of use follow without a charger.",
                plan.restDays());
    }

    /** Ours is told what can be known: its own current, and the preset of its chemistry. */
    private String better(double own) {
        String efficiency = system.chemistry().isLeadAcid() ? "92 %" : "99.5 %";
        return efficiency + ", own-supply-current: " + SystemLines.number(own, 6) + " A}";
    }

    private static String daily(Plan plan) {
        String until =
                plan.fullDays() == 0
                        ? ""
                        : String.format(Locale.ROOT, " until: %d h,", plan.days() * 24 - 1);
        return String.format(
                Locale.ROOT,
                "{from: %.0f h, to: %.0f h, every: 1 d,%s set: {charger: on}}",
                SystemLines.CHARGE_FROM_HOUR,
                SystemLines.CHARGE_FROM_HOUR + SystemLines.CHARGE_HOURS,
                until);
    }

    /** With all that the owner's chargers give; without one, what a battery of that size takes. */
    private String fullCharger() {
        double amps = system.chargerAmps();
        String limit = amps > 0 ? "current-limit: " + SystemLines.number(amps, 6) + " A, " : "";
        return "full-charge: {" + limit + "switched: off}";
    }

    private void full(Plan plan, List<String> steps) {
        steps.add(
                String.format(
                        Locale.ROOT,
                        "{from: %d min, to: %d min, set: {full-charge: on}}",
                        plan.fullFromMinute(),
                        plan.fullToMinute()));
        if (gauge.isSetByHand()) {
            steps.add(
                    String.format(
                            Locale.ROOT,
                            "{at: %d min, set: {gauge.declare: 100 %%}}",
                            plan.fullToMinute()));
        }
    }
}
