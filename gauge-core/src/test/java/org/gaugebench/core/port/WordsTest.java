package org.gaugebench.core.port;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What people read of codes: every constant has words of its own, and every figure a unit. */
class WordsTest {
    /** The end of a register's name, and the unit that it stands for. */
    private static final Map<String, String> UNITS =
            Map.ofEntries(
                    Map.entry("_MILLIS", "ms"),
                    Map.entry("_MILLIS_Q8", "ms/256"),
                    Map.entry("_MINUTES", "min"),
                    Map.entry("_NANOCOULOMBS", "nC"),
                    Map.entry("_MICROJOULES", "uJ"),
                    Map.entry("_MICROAMPS", "uA"),
                    Map.entry("_MICROAMPS_Q8", "uA/256"),
                    Map.entry("_MILLIAMPS", "mA"),
                    Map.entry("_MICROVOLTS", "uV"),
                    Map.entry("_MICROOHMS", "uOhm"),
                    Map.entry("_MILLICELSIUS", "m°C"),
                    Map.entry("_MILLIAMP_HOURS", "mAh"),
                    Map.entry("_PARTS_PER_MILLION", "ppm"),
                    Map.entry("_PERCENT", "%"),
                    Map.entry("_COUNTS", "counts"),
                    Map.entry("_COUNTS_Q8", "counts/256"));

    private static void assertOwnWords(List<String> sentences) {
        for (String sentence : sentences) {
            assertTrue(sentence.matches("[a-zA-Z][^.]*[^. ]"), "'" + sentence + "'");
        }
        assertEquals(sentences.size(), new HashSet<>(sentences).size(), sentences.toString());
    }

    @Test
    void everyEventFaultAndReasonHasASentenceOfItsOwn() {
        assertOwnWords(Arrays.stream(Event.values()).map(Event::sentence).toList());
        assertOwnWords(Arrays.stream(Fault.values()).map(Fault::sentence).toList());
        assertOwnWords(Arrays.stream(RuleReason.values()).map(RuleReason::sentence).toList());
        assertOwnWords(Arrays.stream(TrustReason.values()).map(TrustReason::sentence).toList());
    }

    @Test
    void theUnitOfARegisterIsThatOfItsName() {
        for (Register register : Register.values()) {
            UNITS.forEach(
                    (end, unit) -> {
                        if (register.name().endsWith(end)) {
                            assertEquals(unit, register.unit(), register.name());
                        }
                    });
            assertFalse(register.unit().isBlank(), register.name());
        }
    }

    /** An event's figure is a quantity, or the number of a fault; a fault is always a warning. */
    @Test
    void theFigureOfAnEventHasAUnit() {
        for (Event event : Event.values()) {
            boolean known = UNITS.containsValue(event.unit()) || event.unit().equals("fault");
            assertTrue(known, event.name());
        }
        assertEquals(Event.Severity.WARNING, Event.FAULT_RAISED.severity());
        assertEquals(Event.Severity.NOTE, Event.POWERED_UP.severity());
    }

    /** G21 and the D rules; the log's mask of diagnosed faults rests on their order. */
    @Test
    void theFaultsOfASingleTickComeBeforeThoseThatStand() {
        for (Fault fault : Fault.values()) {
            boolean afterTheTicks = fault.compareTo(Fault.SAMPLE_REPEATED) > 0;
            assertEquals(afterTheTicks, fault.isStanding(), fault.name());
        }
    }
}
