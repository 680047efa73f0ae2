package org.gaugebench.sim.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.gaugebench.sim.advice.TroubleTable.Row;
import org.gaugebench.sim.advice.TroubleTable.Verdict;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Notes from huts that the model was not tuned on. It was tuned on seeds 1 to 12, then held against
 * 101 to 110, 201 to 220 and 301 to 316, each drawn afresh after a change; those below were first
 * run when nothing was to be changed any more.
 *
 * <p>A hut in which the cause makes nothing look wrong is passed over: no note is 12 points off,
 * or, for what shows only when the lights go out, less than 12 % is shown then. That is asked of
 * the truth and of the notes, never of the answer.
 */
class HeldOutTroubleTest {
    private static final long FIRST = 901;
    private static final long LAST = 960;
    private static final int HUTS = 4;

    static Stream<TroubleCause> twelve() {
        return NotesSymptom.TWELVE.stream();
    }

    private static List<Row> rows(TroubleCause plant) throws Exception {
        List<Row> rows = new ArrayList<>();
        for (long seed = FIRST; seed <= LAST && rows.size() < HUTS; seed++) {
            Row row = TroubleTable.row(seed, plant);
            if (row.verdict() != Verdict.NOT_PLANTED) {
                rows.add(row);
            }
        }
        assertEquals(HUTS, rows.size(), "huts in which it comes to light");
        return rows;
    }

    @ParameterizedTest
    @MethodSource("twelve")
    void aPlantedCauseIsFirstOrSaidToBeInseparable(TroubleCause plant) throws Exception {
        for (Row row : rows(plant)) {
            String told = row.verdict() + " " + row.hut() + ": " + row.answer();
            assertTrue(row.verdict() == Verdict.RIGHT || row.verdict() == Verdict.ALIKE, told);
            assertTrue(row.answer().contains(plant.words()), told);
            // Half of the twelve would be no answer.
            assertTrue(row.alike() <= 6, told);
            assertEquals(row.alike() > 1, row.answer().contains("What separates them: "), told);
        }
    }

    /** Both take the battery's charge unseen, at every hour: only a meter tells them apart. */
    @ParameterizedTest
    @EnumSource(names = {"OWN_CURRENT", "SELF_DISCHARGE"})
    void ownCurrentAndALeakAreNeverToldApart(TroubleCause plant) throws Exception {
        for (Row row : rows(plant)) {
            assertTrue(row.answer().contains(TroubleCause.OWN_CURRENT.words()), row.answer());
            assertTrue(row.answer().contains(TroubleCause.SELF_DISCHARGE.words()), row.answer());
            assertTrue(row.answer().contains(TroubleCause.OWN_CURRENT.check()), row.answer());
        }
    }

    /** Without amp-hours one is a percentage of the other. */
    @ParameterizedTest
    @EnumSource(names = {"CAPACITY_LARGE", "CAPACITY_SMALL", "SCALE"})
    void capacityAndShuntRatingAreToldApartByAmpHoursAlone(TroubleCause plant) throws Exception {
        int without = 0;
        for (long seed = FIRST; seed <= LAST && without < 3; seed++) {
            Row row = TroubleTable.row(seed, plant);
            boolean amps = row.hut().notesAmpHours || row.hut().notesCharged;
            if (row.verdict() == Verdict.NOT_PLANTED || amps) {
                continue;
            }
            without++;
            assertTrue(row.answer().contains(TroubleCause.SCALE.words()), row.answer());
            assertTrue(row.answer().contains("amp-hours typed in"), row.answer());
            assertTrue(row.answer().contains(TroubleCause.SCALE.check()), row.answer());
        }
        assertTrue(without > 0);
    }

    @ParameterizedTest
    @ValueSource(longs = {901, 902, 903, 904, 905, 906, 907, 908, 909, 910, 911, 912})
    void aRightSystemHasNothingWrong(long seed) throws Exception {
        Row row = TroubleTable.row(seed, null);
        assertEquals(Verdict.RIGHT, row.verdict(), row.hut() + ": " + row.answer());
        assertFalse(row.answer().contains("check"), row.answer());
    }
}
