package org.gaugebench.sim.cli;

import java.nio.file.Path;

/** A folder of small scenarios on which the full-charge rule can be tuned within seconds. */
final class TuneBench extends CommandFolder {
    /** A charge that ends in a full battery, after a noon of weak sun that does not. */
    static final String SHORE =
            """
            format: 1
            title: A weak noon, and shore power in the evening
            duration: 1 d 12 h
            tick: 1 min
            battery: {chemistry: lead-acid-agm, capacity: 100 Ah, start: 75 %%, temperature: 15 °C}
            sensor: {shunt: 100 A / 75 mV}
            %schargers:
              panel:
                current-limit: 10 A
                sun: {peak: 4 A, sunrise: 9 h, sunset: 15 h, clouds: 20 %%}
              shore:
                {absorption: %s, float: %s, current-limit: 15 A, absorption-limit: none,
                 float-below: none, switched: off}
            loads: {logger: {current: 300 mA}}
            timeline: [{at: 18 h, set: {shore: on}}]
            """;

    TuneBench(Path folder) {
        super(folder);
        write("evening.yaml", shore("", "14.4 V", "13.5 V"));
        write(
                "cold.yaml",
                shore("", "14.4 V", "13.5 V").replace("15 °C", "2 °C").replace("75 %", "60 %"));
        write("noon.yaml", shore("", "14.4 V", "13.5 V").replaceAll("(?m)^timeline.*\n", ""));
    }

    /** The scenario with a gauge of its own, and a charger. */
    static String shore(String gauge, String absorption, String floating) {
        return SHORE.formatted(gauge, absorption, floating);
    }
}
