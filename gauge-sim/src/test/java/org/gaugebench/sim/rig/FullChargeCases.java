package org.gaugebench.sim.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The cases, each on one of three rigs: a lead-acid bank of 200 Ah, a lithium bank of 100 Ah (both
 * on a shunt of 500 A / 50 mV) and a 48 V lead-acid bank of 100 Ah. A "cabin" charger has no float
 * unless the case is about float: staying at absorption is the harder test.
 */
final class FullChargeCases {
    private static final String TAPER = "PROVEN_BY_TAPER";
    private static final String NO_FLOAT = "float-below: none, absorption-limit: none";

    private FullChargeCases() {}

    /**
     * Surface charge that goes in five minutes, as the trade's own model has it. The plant's own
     * overpotential alone is too kind here: under a weak current it lifts the voltage by tenths of
     * a volt less than batteries in the field do, and a threshold that is never reached proves
     * nothing.
     */
    private static String surface(String resistance) {
        return "polarization: {resistance: %s, time-constant: 5 min}".formatted(resistance);
    }

    private static String lead(String battery, String rest) {
        return """
        battery: {chemistry: lead-acid-agm, capacity: 200 Ah, temperature: 25 °C, %s}
        sensor: {shunt: 500 A / 50 mV}
        """
                        .formatted(battery)
                + rest;
    }

    private static String lithium(String battery, String rest) {
        return """
        battery: {chemistry: lifepo4, capacity: 100 Ah, temperature: 25 °C, %s}
        sensor: {shunt: 500 A / 50 mV}
        """
                        .formatted(battery)
                + rest;
    }

    private static String cabin(String volts, String amps) {
        return "chargers:\n  cabin: {absorption: %s, float: %s, current-limit: %s, %s}\n"
                .formatted(volts, volts, amps, NO_FLOAT);
    }

    static List<FullChargeCase> all() {
        List<FullChargeCase> cases = new ArrayList<>();
        cases.addAll(neverFull());
        cases.addAll(opened());
        cases.addAll(fullOnce());
        cases.addAll(lithiumFullOnce());
        return List.copyOf(cases);
    }

    private static FullChargeCase never(String id, String what, String faults, String scenario) {
        return new FullChargeCase(id, what, 0, "", faults, scenario);
    }

    private static FullChargeCase once(String id, String what, String proof, String scenario) {
        return new FullChargeCase(id, what, 1, proof, "", scenario);
    }

    private static List<FullChargeCase> neverFull() {
        return List.of(
                never(
                        "FUL01",
                        "weak winter sun",
                        "",
                        lead(
                                "start: 70 %, " + surface("140 mOhm"),
                                """
                                duration: 5 d
                                chargers:
                                  panel:
                                    current-limit: 20 A
                                    sun: {peak: 6 A, sunrise: 9 h 30 min, sunset: 14 h 30 min}
                                loads: {logger: {current: 700 mA}}
                                """)),
                never(
                        "FUL02a",
                        "clouds, 30 A to 2 A in a rhythm",
                        "",
                        lead(
                                "start: 80 %, " + surface("20 mOhm"),
                                """
                                duration: 4 h
                                chargers:
                                  sky: {float: 14.4 V, current-limit: 28 A, float-below: none}
                                  haze: {float: 14.4 V, current-limit: 2 A, float-below: none}
                                loads: {logger: {current: 1 A}}
                                timeline:
                                  - {from: 30 min, to: 35 min, every: 20 min, set: {sky: off}}
                                """)),
                never(
                        "FUL02b",
                        "clouds, random spells",
                        "",
                        lead(
                                "start: 84 %, " + surface("40 mOhm"),
                                """
                                seed: 3
                                duration: 14 h
                                chargers:
                                  panel:
                                    float: 14.4 V
                                    current-limit: 30 A
                                    float-below: none
                                    sun: {peak: 30 A, sunrise: 10 h, sunset: 18 h, clouds: 50 %,
                                          cloud-depth: 93 %}
                                loads: {logger: {current: 1 A}}
                                """)),
                never(
                        "FUL19",
                        "alternator behind a cable of 20 mOhm, volts seen at its end",
                        "",
                        // The cable stands in the battery's resistance: the gauge's leads are then
                        // on the alternator's end of it, where they should not be.
                        lead(
                                "start: 60 %, series-resistance: 21.8 mOhm",
                                cabin("14.2 V", "55 A")
                                        + """
                                        duration: 12 h
                                        loads: {engine: {current: 2 A}}
                                        timeline:
                                          - {at: 0 h, set: {cabin: off}}
                                          - {from: 1 h, to: 90 min, every: 3 h, set: {cabin: on}}
                                        """)),
                never(
                        "FUL20",
                        "generator stopped early",
                        "",
                        lead(
                                "start: 40 %",
                                cabin("14.4 V", "60 A")
                                        + """
                                        duration: 12 h
                                        timeline:
                                          - {at: 3 h, set: {cabin: off}}
                                        """)),
                never(
                        "LOWV",
                        "charger of 13.5 V, lamp each evening",
                        "",
                        lead(
                                "start: 70 %",
                                cabin("13.5 V", "30 A")
                                        + """
                                        duration: 5 d
                                        loads: {lamp: {current: 60 A, switched: off}}
                                        timeline:
                                          - {from: 18 h, to: 20 h, every: 1 d, set: {lamp: on}}
                                        """)));
    }

    private static List<FullChargeCase> opened() {
        List<FullChargeCase> cases = new ArrayList<>();
        for (String offset : List.of("0 V", "2 uV")) {
            boolean none = offset.equals("0 V");
            cases.add(
                    never(
                            none ? "FUL08a" : "FUL08b",
                            "protection opens at 82 %" + (none ? "" : ", +20 mA offset"),
                            "charging-stopped-early",
                            lithium(
                                            "start: 60 %",
                                            cabin("14.4 V", "30 A")
                                                    + """
                                                    duration: 5 h
                                                    timeline:
                                                      - {at: 44 min 15 s, set: {protection: open}}
                                                    """)
                                    .replace("50 mV}", "50 mV, offset: " + offset + "}")));
        }
        cases.add(
                never(
                        "FUL08c",
                        "protection opens by voltage, one high cell",
                        "charging-stopped-early",
                        // 13.8 V at the terminals stands for 3.65 V at the one high cell.
                        lithium(
                                "start: 60 %, charge-stop: 13.8 V",
                                cabin("14.4 V", "30 A") + "duration: 5 h\n")));
        cases.add(
                never(
                        "FUL09",
                        "isolator open, charger stays at 14.4 V",
                        "charging-blocked",
                        lithium(
                                "start: 60 %",
                                cabin("14.4 V", "30 A")
                                        + """
                                        duration: 8 h
                                        timeline:
                                          - {at: 0 h, set: {isolator: open}}
                                        """)));
        cases.add(
                never(
                        "FUL09b",
                        "isolator opens at 5 A, charger goes to float",
                        "",
                        lithium(
                                "start: 60 %",
                                """
                                duration: 4 d
                                chargers: {shore: {current-limit: 5 A}}
                                timeline:
                                  - {at: 1 h, set: {isolator: open}}
                                """)));
        return cases;
    }

    private static List<FullChargeCase> fullOnce() {
        return List.of(
                once(
                        "FUL03",
                        "shore charge",
                        TAPER,
                        lead(
                                "start: 50 %",
                                cabin("14.4 V", "40 A")
                                        + "duration: 16 h\nloads: {logger: {current: 2 A}}\n")),
                once("FUL04", "hot, 40 °C, compensated charger", TAPER, compensated("40 °C")),
                once("FUL05", "cold, 0 °C, compensated charger", TAPER, compensated("0 °C")),
                once(
                        "FUL06",
                        "tired, end current stays at 3 %",
                        "PROVEN_BY_PLATEAU",
                        lead(
                                "start: 70 %, end-current: 3 %",
                                cabin("14.4 V", "40 A") + "duration: 1 d\n")),
                once(
                        "FUL07",
                        "pump each ten minutes",
                        TAPER,
                        lead(
                                "start: 90 %",
                                cabin("14.4 V", "12 A")
                                        + """
                                        duration: 12 h
                                        loads:
                                          logger: {current: 1 A}
                                          pump: {current: 15 A, on-for: 1 min, every: 10 min}
                                        """)),
                once(
                        "FUL15",
                        "float only, 54.0 V for 40 days",
                        "PROVEN_BY_FLOAT",
                        """
                        duration: 40 d
                        tick: 10 s
                        battery: {chemistry: lead-acid-agm, nominal-voltage: 48 V, capacity: 100 Ah,
                                  start: 80 %, temperature: 25 °C}
                        sensor: {shunt: 200 A / 50 mV}
                        """
                                + cabin("54 V", "20 A")),
                once(
                        "FUL26",
                        "two chargers, 13.6 V and 14.4 V by turns",
                        TAPER,
                        lead(
                                "start: 80 %",
                                """
                                duration: 16 h
                                chargers:
                                  roof: {absorption: 13.6 V, float: 13.6 V, current-limit: 10 A}
                                  shore: {float: 14.4 V, current-limit: 20 A, float-below: none}
                                timeline:
                                  - {from: 10 min, to: 20 min, every: 20 min, until: 8 h,
                                     set: {shore: off}}
                                """)));
    }

    private static String compensated(String temperature) {
        String scenario =
                lead(
                        "start: 70 %",
                        cabin("14.4 V", "40 A")
                                + "duration: 16 h\nloads: {logger: {current: 200 mA}}\n");
        return scenario.replace("temperature: 25 °C", "temperature: " + temperature);
    }

    private static List<FullChargeCase> lithiumFullOnce() {
        List<FullChargeCase> cases = new ArrayList<>();
        for (int amps : new int[] {10, 50, 100}) {
            cases.add(
                    once(
                            "FUL14-" + amps,
                            String.format(Locale.ROOT, "LiFePO4 at %d A through 10 mOhm", amps),
                            TAPER,
                            lithium(
                                    "start: 5 %",
                                    cabin("14.2 V", amps + " A") + "duration: 16 h\n")));
        }
        cases.add(
                once(
                        "FUL10",
                        "full and bouncing, +0.3 A / -0.5 A",
                        TAPER,
                        // From 97 % to the charger's voltage first; then a load takes half an
                        // ampere more than the charger has, for 20 s of each 40 s.
                        lithium(
                                "start: 97 %",
                                cabin("14.2 V", "6 A")
                                        + """
                                        duration: 3 h
                                        loads: {bounce: {current: 6.5 A, on-for: 20 s, every: 40 s,
                                                         switched: off}}
                                        timeline:
                                          - {at: 10 min, set: {bounce: on}}
                                        """)));
        return cases;
    }
}
