package org.gaugebench.sim.report;

import java.util.ArrayList;
import java.util.List;
import org.gaugebench.core.port.Register;

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
