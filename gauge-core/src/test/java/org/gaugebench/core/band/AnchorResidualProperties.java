package org.gaugebench.core.band;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;

/** The combination equals the one in decimals without a width, rounded to the safe side. */
class AnchorResidualProperties {
    private static final MathContext DIGITS = new MathContext(50, RoundingMode.HALF_EVEN);

    @Property
    void theWeightIsTheExactOneCutOff(
            @ForAll @LongRange(min = 0, max = 1_000_000) long count,
            @ForAll @LongRange(min = 1, max = 1_000_000) long anchor) {
        BigDecimal p = BigDecimal.valueOf(count).pow(2);
        BigDecimal r = BigDecimal.valueOf(anchor).pow(2);
        BigDecimal exact =
                p.multiply(BigDecimal.valueOf(65_536)).divide(p.add(r), 0, RoundingMode.FLOOR);
        assertEquals(exact.intValueExact(), AnchorResidual.weightQ16(count, anchor));
    }

    /** Wider by the weight's last bit (2^-16 of the square) and by the root's rounding, no more. */
    @Property
    void theWidthIsTheExactOneRoundedUp(
            @ForAll @LongRange(min = 0, max = 1_000_000) long count,
            @ForAll @LongRange(min = 1, max = 1_000_000) long anchor) {
        BigDecimal p = BigDecimal.valueOf(count).pow(2);
        BigDecimal r = BigDecimal.valueOf(anchor).pow(2);
        double exact = p.multiply(r).divide(p.add(r), DIGITS).sqrt(DIGITS).doubleValue();
        long combined = AnchorResidual.combined(count, anchor);
        assertTrue(combined >= exact - 1e-9, combined + " is narrower than " + exact);
        double allowed = exact * (1 + 1.0 / 65_536) + 1;
        assertTrue(combined <= allowed, combined + " is wider than " + allowed);
    }

    @Property
    void combiningNeverWidensAndKnowsNoOrder(
            @ForAll @LongRange(min = 0, max = 1_000_000) long one,
            @ForAll @LongRange(min = 0, max = 1_000_000) long other) {
        long combined = AnchorResidual.combined(one, other);
        assertTrue(combined <= Math.min(one, other));
        assertEquals(combined, AnchorResidual.combined(other, one));
    }
}
