package org.gaugebench.sim.advice;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.advice.Suspect.Kind;
import org.gaugebench.sim.scenario.ChargerSpec;

/** Whether the gauge can see a full charge, and only a full charge, by this charger. */
final class FullRuleChecks {
    /** A threshold so near the float is reached by a hot day or a coarse meter; of 12 V. */
    private static final double ABOVE_FLOAT_VOLTS = 0.15;

    /** What meter and cable may take away; of 12 V. */
    private static final double BELOW_ABSORPTION_VOLTS = 0.05;

    /** Thrice the preset: beyond that a battery is still being filled in earnest. */
    private static final double WIDE = 3;

    /** Less than a tenth of the preset's hold is a passing cloud. */
    private static final double SHORT = 0.1;

    private FullRuleChecks() {}

    static void check(AuditSubject it, List<Suspect> found) {
        if (it.thresholdVolts() == 0 && it.typed(Setting.FLOAT_VOLTAGE) == 0) {
            Map<Setting, Long> remedy = new TreeMap<>();
            remedy.put(Setting.ABSORPTION, it.usual(Setting.ABSORPTION));
            remedy.put(Setting.FLOAT_VOLTAGE, it.usual(Setting.FLOAT_VOLTAGE));
            found.add(
                    new Suspect(
                            Kind.FULL_RULE_OFF,
                            "absorption and float-voltage are both 0, which switches both ways off",
                            remedy));
        }
        if (it.thresholdVolts() == 0 || it.strongest().isEmpty()) {
            return;
        }
        threshold(it, found);
        it.strongest().ifPresent(charger -> current(it, charger, found));
        compensation(it, found);
    }

    private static void threshold(AuditSubject it, List<Suspect> found) {
        double threshold = it.thresholdVolts();
        double scale = it.nominalVolts() / 12;
        double top = it.highestAbsorptionVolts();
        if (isOfAnotherSystem(it)) {
            return;
        }
        if (threshold > top - BELOW_ABSORPTION_VOLTS * scale) {
            boolean floatPath = it.typed(Setting.FLOAT_VOLTAGE) > 0 && top <= floatReach(it);
            if (!floatPath) {
                found.add(
                        new Suspect(
                                Kind.THRESHOLD_ABOVE_CHARGER,
                                volts(threshold) + " looked for, the charger holds " + volts(top),
                                absorption(it, top)));
            }
        } else if (threshold < it.highestFloatVolts() + ABOVE_FLOAT_VOLTS * scale
                && it.highestFloatVolts() < top) {
            found.add(
                    new Suspect(
                            Kind.THRESHOLD_AT_FLOAT,
                            "%s looked for, the charger floats at %s and absorbs at %s"
                                    .formatted(
                                            volts(threshold),
                                            volts(it.highestFloatVolts()),
                                            volts(top)),
                            absorption(it, top)));
        }
    }

    /** A charger that only floats is met by the float path. */
    private static double floatReach(AuditSubject it) {
        return it.typed(Setting.FLOAT_VOLTAGE) / 1e3 + 0.3 * it.nominalVolts() / 12;
    }

    static boolean isOfAnotherSystem(AuditSubject it) {
        double ratio =
                (double) it.typed(Setting.NOMINAL_VOLTAGE) / (it.battery().nominalVolts() * 1_000L);
        double threshold = it.thresholdVolts() / it.nominalVolts();
        // A lead or lithium threshold lies between 1.0 and 1.3 times the nominal voltage.
        return ratio < 0.9 || ratio > 1.1 || threshold < 0.9 || threshold > 1.4;
    }

    private static Map<Setting, Long> absorption(AuditSubject it, double volts) {
        Map<Setting, Long> remedy = new TreeMap<>();
        remedy.put(Setting.ABSORPTION, Math.round(volts * 1e3));
        remedy.put(Setting.ABSORPTION_MARGIN, it.usual(Setting.ABSORPTION_MARGIN));
        return remedy;
    }

    private static void current(AuditSubject it, ChargerSpec charger, List<Suspect> found) {
        double taper = it.taperAmps();
        double printed = it.printedAmpHours();
        double ends = Math.max(charger.floatBelowMicroamps() / 1e6, endAmps(it));
        boolean plateau = it.typed(Setting.PLATEAU_HOLD) > 0;
        boolean floats = it.typed(Setting.FLOAT_VOLTAGE) > 0;
        if (taper < ends && !(plateau && floats)) {
            found.add(
                    new Suspect(
                            Kind.TAPER_BELOW_END,
                            "full from %s down, charging ends at %s"
                                    .formatted(amps(taper), amps(ends)),
                            CapacityChecks.remedy(it, Setting.TAPER)));
        }
        double most = charger.currentLimitMicroamps() / 1e6;
        double usualTaper = it.usual(Setting.TAPER) / 1e6 * printed;
        if (taper >= most && taper > usualTaper) {
            found.add(
                    new Suspect(
                            Kind.TAPER_ABOVE_CHARGER,
                            "full from %s down, the charger gives at most %s"
                                    .formatted(amps(taper), amps(most)),
                            CapacityChecks.remedy(it, Setting.TAPER)));
        } else if (it.typed(Setting.TAPER) >= WIDE * it.usual(Setting.TAPER)) {
            found.add(
                    new Suspect(
                            Kind.TAPER_WIDE,
                            it.typed(Setting.TAPER) == Setting.TAPER.maximum()
                                    ? "any current will do, usual is " + amps(usualTaper)
                                    : "full from %s down, usual is %s"
                                            .formatted(amps(taper), amps(usualTaper)),
                            CapacityChecks.remedy(it, Setting.TAPER)));
        }
        hold(it, charger, found);
    }

    private static void hold(AuditSubject it, ChargerSpec charger, List<Suspect> found) {
        double hold = it.typed(Setting.HOLD);
        double usual = it.usual(Setting.HOLD);
        double absorption = charger.absorptionMillis() / 60_000.0;
        if (it.battery().chemistry().isLeadAcid() && hold <= SHORT * usual) {
            found.add(
                    new Suspect(
                            Kind.HOLD_SHORT,
                            String.format(
                                    Locale.ROOT, "%.0f min of hold, usual are %.0f", hold, usual),
                            CapacityChecks.remedy(it, Setting.HOLD)));
        } else if (absorption > 0 && hold >= absorption) {
            found.add(
                    new Suspect(
                            Kind.HOLD_LONG,
                            String.format(
                                    Locale.ROOT,
                                    "%.0f min of hold, the charger absorbs for %.0f min at most",
                                    hold,
                                    absorption),
                            CapacityChecks.remedy(it, Setting.HOLD)));
        }
    }

    private static double endAmps(AuditSubject it) {
        return it.battery().endCurrentPartsPerMillion() / 1e6 * it.printedAmpHours();
    }

    private static void compensation(AuditSubject it, List<Suspect> found) {
        long gauge = it.typed(Setting.TEMPERATURE_COEFFICIENT);
        long charger = it.strongest().map(ChargerSpec::microvoltsPerKelvin).orElse(0L);
        double celsius = it.battery().temperatureMillicelsius() / 1e3;
        double apartVolts = Math.abs((gauge - charger) / 1e6 * (celsius - 25));
        boolean isOther = it.typed(Setting.CHEMISTRY) != it.usual(Setting.CHEMISTRY);
        if (isOther || isOfAnotherSystem(it)) {
            // Found already, and its remedy moves the coefficient as well.
            return;
        }
        // Below that the charger still comes to the threshold; both are of one margin.
        double margin = it.typed(Setting.ABSORPTION_MARGIN) / 1e3;
        double scale = it.nominalVolts() / 12;
        if (apartVolts > Math.max(0, margin - BELOW_ABSORPTION_VOLTS * scale)) {
            found.add(
                    new Suspect(
                            Kind.NO_COMPENSATION,
                            String.format(
                                    Locale.ROOT,
                                    "%.0f mV/K typed in, the charger has %.0f; at %.0f °C they are"
                                            + " %.2f V apart",
                                    gauge / 1e3,
                                    charger / 1e3,
                                    celsius,
                                    apartVolts),
                            Map.of(Setting.TEMPERATURE_COEFFICIENT, charger)));
        }
    }

    private static String volts(double volts) {
        return String.format(Locale.ROOT, "%.2f V", volts);
    }

    private static String amps(double amps) {
        return Sizing.amps(amps);
    }
}
