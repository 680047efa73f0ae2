package org.gaugebench.core.saved;

import org.gaugebench.core.fixed.Crc32;
import org.gaugebench.core.saved.SlotHeader.Content;

/**
 * Turns a state into the bytes of {@link SavedStateLayout} and back. Holds no state of its own but
 * one record, made at construction.
 *
 * <p>Bytes that do not check are never decoded: {@link #inspect} says what an image is, and only
 * after it said valid may {@link #decode} or {@link #isPlausible} be called on it.
 */
public final class SavedStateCodec {
    private static final SavedField[] FIELDS = SavedField.values();
    private static final byte ERASED = (byte) 0xFF;
    private static final int BYTE_BITS = 8;
    private static final int LONG_BITS = 64;

    private final byte[] record = new byte[SavedStateLayout.recordBytes(SavedStateLayout.VERSION)];

    /** Makes the record's bytes. */
    public SavedStateCodec() {}

    /**
     * Writes a state into this codec's record.
     *
     * <p><b>Range:</b> each field is cut to its size in the table, which is the size of its own
     * type; codes of one byte run from -128 to 127.
     *
     * @param state what to write
     * @param sequence number of the record
     * @param settings the settings under which the state was counted
     * @return the record, owned by this codec and overwritten by the next call
     */
    public byte[] encode(SavedState state, int sequence, SettingsMark settings) {
        put(SavedStateLayout.MAGIC_OFFSET, 4, SavedStateLayout.MAGIC);
        put(SavedStateLayout.VERSION_OFFSET, 2, SavedStateLayout.VERSION);
        put(SavedStateLayout.LENGTH_OFFSET, 2, record.length);
        put(SavedStateLayout.SEQUENCE_OFFSET, 4, sequence);
        put(SavedStateLayout.FINGERPRINT_OFFSET, 4, settings.fingerprint());
        put(SavedStateLayout.CHEMISTRY_OFFSET, 4, settings.chemistryCode());
        put(SavedStateLayout.NOMINAL_OFFSET, 4, settings.nominalMillivolts());
        for (int i = 0; i < FIELDS.length; i++) {
            put(SavedStateLayout.offsetOf(FIELDS[i]), FIELDS[i].sizeBytes(), FIELDS[i].get(state));
        }
        int checkedBytes = record.length - SavedStateLayout.CRC_BYTES;
        put(checkedBytes, SavedStateLayout.CRC_BYTES, Crc32.of(record, 0, checkedBytes));
        return record;
    }

    private void put(int offset, int sizeBytes, long value) {
        for (int i = 0; i < sizeBytes; i++) {
            record[offset + i] = (byte) (value >>> (BYTE_BITS * i));
        }
    }

    /**
     * Says what an image is and, where it is a record that checks, fills its header. In order:
     * blank, magic, version, length, check word; the first that fails decides.
     *
     * @param image bytes as read, from a slot's first byte; any length
     * @param header receives the answer
     */
    public static void inspect(byte[] image, SlotHeader header) {
        header.content = contentOf(image);
        if (header.content != Content.VALID) {
            return;
        }
        header.sequence = (int) take(image, SavedStateLayout.SEQUENCE_OFFSET, 4);
        header.fingerprint = (int) take(image, SavedStateLayout.FINGERPRINT_OFFSET, 4);
        header.chemistryCode = (int) take(image, SavedStateLayout.CHEMISTRY_OFFSET, 4);
        header.nominalMillivolts = (int) take(image, SavedStateLayout.NOMINAL_OFFSET, 4);
    }

    private static Content contentOf(byte[] image) {
        if (isBlank(image)) {
            return Content.BLANK;
        }
        if (image.length < SavedStateLayout.PAYLOAD_OFFSET
                || take(image, SavedStateLayout.MAGIC_OFFSET, 4) != SavedStateLayout.MAGIC) {
            return Content.DAMAGED;
        }
        int version = (int) take(image, SavedStateLayout.VERSION_OFFSET, 2);
        int length = (int) take(image, SavedStateLayout.LENGTH_OFFSET, 2);
        int expected = SavedStateLayout.recordBytes(version);
        if (expected == 0) {
            return Content.UNKNOWN_VERSION;
        }
        if (length != expected || length > image.length) {
            return Content.DAMAGED;
        }
        int checkedBytes = length - SavedStateLayout.CRC_BYTES;
        int stored = (int) take(image, checkedBytes, SavedStateLayout.CRC_BYTES);
        return stored == Crc32.of(image, 0, checkedBytes) ? Content.VALID : Content.DAMAGED;
    }

    private static boolean isBlank(byte[] image) {
        for (int i = 0; i < image.length; i++) {
            if (image[i] != ERASED) {
                return false;
            }
        }
        return true;
    }

    /**
     * Reads a state from an image that {@link #inspect} found valid. Fields that the image's layout
     * version does not hold become zero.
     *
     * @param image bytes of a valid record
     * @param state receives the fields
     */
    public static void decode(byte[] image, SavedState state) {
        for (int i = 0; i < FIELDS.length; i++) {
            FIELDS[i].set(state, has(image, FIELDS[i]) ? valueOf(image, FIELDS[i]) : 0);
        }
    }

    /** Whether an image that {@link #inspect} found valid is of a layout that has the field. */
    static boolean has(byte[] image, SavedField field) {
        return field.sinceVersion() <= (int) take(image, SavedStateLayout.VERSION_OFFSET, 2);
    }

    /**
     * Whether an image that {@link #inspect} found valid says what a core can have written (M7).
     *
     * @param image bytes of a valid record
     * @return whether each field lies within its range, and the count within the capacity
     */
    public static boolean isPlausible(byte[] image) {
        for (int i = 0; i < FIELDS.length; i++) {
            if (has(image, FIELDS[i]) && !FIELDS[i].allows(valueOf(image, FIELDS[i]))) {
                return false;
            }
        }
        return valueOf(image, SavedField.CHARGE_NANOCOULOMBS)
                <= valueOf(image, SavedField.CAPACITY_NANOCOULOMBS);
    }

    /**
     * Reads one field of an image that {@link #inspect} found valid.
     *
     * @param image bytes of a valid record
     * @param field which; one that every layout version holds
     * @return its value
     */
    public static long valueOf(byte[] image, SavedField field) {
        return take(image, SavedStateLayout.offsetOf(field), field.sizeBytes());
    }

    /** Little endian, sign extended from the last byte. */
    private static long take(byte[] image, int offset, int sizeBytes) {
        long value = 0;
        for (int i = sizeBytes - 1; i >= 0; i--) {
            value = (value << BYTE_BITS) | (image[offset + i] & 0xFF);
        }
        int spare = LONG_BITS - BYTE_BITS * sizeBytes;
        return value << spare >> spare;
    }
}
