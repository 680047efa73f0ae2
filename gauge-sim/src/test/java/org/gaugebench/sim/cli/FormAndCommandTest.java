package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.live.form.SystemDesk;
import org.junit.jupiter.api.Test;

/** The form and the command line give the same answers for the same system. */
class FormAndCommandTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    /** A system, as a form holds it and as it is typed at a terminal. */
    private record Told(String form, List<String> words) {
        Told with(String more, String... words) {
            List<String> all = new ArrayList<>(this.words);
            all.addAll(List.of(words));
            return new Told(form + "," + more, all);
        }
    }

    private static final Told BARGE =
            new Told(
                    """
                    "voltage":"24 V","chemistry":"lead-acid-flooded","capacity":"200","rate":"20 h",
                    "usable":"40","coldest":"-5","inverter-watts":"1500","inverter-surge":"3000",
                    "inverter-efficiency":"90","shunt":"300 A / 75 mV","adc":"16 bit, 160 mV",
                    "loads":[
                    {"name":"lamp","amount":"60","unit":"watts","hours":"5"},
                    {"name":"pump","amount":"4","unit":"amps","hours":"30 min","surge":"12"},
                    {"name":"kettle","amount":"1200","hours":"10 min","inverter":"yes"},
                    {"name":"phone","amount":"2","unit":"phone"}],
                    "chargers":[{"source":"mains","amps":"30","volts":"28.8"},
                    {"source":"sun","amps":"8"}]\
                    """,
                    List.of(
                            "--voltage",
                            "24 V",
                            "--chemistry",
                            "lead-acid-flooded",
                            "--capacity",
                            "200 Ah @ 20 h",
                            "--usable",
                            "40 %",
                            "--coldest",
                            "-5 °C",
                            "--inverter",
                            "1500 W, 90 %, surge 3000 W",
                            "--shunt",
                            "300 A / 75 mV",
                            "--adc",
                            "16 bit, 160 mV",
                            "--load",
                            "lamp: 60 W, 5 h",
                            "--load",
                            "pump: 4 A, 30 min, surge 12 A",
                            "--load",
                            "kettle: 1200 W, 10 min, inverter",
                            "--load",
                            "phone: 2 charges of 15 Wh",
                            "--charger",
                            "30 A",
                            "--charger",
                            "8 A"));

    private static JsonNode form(String question, Told told) throws Exception {
        String message =
                "{\"question\":\"%s\",\"system\":{\"my-system\":1,%s}}"
                        .formatted(question, told.form());
        JsonNode answer =
                JSON.readTree(new SystemDesk().answer(message.getBytes(StandardCharsets.UTF_8)));
        assertTrue(answer.has("answer"), answer.toString());
        return answer;
    }

    private static String command(String name, Told told) {
        List<String> words = new ArrayList<>(told.words());
        words.add(0, name);
        FakeTerminal terminal = new FakeTerminal();
        int code = terminal.run(words.toArray(String[]::new));
        assertTrue(code == ExitCodes.OK || code == ExitCodes.FAILED, terminal.err());
        return terminal.out();
    }

    private static String oneLine(String text) {
        return text.replaceAll("\\s+", " ");
    }

    private static void same(String question, String command, Told told) throws Exception {
        JsonNode form = form(question, told);
        String report = oneLine(command(command, told));
        assertTrue(report.startsWith(form.get("answer").asText()), form + " and " + report);
        for (JsonNode each : form.get("parts")) {
            if (each.get("kind").asText().equals("text")) {
                assertTrue(report.contains(each.get("text").asText()), each + " in " + report);
            }
        }
    }

    @Test
    void size() throws Exception {
        same("size", "size", BARGE);
        JsonNode json = JSON.readTree(command("size", BARGE.with("\"name\":\"x\"", "--json")));
        String table = form("size", BARGE).get("parts").toString();
        for (JsonNode shunt : json.get("shunts")) {
            assertTrue(table.contains(shunt.get("rating").asText()), table);
        }
        assertEquals(0.4, json.get("usualDepth").asDouble());
    }

    @Test
    void month() throws Exception {
        Told told =
                BARGE.with(
                        """
                        "own-current":"12","zero-error":"5","past-shunt":"20",
                        "smallest-amps":"0.1","efficiency-set":"95",
                        "sets-full":"volts-and-current","after-off":"keeps"\
                        """,
                        "--own-current",
                        "12 mA",
                        "--zero-error",
                        "5 mA",
                        "--past-shunt",
                        "20 mA",
                        "--smallest-amps",
                        "0.1 A",
                        "--efficiency-set",
                        "95 %",
                        "--sets-full",
                        "volts-and-current",
                        "--after-off",
                        "keeps");
        same("month", "ahead", told);
        String scenario = form("month", told).get("scenario").asText();
        assertEquals(command("ahead", told.with("\"name\":\"x\"", "--scenario")), scenario);
    }

    @Test
    void audit() throws Exception {
        Told told =
                BARGE.with(
                        """
                        "typed-capacity":"80","typed-shunt":"300 A / 75 mV","full-volts":"28.4",
                        "full-amps":"2 %","full-minutes":"30","kept-back":"20",
                        "typed-chemistry":"lead-acid-agm","sets-full":"volts-and-current"\
                        """,
                        "--typed-capacity",
                        "80 Ah",
                        "--typed-shunt",
                        "300 A / 75 mV",
                        "--full-volts",
                        "28.4 V",
                        "--full-amps",
                        "2 %",
                        "--full-minutes",
                        "30 min",
                        "--kept-back",
                        "20 %",
                        "--typed-chemistry",
                        "lead-acid-agm",
                        "--sets-full",
                        "volts-and-current",
                        "--charger-volts",
                        "28.8 V");
        same("audit", "audit", told);
        String scenario = form("audit", told).get("scenario").asText();
        assertEquals(command("audit", told.with("\"name\":\"x\"", "--scenario")), scenario);
    }

    @Test
    void symptomAndChange() throws Exception {
        same(
                "symptom",
                "symptom",
                BARGE.with("\"seen\":\"light-at-0-percent\"", "--seen", "light-at-0-percent"));
        same(
                "changed",
                "changed",
                BARGE.with(
                        "\"changed\":\"stored\",\"changed-amount\":\"6\",\"shown\":\"90\"",
                        "--stored",
                        "6 weeks",
                        "--shown",
                        "90 %"));
    }
}
