package org.gaugebench.sim.advice;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.gaugebench.sim.scenario.SettingText;
import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;
import org.gaugebench.sim.units.ShuntRating;

/** Settings in the words of the options with which an owner types them in, to be typed again. */
final class TypedWords {
    private static final Map<Setting, String> OPTIONS =
            new EnumMap<>(
                    Map.of(
                            Setting.CHEMISTRY, "typed-chemistry",
                            Setting.CAPACITY, "typed-capacity",
                            Setting.TAPER, "full-amps",
                            Setting.HOLD, "full-minutes",
                            Setting.COULOMBIC_EFFICIENCY, "efficiency-set",
                            Setting.KEPT_BACK, "kept-back"));

    private TypedWords() {}

    /**
     * What of a remedy is to be moved.
     *
     * @param typed as it stands
     * @param remedy as it should be
     * @return each such as "full-volts: 14.2 V"; settings without an option by their own names
     */
    static List<String> of(GaugeSettings typed, Map<Setting, Long> remedy) {
        List<String> words = new ArrayList<>();
        long margin =
                remedy.getOrDefault(
                        Setting.ABSORPTION_MARGIN, typed.get(Setting.ABSORPTION_MARGIN));
        for (Map.Entry<Setting, Long> each : remedy.entrySet()) {
            Setting setting = each.getKey();
            long value = each.getValue();
            switch (setting) {
                case ABSORPTION -> {
                    long before = typed.get(setting) - typed.get(Setting.ABSORPTION_MARGIN);
                    if (before != value - margin) {
                        words.add(
                                "full-volts: "
                                        + QuantityFormat.format(
                                                value - margin, RecordUnit.MILLIVOLTS));
                    }
                }
                case ABSORPTION_MARGIN, SHUNT_RATED_DROP -> {
                    // Told with the setting that it belongs to.
                }
                case SHUNT_RATED_CURRENT ->
                        words.add(
                                "typed-shunt: "
                                        + new ShuntRating(
                                                value * 1_000,
                                                remedy.getOrDefault(
                                                        Setting.SHUNT_RATED_DROP,
                                                        typed.get(Setting.SHUNT_RATED_DROP))));
                default -> {
                    if (typed.get(setting) != value) {
                        String text = SettingText.of(setting, value).replace(" @ 20 h", "");
                        words.add(OPTIONS.getOrDefault(setting, setting.key()) + ": " + text);
                    }
                }
            }
        }
        return List.copyOf(words);
    }
}
