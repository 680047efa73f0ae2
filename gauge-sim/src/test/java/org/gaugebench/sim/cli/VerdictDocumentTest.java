package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The examples of {@code verdict} and {@code handover} in the user guide do what they say. */
class VerdictDocumentTest {
    private static final Path PAGE = Path.of("docs", "user-guide.md");

    @TempDir private Path folder;

    /** The words of a command, with its file moved into a folder of the test. */
    private String[] words(String command, String file) {
        List<String> words = new ArrayList<>();
        Matcher word = Pattern.compile("\"([^\"]*)\"|(\\S+)").matcher(command.replace("\\\n", " "));
        while (word.find()) {
            words.add(word.group(1) == null ? word.group(2) : word.group(1));
        }
        assertTrue(words.contains(file), command);
        words.replaceAll(each -> each.equals(file) ? folder.resolve(file).toString() : each);
        return words.toArray(new String[0]);
    }

    private static Matcher find(String page, String pattern) {
        Matcher found = Pattern.compile("(?s)" + pattern).matcher(page);
        assertTrue(found.find(), pattern);
        return found;
    }

    @Test
    void theVerdictInTheUserGuideIsTheRealOne() throws IOException {
        String page = Files.readString(PAGE);
        Matcher example =
                find(
                        page,
                        """
                        ```
                        (check,meter,gauge
                        .*?)```

                        ```
                        gauge-sim (verdict .*?)
                        ```

                        ```
                        (.*?)```
                        """);
        Files.writeString(folder.resolve("my-checks.csv"), example.group(1));
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(
                ExitCodes.FAILED,
                terminal.run(words(example.group(2), "my-checks.csv")),
                terminal.err());
        if (Boolean.getBoolean("golden.update")) {
            Files.writeString(
                    PAGE,
                    page.substring(0, example.start(3))
                            + terminal.out()
                            + page.substring(example.end(3)));
            return;
        }
        assertEquals(terminal.out(), example.group(3));
    }

    @Test
    void theSheetOfTheUserGuideIsWritten() throws IOException {
        Matcher example = find(Files.readString(PAGE), "```\ngauge-sim (handover .*?)\n```");
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(
                ExitCodes.OK, terminal.run(words(example.group(1), "hut.html")), terminal.err());
        assertTrue(Files.readString(folder.resolve("hut.html")).contains("Tide-gauge hut"));
    }
}
