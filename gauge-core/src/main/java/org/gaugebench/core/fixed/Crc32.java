package org.gaugebench.core.fixed;

/**
 * The 32-bit cyclic redundancy check known as CRC-32/ISO-HDLC: reflected polynomial 0x04C11DB7,
 * start and final inversion all ones (Cook, "Catalogue of parametrised CRC algorithms").
 *
 * <p>Worked a nibble at a time: sixteen table words are 64 bytes of read-only memory, where the
 * usual byte table takes 1 KiB. The start value is not zero on purpose, so that a memory erased to
 * zeros does not check against a check word of zero.
 */
public final class Crc32 {
    private static final int REFLECTED_POLYNOMIAL = 0xEDB88320;
    private static final int NIBBLE_BITS = 4;
    private static final int NIBBLE_MASK = 0xF;
    private static final int[] TABLE = new int[NIBBLE_MASK + 1];

    static {
        for (int nibble = 0; nibble < TABLE.length; nibble++) {
            int remainder = nibble;
            for (int bit = 0; bit < NIBBLE_BITS; bit++) {
                remainder = (remainder >>> 1) ^ (REFLECTED_POLYNOMIAL & -(remainder & 1));
            }
            TABLE[nibble] = remainder;
        }
    }

    private Crc32() {}

    /**
     * The check word of a stretch of bytes.
     *
     * <p><b>Range:</b> any bytes; the result is 32 bits, to be read as unsigned. Nothing
     * accumulates beyond 32 bits, so nothing overflows.
     *
     * @param bytes holds the stretch
     * @param from index of its first byte
     * @param length its length in bytes, 0 for none; from + length lies within the array
     * @return the check word; 0 for an empty stretch
     */
    public static int of(byte[] bytes, int from, int length) {
        int crc = -1;
        for (int i = from; i < from + length; i++) {
            crc ^= bytes[i] & 0xFF;
            crc = (crc >>> NIBBLE_BITS) ^ TABLE[crc & NIBBLE_MASK];
            crc = (crc >>> NIBBLE_BITS) ^ TABLE[crc & NIBBLE_MASK];
        }
        return ~crc;
    }
}
