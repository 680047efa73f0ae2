package org.gaugebench.core.fixed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.Random;
import java.util.Set;
import java.util.zip.CRC32;
import org.junit.jupiter.api.Test;

class Crc32Test {
    private static final byte[] DIGITS = "123456789".getBytes(StandardCharsets.US_ASCII);

    @Test
    void theJdkAgreesOnEveryLengthUpTo300Bytes() {
        byte[] bytes = new byte[300];
        new Random(20261125L).nextBytes(bytes);
        for (int length = 0; length <= bytes.length; length++) {
            CRC32 peer = new CRC32();
            peer.update(bytes, 0, length);
            assertEquals((int) peer.getValue(), Crc32.of(bytes, 0, length), "length " + length);
        }
    }

    @Test
    void aStretchInsideAnArrayIsCheckedAlone() {
        byte[] padded = new byte[DIGITS.length + 7];
        System.arraycopy(DIGITS, 0, padded, 3, DIGITS.length);
        assertEquals(Crc32.of(DIGITS, 0, DIGITS.length), Crc32.of(padded, 3, DIGITS.length));
    }

    @Test
    void anEmptyStretchChecksToZero() {
        assertEquals(0, Crc32.of(DIGITS, 4, 0));
    }

    @Test
    void zerosDoNotCheckAgainstAWordOfZero() {
        for (int length = 1; length <= 300; length++) {
            assertNotEquals(0, Crc32.of(new byte[length], 0, length), "length " + length);
        }
    }

    /**
     * Every single and every double bit flip in 300 bytes and their check word. The check is
     * linear: a flip changes the residue by a pattern of its own, whatever the bytes are, and two
     * flips change it by the exclusive or of two patterns. So all doubles are seen exactly when all
     * patterns differ from each other and from nothing; {@link #twoFlipsAreTheSumOfOne} checks the
     * linearity.
     */
    @Test
    void noSingleOrDoubleBitFlipOfARecordGoesUnseen() {
        byte[] record = record();
        Set<Integer> patterns = new HashSet<>();
        for (int bit = 0; bit < record.length * 8; bit++) {
            assertTrue(patterns.add(pattern(record, bit)), "bit " + bit + " equals another");
        }
        assertTrue(!patterns.contains(0), "a single flip goes unseen");
        assertEquals(304 * 8, patterns.size());
    }

    @Test
    void twoFlipsAreTheSumOfOne() {
        byte[] record = record();
        Random random = new Random(7L);
        for (int i = 0; i < 20_000; i++) {
            int first = random.nextInt(record.length * 8);
            int second = random.nextInt(record.length * 8);
            int expected = pattern(record, first) ^ pattern(record, second);
            flip(record, first);
            int both = pattern(record, second);
            flip(record, first);
            int alone = pattern(record, second);
            assertEquals(alone, both, "the pattern of a flip depends on other bytes");
            flip(record, first);
            flip(record, second);
            assertEquals(expected, residue(record), "flips " + first + " and " + second);
            flip(record, first);
            flip(record, second);
        }
    }

    private static byte[] record() {
        byte[] record = new byte[304];
        new Random(3L).nextBytes(record);
        int crc = Crc32.of(record, 0, 300);
        for (int i = 0; i < 4; i++) {
            record[300 + i] = (byte) (crc >>> (8 * i));
        }
        return record;
    }

    private static int pattern(byte[] record, int bit) {
        int before = residue(record);
        flip(record, bit);
        int after = residue(record);
        flip(record, bit);
        return before ^ after;
    }

    private static int residue(byte[] record) {
        int stored = 0;
        for (int i = 0; i < 4; i++) {
            stored |= (record[300 + i] & 0xFF) << (8 * i);
        }
        return Crc32.of(record, 0, 300) ^ stored;
    }

    private static void flip(byte[] record, int bit) {
        record[bit / 8] ^= (byte) (1 << (bit % 8));
    }
}
