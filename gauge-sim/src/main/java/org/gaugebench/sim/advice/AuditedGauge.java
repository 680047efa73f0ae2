package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.advice.OwnersGauge.PastFull;
import org.gaugebench.sim.advice.OwnersGauge.SetsFull;

/**
 * An owner's gauge in an audit: what it does by his answers, and which settings it has. A setting
 * that it does not have is neither looked at nor advised.
 */
final class AuditedGauge {
    /** Below that a day costs less than half a point of a small battery. */
    private static final double OWN_AMPS = 0.001;

    private final OwnersGauge gauge;
    private final SettingsTold settings;
    private final List<String> notUsed = new ArrayList<>();

    /**
     * Puts it together.
     *
     * @param told by its owner
     * @param settings as they were typed into it; to type in volts and current is an answer too
     */
    AuditedGauge(OwnersGauge told, SettingsTold settings) {
        this.settings = settings;
        this.gauge = told.isTold() ? told.settingItself(setsFull(told.setsFull())) : told;
    }

    private SetsFull setsFull(SetsFull told) {
        Long volts = settings.fullMillivolts();
        boolean isTyped = volts != null && volts > 0;
        if (told == SetsFull.NOT_KNOWN && isTyped && settings.fullPartsPerMillion() != null) {
            notUsed.add("it sets itself on volts and current, for both are typed into it");
            return SetsFull.VOLTS_AND_CURRENT;
        }
        if (isTyped && told == SetsFull.NOT_KNOWN) {
            notUsed.add(
                    "the volts for full are not used: on what it sets itself to 100 % is not"
                            + " known (--sets-full)");
        } else if (isTyped && (told == SetsFull.NEVER || told == SetsFull.BY_HAND)) {
            notUsed.add("the volts for full are not used: it does not set itself to 100 %");
        }
        boolean more = settings.fullPartsPerMillion() != null || settings.fullMinutes() != null;
        if (more && told != SetsFull.VOLTS_AND_CURRENT) {
            notUsed.add("the current and the minutes for full are not used: it does not look");
        }
        return told;
    }

    /** Whether its owner told what it does; otherwise our core stands in for it. */
    boolean isTold() {
        return gauge.isTold();
    }

    OwnersGauge gauge() {
        return gauge;
    }

    /** For how long it looks before it sets itself, where it looks at the current. */
    long holdMinutes() {
        Long told = settings.fullMinutes();
        return told == null ? ComposedGauge.HOLD_MINUTES : told;
    }

    /** What was typed in and has no place in it; what was taken from it, or for granted. */
    List<String> assumed() {
        List<String> assumed = new ArrayList<>(notUsed);
        if (gauge.efficiencySet() == null) {
            assumed.add("it counts all charge put in as charge stored (--efficiency-set)");
        }
        return assumed;
    }

    /** The settings that it has, as far as its owner told. */
    Set<Setting> has() {
        if (!isTold()) {
            return EnumSet.allOf(Setting.class);
        }
        Set<Setting> has =
                EnumSet.of(Setting.CAPACITY, Setting.SHUNT_RATED_CURRENT, Setting.SHUNT_RATED_DROP);
        addIf(has, settings.chemistry() != null, Setting.CHEMISTRY);
        addIf(has, gauge.efficiencySet() != null, Setting.COULOMBIC_EFFICIENCY);
        addIf(has, settings.keptBackPartsPerMillion() != null, Setting.KEPT_BACK);
        addIf(has, gauge.setsItself(), Setting.ABSORPTION);
        addIf(has, gauge.setsItself(), Setting.ABSORPTION_MARGIN);
        boolean looksAtCurrent = gauge.setsFull() == SetsFull.VOLTS_AND_CURRENT;
        addIf(has, looksAtCurrent, Setting.TAPER);
        addIf(has, looksAtCurrent && settings.fullMinutes() != null, Setting.HOLD);
        return has;
    }

    private static void addIf(Set<Setting> has, boolean is, Setting setting) {
        if (is) {
            has.add(setting);
        }
    }

    /** What it does wrong whatever is typed in. */
    List<String> noSettingCures() {
        List<String> words = new ArrayList<>();
        if (gauge.setsFull() == SetsFull.VOLTS) {
            words.add(
                    "it looks at the volts alone, and a strong charger brings those up long before"
                            + " the battery is full");
        }
        if (gauge.setsFull() == SetsFull.NEVER) {
            words.add("nothing sets it to 100 %: what it counts wrongly adds up");
        }
        if (gauge.pastFull() == PastFull.SHOWS_MORE || gauge.pastFull() == PastFull.HIDES_MORE) {
            words.add("it counts on past 100 %, and shows too much for as long afterwards");
        }
        Double smallest = gauge.smallestAmps();
        if (smallest != null && smallest > 0) {
            words.add("it does not count currents below " + Sizing.amps(smallest));
        }
        Double own = gauge.ownAmps();
        if (own != null && own > OWN_AMPS) {
            words.add(
                    String.format(
                            Locale.ROOT,
                            "it does not count the %s that it draws itself, %.2f Ah a day",
                            Sizing.amps(own),
                            own * 24));
        }
        return words;
    }
}
