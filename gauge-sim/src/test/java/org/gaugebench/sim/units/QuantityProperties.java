package org.gaugebench.sim.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.constraints.StringLength;

/** Statements over all quantities. */
class QuantityProperties {
    /** 10^15 steps are beyond every limit of a scenario and within the digits that are read. */
    private static final long LARGE = 1_000_000_000_000_000L;

    @Property
    void whatIsWrittenReadsBackExactly(
            @ForAll @LongRange(min = -LARGE, max = LARGE) long steps, @ForAll RecordUnit unit)
            throws QuantityException {
        long value = unit.dimension() == Dimension.DURATION ? Math.abs(steps) : steps;
        assertEquals(value, Quantity.parse(QuantityFormat.format(value, unit), unit));
    }

    @Property
    void smallValuesReadBackExactly(
            @ForAll @IntRange(min = -300_000, max = 300_000) int steps, @ForAll RecordUnit unit)
            throws QuantityException {
        long value = unit.dimension() == Dimension.DURATION ? Math.abs(steps) : steps;
        assertEquals(value, Quantity.parse(QuantityFormat.format(value, unit), unit));
    }

    /** The oracle counts in integers: whole amps and microamps apart. */
    @Property
    void aDecimalIsNeverRounded(
            @ForAll @IntRange(min = 0, max = 2_000_000) int amps,
            @ForAll @IntRange(min = 0, max = 999_999) int microamps)
            throws QuantityException {
        String text = String.format("%d.%06d A", amps, microamps);
        assertEquals(
                amps * 1_000_000L + microamps, Quantity.parse(text, RecordUnit.MICROAMPS), text);
    }

    @Property
    void aDigitBeyondTheStepIsRefused(
            @ForAll @IntRange(min = 0, max = 999_999) int microamps,
            @ForAll @IntRange(min = 1, max = 9) int beyond) {
        String text = new BigDecimal(microamps).movePointLeft(6).toPlainString();
        String finer = text + (text.contains(".") ? "" : ".000000") + beyond;
        QuantityException refusal =
                assertThrows(
                        QuantityException.class,
                        () -> Quantity.parse(finer + " A", RecordUnit.MICROAMPS));
        assertEquals(true, refusal.explanation().contains("finer than 1 uA"), finer);
    }

    @Property
    void noTextGivesAnotherException(
            @ForAll @StringLength(max = 100) String text, @ForAll RecordUnit unit) {
        try {
            Quantity.parse(text, unit);
        } catch (QuantityException e) {
            assertEquals(1, e.explanation().lines().count());
        }
    }
}
