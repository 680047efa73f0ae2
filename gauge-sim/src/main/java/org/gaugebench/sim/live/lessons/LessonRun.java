package org.gaugebench.sim.live.lessons;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.gaugebench.core.port.EstimateState;
import org.gaugebench.core.port.Event;
import org.gaugebench.sim.judge.Readings;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Expectation.Reading;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;

/** What the run of a lesson answers: its figures, and the choice that they make right. */
public final class LessonRun implements Observer {
    private static final long NANOCOULOMBS_PER_MICROAMP_HOUR = 3_600_000;

    private final Lesson lesson;
    private final FigureValue[] values;
    private final int[] counts;
    private @Nullable Rig rig;

    private LessonRun(Lesson lesson) {
        this.lesson = lesson;
        values = new FigureValue[lesson.figures().size()];
        counts = new int[values.length];
        Arrays.fill(values, FigureValue.UNKNOWN);
    }

    /**
     * Runs the lesson's scenario as it lies in the program, whatever a page has been doing with a
     * copy of it. Takes up to some seconds; the same on every machine.
     *
     * @param lesson whose scenario
     */
    public static LessonRun of(Lesson lesson) {
        return of(lesson, lesson.scenario());
    }

    /** The same for another scenario with the same gauges. */
    static LessonRun of(Lesson lesson, Scenario scenario) {
        LessonRun run = new LessonRun(lesson);
        Rig rig = new Rig(scenario, scenario.seed(), run);
        run.rig = rig;
        rig.stopAt(lesson.figures().stream().mapToLong(Figure::toMillis).toArray());
        rig.run();
        return run;
    }

    @Override
    public void onStart(Rig started) {
        onMoment(started);
    }

    @Override
    public void onMoment(Rig standing) {
        for (int i = 0; i < values.length; i++) {
            Figure figure = lesson.figures().get(i);
            if (figure.toMillis() == standing.timeMillis()) {
                values[i] =
                        figure.kind() == Figure.Kind.EVENTS
                                ? new FigureValue(true, false, counts[i])
                                : read(figure, standing);
            }
        }
    }

    @Override
    public void onEvent(Lane lane, Event event, long value) {
        Rig running = rig;
        long now = running == null ? 0 : running.timeMillis();
        for (int i = 0; i < counts.length; i++) {
            Figure figure = lesson.figures().get(i);
            if (figure.event() == event
                    && figure.owner().equals(lane.name())
                    && now >= figure.fromMillis()
                    && now <= figure.toMillis()) {
                counts[i]++;
            }
        }
    }

    /**
     * Reads a figure of a run that stands at the figure's moment.
     *
     * @param figure of any kind but events, which are counted and not read
     * @param standing the run
     */
    public static FigureValue read(Figure figure, Rig standing) {
        Reading reading = figure.reading();
        if (figure.isOfTruth() && reading != null) {
            return value(Readings.truth(reading, standing));
        }
        Lane lane =
                standing.lanes().stream()
                        .filter(it -> it.name().equals(figure.owner()))
                        .findFirst()
                        .orElseThrow(() -> new IllegalStateException("no gauge " + figure.owner()));
        if (figure.register() != null) {
            return value(lane.inspect().get(figure.register()) / NANOCOULOMBS_PER_MICROAMP_HOUR);
        }
        if (reading == null) {
            throw new IllegalArgumentException("events are counted, not read");
        }
        long shown = Readings.shown(reading, lane, lane.read(), standing);
        if (shown == Readings.NONE) {
            return FigureValue.UNKNOWN;
        }
        if (figure.kind() == Figure.Kind.ERROR) {
            return value(shown - Readings.truth(reading, standing));
        }
        boolean moreThan =
                reading == Reading.TIME_TO_EMPTY
                        && lane.read().timeToEmptyState == EstimateState.MORE_THAN;
        return new FigureValue(true, moreThan, shown);
    }

    private static FigureValue value(long value) {
        return value == Readings.NONE ? FigureValue.UNKNOWN : new FigureValue(true, false, value);
    }

    /** The figures in the lesson's order. */
    public List<FigureValue> values() {
        return List.of(values);
    }

    /** The figures as a class reads them. */
    public List<String> shown(Words words) {
        List<String> shown = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            shown.add(values[i].shown(lesson.figures().get(i), words));
        }
        return shown;
    }

    /** The choices that the run makes right: exactly one in every lesson of the program. */
    public List<Choice> right() {
        return lesson.choices().stream().filter(it -> it.isRightFor(values[0])).toList();
    }

    /**
     * Whether a number that a pupil wrote is right.
     *
     * @param value in the first figure's smallest step
     */
    public boolean isRight(long value) {
        return values[0].known() && Math.abs(value - values[0].value()) <= lesson.tolerance();
    }

    /**
     * The usual choice that a pupil's number stands for, and with it the thought behind it.
     *
     * @param value in the first figure's smallest step
     */
    public Optional<Choice> choiceOf(long value) {
        FigureValue written = new FigureValue(true, false, value);
        return lesson.choices().stream().filter(it -> it.isRightFor(written)).findFirst();
    }
}
