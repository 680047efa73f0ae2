package org.gaugebench.sim.advice;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.gaugebench.sim.units.ConverterRange;
import org.gaugebench.sim.units.ShuntRating;

/**
 * An owner's system as the text of a scenario: the same days again and again, never full; then, if
 * asked for, a minute without supply and a full charge.
 */
final class OwnScenario {
    /** Where neither end hides an error of the count. */
    static final double START_PERCENT = 60;

    private static final double CHARGE_FROM_HOUR = 8;
    private static final double CHARGE_HOURS = 6;
    private static final String[] TAKEN = {
        "isolator",
        "protection",
        "battery",
        "sensor",
        "gauge",
        "truth",
        "wiring",
        "none",
        "charger",
        "full-charge",
        "better"
    };

    private final OwnSystem system;
    private final OwnersGauge gauge;
    private final StringBuilder text = new StringBuilder();
    private final Set<String> names = new HashSet<>(Set.of(TAKEN));

    private OwnScenario(OwnSystem system, OwnersGauge gauge) {
        this.system = system;
        this.gauge = gauge;
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
        double ohms = (double) shunt.microvolts() / shunt.microamps();
        ConverterRange converter = system.converter();
        line("format: 1");
        line("title: My system, day after day without a full charge");
        about(plan);
        line("duration: %d d", plan.allDays());
        line("tick: 1 min");
        line("battery:");
        line("  chemistry: %s", system.chemistry().key());
        line("  nominal-voltage: %d V", system.nominalVolts());
        line("  capacity: %s Ah", number(system.ampHours(), 6));
        line("  start: %s %%", number(START_PERCENT, 0));
        line("sensor:");
        line("  shunt: %s", shunt);
        if (converter != null) {
            line("  converter: %s", converter);
        }
        // A nanovolt at a time is what the file can say.
        line("  offset: %s nV", number(zeroAmps * ohms * 1e9, 0));
        line("gauge:");
        ComposedGauge composed = ComposedGauge.of(gauge);
        composed.lines(START_PERCENT).forEach(it -> line("  %s", it));
        line("beside:");
        line("  - {name: better, kind: core, start: %s %%,", number(START_PERCENT, 0));
        line("     memory: {slots: 2}, coulombic-efficiency: %s", better());
        wiring();
        for (OwnLoad load : system.loads()) {
            load(load);
        }
        if (gauge.pastShuntAmps() > 0) {
            headOfLoads();
            line("  unseen: {current: %s A}", number(gauge.pastShuntAmps(), 6));
        }
        List<String> steps = new ArrayList<>(composed.startSteps(START_PERCENT));
        boolean hasCharger = chargePerDay > 0 || plan.fullDays() > 0;
        if (hasCharger) {
            line("chargers:");
        }
        if (chargePerDay > 0 && plan.days() > 0) {
            daily(chargePerDay, plan, steps);
        }
        if (plan.fullDays() > 0) {
            steps.addAll(composed.offSteps(plan.offMinute()));
            full(plan, steps);
        }
        if (!steps.isEmpty()) {
            line("timeline:");
            steps.forEach(it -> line("  - %s", it));
        }
        return text.toString();
    }

    private void about(Plan plan) {
        if (plan.fullDays() == 0) {
            line("about: The count is right at the start; look at how far it is off at the end.");
            return;
        }
        line("about: |");
        line(
                "  The count is right at the start; look at how far it is off after %d d.",
                plan.days());
        line("  Then the gauge's wire is off for a minute, the battery is charged until the");
        line(
                "  charger ends by itself, and %d d of use follow without a charger.",
                plan.restDays());
    }

    /** Ours is told what can be known: its own current, and the preset of its chemistry. */
    private String better() {
        Double told = gauge.ownAmps();
        double own = told == null ? 0 : told;
        String efficiency = system.chemistry().isLeadAcid() ? "92 %" : "99.5 %";
        return efficiency + ", own-supply-current: " + number(own, 6) + " A}";
    }

    private void wiring() {
        Double own = gauge.ownAmps();
        if ((own == null || own == 0) && gauge.pastShuntAmps() == 0) {
            return;
        }
        line("wiring:");
        if (own != null && own > 0) {
            line("  own-supply: %s A", number(own, 6));
        }
        if (gauge.pastShuntAmps() > 0) {
            line("  past-shunt: {unseen: 100 %%}");
        }
    }

    /** Nothing stands under a head that stands alone. */
    private void headOfLoads() {
        if (text.indexOf("\nloads:\n") < 0) {
            line("loads:");
        }
    }

    private void load(OwnLoad load) {
        String name = name(load.name());
        double seconds = Math.rint(load.hoursPerDay() * 3_600);
        if (load.amps() > 0 && seconds > 0) {
            String cycle =
                    seconds >= 86_400
                            ? ""
                            : String.format(Locale.ROOT, ", on-for: %.0f s, every: 1 d", seconds);
            headOfLoads();
            line("  %s: {current: %s A%s}", name, number(load.amps(), 6), cycle);
        }
        if (load.idleAmps() > 0 && seconds < 86_400) {
            String wait =
                    seconds == 0
                            ? ""
                            : String.format(
                                    Locale.ROOT,
                                    ", on-for: %.0f s, every: 1 d, starts-after: %.0f s",
                                    86_400 - seconds,
                                    seconds);
            headOfLoads();
            line("  %s: {current: %s A%s}", name("idle-" + name), number(load.idleAmps(), 6), wait);
        }
    }

    private void daily(double ampHoursPerDay, Plan plan, List<String> steps) {
        double amps = ampHoursPerDay / CHARGE_HOURS;
        line("  charger: {current-limit: %s A, switched: off}", number(amps, 6));
        String until =
                plan.fullDays() == 0
                        ? ""
                        : String.format(Locale.ROOT, " until: %d h,", plan.days() * 24 - 1);
        steps.add(
                String.format(
                        Locale.ROOT,
                        "{from: %.0f h, to: %.0f h, every: 1 d,%s set: {charger: on}}",
                        CHARGE_FROM_HOUR,
                        CHARGE_FROM_HOUR + CHARGE_HOURS,
                        until));
    }

    /** What the daily charge gives at an hour of the day. */
    static double chargeAmpsAt(double hour, double ampHoursPerDay) {
        boolean on = hour >= CHARGE_FROM_HOUR && hour < CHARGE_FROM_HOUR + CHARGE_HOURS;
        return on ? ampHoursPerDay / CHARGE_HOURS : 0;
    }

    /** With all that the owner's chargers give; without one, what a battery of that size takes. */
    private void full(Plan plan, List<String> steps) {
        String limit =
                system.chargerAmps() > 0
                        ? String.format(
                                Locale.ROOT,
                                "current-limit: %s A, ",
                                number(Math.min(2_000, system.chargerAmps()), 6))
                        : "";
        line("  full-charge: {%sswitched: off}", limit);
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

    /** Letters, digits and hyphens of an owner's own word; never one that is taken. */
    private String name(String word) {
        String plain =
                word.toLowerCase(Locale.ROOT)
                        .replaceAll("[^a-z0-9]+", "-")
                        .replaceAll("^[-0-9]+|-+$", "");
        String stem = plain.isEmpty() ? "load" : plain.substring(0, Math.min(24, plain.length()));
        String name = stem;
        for (int i = 2; !names.add(name); i++) {
            name = stem + "-" + i;
        }
        return name;
    }

    private void line(String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values)).append('\n');
    }

    /** A decimal without exponent or needless zeros. */
    static String number(double value, int places) {
        BigDecimal plain =
                new BigDecimal(value).setScale(places, RoundingMode.HALF_EVEN).stripTrailingZeros();
        return plain.signum() == 0 ? "0" : plain.toPlainString();
    }
}
