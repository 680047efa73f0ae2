package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.gaugebench.sim.advice.OwnersGauge.AfterOff;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/**
 * The text of a short run of an owner's system that answers one question: what if the battery is
 * another one, the wire was off, a load is wired wrongly. What is not asked stays as it was told.
 */
final class TrialScenario {
    /** Stands for the daily charge until the length of the run is known. */
    private static final String DAILY = "daily";

    /** Name of our core beside the owner's gauge. */
    static final String BESIDE = "better";

    /** Names of the gauges, which no load may have. */
    private static final Set<String> OURS =
            Set.of("keeps", "full", "guesses", "old", "new", BESIDE);

    private final OwnSystem system;
    private final ShuntRating shunt;
    private final OwnersGauge told;
    private final double ownAmps;
    private final String efficiency;
    private final List<String> gauges = new ArrayList<>();
    private final List<String> timeline = new ArrayList<>();
    private final List<OwnLoad> loads = new ArrayList<>();
    private String title = "A trial of my system";
    private String charger = "";
    private boolean isChargerPast;
    private @Nullable OwnLoad loadPast;
    private double steadyAmps;
    private List<String> warmth = List.of();
    private double batteryAmpHours;
    private double startPercent = 100;
    private double zeroAmps;
    private long minutes = 1_440;
    private boolean isGaugeFed = true;
    private boolean isComposed;

    TrialScenario(OwnSystem system, OwnersGauge gauge, ShuntRating shunt) {
        this.system = system;
        this.shunt = shunt;
        this.told = gauge;
        this.batteryAmpHours = system.ampHours();
        Double own = gauge.ownAmps();
        this.ownAmps = own == null ? 0 : own;
        Double set = gauge.efficiencySet();
        this.efficiency =
                set == null || set == 1
                        ? ""
                        : ", mistakes: [efficiency-per-sample%s], coulombic-efficiency: "
                                + SystemLines.number(set * 100, 4)
                                + " %%";
    }

    /** Gauges that do what the owner told of his, where he told anything; told before any gauge. */
    TrialScenario composed() {
        isComposed = told.isTold();
        return this;
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
        warmth =
                List.of(
                        "temperature: " + SystemLines.number(celsius, 3) + " °C",
                        "capacity-by-temperature: on");
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

    /** A gauge that keeps its figure; the first one is the main one. */
    TrialScenario counter(String name, double percent, double typedAmpHours) {
        if (isComposed) {
            return composed(name, percent, typedAmpHours, AfterOff.KEEPS);
        }
        return gauge(name, percent, typedAmpHours, "");
    }

    /** The same with something else that it shows on power-up. */
    TrialScenario starter(String name, double percent, AfterOff afterOff) {
        if (isComposed) {
            return composed(name, percent, system.ampHours(), afterOff);
        }
        declareAtStart(name, percent);
        return gauge(
                name,
                Double.NaN,
                system.ampHours(),
                afterOff == AfterOff.FULL ? "start-at-full" : "voltage-guess-at-start");
    }

    /** One that believes something as it starts takes no start. */
    private void declareAtStart(String name, double percent) {
        timeline.add(
                "{at: 0 s, set: {%s.declare: %s %%}}"
                        .formatted(name, SystemLines.number(percent, 4)));
    }

    private TrialScenario composed(String name, double percent, double typed, AfterOff afterOff) {
        ComposedGauge gauge = ComposedGauge.of(told.after(afterOff));
        if (gauge.believes()) {
            declareAtStart(gauges.isEmpty() ? "gauge" : name, percent);
        }
        List<String> lines = new ArrayList<>(gauge.lines(percent));
        lines.add("capacity: " + SystemLines.number(typed, 3) + " Ah");
        return add(name, String.join(", ", lines));
    }

    /** Ours, told what can be known; it stands after the owner's. */
    TrialScenario beside(double percent) {
        return add(
                BESIDE,
                "kind: core, start: %s %%, memory: {slots: 2}, own-supply-current: %s A"
                        .formatted(SystemLines.number(percent, 4), SystemLines.number(ownAmps, 6)));
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
            line.append(", start: ").append(SystemLines.number(percent, 4)).append(" %");
        }
        line.append(", capacity: ").append(SystemLines.number(typed, 3)).append(" Ah");
        return add(name, line.toString());
    }

    private TrialScenario add(String name, String line) {
        gauges.add(gauges.isEmpty() ? "{" + line + "}" : "{name: " + name + ", " + line + "}");
        return this;
    }

    /** The loads, day by day as told. */
    TrialScenario withLoads() {
        loads.addAll(system.loads());
        return this;
    }

    /** The loads, one of them on the battery's side of the shunt. */
    TrialScenario withLoadPastShunt(OwnLoad wrong) {
        loadPast = wrong;
        return withLoads();
    }

    /** One steady load instead of those that were told. */
    TrialScenario withSteadyLoad(double amps) {
        steadyAmps = amps;
        return this;
    }

    /** So much is put in every day, however full the battery is. */
    TrialScenario chargedDaily(double ampHoursPerDay) {
        if (SystemLines.flows(ampHoursPerDay / SystemLines.CHARGE_HOURS)) {
            charger = SystemLines.dailyCharger(ampHoursPerDay);
            timeline.add(DAILY);
        }
        return this;
    }

    /** A charger that is left on until the battery takes next to nothing. */
    TrialScenario chargedToTheEnd(double amps, double volts) {
        charger =
                "charger: {current-limit: %s A, absorption: %s V, absorption-limit: none,"
                                .formatted(
                                        SystemLines.number(amps, 6), SystemLines.number(volts, 3))
                        + " float: "
                        + SystemLines.number(volts, 3)
                        + " V, temperature-coefficient: 0 mV/K}";
        return this;
    }

    /** The charger's negative ends on the battery's own post. */
    TrialScenario chargerPastShunt() {
        isChargerPast = true;
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
        SystemLines lines = new SystemLines(system, OURS);
        List<String> past = loads(lines);
        lines.line("format: 1");
        lines.line("title: %s", title);
        lines.line("duration: %d min", minutes);
        lines.line("tick: 1 min");
        lines.battery(batteryAmpHours, startPercent);
        warmth.forEach(each -> lines.line("  %s", each));
        lines.line("sensor:");
        lines.line("  shunt: %s", shunt);
        lines.offset(shunt, zeroAmps);
        lines.converter();
        lines.line("gauge: %s", gauges.get(0));
        lines.list("beside", gauges.subList(1, gauges.size()));
        lines.wiring(isGaugeFed ? ownAmps : 0, past);
        lines.block("chargers", charger.isEmpty() ? List.of() : List.of(charger));
        lines.loads();
        lines.list("timeline", steps());
        return lines.toString();
    }

    /** What draws; answers what of it all stands on the battery's side of the shunt. */
    private List<String> loads(SystemLines lines) {
        List<String> past = new ArrayList<>();
        for (OwnLoad load : loads) {
            List<String> names = lines.load(load);
            if (load.equals(loadPast)) {
                names.forEach(each -> past.add(each + ": 100 %"));
            }
        }
        if (steadyAmps > 0) {
            lines.load("steady", steadyAmps);
        }
        if (isChargerPast) {
            past.add("charger: 100 %");
        }
        return past;
    }

    /** A run that ends before the charger comes on has no step for it. */
    private List<String> steps() {
        List<String> steps = new ArrayList<>(timeline);
        double until =
                Math.min(SystemLines.CHARGE_FROM_HOUR + SystemLines.CHARGE_HOURS, minutes / 60.0);
        if (until <= SystemLines.CHARGE_FROM_HOUR) {
            steps.remove(DAILY);
        }
        steps.replaceAll(
                it ->
                        it.equals(DAILY)
                                ? String.format(
                                        Locale.ROOT,
                                        "{from: %.0f h, to: %.0f min, every: 1 d, set: {charger:"
                                                + " on}}",
                                        SystemLines.CHARGE_FROM_HOUR,
                                        until * 60)
                                : it);
        return steps;
    }
}
