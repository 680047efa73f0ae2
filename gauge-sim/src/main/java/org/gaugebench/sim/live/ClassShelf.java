package org.gaugebench.sim.live;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.gaugebench.sim.live.lessons.Choice;
import org.gaugebench.sim.live.lessons.Lesson;
import org.gaugebench.sim.live.lessons.LessonPages;
import org.gaugebench.sim.live.lessons.LessonRun;
import org.gaugebench.sim.live.lessons.Lessons;
import org.gaugebench.sim.live.lessons.Sketch;
import org.gaugebench.sim.live.lessons.Step;
import org.gaugebench.sim.live.lessons.Words;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;
import org.jspecify.annotations.Nullable;

/**
 * The lessons of the program in the words of a class; what answers them is run when it is asked.
 */
public final class ClassShelf implements LessonShelf {
    private static final String PAPER = ".html";

    private final Words words;

    /**
     * Takes the lessons in a language.
     *
     * @param words English, or a translation
     */
    public ClassShelf(Words words) {
        this.words = words;
    }

    @Override
    public int count() {
        return Lessons.all().size();
    }

    private @Nullable Lesson lesson(int number) {
        return number >= 1 && number <= count() ? Lessons.of(number) : null;
    }

    @Override
    public List<String> titles() {
        return Lessons.all().stream().map(it -> it.title(words)).toList();
    }

    @Override
    public @Nullable String json(int number) {
        Lesson lesson = lesson(number);
        return lesson == null ? null : Json.object(json -> write(json, lesson));
    }

    private void write(JsonGenerator json, Lesson lesson) throws IOException {
        json.writeNumberField("number", lesson.number());
        json.writeStringField("title", lesson.title(words));
        json.writeStringField("question", lesson.question(words));
        json.writeStringField("ask", lesson.ask(words));
        json.writeNumberField("minutes", lesson.minutes());
        json.writeArrayFieldStart("choices");
        for (Choice choice : lesson.choices()) {
            json.writeStartObject();
            json.writeStringField("letter", choice.letter());
            json.writeStringField("text", choice.text(words));
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("steps");
        for (Step step : lesson.steps()) {
            step(json, step);
        }
        json.writeEndArray();
        json.writeFieldName("next");
        step(json, lesson.next());
        json.writeStringField("name", lesson.name());
        json.writeObjectFieldStart("gauges");
        for (String gauge : lesson.gauges()) {
            json.writeStringField(gauge, lesson.gaugeName(gauge, words));
        }
        json.writeEndObject();
    }

    private void step(JsonGenerator json, Step step) throws IOException {
        json.writeStartObject();
        json.writeStringField("text", step.text(words));
        String action = step.action().name().toLowerCase(Locale.ROOT).replace('_', '-');
        json.writeStringField("action", action);
        switch (step.action()) {
            case RUN_TO ->
                    json.writeStringField(
                            "at", QuantityFormat.format(step.atMillis(), RecordUnit.MILLIS));
            case CHANGE -> {
                json.writeStringField("target", step.target());
                json.writeStringField("value", step.value());
            }
            case LOOK -> json.writeStringField("target", step.target());
            case PREDICT, REVEAL -> {
                // the word says all
            }
        }
        json.writeEndObject();
    }

    @Override
    public @Nullable String answer(int number) {
        Lesson lesson = lesson(number);
        if (lesson == null) {
            return null;
        }
        LessonRun run = LessonRun.of(lesson);
        return Json.object(
                json -> {
                    json.writeStringField("answer", lesson.answer(run, words));
                    json.writeArrayFieldStart("choices");
                    for (Choice choice : lesson.choices()) {
                        json.writeStartObject();
                        json.writeStringField("letter", choice.letter());
                        json.writeBooleanField("right", run.right().contains(choice));
                        json.writeStringField("thinks", choice.thinks(words));
                        json.writeEndObject();
                    }
                    json.writeEndArray();
                });
    }

    @Override
    public @Nullable String paper(String name) {
        if (name.equals("index" + PAPER)) {
            return LessonPages.index(words);
        }
        for (int i = 1; i <= Lessons.plans().size(); i++) {
            if (name.equals("plan-" + i + PAPER)) {
                return LessonPages.plan(i, words);
            }
        }
        for (Lesson lesson : Lessons.all()) {
            if (name.equals(lesson.name() + "-pupil" + PAPER)) {
                return LessonPages.pupilSheet(lesson, words);
            }
            if (name.equals(lesson.name() + "-answer" + PAPER)) {
                return LessonPages.answerSheet(lesson, words);
            }
            if (name.equals(lesson.name() + "-picture" + PAPER)) {
                return LessonPages.pictureSheet(lesson, words);
            }
        }
        return null;
    }

    @Override
    public @Nullable Scenario scenario(int number) {
        Lesson lesson = lesson(number);
        return lesson == null ? null : lesson.scenario();
    }

    @Override
    public @Nullable Sketch sketch(int number) {
        Lesson lesson = lesson(number);
        return lesson == null ? null : lesson.sketch();
    }

    @Override
    public Map<String, String> words() {
        return words.page();
    }
}
