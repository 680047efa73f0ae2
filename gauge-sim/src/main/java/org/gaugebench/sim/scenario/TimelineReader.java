package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.MILLIS;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.snakeyaml.engine.v2.nodes.Node;

/** Reads the timeline and spreads its windows and repeats into single changes. */
final class TimelineReader {
    /** Enough for five windows a day over two years; a load that cycles needs none of them. */
    static final int MOST_CHANGES = 10_000;

    /** Stands in for a duration that could not be read: no step lies outside it. */
    static final long UNKNOWN_DURATION = Long.MAX_VALUE / 4;

    private final Problems problems;
    private final long durationMillis;
    private final ChangeReader changeReader;
    private final Parts parts;
    private final List<SettingsTimeline.Marked> changes = new ArrayList<>();

    TimelineReader(Problems problems, long durationMillis, Parts parts) {
        this.problems = problems;
        this.durationMillis = durationMillis;
        this.parts = parts;
        this.changeReader = new ChangeReader(parts);
    }

    List<Change> read(List<Node> steps) {
        for (Node step : steps) {
            readStep(new Block(problems, step, "this timeline step"));
        }
        changes.sort(Comparator.comparingLong(marked -> marked.change().atMillis()));
        new SettingsTimeline(problems, parts.gauges()).check(changes);
        return changes.stream().map(SettingsTimeline.Marked::change).toList();
    }

    /** The same for steps that go on from others: their settings are judged with those. */
    List<Change> readAlone(List<Node> steps) {
        for (Node step : steps) {
            readStep(new Block(problems, step, "this change"));
        }
        return changes.stream().map(SettingsTimeline.Marked::change).toList();
    }

    private void readStep(Block step) {
        boolean window = step.hasAny("from", "to");
        boolean moment = step.has("at");
        if (window == moment || step.has("from") != step.has("to")) {
            step.valueProblem(
                    moment ? "at" : "from",
                    "expected either 'at: 2 h' or both 'from: 18 h' and 'to: 23 h'");
        }
        long from = step.quantity(moment ? "at" : "from", MILLIS, 0, durationMillis, 0);
        long to = window ? step.quantity("to", MILLIS, 0, Long.MAX_VALUE / 4, from) : from;
        long every = step.quantity("every", MILLIS, 1, Long.MAX_VALUE / 4, 0);
        long until = step.quantity("until", MILLIS, 0, Long.MAX_VALUE / 4, durationMillis);
        List<ChangeReader.Setter> setters = readSetters(step, window && !moment);
        step.finish();
        if (window && step.has("from") && step.has("to") && to <= from) {
            step.valueProblem("to", "'to' must be later than 'from'");
            return;
        }
        if (window && every > 0 && every < to - from) {
            step.valueProblem("every", "'every' must be at least as long as the window");
            return;
        }
        if (step.has("until") && !step.has("every")) {
            step.problem("until", "'until' ends a repeat; expected 'every: 1 d' beside it");
        }
        spread(step, new Times(from, to, every, Math.min(until, durationMillis), window), setters);
    }

    private List<ChangeReader.Setter> readSetters(Block step, boolean window) {
        if (!step.has("command")) {
            step.require("set", "set: {lamp: on}");
            return changeReader.read(step.block("set", "set"), window);
        }
        if (step.has("set")) {
            step.problem("command", "a step has either 'set' or 'command'; expected two steps");
        }
        return CommandReader.read(step, parts.gauges(), window);
    }

    private record Times(long from, long to, long every, long last, boolean window) {}

    private void spread(Block step, Times times, List<ChangeReader.Setter> setters) {
        if (durationMillis == UNKNOWN_DURATION) {
            return;
        }
        long repeats =
                times.every == 0
                        ? 1
                        : times.last < times.from ? 0 : (times.last - times.from) / times.every + 1;
        long perRepeat = setters.size() * (times.window ? 2L : 1L);
        if (repeats > MOST_CHANGES || repeats * perRepeat + changes.size() > MOST_CHANGES) {
            step.problem(
                    step.has("every") ? "every" : "set",
                    "the timeline would make more than "
                            + MOST_CHANGES
                            + " changes; a load that cycles has 'on-for' and 'every' of its own");
            return;
        }
        for (long i = 0; i < repeats; i++) {
            long shift = i * times.every;
            for (ChangeReader.Setter setter : setters) {
                add(step, setter.at(times.from + shift, setter.value()));
            }
            if (times.window && times.to + shift <= durationMillis) {
                for (ChangeReader.Setter setter : setters) {
                    add(step, setter.at(times.to + shift, setter.after()));
                }
            }
        }
    }

    private void add(Block step, Change change) {
        changes.add(new SettingsTimeline.Marked(change, step.mark()));
    }
}
