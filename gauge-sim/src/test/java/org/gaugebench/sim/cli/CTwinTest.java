package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.gaugebench.core.settings.ChemistryPreset;
import org.gaugebench.core.settings.GaugeSettings;
import org.gaugebench.core.settings.Setting;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The core in C does what the core in Java does: register by register over vectors, and report by
 * report at the end of the pipe. Needs make and a C compiler; without them it is skipped and says
 * so.
 */
class CTwinTest {
    private static final Path PROJECT = FakeTerminal.scenarios().getParent();
    private static final Path SOURCES = PROJECT.resolve("gauge-core/c");
    private static final Path OUT = PROJECT.resolve("gauge-core/target/c-test");
    private static final Path TWIN = OUT.resolve("gauge-twin");

    /** A build of the twin takes ten seconds on one busy core. */
    private static final int LONGEST_MINUTES = 5;

    @TempDir Path folder;

    private record Ended(int code, String out, String err) {}

    @BeforeAll
    static void build() throws Exception {
        String compiler = has("gcc") ? "gcc" : "cc";
        assumeTrue(
                has("make") && has(compiler),
                "the C twin is not tested: make and a C compiler are needed");
        Ended make = run("make", "-s", "-C", SOURCES.toString(), "CC=" + compiler, "OUT=" + OUT);
        assertEquals(0, make.code, make.err);
    }

    private static boolean has(String program) throws Exception {
        try {
            return run(program, "--version").code == 0;
        } catch (IOException e) {
            return false;
        }
    }

    private static Ended run(String... words) throws Exception {
        Path out = Files.createTempFile("twin", ".out");
        Path err = Files.createTempFile("twin", ".err");
        try {
            Process process =
                    new ProcessBuilder(words)
                            .redirectOutput(out.toFile())
                            .redirectError(err.toFile())
                            .start();
            process.getOutputStream().close();
            assertTrue(process.waitFor(LONGEST_MINUTES, TimeUnit.MINUTES), words[0] + " hangs");
            return new Ended(process.exitValue(), text(out), text(err));
        } finally {
            Files.delete(out);
            Files.delete(err);
        }
    }

    private static String text(Path file) throws IOException {
        return Files.readString(file, StandardCharsets.UTF_8);
    }

    private void write(String scenario, String until) {
        List<String> words = new ArrayList<>(List.of("vectors", "--out", folder.toString()));
        if (until != null) {
            words.addAll(List.of("--until", until));
        }
        words.add(FakeTerminal.scenarios().resolve(scenario).toString());
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(0, terminal.run(words.toArray(new String[0])), terminal.err());
    }

    @ParameterizedTest
    @CsvSource({
        "edge-cases/a-memory-that-dies.yaml, 6 h",
        "edge-cases/two-days-without-power.yaml, 26 h",
        "edge-cases/a-rest-that-sets-the-count-right.yaml,",
        "edge-cases/a-zero-adjustment-with-a-lamp-on.yaml,",
        "edge-cases/a-small-load-that-makes-no-charge.yaml,",
        "edge-cases/a-capacity-edited-on-the-way.yaml,",
        "first-steps/a-week-in-the-hut.yaml, 12 h",
    })
    void everyRegisterAfterEveryCallIsThatOfTheCore(String scenario, String until)
            throws Exception {
        write(scenario, until);
        Ended twin = run(TWIN.toString(), "vectors", folder.toString());
        assertEquals(0, twin.code, twin.err);
        assertTrue(twin.out.contains(" rows agree"), twin.out);
    }

    /** Fixed seeds; another run draws others with -Dgaugebench.propertySeed. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void aLifeThatNoScenarioTellsIsTheSameInBoth(long seed) throws Exception {
        long drawn = Long.getLong("gaugebench.propertySeed", 0) * 1_000 + seed;
        RandomLife.write(folder, drawn, 20_000);
        Ended twin = run(TWIN.toString(), "vectors", folder.toString());
        assertEquals(0, twin.code, "seed " + drawn + ": " + twin.err);
    }

    @Test
    void aFigureThatDiffersIsNamedWithItsRow() throws Exception {
        write("edge-cases/a-zero-adjustment-with-a-lamp-on.yaml", null);
        Path vectors = folder.resolve("vectors.csv");
        List<String> rows = new ArrayList<>(Files.readAllLines(vectors));
        String[] cells = rows.get(20).split(",", -1);
        int counts = List.of(rows.get(0).split(",", -1)).indexOf("shunt_counts");
        cells[counts] = String.valueOf(Integer.parseInt(cells[counts]) + 1);
        rows.set(20, String.join(",", cells));
        Files.write(vectors, rows);
        Ended twin = run(TWIN.toString(), "vectors", folder.toString());
        assertEquals(1, twin.code, twin.out);
        assertTrue(twin.err.contains("vectors.csv:21: row 20: SHUNT_COUNTS is "), twin.err);
    }

    @Test
    void aChangeOfNoSettingIsRefused() throws Exception {
        write("edge-cases/a-capacity-edited-on-the-way.yaml", null);
        Path vectors = folder.resolve("vectors.csv");
        String rows = Files.readString(vectors);
        assertTrue(rows.contains(",settings,capacity="), "it changes the capacity on the way");
        Files.writeString(vectors, rows.replace(",settings,capacity=", ",settings,size="));
        Ended twin = run(TWIN.toString(), "vectors", folder.toString());
        assertEquals(2, twin.code, twin.out);
        assertTrue(twin.err.contains("KEY=VALUE of a known setting"), twin.err);
    }

    @Test
    void aFolderWithoutVectorsIsRefused() throws Exception {
        Ended twin = run(TWIN.toString(), "vectors", folder.toString());
        assertEquals(2, twin.code, twin.err);
        assertTrue(twin.err.contains("settings.csv: cannot be opened"), twin.err);
    }

    @ParameterizedTest
    @ValueSource(ints = {12_000, 24_000, 51_200})
    void thePresetsAreThoseOfTheCore(int nominalMillivolts) throws Exception {
        for (ChemistryPreset preset : ChemistryPreset.values()) {
            GaugeSettings settings = preset.builder(nominalMillivolts).build();
            StringBuilder expected = new StringBuilder();
            for (Setting setting : Setting.values()) {
                expected.append(setting.key()).append(',').append(settings.get(setting));
                expected.append(',').append(setting.unit()).append('\n');
            }
            String code = String.valueOf(preset.code());
            Ended twin = run(TWIN.toString(), "preset", code, "" + nominalMillivolts);
            assertEquals(expected.toString(), twin.out, preset.name());
        }
    }

    @ParameterizedTest
    @CsvSource({
        "edge-cases/a-capacity-edited-on-the-way.yaml,",
        "edge-cases/a-cut-in-the-middle-of-a-save.yaml, text",
        "edge-cases/ten-cuts-while-cranking.yaml, one",
        "edge-cases/an-adjustment-that-is-lost.yaml, one text",
    })
    void atTheEndOfThePipeItsReportIsThatOfTheCore(String scenario, String form) {
        String file = FakeTerminal.scenarios().resolve(scenario).toString();
        FakeTerminal piped = new FakeTerminal();
        String device = "'" + TWIN + "'" + (form == null ? "" : " " + form);
        int code = piped.run("run", "--device", device, file);
        assumeFalse(
                piped.err().contains("there is no option '--device'"),
                "the twin is not tested at the end of a pipe: this version has no run --device");
        FakeTerminal core = new FakeTerminal();
        assertEquals(core.run("run", file), code, piped.err());
        assertEquals(core.out(), withoutProgram(piped.out()));
    }

    /** The report's lines on the program, which a run of the core does not have. */
    private static String withoutProgram(String report) {
        return report.replaceFirst("(?m)^  program .*\n(?: {18}.*\n)*", "");
    }
}
