package org.gaugebench.core.fixed;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/**
 * Published values. Source of the first: Greg Cook, "Catalogue of parametrised CRC algorithms",
 * entry CRC-32/ISO-HDLC, whose check is the word of the nine digits 1 to 9 and whose residue is the
 * raw register after a message and its own word.
 */
class Crc32ReferenceTest {
    @Test
    void theNineDigitsGiveThePublishedCheck() {
        byte[] digits = "123456789".getBytes(StandardCharsets.US_ASCII);
        assertEquals(0xCBF43926, Crc32.of(digits, 0, digits.length));
    }

    /**
     * The catalogue's residue DEBB20E3 (from memory) is the reflected register before the final
     * inversion; after it the word of any message with its own word is 2144DF1C.
     */
    @Test
    void aMessageWithItsOwnWordGivesThePublishedResidue() {
        byte[] message = "123456789....".getBytes(StandardCharsets.US_ASCII);
        int crc = Crc32.of(message, 0, 9);
        for (int i = 0; i < 4; i++) {
            message[9 + i] = (byte) (crc >>> (8 * i));
        }
        assertEquals(~0xDEBB20E3, Crc32.of(message, 0, message.length));
    }

    /**
     * CRC-32C differs from ours in its polynomial only; its published values (RFC 3720, B.4) prove
     * the shape that both share: reflected, inverted at both ends.
     */
    @Test
    void theSameShapeWithAnotherPolynomialGivesTheValuesOfRfc3720() {
        byte[] ones = new byte[32];
        Arrays.fill(ones, (byte) 0xFF);
        byte[] rising = new byte[32];
        for (int i = 0; i < rising.length; i++) {
            rising[i] = (byte) i;
        }
        assertEquals(0x8A9136AA, bitwise(new byte[32], 0x82F63B78));
        assertEquals(0x62A8AB43, bitwise(ones, 0x82F63B78));
        assertEquals(0x46DD794E, bitwise(rising, 0x82F63B78));
        // The bitwise form, so proven, with our polynomial is ours.
        assertEquals(bitwise(rising, 0xEDB88320), Crc32.of(rising, 0, rising.length));
        assertEquals(bitwise(ones, 0xEDB88320), Crc32.of(ones, 0, ones.length));
    }

    private static int bitwise(byte[] bytes, int reflectedPolynomial) {
        int crc = -1;
        for (byte b : bytes) {
            crc ^= b & 0xFF;
            for (int bit = 0; bit < 8; bit++) {
                crc = (crc & 1) == 1 ? (crc >>> 1) ^ reflectedPolynomial : crc >>> 1;
            }
        }
        return ~crc;
    }
}
