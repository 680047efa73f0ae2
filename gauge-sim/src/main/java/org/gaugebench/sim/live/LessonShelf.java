package org.gaugebench.sim.live;

import java.util.Map;
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
                public @Nullable Scenario scenario(int number) {
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
     * "target" and "value" as the action needs them) and "sheet", an address or nothing. Actions
     * are "predict", "run-to" (at "4 h"), "reveal", "change" (target "lamp", value "on") and "look"
     * (target "chart", "reading", "ledger" or "events").
     *
     * @param number from 1
     * @return JSON; null where there is no such lesson
     */
    @Nullable String json(int number);

    /** The scenario that a lesson stands on; null where there is no such lesson. */
    @Nullable Scenario scenario(int number);

    /** Words that replace those of the page, by their keys. */
    Map<String, String> words();
}
