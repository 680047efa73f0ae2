package org.gaugebench.sim.scenario;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * One more step of a timeline, given while the scenario runs. It goes through the reader of the
 * timeline, so that whatever it accepts can be written into a file and read again.
 */
public final class StepText {
    /** Most changes that a timeline can hold. */
    public static final int MOST_CHANGES = TimelineReader.MOST_CHANGES;

    /** What stands for the file in a problem's mark. */
    private static final String NAME = "this change";

    private StepText() {}

    /**
     * Reads what is set at a moment.
     *
     * @param scenario that runs
     * @param timeline all its changes, those that were given while it ran included
     * @param atMillis when it takes effect; within the run
     * @param set addresses and values in the language of scenario files, such as "lamp.current" and
     *     "1.2 A"
     * @return the changes, in the order of the map
     * @throws ScenarioException with every problem: an unknown address, a value out of range,
     *     settings that contradict each other from here on
     */
    public static List<Change> set(
            Scenario scenario, List<Change> timeline, long atMillis, Map<String, String> set)
            throws ScenarioException {
        return read(scenario, timeline, atMillis, "set: {" + pairs(set) + "}");
    }

    /**
     * Reads a command that a gauge is given at a moment.
     *
     * @param scenario that runs
     * @param timeline all its changes
     * @param atMillis when
     * @param command its keys and values, such as "command" and "zero-adjustment"
     * @return one change
     * @throws ScenarioException with every problem
     */
    public static List<Change> command(
            Scenario scenario, List<Change> timeline, long atMillis, Map<String, String> command)
            throws ScenarioException {
        return read(scenario, timeline, atMillis, pairs(command));
    }

    /**
     * The new value of a change as scenario files write it, such as "2 h" or "stopped".
     *
     * @param scenario that runs
     * @param change of its timeline, or given while it ran
     * @return empty for a command without a figure
     */
    public static String value(Scenario scenario, Change change) {
        return switch (change.target()) {
            case NEW_BATTERY, FORGET_MEASURED, ZERO_ADJUSTMENT -> "";
            case SPAN_ADJUSTMENT -> QuantityFormat.format(change.value(), RecordUnit.MICROAMPS);
            default -> StepWriter.value(scenario, change);
        };
    }

    private static String pairs(Map<String, String> texts) {
        List<String> pairs = new ArrayList<>();
        texts.forEach((key, text) -> pairs.add(Lines.quoted(key) + ": " + Lines.quoted(text)));
        return String.join(", ", pairs);
    }

    private static List<Change> read(
            Scenario scenario, List<Change> timeline, long atMillis, String rest)
            throws ScenarioException {
        String text = "[{at: " + ScenarioWriter.time(atMillis) + ", " + rest + "}]";
        Problems problems = new Problems(NAME, text);
        Node root = YamlDocument.root(text, problems, NAME);
        problems.throwIfAny();
        if (!(root instanceof SequenceNode steps)) {
            throw new IllegalStateException("a list was written");
        }
        Parts parts =
                new Parts(
                        scenario.battery(),
                        scenario.sensor(),
                        scenario.gauges(),
                        scenario.chargers(),
                        scenario.loads(),
                        scenario.wiring());
        // A single step knows nothing of the settings before it: they are judged together below.
        List<Change> changes =
                new TimelineReader(problems, scenario.durationMillis(), parts)
                        .readAlone(steps.getValue());
        problems.throwIfAny();
        SourceMark mark = problems.mark(1, 1);
        List<SettingsTimeline.Marked> all = new ArrayList<>();
        timeline.forEach(change -> all.add(new SettingsTimeline.Marked(change, mark)));
        changes.forEach(change -> all.add(new SettingsTimeline.Marked(change, mark)));
        all.sort(Comparator.comparingLong(marked -> marked.change().atMillis()));
        new SettingsTimeline(problems, scenario.gauges()).check(all);
        problems.throwIfAny();
        return changes;
    }
}
