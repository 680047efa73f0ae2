package org.gaugebench.sim.scenario;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.snakeyaml.engine.v2.nodes.Tag;

/**
 * Lays one tree over another. Keys and values merge key by key, to any depth; lists are joined, the
 * lower one first; of any other value the upper one stands.
 */
final class PartMerge {
    private PartMerge() {}

    static Node merge(Node under, Node over) {
        if (under instanceof MappingNode low && over instanceof MappingNode high) {
            return mappings(low, high);
        }
        if (under instanceof SequenceNode low && over instanceof SequenceNode high) {
            List<Node> joined = new ArrayList<>(low.getValue());
            joined.addAll(high.getValue());
            return new SequenceNode(
                    Tag.SEQ, true, joined, FlowStyle.BLOCK, high.getStartMark(), high.getEndMark());
        }
        return over;
    }

    private static MappingNode mappings(MappingNode under, MappingNode over) {
        Map<String, Node> low = values(under);
        Map<String, Node> high = values(over);
        List<NodeTuple> tuples = new ArrayList<>();
        for (NodeTuple tuple : under.getValue()) {
            if (!high.containsKey(key(tuple))) {
                tuples.add(tuple);
            }
        }
        for (NodeTuple tuple : over.getValue()) {
            // A key that stands twice is merged once; the reader refuses the second.
            Node lower = low.remove(key(tuple));
            tuples.add(
                    lower == null
                            ? tuple
                            : new NodeTuple(
                                    tuple.getKeyNode(), merge(lower, tuple.getValueNode())));
        }
        return mapping(tuples, over);
    }

    /** A mapping that stands where another does. */
    static MappingNode mapping(List<NodeTuple> tuples, Node place) {
        return new MappingNode(
                Tag.MAP, true, tuples, FlowStyle.BLOCK, place.getStartMark(), place.getEndMark());
    }

    private static Map<String, Node> values(MappingNode mapping) {
        Map<String, Node> values = new HashMap<>();
        for (NodeTuple tuple : mapping.getValue()) {
            values.putIfAbsent(key(tuple), tuple.getValueNode());
        }
        return values;
    }

    /** The word of a key; what is no word never meets another. */
    static String key(NodeTuple tuple) {
        return tuple.getKeyNode() instanceof ScalarNode scalar
                ? scalar.getValue()
                : "\0" + System.identityHashCode(tuple);
    }

    /** The value of a key, or null. */
    static @Nullable Node value(Node mapping, String key) {
        return mapping instanceof MappingNode it ? values(it).get(key) : null;
    }

    /** A mapping without a key. */
    static MappingNode without(MappingNode mapping, String key) {
        List<NodeTuple> left =
                mapping.getValue().stream().filter(tuple -> !key(tuple).equals(key)).toList();
        return mapping(new ArrayList<>(left), mapping);
    }
}
