package org.gaugebench.sim.advice;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.advice.Suspect.Kind;

/** Whether capacity and what hangs on it are those of this battery. */
final class CapacityChecks {
    /** Figures that agree to that are one figure, rounded. */
    private static final double SAME = 0.05;

    private static final double USABLE_LEAST = 0.4;
    private static final double USABLE_MOST = 0.86;

    /** The 100 h figure of lead-acid is 10 to 25 % above that of 20 h; common practice. */
    private static final double SLOW_RATE_MOST = 1.3;

    /** Nobody keeps back as much of lithium; half is usual of lead-acid. */
    private static final long LITHIUM_KEPT_BACK = 300_000;

    private static final long LITHIUM_RATE_LAW = 1_100_000;

    private CapacityChecks() {}

    static void check(AuditSubject it, List<Suspect> found) {
        capacity(it, found);
        efficiency(it, found);
        if (!it.battery().chemistry().isLeadAcid()) {
            long kept = it.typed(Setting.KEPT_BACK);
            if (kept >= LITHIUM_KEPT_BACK) {
                found.add(
                        new Suspect(
                                Kind.KEPT_BACK,
                                "%s kept back; half is usual of lead-acid, a tenth or a fifth of"
                                                .formatted(FullWatchResult.percent(kept))
                                        + " lithium",
                                Map.of(Setting.KEPT_BACK, 100_000L)));
            }
            if (it.typed(Setting.PEUKERT_EXPONENT) > LITHIUM_RATE_LAW) {
                found.add(
                        new Suspect(
                                Kind.RATE_LAW,
                                String.format(
                                        Locale.ROOT,
                                        "an exponent of %.2f; lithium gives nearly the same charge"
                                                + " at every rate",
                                        it.typed(Setting.PEUKERT_EXPONENT) / 1e6),
                                remedy(it, Setting.PEUKERT_EXPONENT)));
            }
        }
    }

    private static void capacity(AuditSubject it, List<Suspect> found) {
        double typed = it.typedAmpHours();
        double ratio = typed / it.printedAmpHours();
        if (Math.abs(ratio - 1) <= SAME) {
            return;
        }
        Kind kind = Kind.CAPACITY_OTHER;
        if (ratio >= USABLE_LEAST && ratio <= USABLE_MOST) {
            kind = Kind.CAPACITY_USABLE;
        } else if (it.battery().chemistry().isLeadAcid() && ratio > 1 && ratio <= SLOW_RATE_MOST) {
            kind = Kind.CAPACITY_HOUR_RATE;
        }
        found.add(
                new Suspect(
                        kind,
                        String.format(
                                Locale.ROOT,
                                "%.0f Ah typed in, %.0f Ah printed for 20 h",
                                typed,
                                it.printedAmpHours()),
                        Map.of(Setting.CAPACITY, Math.round(it.printedAmpHours() * 1e3))));
    }

    private static void efficiency(AuditSubject it, List<Suspect> found) {
        long typed = it.typed(Setting.COULOMBIC_EFFICIENCY);
        long real = it.battery().coulombicEfficiencyPartsPerMillion();
        // As far as the preset itself allows that it may be off.
        long doubt = it.usual(Setting.EFFICIENCY_BOUND);
        if (Math.abs(typed - real) > doubt) {
            found.add(
                    new Suspect(
                            Kind.EFFICIENCY,
                            "%s typed in; %s comes out again of this battery"
                                    .formatted(
                                            FullWatchResult.percent(typed),
                                            FullWatchResult.percent(real)),
                            Map.of(Setting.COULOMBIC_EFFICIENCY, real)));
        }
    }

    static Map<Setting, Long> remedy(AuditSubject it, Setting setting) {
        return Map.of(setting, it.usual(setting));
    }
}
