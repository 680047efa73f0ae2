package org.gaugebench.sim.advice;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.advice.Suspect.Kind;

/**
 * What a log's charges say of the settings that look for full. Where it has no sign of a full
 * charge it says nothing of what would have been missed.
 */
final class LogChecks {
    /** What meter and cable may take away; of 12 V. */
    private static final double BELOW_TOP_VOLTS = 0.02;

    /** So many usual margins below what the charger holds is another stage of the charge. */
    private static final double MARGINS = 2.5;

    private static final double WIDE = 3;
    private static final double SHORT = 0.1;

    private final AuditSubject it;
    private final LogFacts facts;
    private final int signs;
    private final LogWatch asTyped;
    private final List<Suspect> found;

    private LogChecks(
            AuditSubject it, LogFacts facts, int signs, LogWatch asTyped, List<Suspect> found) {
        this.it = it;
        this.facts = facts;
        this.signs = signs;
        this.asTyped = asTyped;
        this.found = found;
    }

    static void check(
            AuditSubject it, LogFacts facts, int signs, LogWatch asTyped, List<Suspect> found) {
        if (it.typed(Setting.ABSORPTION) == 0) {
            found.add(
                    new Suspect(
                            Kind.FULL_RULE_OFF,
                            "its volts for full are 0, which switches that off; the log has signs"
                                    + " of a full charge "
                                    + FullWatchResult.times(signs),
                            topRemedy(it, facts)));
            return;
        }
        LogChecks checks = new LogChecks(it, facts, signs, asTyped, found);
        if (!FullRuleChecks.isOfAnotherSystem(it)) {
            checks.threshold();
        }
        checks.taper();
        checks.hold();
    }

    /** At the log's temperature; 25 °C where the gauge takes none. */
    private static double shift(AuditSubject it, double celsius) {
        double limit = it.typed(Setting.COMPENSATION_LIMIT) / 1e3;
        double shift = it.typed(Setting.TEMPERATURE_COEFFICIENT) / 1e6 * (celsius - 25);
        return it.hasSetting(Setting.TEMPERATURE_COEFFICIENT)
                ? Math.max(-limit, Math.min(limit, shift))
                : 0;
    }

    /** The charger's volts as the log shows them, as a gauge is told of them at 25 °C. */
    static Map<Setting, Long> topRemedy(AuditSubject it, LogFacts facts) {
        Map<Setting, Long> remedy = new TreeMap<>();
        double volts = facts.topVolts() - shift(it, facts.topCelsius());
        // Tenths are what a charger's maker prints; rounded down it is still reached.
        long tenths = (long) Math.floor(volts * 10 + 0.2);
        remedy.put(Setting.ABSORPTION, tenths * 100);
        remedy.put(Setting.ABSORPTION_MARGIN, it.usual(Setting.ABSORPTION_MARGIN));
        return remedy;
    }

    private double threshold25() {
        return it.thresholdVolts() + shift(it, facts.topCelsius());
    }

    /** Nothing where the gauge's volts do not follow the temperature. */
    private String warmth() {
        return shift(it, facts.topCelsius()) == 0
                ? ""
                : text(" at %.0f °C (%.2f V at 25 °C)", facts.topCelsius(), it.thresholdVolts());
    }

    private void threshold() {
        double threshold = threshold25();
        double top = facts.topVolts();
        double scale = it.nominalVolts() / 12;
        if (signs > 0 && threshold > top - BELOW_TOP_VOLTS * scale) {
            found.add(
                    new Suspect(
                            Kind.THRESHOLD_ABOVE_CHARGER,
                            text(
                                    "%.2f V looked for%s; the highest that stood for %d minutes in"
                                            + " the log are %.2f V",
                                    threshold, warmth(), LogFacts.STEADY_MINUTES, top),
                            topRemedy(it, facts)));
            return;
        }
        double margin = it.usual(Setting.ABSORPTION_MARGIN) / 1e3;
        if (asTyped.early() + asTyped.unsupported() > 0 && threshold < top - MARGINS * margin) {
            found.add(
                    new Suspect(
                            Kind.THRESHOLD_AT_FLOAT,
                            text(
                                    "%.2f V looked for%s; the log's charger goes up to %.2f V",
                                    threshold, warmth(), top),
                            topRemedy(it, facts)));
        }
    }

    private void taper() {
        double taper = it.taperAmps();
        double usual = it.usual(Setting.TAPER) / 1e6 * it.printedAmpHours();
        double end = facts.endAmps(Math.min(threshold25(), facts.topVolts() - 0.05));
        if (signs > 0 && asTyped.missed() && taper < end) {
            found.add(
                    new Suspect(
                            Kind.TAPER_BELOW_END,
                            text(
                                    "full from %s down; at those volts the log's current falls to"
                                            + " %s and no further",
                                    Sizing.amps(taper), Sizing.amps(end)),
                            CapacityChecks.remedy(it, Setting.TAPER)));
        } else if (it.typed(Setting.TAPER) >= WIDE * it.usual(Setting.TAPER)) {
            found.add(
                    new Suspect(
                            Kind.TAPER_WIDE,
                            text(
                                    "full from %s down, usual is %s; in the log it falls to %s",
                                    Sizing.amps(taper), Sizing.amps(usual), Sizing.amps(end)),
                            CapacityChecks.remedy(it, Setting.TAPER)));
        }
    }

    private void hold() {
        double hold = it.typed(Setting.HOLD);
        double usual = it.usual(Setting.HOLD);
        int stood = facts.longestMinutes(threshold25(), it.taperAmps());
        if (signs > 0 && asTyped.missed() && stood > 0 && stood < hold && hold > usual) {
            found.add(
                    new Suspect(
                            Kind.HOLD_LONG,
                            text(
                                    "%.0f min of hold; in the log volts and current stand for %d"
                                            + " min at most",
                                    hold, stood),
                            CapacityChecks.remedy(it, Setting.HOLD)));
        } else if (it.battery().chemistry().isLeadAcid() && hold <= SHORT * usual) {
            found.add(
                    new Suspect(
                            Kind.HOLD_SHORT,
                            text("%.0f min of hold, usual are %.0f", hold, usual),
                            CapacityChecks.remedy(it, Setting.HOLD)));
        }
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
