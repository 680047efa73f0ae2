package org.gaugebench.sim.live.lessons;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.gaugebench.house.TopLevelRule;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The list of words, and what is told about a file that replaces some of them. */
class WordsTest {
    @TempDir Path folder;

    private Words load(String text) throws IOException, TextException {
        return Words.load(Files.writeString(folder.resolve("deutsch.words"), text));
    }

    private String problem(String text) {
        TextException e = assertThrows(TextException.class, () -> load(text));
        assertEquals(1, e.problems().size(), e.render());
        return e.problems().get(0).toString().replace(folder + "/", "");
    }

    @Test
    void aFileReplacesLinesAndTheRestStaysEnglishAndIsListed() throws IOException, TextException {
        Words words =
                load(
                        """
                        # von mir
                        language = de

                        lesson-1.title = Zählen heißt
                          zusammenzählen
                        sheet.minutes = {0} Minuten
                        """);
        assertEquals("Zählen heißt zusammenzählen", words.text("lesson-1.title"));
        assertEquals("20 Minuten", words.text("sheet.minutes", 20));
        assertEquals("Name", words.text("sheet.name"));
        assertEquals(Words.english().keys().size() - 3, words.missing().size());
        assertTrue(words.missing().contains("sheet.name"));
        int all = Words.english().keys().size();
        assertTrue(
                words.missingText()
                        .startsWith(all - 3 + " of " + all + " texts stay English: safety, "),
                words.missingText());
        assertEquals("", Words.english().missingText());
        assertEquals(List.of(), Words.english().missing());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "lesson-1.titel = x|deutsch.words:1:1: there is no key 'lesson-1.titel'; did you"
                        + " mean 'lesson-1.title'?",
                "quite.another = x|deutsch.words:1:1: there is no key 'quite.another'; expected one"
                        + " such as 'lesson-1.title = Counting is adding'",
                "sheet.minutes = Minuten|deutsch.words:1:17: expected {0} as in the English text,"
                        + " but found none",
                "sheet.minutes = {0} {1}|deutsch.words:1:17: expected {0} as in the English text,"
                        + " but found {0} {1}",
                "sheet.name = N {0}|deutsch.words:1:14: expected no place for a figure as in the"
                        + " English text, but found {0}",
                "sheet.minutes = {0 Minuten|deutsch.words:1:17: a brace that is no place for a"
                        + " figure, at '{0 Mi'; expected a place such as {0}",
                "sheet.minutes = 0} Minuten|deutsch.words:1:17: a brace that is no place for a"
                        + " figure, at '} Min'; expected a place such as {0}",
                "sheet.minutes = {zahl}|deutsch.words:1:17: a brace that is no place for a"
                        + " figure, at '{zahl'; expected a place such as {0}",
                "sheet.name: x|deutsch.words:1:1: expected a key, '=' and a text, such as"
                        + " 'lesson-1.title = Counting is adding'",
                "sheet.name =|deutsch.words:1:13: nothing stands after 'sheet.name ='; expected a"
                        + " text",
            })
    void aFaultIsToldWithPlaceAndWhatWasExpected(String text, String message) {
        assertEquals(message, problem(text));
    }

    @Test
    void aRepeatedKeyALooseLineAndAWrongByteAreTold() throws IOException {
        assertEquals(
                "deutsch.words:3:1: 'sheet.name' stands twice; the first is on line 1; expected"
                        + " each key once",
                problem("sheet.name = a\n\nsheet.name = b\n"));
        assertTrue(problem("sheet.name = a\n\n  b\n").startsWith("deutsch.words:3:1: a line that"));
        Path bad = folder.resolve("bad.words");
        byte[] bytes = "sheet.name = a\nsheet.date = D\n".getBytes(StandardCharsets.UTF_8);
        bytes[28] = (byte) 0xfc;
        Files.write(bad, bytes);
        TextException e = assertThrows(TextException.class, () -> Words.load(bad));
        assertEquals(bad + ":2:14: a byte here is not UTF-8; save the file as UTF-8", e.render());
        Path none = folder.resolve("none.words");
        e = assertThrows(TextException.class, () -> Words.load(none));
        assertTrue(e.render().contains("there is no such file"), e.render());
    }

    /** One file translates the page too; it asks by the keys of its own file. */
    @Test
    void theLivePagesWordsAreOnTheListUnderItsName() throws IOException, TextException {
        assertEquals("Run", Words.english().page().get("play"));
        Words words = load("page.play = Los\n");
        assertEquals("Los", words.page().get("play"));
        assertEquals(Words.english().page().keySet(), words.page().keySet());
    }

    @Test
    void everyProblemOfAFileIsToldInItsOrder() {
        TextException e =
                assertThrows(
                        TextException.class,
                        () -> load("sheet.name = {0}\nsheet.nam = x\nnonsense\n"));
        assertEquals(List.of(1, 2, 3), e.problems().stream().map(TextProblem::line).toList());
    }

    @Test
    void theWholeListReadsBackAsItself() throws IOException, TextException {
        Words back = load(Words.english().fileText());
        assertEquals(List.of(), back.missing());
        for (String key : Words.english().keys()) {
            Object[] args = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9};
            assertEquals(Words.english().text(key, args), back.text(key, args), key);
        }
    }

    /** The file that translators copy; {@code -Dgolden.update=true} writes it anew. */
    @Test
    void theListInTheDocumentsIsTheProgramsOwn() throws IOException {
        Path file = TopLevelRule.projectRoot().resolve("gauge-sim/docs/english.words");
        String expected = Words.english().fileText();
        if (Boolean.getBoolean("golden.update")) {
            Files.writeString(file, expected);
        }
        assertEquals(expected, Files.readString(file), "-Dgolden.update=true rewrites it");
    }

    @Test
    void aKeyThatIsNotThereAndAFigureThatIsMissingAreDefects() {
        Words words = Words.english();
        assertThrows(IllegalArgumentException.class, () -> words.text("no.such"));
        assertThrows(IllegalArgumentException.class, () -> words.text("sheet.minutes"));
        assertEquals("$1 minutes", words.text("sheet.minutes", "$1"));
    }
}
