package org.gaugebench.sim.advice;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.units.ShuntRating;

/**
 * The text of a short run of an owner's system that answers one question: what if the battery is
 * another one, the wire was off, a load is wired wrongly. What is not asked stays as it was told.
 */
final class TrialScenario {
    /** Stands for the daily charge until the length of the run is known. */
    private static final String DAILY = "daily";

    private static final double CHARGE_FROM_HOUR = 8;
    private static final double CHARGE_HOURS = 6;
    private static final double SECONDS_A_DAY = 86_400;

    /** Words of the scenario format, and our own names, which no load may have. */
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
                    "charger",
                    "keeps",
                    "full",
                    "guesses",
                    "old",
                    "new");

    private final OwnSystem system;
    private final ShuntRating shunt;
    private final double ownAmps;
    private final String efficiency;
    private final List<String> gauges = new ArrayList<>();
    private final List<String> past = new ArrayList<>();
    private final List<String> timeline = new ArrayList<>();
    private final List<String> loads = new ArrayList<>();
    private final Set<String> names = new HashSet<>(TAKEN);
    private String title = "A trial of my system";
    private String charger = "";
    private String more = "";
    private double batteryAmpHours;
    private double startPercent = 100;
    private double zeroAmps;
    private long minutes = 1_440;
    private boolean isGaugeFed = true;

    TrialScenario(OwnSystem system, OwnersGauge gauge, ShuntRating shunt) {
        this.system = system;
        this.shunt = shunt;
        this.batteryAmpHours = system.ampHours();
        Double own = gauge.ownAmps();
        this.ownAmps = own == null ? 0 : own;
        Double set = gauge.efficiencySet();
        this.efficiency =
                set == null || set == 1
                        ? ""
                        : ", mistakes: [efficiency-per-sample%s], coulombic-efficiency: "
                                + number(set * 100, 4)
                                + " %%";
    }

    TrialScenario titled(String words) {
        title = words;
        return this;
    }

    TrialScenario lasting(double days) {
        minutes = Math.max(1, Math.round(days * 1_440));
        return this;
    }

    /** Another battery, or the same one at another start. */
    TrialScenario battery(double ampHours, double percent) {
        batteryAmpHours = ampHours;
        startPercent = percent;
        return this;
    }

    /** A battery that keeps charge back in the cold, or gives more in the heat. */
    TrialScenario at(double celsius) {
        more = "  temperature: " + number(celsius, 3) + " °C\n  capacity-by-temperature: on\n";
        return this;
    }

    /** What the gauge counts while nothing flows, with its sign. */
    TrialScenario zero(double amps) {
        zeroAmps = amps;
        return this;
    }

    /** The gauge's own current is not drawn: its wire is off, or nobody asks for it here. */
    TrialScenario unfed() {
        isGaugeFed = false;
        return this;
    }

    /** A gauge that counts and is set by hand; the first one is the main one. */
    TrialScenario counter(String name, double percent, double typedAmpHours) {
        return gauge(name, percent, typedAmpHours, "");
    }

    /** The same with something that it does on power-up; then it takes no start. */
    TrialScenario starter(String name, double percent, String mistake) {
        timeline.add("{at: 0 s, set: {%s.declare: %s %%}}".formatted(name, number(percent, 4)));
        return gauge(name, Double.NaN, system.ampHours(), mistake);
    }

    private TrialScenario gauge(String name, double percent, double typed, String mistake) {
        StringBuilder line = new StringBuilder();
        if (efficiency.isEmpty() && mistake.isEmpty()) {
            line.append("kind: plain-counter");
        } else {
            line.append("kind: exhibit");
            String more = mistake.isEmpty() ? "" : ", " + mistake;
            line.append(
                    efficiency.isEmpty()
                            ? ", mistakes: [" + mistake + "]"
                            : efficiency.formatted(more));
        }
        if (!Double.isNaN(percent)) {
            line.append(", start: ").append(number(percent, 4)).append(" %");
        }
        line.append(", capacity: ").append(number(typed, 6)).append(" Ah");
        gauges.add(gauges.isEmpty() ? "{" + line + "}" : "{name: " + name + ", " + line + "}");
        return this;
    }

    /** The loads, day by day as told. */
    TrialScenario withLoads() {
        for (OwnLoad load : system.loads()) {
            load(load, false);
        }
        return this;
    }

    /** The loads, one of them on the battery's side of the shunt. */
    TrialScenario withLoadPastShunt(OwnLoad wrong) {
        for (OwnLoad load : system.loads()) {
            load(load, load.equals(wrong));
        }
        return this;
    }

    /** One steady load instead of those that were told. */
    TrialScenario withSteadyLoad(double amps) {
        loads.add("steady: {current: " + number(amps, 6) + " A}");
        return this;
    }

    /** So much is put in every day, however full the battery is. */
    TrialScenario chargedDaily(double ampHoursPerDay) {
        if (ampHoursPerDay > 0) {
            charger =
                    "{current-limit: %s A, switched: off}"
                            .formatted(number(ampHoursPerDay / CHARGE_HOURS, 6));
            timeline.add(DAILY);
        }
        return this;
    }

    /** A charger that is left on until the battery takes next to nothing. */
    TrialScenario chargedToTheEnd(double amps, double volts) {
        charger =
                "{current-limit: %s A, absorption: %s V, absorption-limit: none,"
                                .formatted(number(amps, 6), number(volts, 3))
                        + " float: "
                        + number(volts, 3)
                        + " V, temperature-coefficient: 0 mV/K}";
        return this;
    }

    /** The charger's negative ends on the battery's own post. */
    TrialScenario chargerPastShunt() {
        past.add("charger: 100 %");
        return this;
    }

    TrialScenario step(String line) {
        timeline.add(line);
        return this;
    }

    Scenario read() {
        return MonthAhead.read(text());
    }

    String text() {
        StringBuilder text = new StringBuilder();
        text.append("format: 1\ntitle: ").append(title);
        text.append("\nduration: ").append(minutes).append(" min\ntick: 1 min\nbattery:\n");
        text.append("  chemistry: ").append(system.chemistry().key());
        text.append("\n  nominal-voltage: ").append(system.nominalVolts()).append(" V\n");
        text.append("  capacity: ").append(number(batteryAmpHours, 6)).append(" Ah\n");
        text.append("  start: ").append(number(startPercent, 4)).append(" %\n").append(more);
        double ohms = (double) shunt.microvolts() / shunt.microamps();
        text.append("sensor:\n  shunt: ").append(shunt);
        text.append("\n  offset: ").append(number(zeroAmps * ohms * 1e9, 0)).append(" nV\n");
        if (system.converter() != null) {
            text.append("  converter: ").append(system.converter()).append('\n');
        }
        text.append("gauge: ").append(gauges.get(0)).append('\n');
        list(text, "beside", gauges.subList(1, gauges.size()));
        wiring(text);
        if (!charger.isEmpty()) {
            text.append("chargers:\n  charger: ").append(charger).append('\n');
        }
        if (!loads.isEmpty()) {
            text.append("loads:\n");
            loads.forEach(each -> text.append("  ").append(each).append('\n'));
        }
        list(text, "timeline", steps());
        return text.toString();
    }

    /** A run that ends before the charger comes on has no step for it. */
    private List<String> steps() {
        List<String> steps = new ArrayList<>(timeline);
        double until = Math.min(CHARGE_FROM_HOUR + CHARGE_HOURS, minutes / 60.0);
        if (until <= CHARGE_FROM_HOUR) {
            steps.remove(DAILY);
        }
        steps.replaceAll(
                it ->
                        it.equals(DAILY)
                                ? String.format(
                                        Locale.ROOT,
                                        "{from: %.0f h, to: %.0f min, every: 1 d, set: {charger:"
                                                + " on}}",
                                        CHARGE_FROM_HOUR,
                                        until * 60)
                                : it);
        return steps;
    }

    private void wiring(StringBuilder text) {
        boolean fed = isGaugeFed && ownAmps > 0;
        if (!fed && past.isEmpty()) {
            return;
        }
        text.append("wiring:\n");
        if (fed) {
            text.append("  own-supply: ").append(number(ownAmps, 6)).append(" A\n");
        }
        if (!past.isEmpty()) {
            text.append("  past-shunt: {").append(String.join(", ", past)).append("}\n");
        }
    }

    private static void list(StringBuilder text, String key, List<String> lines) {
        if (!lines.isEmpty()) {
            text.append(key).append(":\n");
            lines.forEach(each -> text.append("  - ").append(each).append('\n'));
        }
    }

    private void load(OwnLoad load, boolean isPast) {
        double seconds = Math.rint(load.hoursPerDay() * 3_600);
        if (load.amps() > 0 && seconds > 0) {
            String cycle =
                    seconds >= SECONDS_A_DAY
                            ? ""
                            : String.format(Locale.ROOT, ", on-for: %.0f s, every: 1 d", seconds);
            one(load.name(), load.amps(), cycle, isPast);
        }
        if (load.idleAmps() > 0 && seconds < SECONDS_A_DAY) {
            String wait =
                    seconds == 0
                            ? ""
                            : String.format(
                                    Locale.ROOT,
                                    ", on-for: %.0f s, every: 1 d, starts-after: %.0f s",
                                    SECONDS_A_DAY - seconds,
                                    seconds);
            one("idle-" + load.name(), load.idleAmps(), wait, isPast);
        }
    }

    private void one(String word, double amps, String cycle, boolean isPast) {
        String name = name(word);
        loads.add(name + ": {current: " + number(amps, 6) + " A" + cycle + "}");
        if (isPast) {
            past.add(name + ": 100 %");
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

    /** A decimal without exponent or needless zeros. */
    private static String number(double value, int places) {
        BigDecimal plain =
                new BigDecimal(value).setScale(places, RoundingMode.HALF_EVEN).stripTrailingZeros();
        return plain.signum() == 0 ? "0" : plain.toPlainString();
    }
}
