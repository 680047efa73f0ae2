package org.gaugebench.core.saved;

/**
 * Where every byte of a record lies. Little endian; no gaps.
 *
 * <pre>
 *  byte   0       4         6        8          12            16          20           24
 *       +-------+---------+--------+----------+-------------+-----------+------------+--
 *       | magic | layout  | length | sequence | settings    | chemistry | nominal    | ...
 *       | GSAV  | version | of all |          | fingerprint | code      | millivolts |
 *       +-------+---------+--------+----------+-------------+-----------+------------+--
 *  byte  24                                          length - 4    length
 *      --+-------------------------------------------+-------------+
 *    ... | payload: SavedField in table order        | CRC-32 of   |
 *        | (those of this version and before)        | all before  |
 *      --+-------------------------------------------+-------------+
 * </pre>
 *
 * <p>The layout version is a number of its own, not the release's. The first 8 bytes and the check
 * word at the end keep their meaning in every version. The order has its reason: magic and version
 * first, so that a foreign or newer record is recognised before anything is believed; the check
 * word last, so that a write that stops anywhere leaves it unwritten.
 */
public final class SavedStateLayout {
    /** The layout version that this core writes. */
    public static final int VERSION = 1;

    /** The oldest layout version that this core reads. */
    public static final int OLDEST_VERSION = 1;

    /** The bytes G, S, A, V, read little endian. */
    public static final int MAGIC = 0x56415347;

    /** Offset of the magic number, 4 bytes. */
    public static final int MAGIC_OFFSET = 0;

    /** Offset of the layout version, 2 bytes. */
    public static final int VERSION_OFFSET = MAGIC_OFFSET + 4;

    /** Offset of the record's length, check word included, 2 bytes. */
    public static final int LENGTH_OFFSET = VERSION_OFFSET + 2;

    /** Offset of the sequence number, 4 bytes. */
    public static final int SEQUENCE_OFFSET = LENGTH_OFFSET + 2;

    /** Offset of the fingerprint of all settings, 4 bytes. */
    public static final int FINGERPRINT_OFFSET = SEQUENCE_OFFSET + 4;

    /** Offset of the chemistry code, 4 bytes. */
    public static final int CHEMISTRY_OFFSET = FINGERPRINT_OFFSET + 4;

    /** Offset of the nominal voltage in millivolts, 4 bytes. */
    public static final int NOMINAL_OFFSET = CHEMISTRY_OFFSET + 4;

    /** Offset of the payload. */
    public static final int PAYLOAD_OFFSET = NOMINAL_OFFSET + 4;

    /** Size of the check word at the end. */
    public static final int CRC_BYTES = 4;

    private static final SavedField[] FIELDS = SavedField.values();
    private static final int[] FIELD_OFFSETS = new int[FIELDS.length];
    private static final int[] RECORD_BYTES = new int[VERSION + 1];

    static {
        int offset = PAYLOAD_OFFSET;
        for (int i = 0; i < FIELDS.length; i++) {
            FIELD_OFFSETS[i] = offset;
            offset += FIELDS[i].sizeBytes();
            for (int v = FIELDS[i].sinceVersion(); v <= VERSION; v++) {
                RECORD_BYTES[v] = offset + CRC_BYTES;
            }
        }
    }

    private SavedStateLayout() {}

    /**
     * Where a field lies: the offset of the field before it plus that field's size.
     *
     * @param field which
     * @return offset from the record's first byte
     */
    public static int offsetOf(SavedField field) {
        return FIELD_OFFSETS[field.ordinal()];
    }

    /**
     * Length of a record of a layout version, check word included.
     *
     * @param version the layout version
     * @return bytes, or 0 for a version that this core does not read
     */
    public static int recordBytes(int version) {
        return version < OLDEST_VERSION || version > VERSION ? 0 : RECORD_BYTES[version];
    }
}
