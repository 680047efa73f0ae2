package org.gaugebench.core.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Steady within a span, on both sides, at the boundary. */
class SteadyWatchTest {
    private final SteadyWatch watch = new SteadyWatch();

    private int add(long... values) {
        for (long value : values) {
            watch.addMinute(value, 100);
        }
        return watch.minutes();
    }

    @Test
    void countsWhileLowestAndHighestLieWithinTheSpan() {
        assertEquals(0, watch.minutes());
        assertEquals(4, add(1_000, 1_100, 1_050, 1_000));
    }

    @Test
    void oneBeyondStartsAgainOnEitherSide() {
        assertEquals(1, add(1_000, 1_101));
        assertEquals(3, add(1_050, 1_001));
        assertEquals(1, add(1_000));
    }

    /** Small steps that add up are a move, though each of them is none. */
    @Test
    void aCreepIsNotSteady() {
        assertEquals(1, add(0, 60, 120));
    }

    @Test
    void theFirstFigureAfterAResetIsTheNewLevel() {
        add(1_000, 1_100);
        watch.reset();
        assertEquals(0, watch.minutes());
        assertEquals(2, add(-5_000, -4_900));
    }
}
