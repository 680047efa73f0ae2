package org.gaugebench.sim.scenario;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import org.gaugebench.sim.units.CapacityRating;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;
import org.gaugebench.sim.units.Texts;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * One mapping of the file. The keys that a reader asks for are the valid keys: {@link #finish()}
 * reports the others. Whatever is wrong becomes a problem, and the fallback stands in, so that
 * reading goes on and finds the rest.
 */
final class Block {
    /** No quantity reads as this: the parser's range is symmetric. */
    private static final long UNREAD = Long.MIN_VALUE;

    private final Problems problems;
    private final String name;
    private final SourceMark mark;
    private final boolean usable;
    private final Map<String, Node> keys = new LinkedHashMap<>();
    private final Map<String, Node> values = new LinkedHashMap<>();
    private final Set<String> asked = new LinkedHashSet<>();
    private final Set<String> required = new LinkedHashSet<>();
    private final @Nullable KeyLog log;
    private final KeyLog.@Nullable Place place;

    /**
     * Opens a mapping.
     *
     * @param node the value, or null for a block that is left out: every key of it is then absent
     * @param name as messages call it: "battery", "load 'lamp'"
     */
    Block(Problems problems, @Nullable Node node, String name) {
        this(problems, node, name, null);
    }

    private Block(
            Problems problems, @Nullable Node node, String name, KeyLog.@Nullable Place under) {
        this.problems = problems;
        this.log = problems.log();
        this.name = name;
        this.mark = node == null ? problems.mark(1, 1) : problems.mark(node);
        this.usable = node == null || node instanceof MappingNode;
        if (node instanceof MappingNode mapping) {
            for (NodeTuple tuple : mapping.getValue()) {
                addEntry(tuple);
            }
        } else if (node != null) {
            problems.add(
                    node, "expected keys and values under " + name + ", but found " + kindOf(node));
        }
        this.place = log == null ? null : under == null ? log.placeOf(node) : under;
        if (log != null) {
            log.opened(this, values);
        }
    }

    /** Where it hangs; null for the scenario itself, and without a log. */
    KeyLog.@Nullable Place place() {
        return place;
    }

    private void ask(String key, Consumer<KeyLog.Asked> note) {
        asked.add(key);
        if (log != null) {
            note.accept(log.key(this, key));
        }
    }

    private void addEntry(NodeTuple tuple) {
        if (!(tuple.getKeyNode() instanceof ScalarNode key)) {
            problems.add(
                    tuple.getKeyNode(),
                    "expected a word as key, such as 'capacity', but found "
                            + kindOf(tuple.getKeyNode()));
            return;
        }
        String word = key.getValue();
        Node first = keys.get(word);
        if (first != null) {
            problems.add(
                    key,
                    "'"
                            + Texts.shortened(word)
                            + "' stands twice in "
                            + name
                            + "; the first is on line "
                            + problems.mark(first).line());
            return;
        }
        keys.put(word, key);
        values.put(word, tuple.getValueNode());
    }

    /** Where the block begins. */
    SourceMark mark() {
        return mark;
    }

    /** Where a key stands, or where the block begins. */
    SourceMark markOf(String key) {
        Node node = keys.get(key);
        return node == null ? mark : problems.mark(node);
    }

    /** Whether a key stands in the file; makes it a valid one. */
    boolean has(String key) {
        ask(key, it -> {});
        return values.containsKey(key);
    }

    /** Whether one of some keys stands in the file; makes all of them valid ones. */
    boolean hasAny(String... several) {
        boolean any = false;
        for (String key : several) {
            any |= has(key);
        }
        return any;
    }

    /** The value of a key, whatever it is; makes the key a valid one. */
    @Nullable Node node(String key) {
        ask(key, it -> {});
        return values.get(key);
    }

    /** All keys in file order, for blocks whose keys are names. */
    List<String> names() {
        if (log != null) {
            log.named(this);
        }
        return new ArrayList<>(values.keySet());
    }

    void problem(String key, String message) {
        problems.add(markOf(key), message);
    }

    /** Adds a problem at a key's value. */
    void valueProblem(String key, String message) {
        Node value = values.get(key);
        problems.add(value == null ? markOf(key) : problems.mark(value), message);
    }

    /** Says that a key has to be there; nothing if it is. */
    void require(String key, String example) {
        required.add(key);
        if (!has(key) && usable) {
            problems.add(
                    mark, "'" + key + "' is missing in " + name + "; expected '" + example + "'");
        }
    }

    /** A block inside this one; an empty one if it is left out. */
    Block block(String key, String blockName) {
        ask(key, it -> it.isBlock = true);
        return new Block(
                problems,
                node(key),
                blockName,
                log == null ? null : new KeyLog.Place(this, key, false));
    }

    /** The items of a list; empty if it is left out. */
    List<Node> list(String key, String example) {
        ask(key, it -> it.isList = true);
        Node node = node(key);
        if (node instanceof SequenceNode sequence) {
            return sequence.getValue();
        }
        if (node != null) {
            valueProblem(
                    key, "expected a list such as '- " + example + "', but found " + kindOf(node));
        }
        return List.of();
    }

    /** A plain text, or null if it is left out or wrong. */
    @Nullable String text(String key, String example) {
        ask(key, it -> it.text(example));
        return scalar(key, example);
    }

    private @Nullable String scalar(String key, String example) {
        Node node = node(key);
        if (node == null) {
            return null;
        }
        if (!(node instanceof ScalarNode scalar)) {
            valueProblem(key, "expected '" + key + ": " + example + "', but found " + kindOf(node));
            return null;
        }
        if (scalar.isPlain() && scalar.getValue().isEmpty()) {
            problem(key, "'" + key + "' has no value; expected '" + key + ": " + example + "'");
            return null;
        }
        return scalar.getValue();
    }

    /** A text that a parser of the units package reads. */
    <T> T parsed(String key, String example, Parser<T> parser, T fallback) {
        ask(key, it -> it.parsed(example));
        return read(key, example, parser, fallback);
    }

    private <T> T read(String key, String example, Parser<T> parser, T fallback) {
        String text = scalar(key, example);
        if (text == null) {
            return fallback;
        }
        try {
            return parser.parse(text);
        } catch (QuantityException e) {
            valueProblem(key, e.explanation());
            return fallback;
        }
    }

    /** A quantity within limits. */
    long quantity(String key, RecordUnit unit, long minimum, long maximum, long fallback) {
        ask(key, it -> it.quantity(example(unit), unit, minimum, maximum));
        return limited(
                key,
                unit,
                minimum,
                maximum,
                fallback,
                read(key, example(unit), text -> Quantity.parse(text, unit), UNREAD));
    }

    /** A quantity within limits, or the word "none" for zero. */
    long quantityOrNone(String key, RecordUnit unit, long minimum, long maximum, long fallback) {
        if (isWord(key, "none")) {
            return 0;
        }
        return quantity(key, unit, minimum, maximum, fallback);
    }

    /** A capacity, with or without its 20 h rate. */
    long capacity(String key, RecordUnit unit, long minimum, long maximum, long fallback) {
        ask(key, it -> it.quantity(CapacityRating.EXAMPLE, unit, minimum, maximum));
        return limited(
                key,
                unit,
                minimum,
                maximum,
                fallback,
                read(
                        key,
                        CapacityRating.EXAMPLE,
                        text -> CapacityRating.parse(text, unit),
                        UNREAD));
    }

    private long limited(
            String key, RecordUnit unit, long minimum, long maximum, long fallback, long value) {
        if (value == UNREAD) {
            return fallback;
        }
        if (value >= minimum && value <= maximum) {
            return value;
        }
        valueProblem(
                key,
                "'"
                        + key
                        + "' must be "
                        + QuantityFormat.format(minimum, unit)
                        + " to "
                        + QuantityFormat.format(maximum, unit)
                        + ", but is "
                        + QuantityFormat.format(value, unit));
        return fallback;
    }

    /** A whole number within limits. */
    long whole(String key, long minimum, long maximum, long fallback, long example) {
        ask(key, it -> it.whole(minimum, maximum));
        String text = scalar(key, Long.toString(example));
        if (text == null) {
            return fallback;
        }
        if (text.matches("[+-]?\\d{1,18}|-?[1-8]\\d{18}")) {
            long value = Long.parseLong(text);
            if (value >= minimum && value <= maximum) {
                return value;
            }
        }
        valueProblem(
                key,
                "expected a whole number from "
                        + minimum
                        + " to "
                        + maximum
                        + " such as "
                        + example
                        + ", but found '"
                        + Texts.shortened(text)
                        + "'");
        return fallback;
    }

    /** One of some words. */
    <T> T choice(String key, Collection<T> options, Function<T, String> word, T fallback) {
        List<String> words = options.stream().map(word).toList();
        ask(key, it -> it.words.addAll(words));
        String text = scalar(key, words.isEmpty() ? "name" : words.get(0));
        if (text == null) {
            return fallback;
        }
        for (T option : options) {
            if (word.apply(option).equals(text)) {
                return option;
            }
        }
        valueProblem(
                key,
                "'"
                        + key
                        + "' cannot be '"
                        + Texts.shortened(text)
                        + "'; "
                        + Nearest.hint(text, words));
        return fallback;
    }

    /** One of two words, the first meaning true. */
    boolean either(String key, String yes, String no, boolean fallback) {
        return choice(key, List.of(true, false), it -> it ? yes : no, fallback);
    }

    /** Whether the value is exactly a word; says nothing otherwise. */
    boolean isWord(String key, String word) {
        ask(key, it -> it.words.add(word));
        return node(key) instanceof ScalarNode scalar && scalar.getValue().equals(word);
    }

    /** Reports every key that nobody asked for. */
    void finish() {
        if (log != null) {
            log.finished(this, required);
        }
        for (Map.Entry<String, Node> entry : keys.entrySet()) {
            String word = entry.getKey();
            if (!asked.contains(word)) {
                String hint =
                        word.matches("[+-]?\\d.*")
                                ? "a value with a comma needs quotes, such as \"20 bit, 100 mV\""
                                : Nearest.hint(word, asked);
                problems.add(
                        entry.getValue(),
                        "there is no key '" + Texts.shortened(word) + "' in " + name + "; " + hint);
            }
        }
    }

    static String example(RecordUnit unit) {
        return unit.dimension().example();
    }

    static String kindOf(Node node) {
        return switch (node.getNodeType()) {
            case MAPPING -> "keys and values";
            case SEQUENCE -> "a list";
            case SCALAR -> {
                String value = ((ScalarNode) node).getValue();
                yield value.isEmpty() ? "nothing" : "'" + Texts.shortened(value) + "'";
            }
            default -> "something else";
        };
    }

    /**
     * Reads a text exactly or says why not.
     *
     * @param <T> what it reads
     */
    interface Parser<T> {
        /** Reads a text. */
        T parse(String text) throws QuantityException;
    }
}
