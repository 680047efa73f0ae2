package org.gaugebench.sim.scenario;

import static org.gaugebench.sim.units.RecordUnit.MILLIS;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/**
 * Opens the scenario of a study at every address that has a tolerance. The scenario is read once
 * for each combination with a value of the study at its place, so that its readers say whether
 * there is such a key, in which unit, and within which limits.
 */
final class StudyCases {
    private static final int MOST_TOLERANCES = 50;

    private static final Tolerance UNREAD =
            new Tolerance("", MILLIS, Tolerance.Kind.RECTANGULAR, 0, 1, 0, 0, 1);

    private final Path file;
    private final String studyText;
    private final Problems problems;
    private final Block block;
    private final List<Tolerance> all = new ArrayList<>();
    private final List<StudySpec.Case> cases = new ArrayList<>();
    private final List<Scenario> plain = new ArrayList<>();

    /**
     * Prepares to open.
     *
     * @param file of the study; the scenario's name is relative to it
     * @param block the study
     */
    StudyCases(Path file, String studyText, Problems problems, Block block) {
        this.file = file;
        this.studyText = studyText;
        this.problems = problems;
        this.block = block;
    }

    /** What differs from device to device, in file order. */
    List<Tolerance> tolerances() {
        return all;
    }

    /** One for each combination. */
    List<StudySpec.Case> cases() {
        return cases;
    }

    /** The scenario of each combination, with a value of each tolerance at its place. */
    List<Scenario> plain() {
        return plain;
    }

    /** The scenario's tree with what varies in the study, and how its file is called. */
    private record Names(String name, String text, Path path, Node root) {}

    private @Nullable Names scenarioTree() {
        String name = block.text("scenario", "a-month-in-the-hut.yaml");
        if (name == null) {
            return null;
        }
        try {
            Path path = file.resolveSibling(name);
            String text = ScenarioReader.text(path);
            Problems own = new Problems(path.toString(), text);
            Node root = ScenarioReader.tree(path.toString(), text, path, own);
            return new Names(path.toString(), text, path, withVary(root));
        } catch (InvalidPathException e) {
            block.valueProblem("scenario", "this is not a name that a file can have");
        } catch (ScenarioException e) {
            take(e);
        }
        return null;
    }

    private void take(ScenarioException e) {
        for (ScenarioProblem each : e.problems()) {
            boolean missing = each.sourceLine().isEmpty() && each.mark().line() == 1;
            if (missing) {
                block.valueProblem("scenario", each.mark().file() + ": " + each.message());
            } else {
                problems.add(each.mark(), each.message());
            }
        }
    }

    private Node withVary(Node root) {
        if (!(root instanceof MappingNode mapping)) {
            return root;
        }
        List<NodeTuple> tuples = new ArrayList<>();
        for (NodeTuple tuple : mapping.getValue()) {
            String key = PartMerge.key(tuple);
            if (!key.equals(VaryReader.VARY) && !key.equals(VaryReader.SEEDS)) {
                tuples.add(tuple);
            }
        }
        Node vary = block.node(VaryReader.VARY);
        if (vary != null) {
            tuples.add(new NodeTuple(word(VaryReader.VARY, vary), vary));
        }
        return PartMerge.mapping(tuples, root);
    }

    private static ScalarNode word(String word, Node place) {
        return new ScalarNode(
                org.snakeyaml.engine.v2.nodes.Tag.STR,
                true,
                word,
                org.snakeyaml.engine.v2.common.ScalarStyle.PLAIN,
                place.getStartMark(),
                place.getEndMark());
    }

    /** Opens the scenario at every address, once for each combination. */
    void open(Block tolerances) {
        Names scenario = scenarioTree();
        if (scenario == null) {
            return;
        }
        problems.addFile(scenario.name(), scenario.text());
        List<String> addresses = tolerances.names();
        if (addresses.size() > MOST_TOLERANCES) {
            problems.add(
                    tolerances.mark(), "more than " + MOST_TOLERANCES + " tolerances in a study");
            return;
        }
        VaryReader vary = new VaryReader(problems, scenario.root(), null);
        Map<String, ToleranceReader> readers = new HashMap<>();
        List<ScenarioTemplate.Slot> samples = new ArrayList<>();
        Node tree = scenario.root();
        List<Node> values = new ArrayList<>();
        for (String address : addresses) {
            List<String> path = VaryReader.path(address);
            String refusal = vary.refusal(path);
            Node key = VaryReader.keyNode(block.node("tolerances"), address);
            if (refusal != null || !(key instanceof ScalarNode word)) {
                tolerances.problem(address, refusal == null ? "expected a key" : refusal);
                continue;
            }
            if (PartMerge.value(
                            block.node(VaryReader.VARY) == null
                                    ? tree
                                    : block.node(VaryReader.VARY),
                            address)
                    != null) {
                tolerances.problem(address, "'" + address + "' stands under 'vary' too");
                continue;
            }
            ToleranceReader reader = new ToleranceReader(problems, tolerances, address);
            Node sample = reader.sample();
            if (sample != null) {
                readers.put(address, reader);
                samples.add(new ScenarioTemplate.Slot(UNREAD, path, word));
                values.add(sample);
            }
        }
        for (VaryReader.Combination each : vary.combinations()) {
            Node filled = each.root();
            for (int i = 0; i < samples.size(); i++) {
                ScenarioTemplate.Slot slot = samples.get(i);
                filled = VaryReader.with(filled, slot.path(), slot.key(), 0, values.get(i));
            }
            openCase(scenario, each, filled, samples, readers);
        }
    }

    private void openCase(
            Names scenario,
            VaryReader.Combination combination,
            Node filled,
            List<ScenarioTemplate.Slot> samples,
            Map<String, ToleranceReader> readers) {
        KeyLog log = new KeyLog();
        Problems own = new Problems(scenario.name(), scenario.text(), log);
        own.addFile(file.toString(), studyText);
        ProfileFolder folder = new ProfileFolder(own, scenario.path());
        Scenario read = new FileReader(own, scenario.name(), folder).read(filled);
        boolean first = cases.isEmpty();
        List<ScenarioTemplate.Slot> slots = new ArrayList<>();
        for (ScenarioTemplate.Slot slot : samples) {
            String address = String.join(".", slot.path());
            KeyLog.Asked asked = log.asked(slot.path());
            ToleranceReader reader = readers.get(address);
            if (asked == null || reader == null) {
                continue;
            }
            if (asked.unit == null) {
                problems.add(
                        slot.key(),
                        "'"
                                + address
                                + "' is no single quantity, so it has no tolerance; expected one"
                                + " such as 'sensor.shunt-error' or 'battery.temperature'");
                continue;
            }
            Tolerance tolerance = reader.read(asked);
            if (tolerance != null) {
                slots.add(new ScenarioTemplate.Slot(tolerance, slot.path(), slot.key()));
                if (first) {
                    all.add(tolerance);
                }
            }
        }
        try {
            own.throwIfAny();
        } catch (ScenarioException e) {
            e.problems().forEach(each -> problems.add(each.mark(), each.message()));
            return;
        }
        plain.add(read.asVariant(combination.name(), read.seed()));
        cases.add(
                new StudySpec.Case(
                        combination.name(),
                        new ScenarioTemplate(scenario.name(), combination.root(), slots, folder),
                        read.durationMillis()));
    }
}
