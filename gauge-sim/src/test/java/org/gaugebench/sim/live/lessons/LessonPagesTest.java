package org.gaugebench.sim.live.lessons;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The sheets: whole, of one language, needing nothing, and with the run's own figures. */
class LessonPagesTest {
    private static final String SAFETY = "Simulation only; no pupil opens a real battery system.";
    private static Map<String, String> english = Map.of();

    @BeforeAll
    static void sheets() {
        ShelfInClasses.copy();
        english = LessonPages.files(Words.english());
    }

    /** What a reader sees: no style, no tags, no picture. */
    private static String seen(String html) {
        return html.replaceAll("(?s)<style>.*?</style>", " ")
                .replaceAll("(?s)<code>.*?</code>", " ")
                .replaceAll("<[^>]*>", " ")
                .replace("&quot;", "\"")
                .replaceAll("\\s+", " ");
    }

    @Test
    void thereIsASheetOfEachKindAndEachBearsTheWarning() {
        assertEquals(1 + 3 + 3 * 14, english.size());
        english.forEach((name, html) -> assertTrue(seen(html).contains(SAFETY), name));
    }

    @Test
    void aSheetNeedsNothingFromOutside() {
        Pattern outside =
                Pattern.compile(
                        "(?:src|href)=\"(?!data:|[a-z0-9-]+\\.html\")|@import|url\\(|<script");
        english.forEach(
                (name, html) -> {
                    assertFalse(outside.matcher(html).find(), name);
                    assertTrue(html.startsWith("<!doctype html>"), name);
                });
    }

    @Test
    void theFirstPageLeadsToAllOthersAndNowhereElse() {
        List<String> links =
                Pattern.compile("href=\"([^\"]*)\"")
                        .matcher(english.get("index.html"))
                        .results()
                        .map(it -> it.group(1))
                        .toList();
        List<String> expected = new ArrayList<>(english.keySet());
        expected.remove("index.html");
        assertEquals(expected, links);
    }

    @Test
    void theAnswerSheetSaysWhatTheRunGave() {
        String sheet = seen(english.get("01-counting-is-adding-answer.html"));
        assertTrue(sheet.contains("Right: 80 %"), sheet);
        assertTrue(sheet.contains("then says 78.4\u202f%, which is +8.4 points off"), sheet);
        assertTrue(sheet.contains("Not so: 20 %"), sheet);
        assertFalse(sheet.contains("Not so: 80 %"), sheet);
        String choices = seen(english.get("07-not-all-comes-out-answer.html"));
        assertTrue(choices.contains("Right: B, About 30 %"), choices);
        assertTrue(
                english.get("07-not-all-comes-out-answer.html")
                        .contains("src=\"data:image/svg+xml;base64,"));
    }

    @Test
    void aTolerancePointsInNoDirection() {
        String sheet = seen(english.get("12-things-you-never-measured-answer.html"));
        assertTrue(sheet.contains("counts as right up to 2 points beside that"), sheet);
    }

    @Test
    void whatPupilsGetDoesNotTellTheAnswer() {
        for (Lesson lesson : Lessons.all()) {
            String sheet = seen(english.get(lesson.name() + "-pupil.html"));
            String picture = seen(english.get(lesson.name() + "-picture.html"));
            for (Choice choice : lesson.choices()) {
                assertFalse(sheet.contains(choice.thinks(Words.english())), lesson.name());
                assertFalse(picture.contains(choice.thinks(Words.english())), lesson.name());
                assertEquals(
                        !lesson.asksForNumber(),
                        sheet.contains(
                                " "
                                        + choice.letter().toUpperCase(Locale.ROOT)
                                        + " "
                                        + choice.text(Words.english())),
                        lesson.name());
            }
            for (Step step : lesson.steps()) {
                assertTrue(sheet.contains(Html.safe(step.text(Words.english()))), lesson.name());
            }
        }
    }

    /** Every word in brackets of another script: what is left in Latin letters is hard-coded. */
    static Words pseudo() throws TextException {
        StringBuilder file = new StringBuilder();
        for (String line : Words.english().fileText().split("\n", -1)) {
            if (line.startsWith("#")) {
                continue;
            }
            int equals = line.startsWith(" ") ? 0 : line.indexOf('=') + 1;
            file.append(line, 0, equals);
            Matcher word = Pattern.compile("\\{\\d\\}|[A-Za-z]").matcher(line.substring(equals));
            file.append(
                    word.replaceAll(
                            it ->
                                    it.group().length() > 1
                                            ? it.group()
                                            : String.valueOf(
                                                    (char) (it.group().charAt(0) + 0x3b1 - 'a'))));
            file.append('\n');
        }
        return Words.parse("pseudo.words", file.toString().replace("language = ", "language = x"));
    }

    @Test
    void nothingIsHardCodedInEnglish() throws TextException {
        Words words = pseudo();
        assertEquals(List.of(), words.missing());
        Pattern latin = Pattern.compile("[A-Za-z]{2,}[A-Za-z .-]*");
        List<String> found = new ArrayList<>();
        LessonPages.files(words)
                .forEach(
                        (name, html) -> {
                            // Units and the scenario's file name are the same in every language.
                            String rest =
                                    seen(html + attributes(html))
                                            .replaceAll("\\d\\d-[a-z0-9-]+\\.yaml", " ")
                                            .replaceAll("\\d[  \u202f](min|Ah)\\b", " ");
                            Matcher match = latin.matcher(rest);
                            while (match.find()) {
                                found.add(name + ": " + match.group());
                            }
                        });
        assertEquals(List.of(), found);
    }

    private static String attributes(String html) {
        StringBuilder out = new StringBuilder();
        Matcher match = Pattern.compile("(?:alt|aria-label|title)=\"([^\"]*)\"").matcher(html);
        while (match.find()) {
            out.append(' ').append(match.group(1));
        }
        return out.toString();
    }

    @Test
    void whatATranslatorWritesIsTextAndNeverMarkup() throws TextException {
        Words words =
                Words.parse(
                        "x",
                        """
                        lesson-1.title = <b>A & "B"
                        lesson-1.picture = "><script>
                        lesson-1.sketch.axis = "x
                        language = "d
                        """);
        Lesson lesson = Lessons.of(1);
        for (String html :
                List.of(
                        LessonPages.pupilSheet(lesson, words),
                        LessonPages.answerSheet(lesson, words))) {
            assertTrue(html.contains("&lt;b&gt;A &amp; &quot;B&quot;"), html);
            assertFalse(html.contains("<script"), html);
            assertTrue(html.contains("<html lang=\"&quot;d\""), html);
        }
    }
}
