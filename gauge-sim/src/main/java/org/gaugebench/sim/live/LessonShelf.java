package org.gaugebench.sim.live;

import java.util.List;
import java.util.Map;
import org.gaugebench.sim.live.lessons.Sketch;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;

/** Where lessons come from, and the words of the page in another language. */
public interface LessonShelf {
    /** No lesson, and the page in English. */
    LessonShelf NONE =
            new LessonShelf() {
                @Override
                public int count() {
                    return 0;
                }

                @Override
                public @Nullable String json(int number) {
                    return null;
                }

                @Override
                public List<String> titles() {
                    return List.of();
                }

                @Override
                public @Nullable String answer(int number) {
                    return null;
                }

                @Override
                public @Nullable String paper(String name) {
                    return null;
                }

                @Override
                public @Nullable Scenario scenario(int number) {
                    return null;
                }

                @Override
                public @Nullable Sketch sketch(int number) {
                    return null;
                }

                @Override
                public Map<String, String> words() {
                    return Map.of();
                }
            };

    /** How many lessons there are; they are numbered from 1. */
    int count();

    /**
     * A lesson as the page's panel gets it: an object with "number", "title", "question", "choices"
     * (objects with "letter" and "text"), "steps" (objects with "text", "action", and "at",
     * "target" and "value" as the action needs them), "next", a step more, "name", and "gauges", an
     * object with a plain name for each. Actions are "predict", "run-to" (at "4 h"), "reveal",
     * "change" (target "lamp", value "on") and "look" (target "chart", "reading", "ledger" or
     * "events").
     *
     * @param number from 1
     * @return JSON; null where there is no such lesson
     */
    @Nullable String json(int number);

    /** Their titles, in order. */
    List<String> titles();

    /**
     * What the run of a lesson answers: an object with "answer", a text, and "choices", objects
     * with "letter", "right" and "thinks". Takes as long as the run does.
     *
     * @param number from 1
     * @return JSON; null where there is no such lesson
     */
    @Nullable String answer(int number);

    /**
     * A sheet or a plan to print.
     *
     * @param name of the file, such as "03-microvolts-become-amp-hours-pupil.html"; "index.html"
     *     leads to all others
     * @return an HTML document; null where there is none of that name
     */
    @Nullable String paper(String name);

    /** The scenario that a lesson stands on; null where there is no such lesson. */
    @Nullable Scenario scenario(int number);

    /** The axes of a lesson's pupil sheet; null where there is no such lesson. */
    @Nullable Sketch sketch(int number);

    /** Words that replace those of the page, by their keys. */
    Map<String, String> words();
}
