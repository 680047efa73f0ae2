package org.gaugebench.sim.live.form;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** What stands where in an answer. */
class FormAnswersTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    private static JsonNode ask(String question, String fields) throws Exception {
        String system = "{\"my-system\":1" + (fields.isEmpty() ? "" : "," + fields) + "}";
        String message = "{\"question\":\"%s\",\"system\":%s}".formatted(question, system);
        return JSON.readTree(new SystemDesk().answer(message.getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void whatWasAssumedOfAChangeStandsUnderThatQuestionAlone() throws Exception {
        String winter = "\"changed\":\"winter\"";
        String assumed = ask("changed", winter).get("assumed").toString();
        assertTrue(assumed.contains("what changed: 0 °C"), assumed);
        assumed = ask("size", winter).get("assumed").toString();
        assertFalse(assumed.contains("what changed"), assumed);
    }

    /**
     * Whether it fits stands beside the shunt: the last columns of a wide table are out of sight.
     */
    @Test
    void whetherAShuntFitsStandsFirst() throws Exception {
        JsonNode table = ask("size", "").at("/parts/1");
        assertEquals("#sys-a-fit", table.at("/heads/1").asText());
        assertTrue(table.at("/rows/0/1").asText().startsWith("#sys-fit-"), table.toString());
        assertEquals(table.get("heads").size(), table.get("rows").get(0).size());
    }
}
