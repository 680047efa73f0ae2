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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The examples of an owner's commands in the user guide print what stands below. */
class SizeDocumentTest {
    private static final Path PAGE = Path.of("docs", "user-guide.md");

    @ParameterizedTest
    @ValueSource(strings = {"size", "ahead", "symptom", "changed"})
    void theOutputInTheUserGuideIsTheRealOne(String command) throws IOException {
        String page = Files.readString(PAGE);
        Matcher example =
                Pattern.compile("(?s)```\ngauge-sim (" + command + " .*?)\n```\n\n```\n(.*?)```\n")
                        .matcher(page);
        assertTrue(example.find());
        List<String> words = new ArrayList<>();
        Matcher word =
                Pattern.compile("\"([^\"]*)\"|(\\S+)")
                        .matcher(example.group(1).replace("\\\n", " "));
        while (word.find()) {
            words.add(word.group(1) == null ? word.group(2) : word.group(1));
        }
        FakeTerminal terminal = new FakeTerminal();
        assertEquals(ExitCodes.OK, terminal.run(words.toArray(new String[0])), terminal.err());
        if (Boolean.getBoolean("golden.update")) {
            Files.writeString(
                    PAGE,
                    page.substring(0, example.start(2))
                            + terminal.out()
                            + page.substring(example.end(2)));
            return;
        }
        assertEquals(terminal.out(), example.group(2));
    }
}
