package org.gaugebench.sim.device;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A command becomes words by the page's rules, and by no shell's. */
class PipeCommandTest {
    private static List<String> words(String text) {
        return PipeCommand.of(text, 1).words();
    }

    @Test
    void spacesPartWordsAndQuotesKeepThem() {
        assertEquals(List.of("./my-gauge", "--fast"), words("  ./my-gauge   --fast "));
        assertEquals(List.of("a b", "it's", "\"q\"", ""), words("'a b' \"it's\" '\"q\"' ''"));
        assertEquals(List.of("sh", "-c", "x y; z"), words("sh -c 'x y; z'"));
        assertEquals(List.of("joined up"), words("jo'ined 'up"));
    }

    @Test
    void nothingThatAShellWouldDoIsDone() {
        assertEquals(
                List.of("a\\b", "$HOME", "*", "~", ">", "|", ";", "&&", "`x`"),
                words("a\\b $HOME * ~ > | ; && `x`"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "   ", "''", "'open", "a \"b", "a\tb", "a\nb"})
    void whatCannotBeSplitIsRefused(String text) {
        String message =
                assertThrows(IllegalArgumentException.class, () -> words(text)).getMessage();
        assertTrue(message.contains("expected"), message);
    }
}
