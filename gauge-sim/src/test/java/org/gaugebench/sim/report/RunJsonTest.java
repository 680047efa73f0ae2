package org.gaugebench.sim.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;
import org.gaugebench.sim.judge.RunResult;
import org.junit.jupiter.api.Test;

/** Reads the object back with a parser: its shape is a promise to programs. */
class RunJsonTest {
    /** Every scalar by its path, such as "final.socPercent" or "events[0].event". */
    private static Map<String, String> scalars(String json) throws IOException {
        Map<String, String> found = new LinkedHashMap<>();
        try (JsonParser parser = new JsonFactory().createParser(json)) {
            for (JsonToken token = parser.nextToken(); token != null; token = parser.nextToken()) {
                if (token.isScalarValue()) {
                    found.put(
                            parser.getParsingContext().pathAsPointer().toString(),
                            parser.getText());
                }
            }
        }
        return found;
    }

    @Test
    void saysWhatTheScenarioIsFiledUnderAndWhatIsExpectedToFail() throws IOException {
        String marked =
                Samples.expecting("event: declared, at-least: 9, expected-to-fail: the sign")
                        + "tags: [winter]\ncovers: [F4]\nsymptom: It stops.\n";
        Map<String, String> found = scalars(RunJson.of(Samples.run(marked), "1"));
        assertEquals("winter", found.get("/tags/0"));
        assertEquals("F4", found.get("/covers/0"));
        assertEquals("It stops.", found.get("/symptom"));
        assertEquals("the sign", found.get("/expectations/0/expectedToFail"));
        assertEquals("failed as expected", found.get("/expectations/0/outcome"));
        assertEquals("passed", found.get("/verdict"));
    }

    @Test
    void hasEverythingThatIsPromised() throws IOException {
        RunResult result =
                Samples.run(Samples.expecting("at: 1 d, reading: state-of-charge, at-least: 90 %"));
        String json = RunJson.of(result, "1.2.3");
        assertFalse(json.contains("\n"), "one object, one line");
        Map<String, String> found = scalars(json);
        assertEquals("1", found.get("/formatVersion"));
        assertEquals("1.2.3", found.get("/version"));
        assertEquals("hut.yaml", found.get("/scenario"));
        assertEquals("1", found.get("/seed"));
        assertEquals("86400", found.get("/ticks"));
        assertEquals("86400.000", found.get("/simulatedSeconds"));
        assertTrue(found.get("/digest").matches("[0-9a-f]{16}"), json);
        assertEquals("failed", found.get("/verdict"));
        assertEquals("failed", found.get("/expectations/0/outcome"));
        assertEquals("86400.000", found.get("/expectations/0/atSeconds"));
        assertEquals("DECLARED", found.get("/events/1/event"));
        // 30 Ah less 12 h of 1 A, less self-discharge of a day
        assertEquals(36.0, Double.parseDouble(found.get("/final/trueSocPercent")), 0.1);
        assertEquals(18.0, Double.parseDouble(found.get("/final/trueChargeAh")), 0.05);
        assertEquals(36.0, Double.parseDouble(found.get("/final/socPercent")), 0.2);
        assertEquals(18.0, Double.parseDouble(found.get("/final/chargeAh")), 0.1);
        assertTrue(found.containsKey("/worst/socErrorPercent"), json);
        assertTrue(found.containsKey("/worst/atSeconds"), json);
        assertEquals("gauge", found.get("/gauges/0/gauge"));
        assertEquals(found.get("/final/socPercent"), found.get("/gauges/0/final/socPercent"));
    }

    @Test
    void bandTrustAndFaultsStandBesideTheFigure() throws IOException {
        RunResult result =
                Samples.run(Samples.hut() + "gauge: {rest-time: 0 h, full-overdue: 1 d}\n");
        Map<String, String> found = scalars(RunJson.of(result, "x"));
        double shown = Double.parseDouble(found.get("/final/socPercent"));
        assertTrue(Double.parseDouble(found.get("/final/lowerEdgePercent")) < shown);
        assertTrue(Double.parseDouble(found.get("/final/upperEdgePercent")) > shown);
        assertEquals("FULL_OVERDUE", found.get("/final/trustReason"));
        assertEquals("FULL_OVERDUE", found.get("/gauges/0/final/faults/0"));
        assertEquals("FAULT_RAISED", found.get("/events/2/event"));
        assertEquals("FULL_OVERDUE", found.get("/events/2/fault"));
        assertEquals("full charge overdue", found.get("/events/2/faultSentence"));
    }

    @Test
    void whatIsNotKnownIsNullAndNeverZero() throws IOException {
        // Without the rest rule: a rested voltage would tell something after a day.
        RunResult result = Samples.run(Samples.hut() + "gauge: {start: unknown, rest-time: 0 h}\n");
        Map<String, String> found = scalars(RunJson.of(result, "x"));
        assertEquals("null", found.get("/final/socPercent"));
        assertEquals("null", found.get("/final/chargeAh"));
        assertEquals("null", found.get("/worst/socErrorPercent"));
        assertEquals("null", found.get("/final/lowerEdgePercent"));
        assertEquals("UNKNOWN", found.get("/final/trust"));
        assertEquals("NOTHING_KNOWN", found.get("/final/trustReason"));
        assertEquals("no verdict", found.get("/verdict"));
    }

    @Test
    void decimalsAreExact() {
        assertEquals("-1.050", Decimals.plain(-1_050, 3));
        assertEquals("0.000001", Decimals.plain(1, 6));
        assertEquals("-0.01", Decimals.plain(-1, 2));
        assertEquals("42", Decimals.plain(42, 0));
        assertEquals("0.0000", Decimals.plain(0, 4));
        assertEquals("-9223372036854775.808", Decimals.plain(Long.MIN_VALUE, 3));
    }
}
