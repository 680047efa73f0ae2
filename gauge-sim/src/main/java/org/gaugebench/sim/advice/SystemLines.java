package org.gaugebench.sim.advice;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.gaugebench.sim.units.ShuntRating;

/**
 * The text of a scenario of an owner's system, block by block: what was told of battery, shunt and
 * loads reads alike in each of them.
 */
final class SystemLines {
    /** When a charger comes on that makes up for a day's use. */
    static final double CHARGE_FROM_HOUR = 8;

    /** How long it stays on. */
    static final double CHARGE_HOURS = 6;

    private static final double SECONDS_A_DAY = 86_400;

    /** Longest stem of a name. */
    private static final int STEM = 24;

    /** Words of the scenario format, and the name of the charger, which no load may have. */
    private static final Set<String> TAKEN =
            Set.of(
                    "isolator",
                    "protection",
                    "battery",
                    "sensor",
                    "gauge",
                    "truth",
                    "wiring",
                    "none",
                    "charger");

    private final OwnSystem system;
    private final StringBuilder text = new StringBuilder();
    private final List<String> loads = new ArrayList<>();
    private final Set<String> names = new HashSet<>(TAKEN);

    /**
     * Begins a text.
     *
     * @param system as it was told
     * @param ours names that the scenario uses itself, which no load may have
     */
    SystemLines(OwnSystem system, Set<String> ours) {
        this.system = system;
        names.addAll(ours);
    }

    void line(String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values)).append('\n');
    }

    /** Lines under a word; nothing stands under a word that stands alone. */
    void block(String key, List<String> lines) {
        under(key, "  ", lines);
    }

    /** A list under a word. */
    void list(String key, List<String> lines) {
        under(key, "  - ", lines);
    }

    private void under(String key, String mark, List<String> lines) {
        if (!lines.isEmpty()) {
            text.append(key).append(":\n");
            lines.forEach(each -> text.append(mark).append(each).append('\n'));
        }
    }

    void battery(double ampHours, double startPercent) {
        line("battery:");
        line("  chemistry: %s", system.chemistry().key());
        line("  nominal-voltage: %d V", system.nominalVolts());
        // A milliamp-hour is the step of what a gauge is told; no print is finer.
        line("  capacity: %s Ah", number(ampHours, 3));
        line("  start: %s %%", number(startPercent, 4));
    }

    /** The converter, where it was told. */
    void converter() {
        if (system.converter() != null) {
            line("  converter: %s", system.converter());
        }
    }

    /** A nanovolt at a time is what the file can say. */
    void offset(ShuntRating shunt, double zeroAmps) {
        double ohms = (double) shunt.microvolts() / shunt.microamps();
        line("  offset: %s nV", number(zeroAmps * ohms * 1e9, 0));
    }

    /**
     * What does not go through the shunt.
     *
     * @param ownAmps drawn by the gauge itself; 0 for none
     * @param past names of loads and chargers on the battery's side, with their parts
     */
    void wiring(double ownAmps, List<String> past) {
        List<String> lines = new ArrayList<>();
        if (flows(ownAmps)) {
            lines.add("own-supply: " + number(ownAmps, 6) + " A");
        }
        if (!past.isEmpty()) {
            lines.add("past-shunt: {" + String.join(", ", past) + "}");
        }
        block("wiring", lines);
    }

    /**
     * A load of the owner's, day by day as told: on from midnight, idle for the rest.
     *
     * @return the names under which it is written; two where it draws something while idle
     */
    List<String> load(OwnLoad load) {
        List<String> written = new ArrayList<>();
        String name = name(load.name());
        double seconds = Math.rint(load.hoursPerDay() * 3_600);
        if (flows(load.amps()) && seconds > 0) {
            String cycle =
                    seconds >= SECONDS_A_DAY
                            ? ""
                            : String.format(Locale.ROOT, ", on-for: %.0f s, every: 1 d", seconds);
            load(name, load.amps(), cycle);
            written.add(name);
        }
        if (flows(load.idleAmps()) && seconds < SECONDS_A_DAY) {
            String wait =
                    seconds == 0
                            ? ""
                            : String.format(
                                    Locale.ROOT,
                                    ", on-for: %.0f s, every: 1 d, starts-after: %.0f s",
                                    SECONDS_A_DAY - seconds,
                                    seconds);
            String idle = name("idle-" + name);
            load(idle, load.idleAmps(), wait);
            written.add(idle);
        }
        return written;
    }

    /** Whether it is at least the microamp that the file can say. */
    static boolean flows(double amps) {
        return Math.rint(amps * 1e6) >= 1;
    }

    /** A load that is always on, under a name of ours. */
    void load(String name, double amps) {
        load(name, amps, "");
    }

    private void load(String name, double amps, String cycle) {
        loads.add(name + ": {current: " + number(amps, 6) + " A" + cycle + "}");
    }

    /** The loads so far. */
    void loads() {
        block("loads", loads);
    }

    /** A charger that gives so much in its hours of a day. */
    static String dailyCharger(double ampHoursPerDay) {
        double amps = dailyAmps(ampHoursPerDay);
        return "charger: {current-limit: " + number(amps, 6) + " A, switched: off}";
    }

    /** What it gives at an hour of the day. */
    static double chargeAmpsAt(double hour, double ampHoursPerDay) {
        boolean on = hour >= CHARGE_FROM_HOUR && hour < CHARGE_FROM_HOUR + CHARGE_HOURS;
        return on ? dailyAmps(ampHoursPerDay) : 0;
    }

    private static double dailyAmps(double ampHoursPerDay) {
        return Math.min(TrialLimits.MOST_AMPS, ampHoursPerDay / CHARGE_HOURS);
    }

    /** Letters, digits and hyphens of an owner's own word; never one that is taken. */
    private String name(String word) {
        String plain =
                word.toLowerCase(Locale.ROOT)
                        .replaceAll("[^a-z0-9]+", "-")
                        .replaceAll("^[-0-9]+|-+$", "");
        String stem = plain.isEmpty() ? "load" : plain.substring(0, Math.min(STEM, plain.length()));
        String name = stem;
        for (int i = 2; !names.add(name); i++) {
            name = stem + "-" + i;
        }
        return name;
    }

    /** A decimal without exponent or needless zeros. */
    static String number(double value, int places) {
        BigDecimal plain =
                new BigDecimal(value).setScale(places, RoundingMode.HALF_EVEN).stripTrailingZeros();
        return plain.signum() == 0 ? "0" : plain.toPlainString();
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
