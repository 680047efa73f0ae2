package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.gaugebench.sim.plant.UsableCapacity;
import org.gaugebench.sim.units.ConverterRange;
import org.gaugebench.sim.units.ShuntRating;
import org.jspecify.annotations.Nullable;

/**
 * Sizes a shunt for a system, and says what it costs in accuracy.
 *
 * <p>The peak stands at or below the rating, however short it is; what flows for more than two
 * minutes stays at or below two thirds of it (common shunt-maker practice, three makers agree). No
 * conductor and no fuse is sized here: those are questions for the local code.
 */
public final class Sizing {
    /** Of the rating, for what flows for hours. */
    private static final double STEADY_PART = 2.0 / 3;

    private static final double HOURS_A_MONTH = 720;
    private static final double USUAL_COLDEST_CELSIUS = 10;

    /** Usual depths of discharge; lead-acid 50 %, lithium iron phosphate 80 to 90 %. */
    private static final double LEAD_ACID_DEPTH = 0.5;

    private static final double LITHIUM_DEPTH = 0.8;

    /** IEEE Std 485: design margin 1.10 to 1.15, ageing 1.25 (renew at 80 %); from memory. */
    private static final double DESIGN_MARGIN = 1.10;

    private static final double AGEING = 1.25;

    private final OwnSystem system;
    private final ConverterRange converter;
    private final List<String> assumed = new ArrayList<>();
    private final List<String> findings = new ArrayList<>();
    private double steadyAmps;
    private double peakAmps;

    private Sizing(OwnSystem system) {
        this.system = system;
        ConverterRange told = system.converter();
        if (told == null) {
            told = new ConverterRange(20, 100_000);
            assumed.add("the gauge's converter: " + told);
        }
        this.converter = told;
    }

    /** Sizes a system. */
    public static SizingResult of(OwnSystem system) {
        return new Sizing(system).work();
    }

    private SizingResult work() {
        double outAmps = outAmps();
        steadyAmps = Math.max(outAmps, system.chargerAmps());
        peakAmps = Math.max(outAmps + largestSurge(), system.chargerAmps());
        assumed.add("everything may be on at once");
        system.loads().forEach(load -> assumed.addAll(load.assumed()));
        ShuntRating there = system.shunt();
        long drop = there == null ? PreferredShunts.USUAL_MICROVOLTS : there.microvolts();
        ShuntRating proposed = PreferredShunts.smallestFor(peakAmps, steadyAmps, drop);
        ShuntRating chosen = there == null ? proposed : there;
        List<ShuntChoice> choices =
                chosen == null
                        ? List.of()
                        : PreferredShunts.around(chosen).stream().map(this::choice).toList();
        findings(chosen, proposed, choices);
        return batteryOf(outAmps, proposed, chosen, choices);
    }

    private SizingResult batteryOf(
            double outAmps,
            @Nullable ShuntRating proposed,
            @Nullable ShuntRating chosen,
            List<ShuntChoice> choices) {
        double coldPart = coldPart();
        double depth = depth();
        double usable = system.ampHours() * coldPart * depth;
        double daily = system.loads().stream().mapToDouble(OwnLoad::ampHoursPerDay).sum();
        double needed = BatteryNeed.ampHours(daily, 1, depth, 1 / coldPart, DESIGN_MARGIN * AGEING);
        double fastPart =
                system.chemistry().isLeadAcid()
                        ? FastDischarge.partOf(system.ampHours(), outAmps)
                        : 1;
        return new SizingResult(
                steadyAmps,
                peakAmps,
                outAmps,
                daily,
                proposed,
                chosen,
                choices,
                usable,
                coldPart,
                depth,
                fastPart,
                daily == 0 ? Double.POSITIVE_INFINITY : usable / daily,
                needed,
                List.copyOf(assumed),
                List.copyOf(findings));
    }

    private double depth() {
        Double told = system.usablePart();
        if (told != null) {
            return told;
        }
        double usual = system.chemistry().isLeadAcid() ? LEAD_ACID_DEPTH : LITHIUM_DEPTH;
        assumed.add("drawn down by at most " + percent(usual) + " of the charge, as usual");
        return usual;
    }

    private double outAmps() {
        double amps = 0;
        for (OwnLoad load : system.loads()) {
            amps += load.byInverter() ? 0 : Math.max(load.amps(), load.idleAmps());
        }
        OwnInverter inverter = system.inverter();
        return inverter == null
                ? amps
                : amps + inverter.ampsAt(inverter.watts(), system.nominalVolts());
    }

    /** The most that one thing adds when it starts: two of them rarely start in one second. */
    private double largestSurge() {
        double largest = 0;
        for (OwnLoad load : system.loads()) {
            if (!load.byInverter()) {
                largest = Math.max(largest, load.surgeAmps() - load.amps());
            }
        }
        OwnInverter inverter = system.inverter();
        if (inverter != null) {
            double more = inverter.surgeWatts() - inverter.watts();
            largest = Math.max(largest, inverter.ampsAt(more, system.nominalVolts()));
        }
        return largest;
    }

    private double coldPart() {
        Double told = system.coldestCelsius();
        double celsius = told == null ? USUAL_COLDEST_CELSIUS : told;
        if (told == null) {
            assumed.add("the battery is never colder than 10 °C when it is needed");
        }
        return UsableCapacity.partAt(system.chemistry(), celsius);
    }

    private ShuntChoice choice(ShuntRating rating) {
        double ohms = (double) rating.microvolts() / rating.microamps();
        double ratedAmps = rating.microamps() / 1e6;
        double stepVolts = converter.microvolts() / 1e6 / (1L << (converter.bits() - 1));
        ShuntChoice.Fit fit = ShuntChoice.Fit.FITS;
        if (peakAmps > ratedAmps) {
            fit = ShuntChoice.Fit.OVERLOADED;
        } else if (!carriesForHours(ratedAmps, steadyAmps)) {
            fit = ShuntChoice.Fit.TOO_WARM;
        } else if (peakAmps * ohms > converter.microvolts() / 1e6) {
            fit = ShuntChoice.Fit.CLIPPED;
        }
        double microvoltAmps = 1e-6 / ohms;
        double perMonth = microvoltAmps * HOURS_A_MONTH;
        return new ShuntChoice(
                rating,
                fit,
                steadyAmps * ohms * 1e3,
                steadyAmps * steadyAmps * ohms,
                stepVolts / ohms,
                stepVolts / ohms * HOURS_A_MONTH,
                microvoltAmps,
                perMonth,
                perMonth / system.ampHours() * 100);
    }

    private void findings(
            @Nullable ShuntRating chosen,
            @Nullable ShuntRating proposed,
            List<ShuntChoice> choices) {
        if (proposed == null) {
            findings.add(
                    "no shunt of the usual sizes carries %s with %s at peak; ask a licensed person"
                            .formatted(amps(steadyAmps), amps(peakAmps)));
        }
        for (ShuntChoice each : choices) {
            if (each.rating().equals(chosen) && each.fit() != ShuntChoice.Fit.FITS) {
                String next = proposed == null ? "" : "; the next size that fits: " + proposed;
                findings.add("the shunt " + chosen + ": " + each.fit().words() + next);
            }
        }
        OwnInverter inverter = system.inverter();
        if (inverter == null && system.loads().stream().anyMatch(OwnLoad::byInverter)) {
            findings.add("loads run by an inverter, but no inverter is named");
        }
        if (inverter != null && inverter.surgeWatts() == inverter.watts()) {
            assumed.add("the inverter gives no more than its rating even for moments");
        }
    }

    /** At two thirds exactly it still does, whichever way the last bit was rounded. */
    static boolean carriesForHours(double ratedAmps, double steadyAmps) {
        return steadyAmps <= STEADY_PART * ratedAmps * (1 + 1e-12);
    }

    static String amps(double amps) {
        return amps < 0.1
                ? String.format(Locale.ROOT, "%.1f mA", amps * 1e3)
                : String.format(Locale.ROOT, amps < 10 ? "%.2f A" : "%.1f A", amps);
    }

    private static String percent(double part) {
        return String.format(Locale.ROOT, "%.0f %%", part * 100);
    }
}
