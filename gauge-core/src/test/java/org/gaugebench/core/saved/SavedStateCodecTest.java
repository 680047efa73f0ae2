package org.gaugebench.core.saved;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.gaugebench.core.fixed.Crc32;
import org.gaugebench.core.saved.SlotHeader.Content;
import org.junit.jupiter.api.Test;

class SavedStateCodecTest {
    private final SavedStateCodec codec = new SavedStateCodec();
    private final SlotHeader header = new SlotHeader();

    private byte[] record(long seed) {
        return codec.encode(States.anything(seed), (int) seed, States.SETTINGS).clone();
    }

    private Content contentOf(byte[] image) {
        SavedStateCodec.inspect(image, header);
        return header.content;
    }

    @Test
    void whatIsWrittenIsReadBackInEveryField() {
        for (long seed = 0; seed < 2_000; seed++) {
            byte[] image = record(seed);
            assertEquals(Content.VALID, contentOf(image));
            SavedState back = States.anything(seed + 1);
            SavedStateCodec.decode(image, back);
            SavedState expected = States.anything(seed);
            for (SavedField field : SavedField.values()) {
                assertEquals(field.get(expected), field.get(back), field.name());
                assertEquals(field.get(expected), SavedStateCodec.valueOf(image, field));
            }
        }
    }

    @Test
    void theHeaderCarriesSequenceAndSettings() {
        byte[] image = codec.encode(new SavedState(), -3, new SettingsMark(-7, 2, 48_000));
        assertEquals(Content.VALID, contentOf(image));
        assertEquals(-3, header.sequence);
        assertEquals(-7, header.fingerprint);
        assertEquals(2, header.chemistryCode);
        assertEquals(48_000, header.nominalMillivolts);
    }

    @Test
    void everyFieldKeepsToItsOwnBytes() {
        byte[] base = codec.encode(new SavedState(), 1, States.SETTINGS).clone();
        for (SavedField field : SavedField.values()) {
            SavedState state = new SavedState();
            field.set(state, -1);
            byte[] image = codec.encode(state, 1, States.SETTINGS);
            int from = SavedStateLayout.offsetOf(field);
            for (int i = 0; i < image.length - SavedStateLayout.CRC_BYTES; i++) {
                boolean inside = i >= from && i < from + field.sizeBytes();
                if (!inside) {
                    assertEquals(base[i], image[i], field + " reaches byte " + i);
                }
            }
            assertNotEquals(base[from], image[from], field + " is not written");
        }
    }

    @Test
    void anyByteChangedToAnyValueIsSeen() {
        byte[] image = record(42);
        for (int i = 0; i < image.length; i++) {
            byte before = image[i];
            for (int value = 1; value < 256; value++) {
                image[i] = (byte) (before ^ value);
                assertNotEquals(Content.VALID, contentOf(image), "byte " + i + " xor " + value);
            }
            image[i] = before;
        }
        assertEquals(Content.VALID, contentOf(image));
    }

    @Test
    void aRecordOfANewerLayoutIsNotValidEvenIfItChecks() {
        byte[] image = record(1);
        image[SavedStateLayout.VERSION_OFFSET] = (byte) (SavedStateLayout.VERSION + 1);
        rewriteCheck(image);
        assertEquals(Content.UNKNOWN_VERSION, contentOf(image));
        image[SavedStateLayout.VERSION_OFFSET] = 0;
        rewriteCheck(image);
        assertEquals(Content.UNKNOWN_VERSION, contentOf(image));
        image[SavedStateLayout.VERSION_OFFSET + 1] = (byte) 0x80;
        rewriteCheck(image);
        assertEquals(Content.UNKNOWN_VERSION, contentOf(image));
    }

    @Test
    void aRecordOfAnotherLengthIsNotValidEvenIfItChecks() {
        for (int wrong : new int[] {-1, 1}) {
            byte[] image = record(1);
            image[SavedStateLayout.LENGTH_OFFSET] += (byte) wrong;
            rewriteCheck(image);
            assertEquals(Content.DAMAGED, contentOf(image));
        }
    }

    @Test
    void aForeignMagicIsNotValidEvenIfItChecks() {
        byte[] image = record(1);
        image[0] ^= 1;
        rewriteCheck(image);
        assertEquals(Content.DAMAGED, contentOf(image));
    }

    @Test
    void anyImageCutShortIsNotValid() {
        byte[] image = record(1);
        for (int length = 1; length < image.length; length++) {
            assertEquals(Content.DAMAGED, contentOf(Arrays.copyOf(image, length)));
        }
    }

    @Test
    void aLongerSlotHoldsARecordAtItsStart() {
        byte[] image = record(1);
        assertEquals(Content.VALID, contentOf(Arrays.copyOf(image, image.length + 100)));
    }

    @Test
    void zerosAreDamagedAndOnesAreBlank() {
        byte[] image = new byte[record(1).length];
        assertEquals(Content.DAMAGED, contentOf(image));
        Arrays.fill(image, (byte) 0xFF);
        assertEquals(Content.BLANK, contentOf(image));
        assertTrue(!header.isValid());
        image[image.length - 1] = 0;
        assertEquals(Content.DAMAGED, contentOf(image));
    }

    private static void rewriteCheck(byte[] image) {
        int from = image.length - SavedStateLayout.CRC_BYTES;
        int crc = Crc32.of(image, 0, from);
        for (int i = 0; i < SavedStateLayout.CRC_BYTES; i++) {
            image[from + i] = (byte) (crc >>> (8 * i));
        }
    }
}
