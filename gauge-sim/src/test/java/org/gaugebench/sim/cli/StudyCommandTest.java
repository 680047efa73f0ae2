package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.gaugebench.sim.report.SvgLabels;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Studies as users run them. The scenario has a closed form: an offset of a microvolt reads as 4/3
 * mA, so that after five hours 75 uV are half an ampere-hour, or half a percent of 100 Ah.
 */
class StudyCommandTest {
    private static final double OFFSET_U = 5_000 / Math.sqrt(3);

    @TempDir private Path folder;
    private StudyBench bench;

    @BeforeEach
    void fill() {
        bench = new StudyBench(folder);
    }

    private String[] cells(String csv, int line) {
        return bench.read(csv).split("\n", -1)[line].split(",", -1);
    }

    @Test
    void bothWaysGiveTheClosedForm() {
        bench.write("hours.study", StudyBench.STUDY.replace("devices: 60", "devices: 1000"));
        assertEquals(0, bench.run("study", "--csv", "@b.csv", "@hours.study"), bench.err());
        String[] end = cells("b.csv", 5);
        assertEquals("18000.000", end[1]);
        assertEquals("1000", end[2]);
        double drawn = Double.parseDouble(end[4]);
        double first = Double.parseDouble(end[13]);
        // The shunt's class is 0.29 % of five ampere-hours: 144 ppm beside 2887.
        double exact = Math.sqrt(OFFSET_U * OFFSET_U + 144.3 * 144.3);
        // Counts of the converter are 0.19 uV wide, which moves a slope by half a percent.
        assertEquals(exact, first, 0.005 * exact);
        // A rectangular sample of 1000: its spread is known to 1.4 %, here three times that.
        assertEquals(exact, drawn, 0.042 * exact);
        assertEquals(OFFSET_U * OFFSET_U / exact / exact, Double.parseDouble(end[17]), 0.01);
        assertEquals(0.997, Double.parseDouble(end[18]), 0.01, "drawn share of the offset");
        // Limits: 95 % of a rectangle against 1.96 u.
        assertEquals(0.95 * 5_000, Double.parseDouble(end[10]), 150);
        assertEquals(1.96 * exact, Double.parseDouble(end[15]), 60);
        assertTrue(bench.flat().contains("nothing expected"), bench.out());
        assertTrue(bench.out().lines().allMatch(it -> it.length() <= 80), bench.out());
    }

    @Test
    void firstOrderLimitsAreRefusedWhereTheyLieTooFarOut() {
        bench.write(
                "hours.study",
                StudyBench.STUDY.replace(
                        "devices: 60", "devices: {known-to: 0.05 %, at-most: 2000}"));
        assertEquals(0, bench.run("study", "@hours.study"), bench.err());
        assertTrue(
                bench.flat().contains("First-order limits are not to be used here:"), bench.out());
        assertTrue(bench.flat().contains("0.05 % was asked for (JCGM 101, 7.9)"), bench.out());
        assertFalse(bench.flat().contains("2000 devices"), "it stops when it knows enough");
    }

    @Test
    void sameBytesForAnyNumberOfThreads() {
        String first = "";
        for (String threads : List.of("1", "2", "7")) {
            assertEquals(0, bench.run(whole(threads)), bench.err());
            String all = bench.out() + bench.read("b.csv") + bench.read("d.csv");
            String picture = bench.read("b.svg");
            assertEquals(List.of(), SvgLabels.troubles(picture));
            assertTrue(first.isEmpty() || first.equals(all + picture), threads + " threads");
            first = all + picture;
        }
        bench.write("hours.study", StudyBench.STUDY + "seed: 2\n");
        bench.run(whole("2"));
        assertNotEquals(first, bench.out() + bench.read("b.csv"), "a seed that changes nothing");
    }

    private static String[] whole(String threads) {
        return ("study --threads "
                        + threads
                        + " --csv @b.csv --devices-csv @d.csv --picture @b.svg"
                        + " @hours.study")
                .split(" ", -1);
    }

    @Test
    void shardsMergeToTheSameBytes() {
        bench.write(
                "hours.study",
                StudyBench.STUDY.replace(
                                "devices: 60",
                                "devices: {known-to: 0.3 %, at-most: 205, block: 20}")
                        + "vary:\n  loads.logger.current: [1 A, 2 A]\n"
                        + "expect: {within: 0.4 %, because: \"so it is\"}\n");
        assertEquals(1, bench.run(whole("2")), bench.err());
        String whole = bench.out() + bench.read("b.csv") + bench.read("d.csv");
        assertTrue(bench.flat().contains("NO: "), bench.out());
        assertTrue(bench.flat().contains("100 devices, in blocks of 20"), "stopped before the end");
        for (int i = 1; i <= 3; i++) {
            String[] words =
                    "study --threads 1 --shard %s/3 --rows @p%s.rows @hours.study"
                            .formatted(i, i)
                            .split(" ", -1);
            assertEquals(0, bench.run(words), bench.err());
        }
        String[] words =
                ("study merge --threads 2 --csv @c.csv --devices-csv @e.csv @hours.study @p3.rows"
                                + " @p1.rows @p2.rows")
                        .split(" ", -1);
        assertEquals(1, bench.run(words), bench.err());
        assertEquals(whole, bench.out() + bench.read("c.csv") + bench.read("e.csv"));
    }

    @Test
    void aDeviceRunsAgainByItsNumber() {
        assertEquals(0, bench.run("study", "--devices-csv", "@d.csv", "@hours.study"));
        String[] row = cells("d.csv", 17);
        assertEquals("17", row[1]);
        assertEquals(0, bench.run("study", "--device", "17", "@hours.study"), bench.err());
        String scenario = bench.out();
        bench.write("device.yaml", scenario);
        assertTrue(scenario.contains("seed: " + row[2]), scenario);
        // The run folds digests and the study does not; the reading is the same all the same.
        assertEquals(0, bench.run("run", "--trace", "@t.csv", "@device.yaml"), bench.err());
        List<String> head = List.of(cells("t.csv", 0));
        String[] end = cells("t.csv", 301);
        double truth = Double.parseDouble(end[head.indexOf("true_soc_percent")]);
        double shown = Double.parseDouble(end[head.indexOf("gauge_soc_percent")]);
        assertEquals(Double.parseDouble(row[5]), (shown - truth) * 1e4, 0.01);
    }

    @Test
    void theClaimIsAnsweredWithItsDoubt() {
        bench.write("a.study", StudyBench.STUDY + "expect: {within: 0.6 %}\n");
        assertEquals(1, bench.run("study", "@a.study"), bench.err());
        assertTrue(bench.flat().contains("NOT DECIDED: 60 of 60 devices stay within ±0.6 %"));
        bench.write("b.study", StudyBench.STUDY + "expect: {devices: 90 %, within: 0.6 %}\n");
        assertEquals(0, bench.run("study", "@b.study"), bench.err());
        assertTrue(bench.flat().contains("YES: 60 of 60 devices"), bench.out());
        bench.write("c.study", StudyBench.STUDY + "expect: {within: 0.2 %}\n");
        assertEquals(1, bench.run("study", "@c.study"), bench.err());
        assertTrue(bench.flat().contains("NO: "), bench.out());
    }

    @Test
    void jsonIsOneObject() {
        assertEquals(0, bench.run("study", "--json", "@hours.study"), bench.err());
        assertEquals(1, bench.out().lines().count());
        for (String part :
                List.of(
                        "\"formatVersion\":1",
                        "\"cause\":\"sensor.offset\"",
                        "\"answer\":\"nothing_asked\"",
                        "\"errorUnit\":\"parts_per_million\"",
                        "\"shape\":\"normal\"")) {
            assertTrue(bench.out().contains(part), part + " in " + bench.out());
        }
    }

    private void assertRefused(String message, String... words) {
        assertEquals(2, bench.run(words), bench.out());
        assertTrue(bench.err().contains(message), bench.err());
    }

    @Test
    void partsThatAreNotTheStudyAreRefused() {
        bench.run("study --shard 1/2 --rows @p1.rows @hours.study".split(" ", -1));
        bench.run("study --shard 2/2 --rows @p2.rows @hours.study".split(" ", -1));
        String rows = bench.read("p2.rows");
        assertRefused(
                "30 of 60 devices are missing, the first is number 2",
                "study merge @hours.study @p1.rows".split(" ", -1));
        assertRefused(
                "device 1 is in ", "study merge @hours.study @p1.rows @p1.rows".split(" ", -1));
        assertRefused("no such file", "study merge @hours.study @p9.rows".split(" ", -1));
        bench.write("cut.rows", rows.substring(0, rows.length() / 2));
        assertRefused("cut.rows:", "study merge @hours.study @p1.rows @cut.rows".split(" ", -1));
        int digit = rows.indexOf("\n0,2,") + 5;
        char other = rows.charAt(digit) == '1' ? '2' : '1';
        String changed = rows.substring(0, digit) + other + rows.substring(digit + 1);
        bench.write("changed.rows", changed.replaceAll("(?m)^0,2,-", "0,2,"));
        assertRefused(
                "count and checksum do not fit",
                "study merge @hours.study @p1.rows @changed.rows".split(" ", -1));
        bench.write("other.study", StudyBench.STUDY + "seed: 9\n");
        assertRefused(
                "these devices belong to another study",
                "study merge @other.study @p1.rows @p2.rows".split(" ", -1));
        bench.write("old.rows", rows.replaceFirst("program .*", "program 0.0.0"));
        assertRefused("count and checksum", "study merge @hours.study @old.rows".split(" ", -1));
        assertRefused(
                "expected 'gauge-sim study rows 1'",
                "study merge @hours.study @hours.yaml".split(" ", -1));
    }

    @Test
    void commandLinesThatMeanNothingAreRefused() {
        assertRefused("no study was named", "study");
        assertRefused("go together", "study", "--shard", "1/2", "@hours.study");
        assertRefused("go together", "study", "--rows", "@x.rows", "@hours.study");
        assertRefused(
                "a shard has devices and no result",
                "study --json --shard 1/2 --rows @x.rows @hours.study".split(" ", -1));
        for (String none : List.of("0", "-1", "61", "99999999")) {
            assertRefused(
                    "--device: the study has devices 1 to 60, such as 30; it has none of number "
                            + none,
                    "study",
                    "--device=" + none,
                    "@hours.study");
        }
        assertEquals(0, bench.run("study", "--device", "60", "@hours.study"), bench.err());
        assertRefused("--variant goes with", "study", "--variant", "x", "@hours.study");
        assertRefused("cannot write", "study", "--csv", "@no/b.csv", "@hours.study");
        assertRefused("there is no such file", "study", "@none.study");
        assertFalse(bench.exists("x.rows"));
    }
}
