package org.gaugebench.sim.scenario;

import java.util.List;
import org.gaugebench.sim.units.QuantityFormat;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/**
 * A scenario in which some quantities stand open, to be filled in for one device after the other.
 * Every device is read by the readers of a file, so that it gets the same defaults and the same
 * refusals as if somebody had written it. Many threads may fill in at the same time.
 */
public final class ScenarioTemplate {
    /** A quantity that stands open: where it is and what its author called it. */
    record Slot(Tolerance tolerance, List<String> path, ScalarNode key) {}

    private final String fileName;
    private final Node root;
    private final List<Slot> slots;
    private final ProfileFolder folder;

    /**
     * Opens a scenario.
     *
     * @param folder that has read every profile of it already
     */
    ScenarioTemplate(String fileName, Node root, List<Slot> slots, ProfileFolder folder) {
        this.fileName = fileName;
        this.root = root;
        this.slots = List.copyOf(slots);
        this.folder = folder;
    }

    /**
     * The scenario of one device.
     *
     * @param steps a value for each quantity in the order of the study, in steps of its unit
     * @param variant what reports call it
     * @param seed of every random stream of the run
     * @return the scenario
     * @throws ScenarioException if the readers refuse these values together
     */
    public Scenario with(long[] steps, String variant, long seed) throws ScenarioException {
        Node filled = root;
        for (int i = 0; i < steps.length; i++) {
            Slot slot = slots.get(i);
            filled =
                    VaryReader.with(
                            filled, slot.path(), slot.key(), 0, word(slot.key(), steps[i], slot));
        }
        Problems problems = new Problems(fileName, "");
        Scenario scenario = new FileReader(problems, fileName, folder).read(filled);
        problems.throwIfAny();
        return scenario.asVariant(variant, seed);
    }

    private static ScalarNode word(ScalarNode key, long steps, Slot slot) {
        return new ScalarNode(
                key.getTag(),
                true,
                QuantityFormat.format(steps, slot.tolerance().unit()),
                key.getScalarStyle(),
                key.getStartMark(),
                key.getEndMark());
    }
}
