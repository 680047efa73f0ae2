package org.gaugebench.sim.live.lessons;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.gaugebench.sim.scenario.GaugeSpec;
import org.gaugebench.sim.scenario.Scenario;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Each lesson's scenario runs, and the run alone says which choice is right. The letters stand here
 * and nowhere in the program: they are what a person who knows the physics would mark.
 */
class LessonRunTest {
    private static final Map<Integer, String> RIGHT =
            Map.ofEntries(
                    Map.entry(1, "c"),
                    Map.entry(2, "a"),
                    Map.entry(3, "d"),
                    Map.entry(4, "a"),
                    Map.entry(5, "a"),
                    Map.entry(6, "c"),
                    Map.entry(7, "b"),
                    Map.entry(8, "b"),
                    Map.entry(9, "c"),
                    Map.entry(10, "a"),
                    Map.entry(11, "b"),
                    Map.entry(12, "d"),
                    Map.entry(13, "b"),
                    Map.entry(14, "c"));

    @BeforeAll
    static void shelf() {
        ShelfInClasses.copy();
    }

    static List<Integer> numbers() {
        return IntStream.rangeClosed(1, 14).boxed().toList();
    }

    @ParameterizedTest
    @MethodSource("numbers")
    void theRunMakesTheRightChoiceRightAndNoOther(int number) {
        Lesson lesson = Lessons.of(number);
        LessonRun run = LessonRun.of(lesson);
        assertEquals(
                RIGHT.get(number),
                run.right().stream().map(Choice::letter).collect(Collectors.joining(" ")),
                () -> lesson.name() + " gives " + run.shown(Words.english()));
    }

    @ParameterizedTest
    @MethodSource("numbers")
    void everyFigureAndStepLiesInTheRun(int number) {
        Lesson lesson = Lessons.of(number);
        Scenario scenario = lesson.scenario();
        assertEquals(
                scenario.gauges().stream().map(GaugeSpec::name).toList(),
                lesson.gauges(),
                "each gauge has a plain name");
        for (Figure figure : lesson.figures()) {
            assertTrue(figure.toMillis() <= scenario.durationMillis(), figure.toString());
            assertEquals(0, figure.toMillis() % scenario.tickMillis(), figure.toString());
        }
        long before = 0;
        for (Step step : lesson.steps()) {
            if (step.action() == Step.Action.RUN_TO) {
                assertTrue(step.atMillis() > before, step + " runs backwards");
                assertTrue(step.atMillis() <= scenario.durationMillis(), step.toString());
                before = step.atMillis();
            }
        }
        List<Step.Action> actions = lesson.steps().stream().map(Step::action).toList();
        assertTrue(actions.contains(Step.Action.PREDICT), "nobody predicts");
        assertTrue(
                actions.indexOf(Step.Action.REVEAL) > actions.indexOf(Step.Action.PREDICT),
                "the truth comes after the prediction");
    }

    /** A prediction comes before the run has shown the figure that decides it. */
    @ParameterizedTest
    @MethodSource("numbers")
    void nobodyPredictsWhatIsSeenAlready(int number) {
        Lesson lesson = Lessons.of(number);
        long at = 0;
        for (Step step : lesson.steps()) {
            if (step.action() == Step.Action.PREDICT) {
                break;
            }
            at = Math.max(at, step.atMillis());
        }
        Figure first = lesson.figures().get(0);
        assertTrue(at < first.toMillis() || first.isOfTruth(), lesson.name());
    }

    /** What to try next is a change that the scenario takes, and that the class can see. */
    @ParameterizedTest
    @MethodSource("numbers")
    void whatToTryNextChangesTheRun(int number) {
        Lesson lesson = Lessons.of(number);
        String change =
                "\ntimeline:\n  - {at: 0 s, set: {%s: %s}}\n"
                        .formatted(lesson.next().target(), lesson.next().value());
        String text = lesson.scenarioText();
        String changed =
                text.contains("\ntimeline:\n")
                        ? text.replace("\ntimeline:\n", change)
                        : text + change;
        assertNotEquals(
                LessonRun.of(lesson).values(),
                LessonRun.of(lesson, lesson.scenario(changed)).values(),
                lesson.name());
    }

    /**
     * The lesson counts how often the loose gauge says full: nothing of the good one or the truth.
     */
    @Test
    void eventsAreThoseOfTheFiguresOwnGauge() {
        List<FigureValue> values = LessonRun.of(Lessons.of(9)).values();
        assertEquals(1, values.get(1).value(), "the good gauge is set once");
        assertEquals(1, values.get(2).value(), "the strict one once, behind the cut-off battery");
        assertEquals(0, values.get(3).value(), "and never when it is full");
    }

    /** A class soon finds out that it is always the last one. */
    @Test
    void noLetterIsRightInHalfOfTheLessons() {
        for (String letter : List.of("a", "b", "c", "d")) {
            long times =
                    Lessons.all().stream()
                            .filter(it -> !it.asksForNumber())
                            .filter(it -> letter.equals(RIGHT.get(it.number())))
                            .count();
            assertTrue(times < 6, letter + " is right " + times + " times");
        }
    }

    @Test
    void aNumberIsRightWithinItsToleranceAndElseStandsForAThought() {
        LessonRun run = LessonRun.of(Lessons.of(1));
        assertEquals(800_000, run.values().get(0).value(), "5 A for 4 h out of 100 Ah");
        assertTrue(run.isRight(790_000));
        assertTrue(run.isRight(810_000));
        assertFalse(run.isRight(789_999));
        assertEquals("a", run.choiceOf(950_000).orElseThrow().letter());
        assertTrue(run.choiceOf(500_000).isEmpty());
    }

    @Test
    void whatAGaugeDoesNotKnowIsSaidAndAnEndlessTimeIsMoreThan() {
        assertTrue(
                LessonRun.of(Lessons.of(13))
                        .shown(Words.english())
                        .contains("nothing: it does not know"));
        List<String> hours = LessonRun.of(Lessons.of(11)).shown(Words.english());
        assertEquals("36\u202fh", hours.get(0));
        assertEquals("more than 99\u202fh", hours.get(2));
    }
}
