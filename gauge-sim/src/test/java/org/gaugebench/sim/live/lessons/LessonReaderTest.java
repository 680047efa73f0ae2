package org.gaugebench.sim.live.lessons;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.Collectors;
import org.gaugebench.sim.page.PageAsset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A lesson or a plan with a fault is refused with its place, what was expected and an example. */
class LessonReaderTest {
    private static final String GOOD = PageAsset.text(Lesson.class, "lesson-01.txt");
    private static final String PLAN = PageAsset.text(Lesson.class, "plan-1.txt");

    private static String problems(String text) {
        TextException e =
                assertThrows(TextException.class, () -> LessonReader.read("lesson.txt", text));
        return e.problems().stream().map(TextProblem::toString).collect(Collectors.joining("\n"));
    }

    private static int lineOf(String text, String start) {
        return (int) text.lines().takeWhile(it -> !it.startsWith(start)).count() + 1;
    }

    @Test
    void theShippedLessonIsGood() throws TextException {
        assertEquals(1, LessonReader.read("lesson.txt", GOOD).number());
        assertEquals(8, Plan.read("plan.txt", PLAN).rows().size());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "minutes = 20|minutes = soon|'soon' is no whole number from 5 to 90",
                "needs = none|needs = the first|'the first' is no list of numbers",
                "figure.0 = truth state-of-charge at 4 h|figure.0 = truth state-of-charg at 4 h"
                        + "|did you mean 'state-of-charge'?",
                "figure.0 = truth state-of-charge at 4 h|figure.0 = truth state-of-charge at 4"
                        + "|expected a time such as 2 h 30 min, but found '4' without a unit",
                "figure.0 = truth state-of-charge at 4 h|figure.0 = later"
                        + "|'later' is no figure of a run",
                "figure.1 = truth|figure.1 = nobody|'nobody' has no plain name",
                "figure.1 = truth|figure.1 = truth error of|the truth has readings only",
                "choice.b.when = 98 % to 99.5 %|choice.b.when = 94.5 % to 99.5 %"
                        + "|one figure would make 'a' and 'b' right",
                "choice.b.when = 98 % to 99.5 %|choice.b.when = 99.5 % to 98 %"
                        + "|ends before it begins",
                "choice.b.when = 98 % to 99.5 %|choice.b.when = 98 %|is no range",
                "choice.b.when = 98 % to 99.5 %|choice.b.when = 98 A to 99 A"
                        + "|expected a part of the whole such as 92 %, but found '98 A'",
                "step.2 = run to 4 h|step.2 = walk to 4 h|'walk to 4 h' is no step",
                "step.2 = run to 4 h|step.7 = run to 4 h|expected 'step.2' here",
                "next = change pump.current to 2.5 A|next = reveal|what to try next is a change",
                "sketch = percent from 60 %|sketch = percent since 60 %|is no axis",
            })
    void aFaultIsToldWithItsLine(String good, String bad, String message) {
        assertTrue(GOOD.contains(good), good);
        String text = GOOD.replace(good, bad);
        String told = problems(text);
        String line = "lesson.txt:" + lineOf(text, bad.replaceAll(" = .*", " =")) + ":";
        assertTrue(told.contains(message), told);
        assertTrue(told.contains(line), told + "\nexpected at " + line);
    }

    @Test
    void aMissingOrAStrangeKeyIsTold() {
        assertTrue(
                problems(GOOD.replaceFirst("(?m)^title = .*\n", ""))
                        .contains("'title' is missing; expected 'title = Counting is adding'"));
        assertTrue(problems(GOOD + "\ntitel = x").contains("did you mean 'title'?"));
        assertTrue(
                problems(GOOD.replaceFirst("(?ms)^choice.c = .*?^choice.d", "choice.d"))
                        .contains("expected three or four choices"));
    }

    @Test
    void everyProblemIsToldAtOnce() {
        String told =
                problems(
                        GOOD.replace("minutes = 20", "minutes = 2")
                                .replace("sketch = percent", "sketch = volts"));
        assertTrue(told.contains("'2' is no whole number"), told);
        assertTrue(told.contains("expected a voltage such as 14.4 V, but found '60 %'"), told);
    }

    @Test
    void aPlanHasNoGapAndEndsWithTheBell() {
        for (String bad : new String[] {"9 to 17, lesson 1", "10 to 18, lesson 1", "9 to 9"}) {
            TextException e =
                    assertThrows(
                            TextException.class,
                            () -> Plan.read("plan.txt", PLAN.replace("9 to 18, lesson 1", bad)));
            assertTrue(e.render().contains("expected it to go on from"), e.render());
        }
        TextException e =
                assertThrows(
                        TextException.class,
                        () -> Plan.read("plan.txt", PLAN.replace("43 to 45", "43 to 44")));
        assertTrue(e.render().contains("ends at 44; expected 45"), e.render());
    }
}
