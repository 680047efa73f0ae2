package org.gaugebench.core.port;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.math.BigInteger;
import org.junit.jupiter.api.Test;

/** The table and its digest, which a port in another language must reproduce. */
class RegistersTest {
    private final Registers registers = new Registers();

    @Test
    void everyRegisterKeepsItsOwnValue() {
        for (Register register : Register.values()) {
            registers.set(register, 1_000L + register.ordinal());
        }
        for (Register register : Register.values()) {
            assertEquals(1_000L + register.ordinal(), registers.get(register));
        }
        assertEquals(Register.values().length, Registers.COUNT);
    }

    /** The same fold in integers without a width, in table order. */
    @Test
    void theDigestFoldsTheTableInItsOrder() {
        BigInteger modulus = BigInteger.ONE.shiftLeft(64);
        BigInteger prime = BigInteger.ONE.shiftLeft(40).add(BigInteger.valueOf(0x1B3));
        BigInteger digest = new BigInteger("CBF29CE484222325", 16);
        for (Register register : Register.values()) {
            long value = 0x9E3779B97F4A7C15L * (register.ordinal() + 1);
            registers.set(register, value);
            BigInteger shifted = digest.shiftLeft(23);
            BigInteger rotated = shifted.mod(modulus).or(shifted.shiftRight(64));
            BigInteger pattern = BigInteger.valueOf(value).mod(modulus);
            digest = rotated.xor(pattern).multiply(prime).mod(modulus);
        }
        assertEquals(digest.longValue(), registers.fold(Registers.DIGEST_START));
    }

    @Test
    void swappingTwoRegistersChangesTheDigest() {
        registers.set(Register.CLOCK_MILLIS, 1);
        registers.set(Register.UPTIME_MILLIS, 2);
        long one = registers.fold(Registers.DIGEST_START);
        registers.set(Register.CLOCK_MILLIS, 2);
        registers.set(Register.UPTIME_MILLIS, 1);
        assertNotEquals(one, registers.fold(Registers.DIGEST_START));
        assertNotEquals(one, registers.fold(one));
    }

    @Test
    void everyFaultHasItsOwnBit() {
        int all = 0;
        for (Fault fault : Fault.values()) {
            assertEquals(1, Integer.bitCount(fault.bit()));
            assertEquals(0, all & fault.bit());
            all |= fault.bit();
        }
    }
}
