package org.gaugebench.core.saved;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.gaugebench.core.saved.SlotHeader.Content;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every layout version ever released is read for ever: the images in {@code saved-state} are never
 * edited, only added to. They were made from the drawing by a program that shares no code with the
 * codec (its check words come from another implementation), so they also prove the drawing.
 */
class SavedStateCompatibilityTest {
    @ParameterizedTest
    @ValueSource(strings = {"v1-every-field", "v1-extremes", "v1-declared-85-percent"})
    void anImageOfEveryReleasedLayoutIsRead(String name) throws IOException {
        byte[] image = image(name);
        Map<String, Long> expected = values(name);
        SlotHeader header = new SlotHeader();
        SavedStateCodec.inspect(image, header);
        assertEquals(Content.VALID, header.content);
        assertEquals(expected.remove("sequence").intValue(), header.sequence);
        assertEquals(expected.remove("fingerprint").intValue(), header.fingerprint);
        assertEquals(expected.remove("chemistryCode").intValue(), header.chemistryCode);
        assertEquals(expected.remove("nominalMillivolts").intValue(), header.nominalMillivolts);
        SavedState state = States.filled(99);
        SavedStateCodec.decode(image, state);
        for (SavedField field : SavedField.values()) {
            Long value = expected.remove(field.name());
            assertEquals(value == null ? 0 : value, field.get(state), field.name());
        }
        assertTrue(expected.isEmpty(), "fields that this core forgot: " + expected.keySet());
    }

    /** Changing anything of the present layout without a new version fails here. */
    @ParameterizedTest
    @ValueSource(strings = {"v1-every-field", "v1-extremes", "v1-declared-85-percent"})
    void whatWasReadIsWrittenAsTheSameBytes(String name) throws IOException {
        byte[] image = image(name);
        SlotHeader header = new SlotHeader();
        SavedStateCodec.inspect(image, header);
        SavedState state = new SavedState();
        SavedStateCodec.decode(image, state);
        SettingsMark settings =
                new SettingsMark(
                        header.fingerprint, header.chemistryCode, header.nominalMillivolts);
        assertArrayEquals(image, new SavedStateCodec().encode(state, header.sequence, settings));
    }

    @Test
    void everyVersionThatIsReadHasALengthOfItsOwn() {
        assertEquals(0, SavedStateLayout.recordBytes(SavedStateLayout.OLDEST_VERSION - 1));
        assertEquals(0, SavedStateLayout.recordBytes(SavedStateLayout.VERSION + 1));
        assertEquals(0, SavedStateLayout.recordBytes(-1));
        assertEquals(224, SavedStateLayout.recordBytes(1));
    }

    /** An older record is a beginning of a newer one, so new fields stand at the end. */
    @Test
    void laterFieldsStandBehindEarlierOnes() {
        SavedField[] fields = SavedField.values();
        for (int i = 1; i < fields.length; i++) {
            assertTrue(fields[i].sinceVersion() >= fields[i - 1].sinceVersion(), fields[i].name());
            assertEquals(
                    SavedStateLayout.offsetOf(fields[i - 1]) + fields[i - 1].sizeBytes(),
                    SavedStateLayout.offsetOf(fields[i]));
        }
        assertEquals(SavedStateLayout.PAYLOAD_OFFSET, SavedStateLayout.offsetOf(fields[0]));
    }

    private static byte[] image(String name) throws IOException {
        StringBuilder digits = new StringBuilder();
        for (String line : lines(name + ".hex")) {
            digits.append(line.substring(line.indexOf(':') + 1).replace(" ", ""));
        }
        return HexFormat.of().parseHex(digits);
    }

    private static Map<String, Long> values(String name) throws IOException {
        Map<String, Long> values = new LinkedHashMap<>();
        for (String line : lines(name + ".txt")) {
            int equals = line.indexOf(" = ");
            values.put(line.substring(0, equals), Long.parseLong(line.substring(equals + 3)));
        }
        return values;
    }

    private static List<String> lines(String name) throws IOException {
        try (InputStream in =
                SavedStateCompatibilityTest.class.getResourceAsStream("/saved-state/" + name)) {
            assertNotNull(in, name);
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("#") && !line.isBlank())
                    .toList();
        }
    }
}
