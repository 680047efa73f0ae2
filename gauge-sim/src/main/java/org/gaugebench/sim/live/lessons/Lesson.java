package org.gaugebench.sim.live.lessons;

import java.util.List;
import java.util.Map;
import org.gaugebench.sim.page.PageAsset;
import org.gaugebench.sim.scenario.Scenario;
import org.gaugebench.sim.scenario.ScenarioException;
import org.gaugebench.sim.scenario.Variants;

/**
 * A guided set-up: a scenario, what is asked about it, and which figure of its run answers.
 *
 * @param number from 1; the order in which lessons build on each other
 * @param name of its scenario and its picture, without ending: "01-counting-is-adding"
 * @param variant which run of a scenario that varies; empty where it does not
 * @param minutes that it takes in a class
 * @param needs numbers of the lessons that come before it
 * @param gauges names in the scenario, each with a plain name for the class
 * @param asksForNumber whether pupils write a number; the choices are then the usual ones
 * @param tolerance half-width within which a number is right, in the figure's smallest step; 0
 *     where none is asked for
 * @param figures what is taken from the run; the first one decides which choice is right
 * @param choices at least three
 * @param steps two to five
 * @param next what to try next: a change from the start of the run
 * @param sketch axes for the pupil's curve
 * @param texts all texts in English, by their keys without the lesson's number
 */
public record Lesson(
        int number,
        String name,
        String variant,
        int minutes,
        List<Integer> needs,
        List<String> gauges,
        boolean asksForNumber,
        long tolerance,
        List<Figure> figures,
        List<Choice> choices,
        List<Step> steps,
        Step next,
        Sketch sketch,
        Map<String, String> texts) {

    /** Its name. */
    public String title(Words words) {
        return words.text(key("title"));
    }

    /** What the class talks about before anything runs. */
    public String question(Words words) {
        return words.text(key("question"));
    }

    /** What each pupil predicts. */
    public String ask(Words words) {
        return words.text(key("ask"));
    }

    /** What pupils know from school before they begin. */
    public String knowledge(Words words) {
        return words.text(key("knowledge"));
    }

    /** How to read the still picture. */
    public String pictureNote(Words words) {
        return words.text(key("picture"));
    }

    /** A gauge of the scenario in words for the class. */
    public String gaugeName(String gauge, Words words) {
        return words.text(key("gauge." + gauge));
    }

    /** What the upright axis of the sketch shows. */
    public String sketchAxis(Words words) {
        return words.text(key("sketch.axis"));
    }

    /** The answer, with its figures taken from the run. */
    public String answer(LessonRun run, Words words) {
        return words.text(key("answer"), run.shown(words).toArray());
    }

    private String key(String part) {
        return "lesson-" + number + "." + part;
    }

    /** The text of the scenario, as it lies in the program. */
    public String scenarioText() {
        return PageAsset.text(Lesson.class, "/teaching/" + name + ".yaml");
    }

    /** The still picture of the run, an SVG document. */
    public String pictureSvg() {
        return PageAsset.text(Lesson.class, "/teaching/pictures/" + name + ".svg");
    }

    /** The scenario, read and checked; of one that varies the lesson's own run. */
    public Scenario scenario() {
        return scenario(scenarioText());
    }

    /** The same after a change of its text. */
    Scenario scenario(String text) {
        try {
            for (Scenario run : Variants.read(name + ".yaml", text)) {
                if (run.variant().equals(variant)) {
                    return run;
                }
            }
        } catch (ScenarioException e) {
            throw new IllegalStateException(e.render(), e);
        }
        throw new IllegalStateException(name + " has no run '" + variant + "'");
    }
}
