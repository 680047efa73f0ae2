package org.gaugebench.core.fixed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;

class Log2TableProperties {
    @Property
    void theLogarithmNeverFalls(
            @ForAll @LongRange(min = 1) long value, @ForAll @LongRange(min = 0) long more) {
        long greater = value + more < 0 ? Long.MAX_VALUE : value + more;
        assertTrue(Log2Table.log2Q24(greater) >= Log2Table.log2Q24(value));
        assertTrue(Log2Table.log2Q24(value) >= 0);
    }

    @Property
    void thePowerNeverFallsAndIsNeverNegative(@ForAll int exponent, @ForAll int other) {
        long atLow = Log2Table.exp2Q24(Math.min(exponent, other));
        assertTrue(atLow >= 0 && atLow <= Log2Table.exp2Q24(Math.max(exponent, other)));
    }

    @Property
    void thePowerOfTheLogarithmIsTheValue(@ForAll @IntRange(min = 1) int value) {
        double back = Log2Table.exp2Q24(Log2Table.log2Q24(value)) / 0x1p24;
        // ln2 x 3e-6 from the logarithm, 2e-6 from the power.
        assertEquals(1, back / value, 4.1e-6);
    }
}
