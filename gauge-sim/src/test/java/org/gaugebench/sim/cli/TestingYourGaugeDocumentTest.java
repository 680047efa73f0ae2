package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The worked example of the page runs as it stands there, in a repository of its own. */
class TestingYourGaugeDocumentTest {
    private static final Path PAGE = Path.of("docs", "testing-your-gauge.md");

    @TempDir Path repository;
    private Path scenario;
    private Path requirements;
    private Path script;
    private String printed = "";

    private static String block(String page, String language) {
        Matcher fence =
                Pattern.compile("```" + language + "\n(.*?)```", Pattern.DOTALL).matcher(page);
        assertTrue(fence.find(), language);
        return fence.group(1);
    }

    @BeforeEach
    void makeRepository() throws IOException {
        Assumptions.assumeTrue(Files.isExecutable(Path.of("/bin/sh")), "no POSIX shell here");
        String page = Files.readString(PAGE);
        Path tests = Files.createDirectories(repository.resolve("gauge-tests/scenarios"));
        scenario = Files.writeString(tests.resolve("a-winter-night.yaml"), block(page, "yaml"));
        requirements =
                Files.writeString(tests.resolveSibling("requirements.csv"), block(page, "csv"));
        Path ci = Files.createDirectories(repository.resolve("ci"));
        script = Files.writeString(ci.resolve("gauge-tests.sh"), block(page, "sh"));
        // The jar is built after the tests: a 'java' in front of the real one takes the classes.
        Path java = Files.createDirectories(repository.resolve("bin")).resolve("java");
        Files.writeString(
                java,
                "#!/bin/sh\n[ \"$1 $2\" = '-jar gauge-sim.jar' ] || exit 99\nshift 2\n"
                        + "exec '"
                        + Path.of(System.getProperty("java.home"), "bin", "java")
                        + "' -cp '"
                        + System.getProperty("java.class.path")
                        + "' org.gaugebench.sim.cli.Main \"$@\"\n");
        assertTrue(java.toFile().setExecutable(true));
    }

    private int run(String shard) throws IOException, InterruptedException {
        ProcessBuilder builder = new ProcessBuilder("/bin/sh", script.toString());
        builder.directory(repository.toFile());
        String path = System.getenv().getOrDefault("PATH", "/usr/bin:/bin");
        builder.environment().put("PATH", repository.resolve("bin") + File.pathSeparator + path);
        builder.environment().put("SHARD", shard);
        builder.environment().remove("GAUGE_SIM_JAR");
        File output = repository.resolve("printed.txt").toFile();
        Process process = builder.redirectErrorStream(true).redirectOutput(output).start();
        assertTrue(process.waitFor(5, TimeUnit.MINUTES), "the script does not end");
        printed = Files.readString(output.toPath(), StandardCharsets.UTF_8);
        return process.exitValue();
    }

    @Test
    void theWorkedExampleIsGreenAndLeavesItsResults() throws Exception {
        assertEquals(0, run("1/1"), () -> printed);
        assertTrue(printed.contains("PASSED: 3 of 3 expectations hold"), printed);
        assertTrue(
                printed.endsWith("2 requirements: 2 shown, 0 not held, 0 without a scenario\n"),
                printed);
        Path results = repository.resolve("gauge-results");
        String xml = Files.readString(results.resolve("verdicts.xml"));
        assertTrue(xml.contains("name=\"covers\" value=\"HUT-1 HUT-2\""), xml);
        assertTrue(Files.exists(results.resolve("covers.html")));
    }

    @Test
    void aClaimThatFailsAPromiseWithoutScenarioAndABadFileTurnItRed() throws Exception {
        String text = Files.readString(scenario);
        Files.writeString(scenario, text.replace("at-most: 65 %", "at-most: 55 %"));
        assertEquals(1, run("1/1"), () -> printed);
        assertTrue(printed.contains("--at '0 d 14:00:00'"), printed);
        Files.writeString(scenario, text);
        Files.writeString(
                requirements, Files.readString(requirements) + "HUT-3,Nobody shows it.\n");
        assertEquals(1, run("1/1"), () -> printed);
        assertEquals(0, run("2/2"), () -> "another machine's part is empty here: " + printed);
        Files.writeString(scenario, text.replace("format: 1", "format: 1\nlods: {}"));
        assertEquals(2, run("1/1"), () -> printed);
        assertTrue(printed.contains("a-winter-night.yaml:3:1"), printed);
    }
}
