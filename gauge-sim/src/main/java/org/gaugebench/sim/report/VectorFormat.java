package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;

/** How test vectors are written down; writer and reader share it. */
final class VectorFormat {
    static final String SETTINGS = "settings.csv";
    static final String VECTORS = "vectors.csv";
    static final String STORE = "store.csv";

    static final String SETTINGS_HEADER = "setting,value,unit";
    static final String STORE_HEADER = "row,operation,slot,answer,bytes";

    static final String POWER_UP = "power-up";
    static final String SAMPLE = "sample";
    static final String COMMAND = "command";
    static final String SETTINGS_CHANGE = "settings";

    /** Columns before the registers. */
    static final int REGISTERS_FROM = 8;

    private VectorFormat() {}

    /** Settings that differ, as KEY=VALUE with spaces between; empty where none does. */
    static String changes(GaugeSettings from, GaugeSettings to) {
        return Arrays.stream(Setting.values())
                .filter(each -> from.get(each) != to.get(each))
                .map(each -> each.key() + "=" + to.get(each))
                .collect(Collectors.joining(" "));
    }

    /**
     * Reads such words.
     *
     * @param words as {@link #changes} writes them
     * @param before the settings before
     * @throws IllegalArgumentException with a sentence for people
     */
    static GaugeSettings changed(String words, GaugeSettings before) {
        GaugeSettings.Builder builder = before.toBuilder();
        for (String word : words.isEmpty() ? new String[0] : words.split(" ", -1)) {
            String key = word.substring(0, Math.max(word.indexOf('='), 0));
            Setting setting =
                    Arrays.stream(Setting.values())
                            .filter(each -> each.key().equals(key))
                            .findFirst()
                            .orElseThrow(
                                    () ->
                                            new IllegalArgumentException(
                                                    "'%s' changes no setting; expected such as"
                                                                    .formatted(word)
                                                            + " capacity=90000"));
            builder.set(setting, Long.parseLong(word.substring(key.length() + 1)));
        }
        return builder.build();
    }

    static List<String> columns() {
        List<String> columns =
                new ArrayList<>(
                        List.of(
                                "row",
                                "kind",
                                "word",
                                "argument",
                                "clock_ms",
                                "shunt_counts",
                                "voltage_counts",
                                "temperature_millicelsius"));
        for (Register register : Register.values()) {
            columns.add(register.name());
        }
        return columns;
    }
}
