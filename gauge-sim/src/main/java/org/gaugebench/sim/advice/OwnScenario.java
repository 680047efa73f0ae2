package org.gaugebench.sim.advice;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import org.gaugebench.sim.units.ConverterRange;
import org.gaugebench.sim.units.ShuntRating;

/** An owner's system as the text of a scenario: the same days again and again, never full. */
final class OwnScenario {
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
     * Writes the scenario.
     *
     * @param system as it was told
     * @param gauge the owner's
     * @param shunt that is fitted
     * @param chargeAmpHoursPerDay to put in each day, so that the battery stays where it is
     * @param zeroAmps zero error, with its sign
     * @param days how long
     */
    static String of(
            OwnSystem system,
            OwnersGauge gauge,
            ShuntRating shunt,
            double chargeAmpHoursPerDay,
            double zeroAmps,
            int days) {
        return new OwnScenario(system, gauge).write(shunt, chargeAmpHoursPerDay, zeroAmps, days);
    }

    private String write(ShuntRating shunt, double chargePerDay, double zeroAmps, int days) {
        double ohms = (double) shunt.microvolts() / shunt.microamps();
        ConverterRange converter = system.converter();
        line("format: 1");
        line("title: My system, day after day without a full charge");
        line("about: The count is right at the start; look at how far it is off at the end.");
        line("duration: %d d", days);
        line("tick: 1 min");
        line("battery:");
        line("  chemistry: %s", system.chemistry().key());
        line("  nominal-voltage: %d V", system.nominalVolts());
        line("  capacity: %s Ah", number(system.ampHours(), 6));
        line("  start: 60 %%");
        line("sensor:");
        line("  shunt: %s", shunt);
        if (converter != null) {
            line("  converter: %s", converter);
        }
        // A nanovolt at a time is what the file can say.
        line("  offset: %s nV", number(zeroAmps * ohms * 1e9, 0));
        line("gauge:");
        Double efficiency = gauge.efficiencySet();
        if (efficiency == null || efficiency == 1) {
            line("  kind: plain-counter");
        } else {
            // A plain counter has no efficiency; in a charge that is steady it matters little
            // whether samples or minutes are weighed.
            line("  kind: exhibit");
            line("  mistakes: [efficiency-per-sample]");
            line("  coulombic-efficiency: %s %%", number(efficiency * 100, 4));
        }
        line("beside:");
        line("  - {name: better, kind: core, start: 60 %%, coulombic-efficiency: %s", better());
        wiring();
        for (OwnLoad load : system.loads()) {
            load(load);
        }
        if (gauge.pastShuntAmps() > 0) {
            headOfLoads();
            line("  unseen: {current: %s A}", number(gauge.pastShuntAmps(), 6));
        }
        if (chargePerDay > 0) {
            charger(chargePerDay);
        }
        return text.toString();
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

    private void charger(double ampHoursPerDay) {
        double amps = ampHoursPerDay / CHARGE_HOURS;
        line("chargers:");
        line("  charger: {current-limit: %s A, switched: off}", number(amps, 6));
        line("timeline:");
        line(
                "  - {from: %.0f h, to: %.0f h, every: 1 d, set: {charger: on}}",
                CHARGE_FROM_HOUR, CHARGE_FROM_HOUR + CHARGE_HOURS);
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
    private static String number(double value, int places) {
        BigDecimal plain =
                new BigDecimal(value).setScale(places, RoundingMode.HALF_EVEN).stripTrailingZeros();
        return plain.signum() == 0 ? "0" : plain.toPlainString();
    }
}
