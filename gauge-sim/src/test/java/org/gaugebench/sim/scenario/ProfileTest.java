package org.gaugebench.sim.scenario;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.gaugebench.sim.logs.ProfileReader;
import org.gaugebench.sim.logs.TimeProfile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A load, a charger or a voltage that follows a file beside the scenario. */
class ProfileTest {
    private static final String HOUSE = "time_s,house_A\n0,0.5\n3600,2.25\n7200,0\n";
    private static final String LOAD =
            "loads: {house: {profile: {file: house.csv, time: time_s, current: house_A, unit: A,"
                    + " positive: discharge}}}\n";

    @TempDir private Path folder;

    private Scenario read(String csv, String block) throws IOException, ScenarioException {
        Files.writeString(folder.resolve("house.csv"), csv);
        Path file = folder.resolve("hut.yaml");
        Files.writeString(file, Samples.SMALLEST + block);
        return ScenarioReader.read(file);
    }

    private String problemsOf(String csv, String block) throws IOException {
        try {
            read(csv, block);
            return "";
        } catch (ScenarioException e) {
            return e.render();
        }
    }

    private static TimeProfile of(LoadSpec load) {
        ProfileSpec profile = load.traits().profile();
        assertTrue(profile != null);
        return profile.values();
    }

    @Test
    void figuresAreReadInTheDirectionOfTheLoad() throws IOException, ScenarioException {
        TimeProfile values = of(read(HOUSE, LOAD).loads().get(0));
        assertEquals(3, values.rows());
        assertEquals(3_600_000, values.millis(1));
        assertEquals(2_250_000, values.micros(1));
        String turned = HOUSE.replace(",0.5", ",-0.5").replace(",2.25", ",-2.25");
        assertEquals(values, of(read(turned, LOAD.replace("discharge", "charge")).loads().get(0)));
    }

    /** The rows are the same, however the file writes them. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "\uFEFFtime_s;house_A;x\n0;0,5;1\n3600;2,25;1\n7200;0;1\n",
                "time_s\thouse_A\r\n0\t0.5\r\n3600.0001\t2.25\r\n7200\t0.0000004\r\n",
                "house_A,time_s\n\"0.5\",0\n2.25,3.6e3\n0,7200\n"
            })
    void layoutDoesNotMatter(String csv) throws IOException, ScenarioException {
        Scenario plain = read(HOUSE, LOAD);
        Scenario other = read(csv, LOAD);
        assertEquals(of(plain.loads().get(0)), of(other.loads().get(0)));
        assertEquals(ScenarioWriter.digest(plain), ScenarioWriter.digest(other));
    }

    @Test
    void theDigestSeesAnEditedFile() throws IOException, ScenarioException {
        String before = ScenarioWriter.digest(read(HOUSE, LOAD));
        assertNotEquals(before, ScenarioWriter.digest(read(HOUSE.replace("2.25", "2.26"), LOAD)));
        assertNotEquals(before, ScenarioWriter.digest(read(HOUSE.replace("3600", "3601"), LOAD)));
        assertNotEquals(before, ScenarioWriter.digest(read(HOUSE + "7201,0\n", LOAD)));
        assertNotEquals(
                before,
                ScenarioWriter.digest(
                        read(HOUSE, LOAD.replace("unit: A", "unit: A, at-end: repeats"))));
        String milli = HOUSE.replace("_A", "_mA").replace("0.5", "500").replace("2.25", "2250");
        assertEquals(
                before,
                ScenarioWriter.digest(
                        read(milli, LOAD.replace("_A", "_mA").replace("unit: A", "unit: mA"))));
    }

    @Test
    void theResolvedTextReadsBackBesideTheSameFile() throws IOException, ScenarioException {
        Path reference = Path.of("docs", "reference-scenario.yaml");
        Scenario first = ScenarioReader.read(reference);
        String resolved = ScenarioWriter.resolved(first);
        Scenario again = ScenarioReader.read("again", resolved, reference);
        assertEquals(Samples.withoutMarks(first), Samples.withoutMarks(again));
        assertEquals(resolved, ScenarioWriter.resolved(again));
        assertTrue(first.sensor().voltageProfile() != null);
    }

    @Test
    void aScenarioCanInsistOnTheFiguresItWasWrittenFor() throws IOException, ScenarioException {
        String content = of(read(HOUSE, LOAD).loads().get(0)).content();
        String insists = LOAD.replace("unit: A", "unit: A, content: " + content);
        assertEquals("", problemsOf(HOUSE, insists));
        String said = problemsOf(HOUSE.replace("2.25", "2.26"), insists);
        assertTrue(said.contains("hut.yaml:6:"), said);
        assertTrue(said.contains("not " + content + "; take the line out"), said);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "time_s,house_A;0,0.5;3600,NaN;7200,0    | 3:6: house_A: 'NaN' is not a number",
                "time_s,house_A;0,0.5;3600,;7200,0       | 3:6: house_A: the cell is empty",
                "time_s,house_A;0,0.5;3600;7200,0        | 3:6: house_A: the cell is empty",
                "time_s,house_A;0,0.5;,2;7200,0          | 3:1: time: the cell is empty",
                "time_s,house_A;0,0.5;7200,2;3600,0      | 4:1: time: the time does not rise",
                "time_s,house_A;0,0.5;3600,2;3600,0      | 4:1: time: the time does not rise",
                "time_s,house_A;-5,0.5;3600,2            | 2:1: time: a time before the start",
                "time_s,house_A;0,0.5;1e999,2            | 3:1: time: a time beyond every run",
                "time_s,house_A;0,0.5;3600,-2            | 3:6: house_A: '-2' flows into the",
                "time_s,house_A;0,0.5;3600,2001          | 3:6: house_A: '2001' is beyond",
                "time_s,house_A;0,0.5;3600,1e300         | 3:6: house_A: '1e300' is beyond",
                "time_s,house_A;0,0.5;3600,2 A           | 3:6: house_A: '2 A' is not a number",
                "time_s,house_A;s,A;0,0.5;3600,2         | 2:1: time: 's' is not a number",
                "time_s,other_A;0,0.5;3600,2             | 1:1: the figures: no column 'house_A'",
                "time_s,house_A,house_A;0,0.5,1          | 1:1: the figures: the column",
                "time_s,house_A;0,0.5                    | 1:1: one row under the header",
                "time_s,house_A                          | 1:1: no row under the header",
                "''                                      | 1:1: the file is empty",
            })
    void aBrokenFileIsToldWithLineAndColumn(String csv, String expected) throws IOException {
        String said = problemsOf(csv.replace(';', '\n'), LOAD);
        assertTrue(said.startsWith(folder.resolve("house.csv") + ":" + expected), said);
        // A row of units has two cells that are wrong; all else is wrong once.
        long told = said.lines().filter(line -> line.contains("house.csv:")).count();
        assertEquals(csv.contains(";s,A;") ? 2 : 1, told, said);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "time_s,house_mA | time_s  | house_mA | A | 1:8: the column 'house_mA' speaks of"
                        + " mA",
                "time_s,house_A  | time_s  | house_A  | mA | 1:8: the column 'house_A' speaks of A",
                "time_min,house  | time_min | house   | A | 1:1: time is read in seconds",
            })
    void aUnitOtherThanTheOneSaidIsRefused(
            String header, String time, String value, String unit, String expected)
            throws IOException {
        String block =
                LOAD.replace("time_s", time)
                        .replace("house_A", value)
                        .replace("unit: A", "unit: " + unit);
        String said = problemsOf(header + "\n0,1\n10,2\n", block);
        assertTrue(said.startsWith(folder.resolve("house.csv") + ":" + expected), said);
    }

    @Test
    void aGapIsRefusedWhereTheScenarioSaysSo() throws IOException {
        String block = LOAD.replace("unit: A", "unit: A, longest-gap: 59 min");
        String said = problemsOf(HOUSE, block);
        assertTrue(
                said.startsWith(folder.resolve("house.csv") + ":3:1: time: a gap of 1 h "), said);
        assertEquals("", problemsOf(HOUSE, block.replace("59 min", "1 h")));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "../house.csv",
                "/etc/house.csv",
                "sub/house.csv",
                "..csv",
                ".csv",
                "house.txt",
                "C:house.csv",
                "sub\\house.csv"
            })
    void onlyAFileBesideTheScenarioIsFound(String name) throws IOException {
        String said = problemsOf(HOUSE, LOAD.replace("house.csv", "'" + name + "'"));
        assertTrue(said.contains("hut.yaml:6:33: expected the name of a CSV file in the"), said);
    }

    @Test
    void noLinkLeadsOutOfTheFolder(@TempDir Path elsewhere) throws IOException {
        Path outside = Files.writeString(elsewhere.resolve("secret.csv"), HOUSE);
        Files.createSymbolicLink(folder.resolve("link.csv"), outside);
        String said = problemsOf(HOUSE, LOAD.replace("house.csv", "link.csv"));
        assertTrue(said.contains("link.csv is a link that leads out of the"), said);
        Files.createSymbolicLink(folder.resolve("inside.csv"), Path.of("house.csv"));
        assertEquals("", problemsOf(HOUSE, LOAD.replace("house.csv", "inside.csv")));
    }

    @Test
    void aTextThatIsNoFileHasNoFileBesideIt() {
        String said = Samples.problemsOf(Samples.SMALLEST + LOAD);
        assertTrue(said.contains("6:33: a scenario that is no file has no file beside it"), said);
    }

    @Test
    void aFileCanBeTooLarge() throws IOException {
        Path large = folder.resolve("large.csv");
        try (RandomAccessFile file = new RandomAccessFile(large.toFile(), "rw")) {
            file.setLength(ProfileReader.LARGEST_BYTES + 1);
        }
        String said = problemsOf(HOUSE, LOAD.replace("house.csv", "large.csv"));
        assertTrue(said.startsWith(large + ":1:1: the file is larger than 64 MiB"), said);
        StringBuilder rows = new StringBuilder("time_s,house_A\n");
        for (int i = 0; i <= ProfileReader.MOST_ROWS; i++) {
            rows.append(i).append(",1\n");
        }
        said = problemsOf(rows.toString(), LOAD);
        assertTrue(said.contains("house.csv:2000002:1: more than 2000000 rows"), said);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "positive: discharge      | unit: A       | 'positive' is missing",
                "file: house.csv,         | ''            | 'file' is missing",
                "unit: A,                 | ''            | 'unit' is missing",
                "time: time_s,            | ''            | 'time' is missing",
                "current: house_A,        | ''            | one column of figures under current",
                "current: house_A, unit   | power: house_A, unit | a power has no unit 'A'",
                "unit: A,                 | unit: V,      | 'unit' cannot be 'V'",
                "unit: A,                 | unit: A, power: house_A, | one column of figures",
                "house: {                 | house: {current: 2 A, | exactly one of current, power,",
                "house: {                 | 'house: {on-for: 1 h, every: 2 h, ' | times of a"
                        + " profile",
                "unit: A,                 | unit: A, between: held, | there is no key 'between'",
            })
    void whatIsSaidTwiceOrNotAtAllIsRefused(String part, String instead, String expected)
            throws IOException {
        String block = LOAD.replace(part, instead);
        if (part.startsWith("positive")) {
            block = LOAD.replace(", positive: discharge", "");
            block = block.replace("unit: A,  ", "unit: A");
        }
        String said = problemsOf(HOUSE, block);
        assertTrue(said.contains(expected), said);
    }

    @Test
    void theAmountOfALoadThatFollowsAFileCannotBeSet() throws IOException {
        String said =
                problemsOf(HOUSE, LOAD + "timeline: [{at: 1 h, set: {house.current: 1 A}}]\n");
        assertTrue(said.contains("nothing here is called 'house.current'"), said);
        assertEquals("", problemsOf(HOUSE, LOAD + "timeline: [{at: 1 h, set: {house: off}}]\n"));
    }

    @Test
    void aChargerGivesAndALoadMayBeAllowedToFeed() throws IOException {
        String panel =
                "chargers: {panel: {profile: {file: house.csv, time: time_s, current: house_A,"
                        + " unit: A, positive: charge}}}\n";
        assertEquals("", problemsOf(HOUSE, panel));
        String wrong = problemsOf(HOUSE, panel.replace("positive: charge", "positive: discharge"));
        assertTrue(wrong.contains("2:3: house_A: '0.5' flows out of the battery, and a"), wrong);
        String both = HOUSE.replace("0.5", "-0.5");
        assertTrue(problemsOf(both, LOAD).contains("2:3: house_A: '-0.5' flows into the"));
        assertEquals("", problemsOf(both, LOAD.replace("unit", "both-ways: allowed, unit")));
    }

    @Test
    void aPartsFileLiesBesideTheScenario() throws IOException, ScenarioException {
        Files.createDirectories(folder.resolve("parts"));
        Files.writeString(folder.resolve("parts").resolve("house.yaml"), LOAD);
        assertEquals(3, of(read(HOUSE, "parts: [house]\n").loads().get(0)).rows());
        Files.delete(folder.resolve("house.csv"));
        Files.writeString(folder.resolve("parts").resolve("house.csv"), HOUSE);
        try {
            ScenarioReader.read(folder.resolve("hut.yaml"));
            throw new AssertionError("found in the folder of the part");
        } catch (ScenarioException e) {
            assertTrue(e.render().contains("house.yaml:1:33: there is no file "), e.render());
        }
    }

    /** Otherwise a hundred seeds of a long log would not fit a machine. */
    @Test
    void allRunsOfAFileShareWhatWasRead() throws IOException, ScenarioException {
        read(HOUSE, LOAD + "vary: {battery.start: [50 %, 60 %]}\nseeds: 1..2\n");
        List<Scenario> runs = Variants.read(folder.resolve("hut.yaml"));
        assertEquals(4, runs.size());
        assertSame(of(runs.get(0).loads().get(0)), of(runs.get(3).loads().get(0)));
    }
}
