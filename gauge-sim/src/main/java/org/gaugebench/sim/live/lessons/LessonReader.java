package org.gaugebench.sim.live.lessons;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.gaugebench.sim.units.QuantityException;

/** Reads the text of a lesson. */
final class LessonReader {
    /** Beyond five steps a class forgets what it was looking for. */
    private static final int MOST_STEPS = 5;

    private final KeyedFields fields;
    private final int number;

    private LessonReader(KeyedFields fields, int number) {
        this.fields = fields;
        this.number = number;
    }

    /**
     * Reads a lesson.
     *
     * @param file the name that problems show
     * @param text keys and values
     * @return the lesson, whole and without contradiction
     * @throws TextException with every problem of the text
     */
    static Lesson read(String file, String text) throws TextException {
        KeyedFields fields = new KeyedFields(KeyedText.read(file, text));
        int number = fields.whole("lesson", 1, 99);
        Lesson lesson = new LessonReader(fields, number).lesson();
        fields.finish();
        return lesson;
    }

    private Lesson lesson() {
        String name = word("scenario", "01-counting-is-adding");
        String variant = fields.has("variant") ? word("variant", "gauge.cut-leaves=half") : "";
        int minutes = fields.whole("minutes", 5, 90);
        List<Integer> needs = fields.numbers("needs");
        fields.words("title", "title = Counting is adding");
        fields.words("question", "question = A pump draws 5 A for four hours. How much is gone?");
        fields.words("knowledge", "knowledge = Amps; reading a line over time");
        List<String> gauges = fields.parts("gauge.");
        gauges.forEach(it -> fields.words("gauge." + it, "gauge.plain = the plain counter"));
        List<Figure> figures = numbered("figure.", 0, 1, 10, FigureText.EXAMPLE, FigureText::parse);
        for (int i = 0; i < figures.size(); i++) {
            checkOwner(i, figures.get(i), gauges);
        }
        FigureUnit unit = figures.isEmpty() ? FigureUnit.TIMES : figures.get(0).unit();
        fields.words("ask", "ask = How full is the battery after four hours?");
        boolean asksForNumber = fields.has("tolerance");
        long tolerance =
                asksForNumber ? fields.value("tolerance", "tolerance = 1 %", unit::parse, 0L) : 0;
        List<Choice> choices = choices(unit);
        Sketch sketch =
                fields.value(
                        "sketch",
                        "sketch = " + Sketch.EXAMPLE,
                        Sketch::parse,
                        new Sketch(FigureUnit.PERCENT, 0, 1));
        fields.words("sketch.axis", "sketch.axis = How full, %");
        List<Step> steps =
                numbered("step.", 1, 2, MOST_STEPS, Step.EXAMPLE, it -> Step.parse(0, number, it));
        List<Step> withNumbers = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            withNumbers.add(
                    new Step(
                            i + 1,
                            number,
                            step.action(),
                            step.atMillis(),
                            step.target(),
                            step.value()));
            fields.words("step." + (i + 1) + ".text", "step.1.text = Run to 4 h.");
        }
        Step next =
                fields.value(
                        "next",
                        "next = change pump.current to 10 A",
                        it -> Step.parse(0, number, it),
                        new Step(0, number, Step.Action.CHANGE, 0, "", ""));
        if (next.action() != Step.Action.CHANGE) {
            fields.problem("next", "what to try next is a change; expected 'change NAME to VALUE'");
        }
        fields.words("next.text", "next.text = What if the pump draws twice as much?");
        fields.words("answer", "answer = After four hours {0} are left.");
        fields.words("picture", "picture = The dashed line is the careless gauge.");
        Map<String, String> texts = new LinkedHashMap<>(fields.texts());
        return new Lesson(
                number,
                name,
                variant,
                minutes,
                needs,
                gauges,
                asksForNumber,
                tolerance,
                figures,
                choices,
                List.copyOf(withNumbers),
                next,
                sketch,
                texts);
    }

    private String word(String key, String example) {
        return fields.value(
                key,
                key + " = " + example,
                it -> {
                    if (!it.matches("[a-z0-9.=-]+")) {
                        throw new QuantityException("'" + it + "' is no name");
                    }
                    return it;
                },
                "");
    }

    private <T> List<T> numbered(
            String beginning,
            int first,
            int fewest,
            int most,
            String example,
            KeyedFields.Parser<T> parser) {
        int count = fields.count(beginning, first, fewest, most);
        List<T> all = new ArrayList<>();
        for (int i = first; i < first + count; i++) {
            String key = beginning + i;
            fields.read(key, key + " = " + example, parser).ifPresent(all::add);
        }
        return List.copyOf(all);
    }

    private void checkOwner(int figure, Figure read, List<String> gauges) {
        if (!read.isOfTruth() && !gauges.contains(read.owner())) {
            fields.problem(
                    "figure." + figure,
                    "'%s' has no plain name; expected a line 'gauge.%s = the careless gauge'"
                            .formatted(read.owner(), read.owner()));
        }
        if (read.isOfTruth() && read.kind() != Figure.Kind.READING) {
            fields.problem("figure." + figure, "the truth has readings only; expected a gauge");
        }
    }

    private List<Choice> choices(FigureUnit unit) {
        List<Choice> choices = new ArrayList<>();
        List<String> letters = fields.parts("choice.");
        if (!letters.equals(List.of("a", "b", "c"))
                && !letters.equals(List.of("a", "b", "c", "d"))) {
            fields.problem("choice.a", "expected three or four choices: a, b, c and perhaps d");
        }
        for (String letter : letters) {
            String key = "choice." + letter;
            fields.words(key, key + " = About 80 %");
            fields.words(key + ".thinks", key + ".thinks = Takes amps for amp-hours.");
            fields.read(
                            key + ".when",
                            key + ".when = " + Choice.EXAMPLE,
                            it -> Choice.parse(letter, number, it, unit))
                    .ifPresent(it -> add(choices, it));
        }
        return List.copyOf(choices);
    }

    private void add(List<Choice> choices, Choice choice) {
        for (Choice before : choices) {
            if (before.overlaps(choice)) {
                fields.problem(
                        "choice." + choice.letter() + ".when",
                        "one figure would make '%s' and '%s' right; expected ranges apart"
                                .formatted(before.letter(), choice.letter()));
            }
        }
        choices.add(choice);
    }
}
