package org.gaugebench.core.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The filter against the closed form of a single digital pole, y += a (x - y): after n samples of a
 * unit step y = 1 - (1 - a)^n; for a = 2^-3: 0.7369 after 10, 99 % reached at the 35th (computed
 * from the formula; any text on digital filters has it).
 */
class LoadFilterReferenceTest {
    private static final int STEP_MICROAMPS = 10_000_000;

    @Test
    void tenMinutesAfterAStepTheFilterStandsWhereThePoleStands() {
        LoadFilter filter = stepped(10);
        // 1 - 0.875^10 = 0.736924...; each of 10 shifts rounds down by under 1/256 uA
        assertEquals(7_369_244, filter.microamps(), 1);
    }

    @Test
    void ninetyNinePercentAreReachedAtTheThirtyFifthMinute() {
        assertTrue(stepped(34).microamps() < STEP_MICROAMPS / 100 * 99);
        assertTrue(stepped(35).microamps() >= STEP_MICROAMPS / 100 * 99);
    }

    /** Without fraction bits the filter would stop 7 uA short of its input. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1, -1, 7, -7, 400_000, -400_000, Integer.MAX_VALUE, -Integer.MAX_VALUE})
    void aConstantInputIsReachedFromBothSides(int targetMicroamps) {
        for (int startMicroamps : new int[] {Integer.MAX_VALUE, -Integer.MAX_VALUE, 0}) {
            LoadFilter filter = new LoadFilter();
            filter.addMinute(startMicroamps);
            for (int minute = 0; minute < 300; minute++) {
                filter.addMinute(targetMicroamps);
            }
            assertEquals(targetMicroamps, filter.microamps(), "from " + startMicroamps);
        }
    }

    private static LoadFilter stepped(int minutes) {
        LoadFilter filter = new LoadFilter();
        filter.addMinute(0);
        for (int minute = 0; minute < minutes; minute++) {
            filter.addMinute(STEP_MICROAMPS);
        }
        return filter;
    }
}
