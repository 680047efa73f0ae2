package org.gaugebench.sim.scenario;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.gaugebench.sim.units.Texts;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * Puts the parts that a scenario names under its own keys. A part is a file with the blocks of a
 * scenario and nothing that belongs to the scenario itself; a part may name parts.
 */
final class PartReader {
    static final String KEY = "parts";
    private static final int DEEPEST = 5;
    private static final int MOST_PARTS = 50;

    /** What belongs to a scenario and to no part of it. */
    private static final Set<String> SCENARIOS_OWN =
            Set.of(
                    "format", "title", "about", "tags", "covers", "symptom", "seed", "seeds",
                    "vary");

    private final Problems problems;
    private final PartFinder finder;
    private final Deque<String> chain = new ArrayDeque<>();
    private final Set<String> taken = new HashSet<>();

    private PartReader(Problems problems, PartFinder finder) {
        this.problems = problems;
        this.finder = finder;
    }

    /**
     * Merges the parts.
     *
     * @param root of the scenario
     * @param file where it stands, or null
     * @return the scenario over its parts; the root itself where it names none
     */
    static Node merged(Node root, @Nullable Path file, Problems problems) {
        return root instanceof MappingNode mapping
                ? new PartReader(problems, new PartFinder(file)).expand(mapping)
                : root;
    }

    private Node expand(MappingNode own) {
        Node list = PartMerge.value(own, KEY);
        if (list == null) {
            return own;
        }
        if (!(list instanceof SequenceNode names)) {
            problems.add(
                    list,
                    "expected a list such as '- hut-battery', but found " + Block.kindOf(list));
            return own;
        }
        Node under = PartMerge.mapping(new ArrayList<>(), own);
        for (Node name : names.getValue()) {
            Node part = part(name);
            under = part == null ? under : PartMerge.merge(under, part);
        }
        return PartMerge.merge(under, PartMerge.without(own, KEY));
    }

    private @Nullable Node part(Node entry) {
        if (!(entry instanceof ScalarNode scalar) || !PartFinder.isName(scalar.getValue())) {
            problems.add(
                    entry,
                    "a part is named by its file below the folder 'parts', in lower-case letters,"
                            + " digits, hyphens and '/', without '.yaml', such as 'hut-battery';"
                            + " found "
                            + Block.kindOf(entry));
            return null;
        }
        String name = scalar.getValue();
        if (chain.contains(name)) {
            List<String> circle = new ArrayList<>(chain);
            circle.add(name);
            problems.add(entry, "parts name each other in a circle: " + String.join(", ", circle));
            return null;
        }
        if (chain.size() == DEEPEST) {
            problems.add(entry, "parts name parts deeper than " + DEEPEST + " levels");
            return null;
        }
        if (!taken.add(name)) {
            // Named by two others: its lists must not come twice.
            return null;
        }
        if (taken.size() > MOST_PARTS) {
            problems.add(entry, "a scenario has at most " + MOST_PARTS + " parts");
            return null;
        }
        Node root = load(entry, name);
        if (root == null) {
            return null;
        }
        chain.addLast(name);
        Node expanded = checked(root);
        chain.removeLast();
        return expanded;
    }

    private @Nullable Node load(Node entry, String name) {
        PartFinder.Found found;
        try {
            found = finder.find(name);
        } catch (IOException e) {
            problems.add(entry, "the part '" + name + "' cannot be read: " + words(e));
            return null;
        }
        if (found == null) {
            problems.add(
                    entry,
                    "there is no part '"
                            + name
                            + "'; expected the file parts/"
                            + name
                            + ".yaml beside the scenario or in a folder above it");
            return null;
        }
        if (found.bytes().length > ScenarioReader.LARGEST_BYTES) {
            problems.add(entry, "the part '" + name + "' is larger than 1 MiB");
            return null;
        }
        try {
            String text = ScenarioReader.decoded(found.file(), found.bytes());
            problems.addFile(found.file(), text);
            Node root = YamlDocument.root(text, problems, found.file());
            if (root == null && problems.isEmpty()) {
                problems.add(entry, "the part '" + name + "' is empty");
            }
            return root;
        } catch (ScenarioException e) {
            e.problems().forEach(problem -> problems.add(problem.mark(), problem.message()));
            return null;
        }
    }

    private static String words(IOException e) {
        return e.getMessage() == null ? "unreadable" : Texts.shortened(e.getMessage());
    }

    private @Nullable Node checked(Node root) {
        if (!(root instanceof MappingNode mapping)) {
            problems.add(
                    root,
                    "a part holds blocks such as 'battery: {...}', but found "
                            + Block.kindOf(root));
            return null;
        }
        for (NodeTuple tuple : mapping.getValue()) {
            if (SCENARIOS_OWN.contains(PartMerge.key(tuple))) {
                problems.add(
                        tuple.getKeyNode(),
                        "'"
                                + PartMerge.key(tuple)
                                + "' belongs to the scenario and not to a part of it;"
                                + " a part gives blocks such as 'battery'");
            }
        }
        return expand(mapping);
    }
}
