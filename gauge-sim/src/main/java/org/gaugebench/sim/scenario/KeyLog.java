package org.gaugebench.sim.scenario;

import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * Notes which keys the readers ask for, where, and as what. The schema for editors is made from it,
 * so that schema and readers cannot come apart. Without a log nothing is noted.
 */
final class KeyLog {
    private final Map<String, Shape> shapes = new TreeMap<>();
    private final IdentityHashMap<Node, Place> places = new IdentityHashMap<>();

    /** Where a block hangs: under a key of another block, or as an item of the list there. */
    record Place(Block parent, String key, boolean item) {}

    /** What is known of one key. */
    static final class Asked {
        final Set<String> words = new LinkedHashSet<>();
        final Set<String> examples = new LinkedHashSet<>();
        final Set<String> ranges = new LinkedHashSet<>();
        boolean isQuantity;
        boolean isParsed;
        boolean isText;
        boolean isList;
        boolean isBlock;
        boolean isWhole;
        long minimum;
        long maximum;

        /** The unit, if it is a quantity, and its range in steps of it as last asked for. */
        @Nullable RecordUnit unit;

        long fromSteps;
        long toSteps;

        void text(String example) {
            isText = true;
            examples.add(example);
        }

        void parsed(String example) {
            isParsed = true;
            examples.add(example);
        }

        void quantity(String example, RecordUnit unit, long from, long to) {
            isQuantity = true;
            this.unit = unit;
            fromSteps = from;
            toSteps = to;
            examples.add(example);
            ranges.add(
                    QuantityFormat.format(from, unit) + " to " + QuantityFormat.format(to, unit));
        }

        /** One key may be a count in one entry and a register in another: the wider range. */
        void whole(long from, long to) {
            minimum = isWhole ? Math.min(minimum, from) : from;
            maximum = isWhole ? Math.max(maximum, to) : to;
            isWhole = true;
        }

        /** Takes over what another key is known as. */
        void take(Asked other) {
            words.addAll(other.words);
            examples.addAll(other.examples);
            ranges.addAll(other.ranges);
            isQuantity |= other.isQuantity;
            isParsed |= other.isParsed;
            isText |= other.isText;
            isList |= other.isList;
            isBlock |= other.isBlock;
            if (other.isWhole) {
                whole(other.minimum, other.maximum);
            }
        }

        /** Whether anything but its presence was asked. */
        boolean isTyped() {
            return !words.isEmpty()
                    || isQuantity
                    || isParsed
                    || isText
                    || isList
                    || isBlock
                    || isWhole;
        }
    }

    /** What is known of all blocks of one kind. */
    static final class Shape {
        final Map<String, Asked> keys = new TreeMap<>();

        /** Whether its keys are names that the user gives. */
        boolean isNamed;

        /** Keys that had to be there in every block of the kind. */
        @Nullable Set<String> required;
    }

    /** All kinds of blocks by path: "" is the scenario, "loads.*" a load, "expect[]" an entry. */
    Map<String, Shape> shapes() {
        return shapes;
    }

    void opened(Block block, Map<String, Node> values) {
        values.forEach(
                (key, value) -> {
                    places.put(value, new Place(block, key, false));
                    if (value instanceof SequenceNode list) {
                        list.getValue().forEach(i -> places.put(i, new Place(block, key, true)));
                    }
                });
    }

    @Nullable Place placeOf(@Nullable Node node) {
        return node == null ? null : places.get(node);
    }

    String path(@Nullable Place place) {
        if (place == null) {
            return "";
        }
        String parent = path(place.parent.place());
        boolean named = shape(parent).isNamed;
        String key = named ? "*" : place.key;
        return (parent.isEmpty() ? key : parent + "." + key) + (place.item ? "[]" : "");
    }

    /** What is known of a key of the scenario, named from the top; null if nobody asked for it. */
    @Nullable Asked asked(List<String> keys) {
        String path = "";
        Asked asked = null;
        for (String key : keys) {
            Shape shape = shapes.get(path);
            if (shape == null) {
                return null;
            }
            asked = shape.keys.get(key);
            String part = shape.isNamed ? "*" : key;
            path = path.isEmpty() ? part : path + "." + part;
        }
        return asked;
    }

    Shape shape(String path) {
        return shapes.computeIfAbsent(path, it -> new Shape());
    }

    Asked key(Block block, String key) {
        return shape(path(block.place())).keys.computeIfAbsent(key, it -> new Asked());
    }

    void named(Block block) {
        shape(path(block.place())).isNamed = true;
    }

    void finished(Block block, Set<String> required) {
        Shape shape = shape(path(block.place()));
        if (shape.required == null) {
            shape.required = new LinkedHashSet<>(required);
        } else {
            shape.required.retainAll(required);
        }
    }
}
