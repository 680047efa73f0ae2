package org.gaugebench.core.fixed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class SequenceTest {
    @Test
    void theNextNumberIsNewerAndTheOneBeforeIsNot() {
        assertTrue(Sequence.isNewer(8, 7));
        assertFalse(Sequence.isNewer(7, 8));
    }

    @Test
    void aNumberIsNotNewerThanItself() {
        assertFalse(Sequence.isNewer(7, 7));
        assertFalse(Sequence.isNewer(-1, -1));
    }

    @Test
    void zeroIsNewerThanTheLargestUnsignedNumber() {
        assertEquals(0, Sequence.next(0xFFFFFFFF));
        assertTrue(Sequence.isNewer(0, 0xFFFFFFFF));
        assertFalse(Sequence.isNewer(0xFFFFFFFF, 0));
    }

    @Test
    void theOrderHoldsAcrossTheSignedWrap() {
        assertEquals(Integer.MIN_VALUE, Sequence.next(Integer.MAX_VALUE));
        assertTrue(Sequence.isNewer(Integer.MIN_VALUE, Integer.MAX_VALUE));
        assertFalse(Sequence.isNewer(Integer.MAX_VALUE, Integer.MIN_VALUE));
    }

    @Test
    void theFarthestDistanceWithAMeaningIsTwoToThe31LessOne() {
        assertTrue(Sequence.isNewer(-10 + Integer.MAX_VALUE, -10));
        assertFalse(Sequence.isNewer(-10, -10 + Integer.MAX_VALUE));
    }

    @Test
    void halfARoundApartNeitherIsNewer() {
        assertFalse(Sequence.isNewer(5 + Integer.MIN_VALUE, 5));
        assertFalse(Sequence.isNewer(5, 5 + Integer.MIN_VALUE));
    }
}
