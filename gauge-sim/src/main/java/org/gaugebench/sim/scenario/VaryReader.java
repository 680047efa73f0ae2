package org.gaugebench.sim.scenario;

import java.util.ArrayList;
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

/** Reads what varies from run to run, and puts each combination into a tree of its own. */
final class VaryReader {
    static final String VARY = "vary";
    static final String SEEDS = "seeds";

    /** Each combination is read as a whole file; six temperatures by six loads by six sizes fit. */
    static final int MOST_COMBINATIONS = 256;

    private static final int DEEPEST = 5;
    private static final Set<String> NOT_VARIED =
            Set.of(VARY, SEEDS, PartReader.KEY, "format", "title", "about", "tags", "covers");
    private static final Set<String> NAMED_BLOCKS = Set.of("loads", "chargers");

    private final Problems problems;
    private final Node root;
    private final @Nullable Node vary;
    private final @Nullable SeedRange asked;

    /** With seeds from outside the file, or null. */
    VaryReader(Problems problems, Node root, @Nullable SeedRange asked) {
        this.problems = problems;
        this.root = root;
        this.asked = asked;
        this.vary = PartMerge.value(root, VARY);
    }

    /** One run of the file: its tree and what is special about it. */
    record Combination(Node root, String name) {}

    /** One key that varies. */
    private record Axis(List<String> path, ScalarNode key, List<ScalarNode> values) {}

    /** Adds a problem where the runs are counted. */
    void refuse(String message) {
        Node seeds = asked != null ? null : PartMerge.value(root, SEEDS);
        Node place = seeds != null ? seeds : vary != null ? vary : root;
        problems.add(place, message);
    }

    /** The seeds, or null where the file has its one. */
    @Nullable SeedRange seeds() {
        SeedRange ownSeeds = ownSeeds();
        return asked == null ? ownSeeds : asked;
    }

    private @Nullable SeedRange ownSeeds() {
        if (PartMerge.value(root, SEEDS) == null) {
            return null;
        }
        if (vary != null && PartMerge.value(vary, "seed") != null) {
            refuse("the seed varies in 'vary' and in 'seeds'; expected one of them");
        }
        return new Block(problems, root, "the scenario")
                .parsed(SEEDS, SeedRange.EXAMPLE, SeedRange::parse, new SeedRange(1, 1));
    }

    /** Every combination in file order; the tree itself where nothing varies. */
    List<Combination> combinations() {
        List<Combination> combinations = List.of(new Combination(root, ""));
        List<Axis> axes = axes();
        long count = 1;
        for (Axis axis : axes) {
            count *= Math.max(1, axis.values.size());
            if (count > MOST_COMBINATIONS) {
                problems.add(
                        axis.key,
                        "'vary' makes more than "
                                + MOST_COMBINATIONS
                                + " combinations; expected fewer keys or values");
                return combinations;
            }
        }
        for (Axis axis : axes) {
            List<Combination> next = new ArrayList<>();
            for (Combination before : combinations) {
                for (ScalarNode value : axis.values) {
                    String name = axis.key.getValue() + "=" + value.getValue();
                    next.add(
                            new Combination(
                                    with(before.root, axis.path, axis.key, 0, value),
                                    before.name.isEmpty() ? name : before.name + ", " + name));
                }
            }
            combinations = next;
        }
        return combinations;
    }

    private List<Axis> axes() {
        List<Axis> axes = new ArrayList<>();
        if (vary == null) {
            return axes;
        }
        Block block = new Block(problems, vary, VARY);
        for (String key : block.names()) {
            List<String> path = path(key);
            List<ScalarNode> values = values(block, key);
            Node keyNode = keyNode(key);
            String refusal = refusal(path);
            if (refusal != null) {
                block.problem(key, refusal);
            } else if (!values.isEmpty()
                    && keyNode instanceof ScalarNode scalar
                    && !isReplaced(key)) {
                axes.add(new Axis(path, scalar, values));
            }
        }
        return axes;
    }

    /** Seeds from outside the file go before those that vary in it. */
    private boolean isReplaced(String key) {
        return asked != null && key.equals("seed");
    }

    private @Nullable Node keyNode(String key) {
        return keyNode(vary, key);
    }

    /** A key of a mapping as its author wrote it. */
    static @Nullable Node keyNode(@Nullable Node block, String key) {
        if (block instanceof MappingNode mapping) {
            for (NodeTuple tuple : mapping.getValue()) {
                if (PartMerge.key(tuple).equals(key)) {
                    return tuple.getKeyNode();
                }
            }
        }
        return null;
    }

    /** Why a path cannot vary, or null. */
    @Nullable String refusal(List<String> path) {
        String first = path.get(0);
        if (path.size() > DEEPEST || path.contains("") || NOT_VARIED.contains(first)) {
            return "expected a key of the scenario with dots between its blocks, such as"
                    + " 'battery.temperature' or 'loads.lamp.current'";
        }
        Node node = root;
        int size = path.size();
        for (int i = 0; i < size - 1; i++) {
            node = PartMerge.value(node, path.get(i));
            if (node == null) {
                return i == 1 && NAMED_BLOCKS.contains(first)
                        ? "nothing under '" + first + "' is called '" + path.get(1) + "'"
                        : NAMED_BLOCKS.contains(first) ? "there are no " + first : null;
            }
            if (!(node instanceof MappingNode)) {
                return "'" + Texts.shortened(path.get(i)) + "' holds no keys and values";
            }
        }
        return null;
    }

    static List<String> path(String key) {
        List<String> path = new ArrayList<>();
        int from = 0;
        for (int dot = key.indexOf('.'); dot >= 0; dot = key.indexOf('.', from)) {
            path.add(key.substring(from, dot));
            from = dot + 1;
        }
        path.add(key.substring(from));
        return path;
    }

    private List<ScalarNode> values(Block block, String key) {
        List<ScalarNode> values = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        Node node = block.node(key);
        if (!(node instanceof SequenceNode list) || list.getValue().isEmpty()) {
            block.valueProblem(
                    key,
                    "expected a list of values such as '"
                            + Texts.shortened(key)
                            + ": [10 A, 20 A]', but found "
                            + (node == null ? "nothing" : Block.kindOf(node)));
            return values;
        }
        for (Node value : list.getValue()) {
            if (!(value instanceof ScalarNode scalar)) {
                problems.add(
                        value, "only a single value can vary, but found " + Block.kindOf(value));
            } else if (!seen.add(scalar.getValue())) {
                problems.add(value, "'" + Texts.shortened(scalar.getValue()) + "' stands twice");
            } else {
                values.add(scalar);
            }
        }
        return values;
    }

    /**
     * The tree with another value; what does not hang below the path is shared.
     *
     * @param key as its author wrote it: blocks that have to be made stand where it does
     * @param depth keys of the path above the node
     */
    static Node with(Node node, List<String> path, ScalarNode key, int depth, Node value) {
        if (depth == path.size()) {
            return value;
        }
        String here = path.get(depth);
        List<NodeTuple> tuples = new ArrayList<>();
        boolean found = false;
        if (node instanceof MappingNode mapping) {
            for (NodeTuple tuple : mapping.getValue()) {
                boolean replaced = !found && PartMerge.key(tuple).equals(here);
                found |= replaced;
                tuples.add(
                        replaced
                                ? new NodeTuple(
                                        tuple.getKeyNode(),
                                        with(tuple.getValueNode(), path, key, depth + 1, value))
                                : tuple);
            }
        }
        if (!found) {
            ScalarNode word =
                    new ScalarNode(
                            key.getTag(),
                            true,
                            here,
                            key.getScalarStyle(),
                            key.getStartMark(),
                            key.getEndMark());
            Node empty = PartMerge.mapping(new ArrayList<>(), key);
            tuples.add(new NodeTuple(word, with(empty, path, key, depth + 1, value)));
        }
        return PartMerge.mapping(tuples, node);
    }
}
