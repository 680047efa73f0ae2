package org.gaugebench.core.saved;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/**
 * How often the schedule writes in a year, and when a memory is worn out by it. The figures are
 * counted by driving the schedule through days of one-second ticks, and the tables in {@code
 * docs/saved-state.md} must be the ones worked out here.
 */
class WriteBudgetTest {
    private static final long AMP_HOUR = 3_600_000_000_000L;
    private static final long CAPACITY = 100 * AMP_HOUR;
    private static final int DAYS = 20;
    private static final int SECONDS_OF_A_DAY = 86_400;
    private static final int[] SLOTS = {2, 4, 8, 16, 64};
    private static final int[] CYCLES = {10_000, 100_000, 1_000_000};

    /** Whole saves of a year of 365 days, of which the first twenty were counted. */
    private record Year(String name, long saves) {}

    /**
     * So much out and so much in each day; an anchor a day unless nothing moves; dips on request.
     */
    private static Year year(String name, long ampHoursEachWay, boolean dips) {
        SaveSchedule schedule =
                new SaveSchedule(CAPACITY, SaveSchedule.DEFAULT_STEP_PARTS_PER_MILLION, 12_000);
        long charge = CAPACITY;
        long gross = 0;
        long move = 2 * ampHoursEachWay * AMP_HOUR / SECONDS_OF_A_DAY;
        schedule.powerUp(charge, gross);
        int saves = 0;
        for (int second = 0; second < DAYS * SECONDS_OF_A_DAY; second++) {
            int ofDay = second % SECONDS_OF_A_DAY;
            charge += ofDay < SECONDS_OF_A_DAY / 2 ? -move : move;
            gross += move;
            if (ofDay == SECONDS_OF_A_DAY - 1 && move > 0) {
                charge = CAPACITY;
                schedule.anchored();
            }
            int microvolts = dips && second % 60 < 5 ? 11_500_000 : 12_500_000;
            if (schedule.due(charge, gross, microvolts, 1_000) != SaveReason.NONE) {
                saves++;
                schedule.attempted(charge, gross);
            }
        }
        return new Year(name, saves * 365L / DAYS);
    }

    private static List<Year> years() {
        return List.of(
                year("80 Ah moved a day", 40, false),
                year("80 Ah moved a day, a dip a minute", 40, true),
                year("80 Ah out and 80 Ah in a day", 80, false),
                year("parked", 0, false));
    }

    @Test
    void eightyAmpHoursADayWriteAStepAtATime() {
        Year year = years().get(0);
        // 160 steps a day; the anchor that follows the last one is a save of its own at most.
        assertTrue(year.saves >= 158 * 365 && year.saves <= 161 * 365, year.toString());
    }

    @Test
    void dipsAtMostDoubleTheWrites() {
        List<Year> years = years();
        assertTrue(years.get(1).saves > years.get(0).saves * 3 / 2, "the worst case is met");
        assertTrue(years.get(1).saves <= years.get(0).saves * 2 + 365, years.toString());
    }

    @Test
    void aParkedSystemWritesOnceADay() {
        assertEquals(365, years().get(3).saves);
    }

    @Test
    void theTablesOfTheDocumentAreTheseFigures() throws IOException {
        List<String> rows = new ArrayList<>();
        for (Year year : years()) {
            rows.add(String.format(Locale.ROOT, "| %s | %d |", year.name, year.saves));
        }
        long saves = years().get(0).saves;
        for (int slots : SLOTS) {
            StringBuilder row = new StringBuilder("| " + slots + " |");
            for (int cycles : CYCLES) {
                double worn = (double) cycles * slots / saves;
                row.append(String.format(Locale.ROOT, worn < 10 ? " %.2f |" : " %.0f |", worn));
            }
            rows.add(row.toString());
        }
        System.out.println("write budget:\n" + String.join("\n", rows));
        String document = Files.readString(Path.of("docs", "saved-state.md"));
        for (String row : rows) {
            assertTrue(document.contains(row), "docs/saved-state.md lacks: " + row);
        }
    }
}
