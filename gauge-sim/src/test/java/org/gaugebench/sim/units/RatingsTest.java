package org.gaugebench.sim.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Quantities of two parts: shunts, converters, capacities. */
class RatingsTest {
    @Test
    void shouldReadWhatIsPrintedOnThem() throws QuantityException {
        assertEquals(new ShuntRating(100_000_000, 75_000), ShuntRating.parse("100 A / 75 mV"));
        assertEquals(new ShuntRating(5_000_000, 60_000), ShuntRating.parse("5A/60mV"));
        assertEquals(new ConverterRange(20, 100_000), ConverterRange.parse("20 bit, 100 mV"));
        assertEquals(60_000_000, CapacityRating.parse("60 Ah @ 20 h", RecordUnit.MICROAMP_HOURS));
        assertEquals(2_900, CapacityRating.parse("2.9 Ah", RecordUnit.MILLIAMP_HOURS));
    }

    @Test
    void shouldWriteWhatTheyRead() throws QuantityException {
        assertEquals("100 A / 75 mV", ShuntRating.parse("100 A / 75 mV").toString());
        assertEquals("20 bit, 100 mV", ConverterRange.parse("20 bit, 100 mV").toString());
        assertEquals("60 Ah @ 20 h", CapacityRating.format(60_000, RecordUnit.MILLIAMP_HOURS));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "100 A", "75 mV / 100 A", "100 A / 75 mV / 1", "0 A / 75 mV", "/"})
    void shouldRefuseWhatIsNoShunt(String text) {
        String message =
                assertThrows(QuantityException.class, () -> ShuntRating.parse(text)).explanation();
        assertTrue(message.startsWith("expected a shunt rating such as 100 A / 75 mV"), message);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "20 bit", "33 bit, 1 V", "20 bit, 0 V", "0 bit, 1 V", "20, 1 V"})
    void shouldRefuseWhatIsNoConverter(String text) {
        String message =
                assertThrows(QuantityException.class, () -> ConverterRange.parse(text))
                        .explanation();
        assertTrue(message.startsWith("expected a converter such as \"20 bit, 100 mV\""), message);
    }

    @Test
    void shouldRefuseACapacityAtAnotherRate() {
        QuantityException refusal =
                assertThrows(
                        QuantityException.class,
                        () -> CapacityRating.parse("66 Ah @ 100 h", RecordUnit.MICROAMP_HOURS));
        assertEquals(
                "expected a capacity at the 20 h rate such as 60 Ah @ 20 h, but found"
                        + " '66 Ah @ 100 h'; look up the figure at the 20 h rate",
                refusal.explanation());
    }
}
