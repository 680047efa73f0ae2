package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What becomes of a log's gaps, restarts and repeated times. */
class AdoptGapsTest {
    @TempDir private Path folder;
    private AdoptBench bench;

    @BeforeEach
    void write() throws IOException {
        bench = new AdoptBench(folder);
    }

    /** A log in straight lines repeats a time where the current steps: 1 A, then 3 A, then 0. */
    @Test
    void aRepeatedTimeIsAStepOfAStraightLine() throws IOException {
        bench.writeLog(
                """
                time_s,current_A,uptime_s
                0,1,0
                60,1,60
                60,3,60
                120,3,120
                120,0,120
                180,0,180
                """);
        bench.adopt(0, "--hold", "linear");
        assertEquals(
                "time_s,current_A\n0,1\n60,1\n60.001,3\n120,3\n120.001,0\n180,0\n", bench.table());
        bench.adopt(0, "--hold", "previous", "--force", "on");
        assertEquals("time_s,current_A\n0,1\n60,3\n120,0\n180,0\n", bench.table());
    }

    @Test
    void aRowHoldsBackwardsOrForwardsAsTold() throws IOException {
        bench.writeLog("time_s,current_A,uptime_s\n0,1,0\n60,2,60\n120,3,120\n");
        bench.adopt(0, "--hold", "next");
        assertEquals("time_s,current_A\n0,2\n60,3\n120,3\n", bench.table());
        bench.adopt(0, "--hold", "previous", "--force", "on");
        assertEquals("time_s,current_A\n0,1\n60,2\n120,3\n", bench.table());
    }

    /** No row is missing: the uptime alone tells. */
    @Test
    void aRestartBetweenTwoRowsIsFound() throws IOException {
        StringBuilder rows = new StringBuilder("time_s,current_A,uptime_s\n");
        for (int second = 0; second <= 1_200; second += 60) {
            int uptime = second <= 600 ? second + 9_000 : second - 625;
            rows.append(second).append(",-1.5,").append(uptime).append('\n');
        }
        bench.writeLog(rows.toString());
        FakeTerminal adopted = bench.adopt(0);
        assertTrue(adopted.out().contains("gaps: 0, restarts: 1"), adopted.out());
        String text = Files.readString(bench.scenario());
        assertTrue(text.contains("{at: 10 min, set: {gauge.power: off}}"), text);
        assertTrue(text.contains("{at: 10 min 25 s, set: {gauge.power: on}}"), text);
        assertTrue(text.contains("{throughout: true, to: 10 min, reading"), text);
        assertTrue(text.contains("from: 11 min, to: 20 min, reading: state-of-charge"), text);
        assertTrue(text.contains("because: \"0.01 Ah flowed unseen"), "1.5 A for 25 s");
    }

    @Test
    void tooManyGapsAreToldAtOnce() throws IOException {
        StringBuilder rows = new StringBuilder("time_s,current_A,uptime_s\n");
        for (int i = 0; i < 5_000; i++) {
            rows.append(i * 1_200).append(",0,").append(i * 1_200).append('\n');
        }
        bench.writeLog(rows.toString());
        String err = bench.adopt(2).err();
        assertTrue(err.contains("4999 gaps and 0 restarts are more than a scenario can"), err);
        // Ten weeks at rest: the band is claimed for as long as it must be a number.
        bench.adopt(0, "--gap", "20 min", "--tick", "60 s");
        String text = Files.readString(bench.scenario());
        assertTrue(text.contains("to: 18 d 18 h, reading: state-of-charge, within: band"), text);
        assertTrue(text.contains("from: 18 d 18 h 1 min, to: 69 d 10 h 20 min, reading"), text);
    }

    @Test
    void aGapWithCurrentNeedsAnAnswer() throws IOException {
        FakeTerminal asked = bench.adopt(2, "--gap-current", "");
        assertTrue(
                asked.err()
                        .contains(
                                "Hut complaint.csv:1563: gap of 3 h before this row, with -0.120 A"
                                        + " before and -0.120 A after it"),
                asked.err());
        assertTrue(asked.err().contains("Hut complaint.csv:2464: gap of 21 min "), asked.err());
        assertEquals(List.of(), bench.left());
        // The log's own count tells of the first gap; across a restart nobody believes it.
        FakeTerminal counted = bench.adopt(2, "--gap-current", "", "--counter", "count_Ah");
        assertFalse(counted.err().contains(":1563:"), counted.err());
        assertTrue(counted.err().contains(":2464:"), counted.err());
        bench.adopt(0, "--counter", "count_Ah");
        String text = Files.readString(bench.scenario());
        assertTrue(text.contains("own count moved by flowed evenly"), text);
        // Four pump runs of 4 min in 3 h, and the logger: 1.42 Ah in 3 h.
        double moved = 0;
        for (int minute = 26 * 60 + 1; minute <= 29 * 60; minute++) {
            moved += HutLog.microamps(minute) / 1e6 / 60;
        }
        String row =
                bench.table()
                        .lines()
                        .filter(line -> line.startsWith("93600,"))
                        .findFirst()
                        .orElse("93600,0");
        assertEquals(moved / 3, AdoptBench.second(row), 1e-6);
    }

    /** By hand: the rows' amp-minutes, with 92 % of what flows in. */
    @Test
    void theCountIsThatOfTheRows() throws IOException {
        bench.adopt(0, "--gap-current", "zero");
        double percent = 70;
        for (int minute = 1; minute <= 2 * 1_440; minute++) {
            // Nothing in a gap; the row at its end holds from the gap on only in the log's view.
            boolean gap = minute > 26 * 60 && minute <= 29 * 60;
            gap |= minute > 44 * 60 && minute <= 44 * 60 + 21;
            double flowed = gap ? 0 : HutLog.microamps(minute) / 1e6 / 60;
            percent += (flowed > 0 ? 0.92 * flowed : flowed) / 60 * 100;
        }
        String claimed =
                Files.readString(bench.scenario())
                        .replaceFirst("(?s).*within: 0.1 %, of: ([0-9.]+) %.*", "$1");
        assertEquals(percent, Double.parseDouble(claimed), 1e-4, "four decimals are written");
    }

    @Test
    void aTimeFarAwayIsToldAndNotWaitedFor() throws IOException {
        bench.writeLog("time_s,current_A,uptime_s\n0,0,0\n60,0,60\n8000000000,0,8000000000\n");
        String err = bench.adopt(2).err();
        assertTrue(err.contains("the log is too long for this tick; check the time column"), err);
    }

    /** An uptime that fell, but says that power was there all the time: the unit contradicts. */
    @Test
    void anUptimeThatFellIsARestartWhateverItSays() throws IOException {
        bench.writeLog(
                """
                time_s,current_A,uptime_s
                0,-1,9000
                60,-1,9060
                120,-1,100
                180,-1,160
                """);
        assertTrue(bench.adopt(0).out().contains("restarts: 1"));
        String text = Files.readString(bench.scenario());
        assertTrue(text.contains("{at: 1 min, set: {gauge.power: off}}"), text);
        assertTrue(text.contains("{at: 1 min, set: {gauge.power: on}}"), text);
    }
}
