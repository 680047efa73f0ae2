package org.gaugebench.sim.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The rules that the program knows are those of the core's page. */
class RequirementTest {
    private static final Path PAGE = Path.of("..", "gauge-core", "docs", "rules.md");
    private static final Path TABLE =
            Path.of("src", "main", "resources", "org", "gaugebench", "sim", "report")
                    .resolve(Requirement.RULES);

    @Test
    void theTableOfRulesIsThePagesOwn() throws IOException {
        StringBuilder expected = new StringBuilder();
        Matcher rule =
                Pattern.compile("(?m)^- \\*\\*([A-Z]\\d+)\\*\\* (.+)$")
                        .matcher(Files.readString(PAGE));
        while (rule.find()) {
            expected.append(rule.group(1)).append('\t').append(rule.group(2)).append('\n');
        }
        if (Boolean.getBoolean("golden.update")) {
            Files.writeString(TABLE, expected);
        }
        assertEquals(
                expected.toString(), Files.readString(TABLE), "-Dgolden.update=true rewrites it");
    }

    /** Each rule is what a scenario or a test of the core says that it shows. */
    @Test
    void everyRuleIsNamedByAScenarioOrATestOfTheCore() throws IOException {
        String claims =
                texts(Path.of("..", "scenarios"), ".yaml", Pattern.compile("(?ms)^covers:.*?\\]"))
                        + texts(
                                Path.of("..", "gauge-core", "src", "test"),
                                ".java",
                                Pattern.compile("(?s).+"));
        List<String> silent =
                Requirement.rules().stream()
                        .map(Requirement::number)
                        .filter(n -> !Pattern.compile("\\b" + n + "\\b").matcher(claims).find())
                        .toList();
        assertEquals(List.of(), silent);
    }

    /** What a pattern finds in the files below a folder. */
    private static String texts(Path folder, String suffix, Pattern part) throws IOException {
        StringBuilder found = new StringBuilder();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.filter(f -> f.toString().endsWith(suffix)).toList()) {
                Matcher matcher = part.matcher(Files.readString(file));
                if (matcher.find()) {
                    found.append(matcher.group()).append('\n');
                }
            }
        }
        return found.toString();
    }

    @Test
    void everyRuleIsThereOnce() {
        List<String> numbers = Requirement.rules().stream().map(Requirement::number).toList();
        assertEquals(numbers.size(), numbers.stream().distinct().count());
        for (String number :
                List.of("G1", "F13", "E4", "R5", "C2", "Z1", "S3", "D11", "B4", "M2")) {
            assertTrue(numbers.contains(number), number);
        }
    }
}
