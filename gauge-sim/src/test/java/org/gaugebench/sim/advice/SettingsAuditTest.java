package org.gaugebench.sim.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioException;
import org.gaugebench.sim.scenario.ScenarioReader;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Settings that installers get wrong, each planted into a system that is right otherwise, and
 * systems that are right. Systems and figures are invented.
 */
class SettingsAuditTest {
    /** A lead-acid hut: loads by day and night, shore power every third day until it floats. */
    private static final String HUT =
            """
            format: 1
            title: A hut on a pier
            duration: 12 d
            tick: 1 min
            battery: {chemistry: lead-acid-agm, capacity: 100 Ah, start: 85 %, temperature: CELSIUS}
            sensor: {shunt: 100 A / 75 mV, offset: 1 uV}
            gauge: {GAUGE}
            WIRING
            chargers:
              shore: {current-limit: 20 A, switched: off CHARGER}
            loads:
              logger: {current: 200 mA}
              lamp: {current: 2 A, on-for: 5 h, every: 1 d}
            timeline:
              - {from: 1 d 8 h, to: 2 d 8 h, every: 3 d, set: {shore: on}}
            """;

    /** A lithium boat: more current, sun every day. */
    private static final String BOAT =
            """
            format: 1
            title: A boat that measures tides
            duration: 8 d
            tick: 1 min
            battery: {chemistry: lifepo4, capacity: 100 Ah, start: 70 %, temperature: CELSIUS}
            sensor: {shunt: 200 A / 75 mV, offset: 1 uV}
            gauge: {GAUGE}
            WIRING
            chargers:
              shore: {current-limit: 30 A, switched: off CHARGER}
            loads:
              pilot: {current: 2 A}
              winch: {current: 60 A, on-for: 2 min, every: 6 h}
            timeline:
              - {from: 1 d 8 h, to: 1 d 16 h, every: 2 d, set: {shore: on}}
            """;

    /** The two, and with other batteries and voltages. */
    private static String system(String system) {
        return switch (system) {
            case "hut" -> HUT;
            case "boat" -> BOAT;
            case "boat-24" -> BOAT.replace("lifepo4", "lifepo4, nominal-voltage: 24 V");
            case "boat-nmc" -> BOAT.replace("lifepo4", "nmc");
            case "hut-48" -> HUT.replace("lead-acid-agm", "lead-acid-agm, nominal-voltage: 48 V");
            default -> HUT.replace("lead-acid-agm", "lead-acid-" + system);
        };
    }

    private static Scenario scenario(String system, String gauge, String charger, String rest)
            throws ScenarioException {
        String celsius = rest.contains("°C") ? rest : "20 °C";
        String wiring = rest.contains("supply") ? "wiring: {" + rest + "}" : "";
        String text =
                system(system)
                        .replace("GAUGE", gauge.equals("-") ? "" : gauge.replace(';', ','))
                        .replace(
                                "CHARGER",
                                charger.equals("-") ? "" : "," + charger.replace(';', ','))
                        .replace("CELSIUS", celsius)
                        .replace("WIRING", wiring);
        return ScenarioReader.read("planted.yaml", text);
    }

    private static List<String> keys(SettingsAudit.Result result) {
        return result.findings().stream().map(Finding::key).toList();
    }

    /** What is planted, and whether the run has to show it. */
    @ParameterizedTest
    @CsvSource({
        "hut, capacity: 50 Ah, -, -, capacity-usable, shown",
        "hut, capacity: 120 Ah, -, -, capacity-hour-rate, shown",
        "hut, capacity: 150 Ah, -, -, capacity-other, shown",
        "boat, capacity: 80 Ah, -, -, capacity-usable, shown",
        "hut, nominal-voltage: 24 V, -, -, system-voltage, shown",
        "hut, absorption: 28.8 V, -, -, system-voltage, shown",
        "hut, absorption: 15 V, -, -, threshold-above-charger, shown",
        "hut, -, absorption: 14 V; float: 13.6 V, -, threshold-above-charger, shown",
        "boat, absorption: 14.8 V, -, -, threshold-above-charger, shown",
        "hut, absorption: 13.6 V; absorption-margin: 0.1 V; hold: 3 min; taper: 6 %, -, -,"
                + " threshold-at-float, any",
        "hut, taper: 0.2 %; plateau-hold: 0 s; float-voltage: 0 V, -, -, taper-below-end, shown",
        "boat, taper: 0.5 %; plateau-hold: 0 s; float-voltage: 0 V, -, -, taper-below-end, any",
        "hut, taper: 20 %; hold: 3 min, -, -, taper-above-charger, shown",
        "hut, taper: 12 %; hold: 3 min, -, -, taper-wide, shown",
        "hut, hold: 3 min; taper: 5 %, -, -, hold-short, any",
        "hut, hold: 9 h; float-voltage: 0 V, -, -, hold-long, any",
        "hut, coulombic-efficiency: 99.5 %, -, -, efficiency, shown",
        "boat, coulombic-efficiency: 85 %, -, -, efficiency, shown",
        "boat, kept-back-charge: 50 %, -, -, kept-back, shown",
        "boat, peukert-exponent: 125 %, -, -, rate-law, any",
        "hut, chemistry: lifepo4, -, -, chemistry, shown",
        "boat, chemistry: lead-acid-flooded, -, -, chemistry, shown",
        "hut, absorption: 0 V; float-voltage: 0 V, -, -, full-rule-off, shown",
        "hut, temperature-coefficient: 0 mV/K, -, 0 °C, no-compensation, any",
        "hut, empty-voltage: 9 V, -, -, empty-voltage, any",
        "hut, -, -, own-supply: 20 mA, own-current, any",
        "hut, shunt-rated-drop: 50 mV, -, -, shunt, shown",
        "hut, shunt-offset: 250 counts, -, -, zero, shown",
    })
    void aWrongSettingIsFound(
            String system, String gauge, String charger, String rest, String key, String how)
            throws ScenarioException {
        SettingsAudit.Result result = SettingsAudit.of(scenario(system, gauge, charger, rest));
        assertTrue(keys(result).contains(key), key + " in " + result);
        Finding found =
                result.findings().stream().filter(it -> it.key().equals(key)).findFirst().get();
        if (how.equals("shown")) {
            assertEquals(Finding.Confidence.SHOWN, found.confidence(), found.toString());
        }
        assertTrue(!found.remedy().isEmpty(), found.toString());
    }

    @ParameterizedTest
    @CsvSource({
        "hut, -, -, -",
        "boat, -, -, -",
        "hut, capacity: 97 Ah, -, -",
        "hut, taper: 1 %, -, -",
        "hut, taper: 4 %; hold: 30 min, -, -",
        "hut, absorption: 14.3 V, -, -",
        "hut, -, absorption: 14.6 V; float: 13.6 V, -",
        "hut, -, -, 5 °C",
        "boat, -, absorption: 14.1 V; float: 13.4 V, -",
        "boat, capacity: 103 Ah; kept-back-charge: 10 %, -, -",
        "hut, own-supply-current: 20 mA, -, own-supply: 20 mA",
        "hut, coulombic-efficiency: 90 %; kept-back-charge: 50 %, -, -",
        "flooded, -, -, -",
        "gel, -, -, -",
        "boat-24, -, -, -",
        "boat-nmc, -, -, -",
        "hut-48, -, -, -",
        // A charger that goes by its timer, and one without compensation in a mild place.
        "hut, -, absorption-limit: 4 h; float-below: none, -",
        "hut, -, temperature-coefficient: 0 mV/K, -",
    })
    void aRightSystemRaisesNothing(String system, String gauge, String charger, String rest)
            throws ScenarioException {
        SettingsAudit.Result result = SettingsAudit.of(scenario(system, gauge, charger, rest));
        assertEquals(List.of(), keys(result), result.toString());
    }

    /** A preset of another kind explains its coefficient too: one thing, told once. */
    @ParameterizedTest
    @CsvSource({"hut, chemistry: lifepo4, chemistry", "hut, nominal-voltage: 24 V, system-voltage"})
    void whatAnotherFindingExplainsIsNotToldAgain(String system, String gauge, String key)
            throws ScenarioException {
        // So cold that the coefficient alone would be a finding.
        List<String> keys = keys(SettingsAudit.of(scenario(system, gauge, "-", "5 °C")));
        assertTrue(keys.contains(key), keys.toString());
        assertTrue(!keys.contains("no-compensation"), keys.toString());
    }
}
