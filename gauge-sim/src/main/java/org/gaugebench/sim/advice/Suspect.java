package org.gaugebench.sim.advice;

import java.util.Locale;
import java.util.Map;
import org.gaugebench.core.settings.Setting;

/**
 * A setting that does not go with what it is set for.
 *
 * @param kind what is wrong
 * @param evidence what stands against what, with both figures
 * @param remedy settings to move, and to what; empty where no setting of the gauge helps
 */
record Suspect(Kind kind, String evidence, Map<Setting, Long> remedy) {
    /** What can be wrong with settings. */
    enum Kind {
        CAPACITY_USABLE("the usable part was typed in as the capacity"),
        CAPACITY_HOUR_RATE("the capacity of a slower rate was typed in"),
        CAPACITY_OTHER("the capacity is not that of this battery"),
        SYSTEM_VOLTAGE("thresholds for another system voltage"),
        CHEMISTRY("settings for another kind of battery"),
        EFFICIENCY("the efficiency is not that of this battery"),
        KEPT_BACK("the kept-back charge of another kind of battery"),
        RATE_LAW("the rate law of another kind of battery"),
        FULL_RULE_OFF("nothing sets it to full"),
        THRESHOLD_ABOVE_CHARGER("the full threshold leaves no room under what the charger gives"),
        THRESHOLD_AT_FLOAT("the full threshold lies where the charger only floats"),
        TAPER_BELOW_END("the taper lies under the current at which charging ends"),
        TAPER_ABOVE_CHARGER("the taper lies above what the charger can give"),
        TAPER_WIDE("the taper is too wide for this kind of battery"),
        HOLD_SHORT("the hold is too short for this kind of battery"),
        HOLD_LONG("the hold is longer than the charger's absorption"),
        NO_COMPENSATION("threshold and charger do not move alike with temperature"),
        EMPTY_VOLTAGE("the empty voltage is not for this battery"),
        OWN_CURRENT("the gauge is not told its own current"),
        SHUNT("the shunt is not the one that is fitted"),
        ZERO("the zero was taken while something flowed");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** The word that findings are known by. */
        String key() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }

        String words() {
            return words;
        }
    }
}
