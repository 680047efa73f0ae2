package org.gaugebench.sim.live.lessons;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.gaugebench.house.TopLevelRule;
import org.junit.jupiter.api.Test;

/** What may stand in a text for a class, and that plans and lessons agree with each other. */
class LessonTextsTest {
    /** Words of the inside, and those for which a plain one stands in on pages for a class. */
    private static final Pattern BANNED =
            Pattern.compile(
                    "\\b(plants?|rigs?|lanes?|judges?|judged|devices?|ticks?|c20|anchors?|anchored"
                            + "|declared?|declares|taper(s|ed)?|absorption|unmeasured|sync\\w*"
                            + "|coulomb\\w*|state of charge|full-charge capacity|error band"
                            + "|time to empty|95 % coverage|c-rate|peukert)\\b",
                    Pattern.CASE_INSENSITIVE);

    /** What 720 lines of a screen hold at 28 px beside the strip: some five lines of nine words. */
    private static final int MOST_WORDS_OF_A_STEP = 45;

    private static final int MOST_WORDS_OF_A_QUESTION = 45;

    private static List<String> banned(Words words) {
        List<String> found = new ArrayList<>();
        Object[] args = {"", "", "", "", "", "", "", "", "", ""};
        for (String key : words.keys()) {
            Matcher match = BANNED.matcher(words.text(key, args));
            if (match.find()) {
                found.add(key + " says '" + match.group() + "'");
            }
        }
        return found;
    }

    private static int words(String text) {
        return text.strip().split("\\s+", -1).length;
    }

    @Test
    void plainWordsStandIn() throws TextException {
        assertEquals(List.of(), banned(Words.english()));
        assertEquals(
                List.of("sheet.name says 'tick'"),
                banned(Words.parse("x", "sheet.name = The tick of the clock")));
    }

    /** Files write units that every keyboard has; a class reads them as its books write them. */
    @Test
    void aMillionthIsWrittenWithItsLetter() {
        Pattern typed = Pattern.compile("\\bu(V|A|Ohm)\\b|\\bOhm\\b");
        for (String key : Words.english().keys()) {
            String text = Words.english().text(key, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9);
            assertFalse(typed.matcher(text).find(), key + " says " + text);
        }
    }

    @Test
    void aStepIsReadFromTheLastRow() {
        for (Lesson lesson : Lessons.all()) {
            for (Step step : lesson.steps()) {
                String text = step.text(Words.english());
                assertTrue(words(text) <= MOST_WORDS_OF_A_STEP, words(text) + " words: " + text);
            }
            for (String text :
                    List.of(lesson.question(Words.english()), lesson.ask(Words.english()))) {
                assertTrue(words(text) <= MOST_WORDS_OF_A_QUESTION, text);
            }
        }
    }

    @Test
    void everyFigureIsToldInTheAnswer() {
        for (Lesson lesson : Lessons.all()) {
            assertEquals(
                    IntStream.range(0, lesson.figures().size())
                            .mapToObj(i -> "{" + i + "}")
                            .toList(),
                    List.copyOf(Words.places(lesson.texts().get("answer"))),
                    lesson.name());
        }
    }

    @Test
    void lessonsComeInOrderAndEachRestsOnEarlierOnes() {
        for (int i = 0; i < Lessons.all().size(); i++) {
            Lesson lesson = Lessons.all().get(i);
            assertEquals(i + 1, lesson.number());
            assertTrue(lesson.name().startsWith("%02d-".formatted(i + 1)), lesson.name());
            int number = lesson.number();
            assertTrue(lesson.needs().stream().allMatch(it -> it < number), lesson.name());
        }
    }

    /** Title and minutes are those of the lessons' page on the shelf. */
    @Test
    void theShelfSaysTheSame() throws IOException {
        String page =
                Files.readString(
                        TopLevelRule.projectRoot().resolve("scenarios/teaching/README.md"));
        for (Lesson lesson : Lessons.all()) {
            String title = lesson.title(Words.english());
            String row =
                    "| %d | [%s](#%d-%s) | %d |"
                            .formatted(
                                    lesson.number(),
                                    title,
                                    lesson.number(),
                                    title.toLowerCase(Locale.ROOT)
                                            .replaceAll("[^a-z0-9 -]", "")
                                            .replace(' ', '-'),
                                    lesson.minutes());
            assertTrue(page.contains(row), row);
        }
    }

    @Test
    void aPlanGivesEachOfItsLessonsTheTimeThatItTakes() {
        for (Plan plan : Lessons.plans()) {
            assertEquals(
                    plan.lessons(),
                    plan.rows().stream()
                            .map(Plan.Row::lesson)
                            .filter(it -> it > 0)
                            .distinct()
                            .toList());
            for (int lesson : plan.lessons()) {
                int minutes =
                        plan.rows().stream()
                                .filter(it -> it.lesson() == lesson)
                                .mapToInt(it -> it.toMinute() - it.fromMinute())
                                .sum();
                assertEquals(Lessons.of(lesson).minutes(), minutes, plan.number() + ", " + lesson);
            }
        }
    }
}
