package org.gaugebench.sim.live;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Map;

/** A message from the page: one flat JSON object of texts, numbers and yes or no. */
final class Message {
    private static final String EXAMPLE = "{\"act\":\"set\",\"lamp\":\"on\"}";
    private static final int MOST_KEYS = 20;
    private static final int LONGEST_TEXT = 200;

    private static final JsonFactory FACTORY =
            JsonFactory.builder().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION).build();

    private Message() {}

    /**
     * Reads one.
     *
     * @param body UTF-8
     * @return what stands in it, as text, in its order
     * @throws Refusal if it is anything else
     */
    static Map<String, String> read(byte[] body) throws Refusal {
        Map<String, String> fields = new LinkedHashMap<>();
        try (JsonParser parser = FACTORY.createParser(body)) {
            if (parser.nextToken() != JsonToken.START_OBJECT) {
                throw malformed("it is no object");
            }
            while (parser.nextToken() == JsonToken.FIELD_NAME) {
                String key = parser.currentName();
                JsonToken value = parser.nextToken();
                if (value == null || !value.isScalarValue() || value == JsonToken.VALUE_NULL) {
                    throw malformed("a value is no text, number, true or false");
                }
                String text = parser.getText();
                if (key.length() > LONGEST_TEXT
                        || text.length() > LONGEST_TEXT
                        || fields.size() >= MOST_KEYS) {
                    throw malformed("it holds more than an act needs");
                }
                fields.put(key, text);
            }
            if (parser.currentToken() != JsonToken.END_OBJECT || parser.nextToken() != null) {
                throw malformed("something follows the object");
            }
            return fields;
        } catch (IOException e) {
            throw malformed("it is no JSON");
        }
    }

    private static Refusal malformed(String why) {
        return new Refusal(400, "this message cannot be read: " + why + "; expected " + EXAMPLE);
    }
}
