package org.gaugebench.sim.scenario;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.sim.scenario.Tolerance.Kind;
import org.gaugebench.sim.units.CapacityRating;
import org.gaugebench.sim.units.Dimension;
import org.gaugebench.sim.units.Quantity;
import org.gaugebench.sim.units.QuantityException;
import org.gaugebench.sim.units.QuantityFormat;
import org.gaugebench.sim.units.RecordUnit;
import org.gaugebench.sim.units.Texts;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/** Reads one entry under "tolerances" of a study: the shape first, its figures once the unit is. */
final class ToleranceReader {
    static final String EXAMPLE = "sensor.offset: {rectangular: [-3 uV, 3 uV]}";
    private static final String CLASS = "class";
    private static final String SPREAD = "standard-uncertainty";
    private static final String TOP = "top";

    /** Fewer steps than this between two ends, and rounding would change the shape. */
    private static final long FEWEST_STEPS = 20;

    /** A normal draw beyond so many standard uncertainties comes once in 16,000. */
    private static final long FARTHEST = 4;

    private static final long PARTS_PER_PERCENT = 10_000;
    private static final Pattern CLASS_INDEX = Pattern.compile("(\\d{1,2})(?:\\.(\\d{1,4}))?");

    private final Problems problems;
    private final Block block;
    private final String address;
    private final @Nullable Kind kind;
    private final boolean isClass;

    /**
     * Finds the shape.
     *
     * @param tolerances the block of all of them
     */
    ToleranceReader(Problems problems, Block tolerances, String address) {
        this.problems = problems;
        this.address = address;
        Node node = tolerances.node(address);
        boolean usable = node instanceof MappingNode;
        this.block =
                new Block(problems, usable ? node : null, "tolerance '" + Texts.shortened(address));
        if (!usable) {
            tolerances.valueProblem(
                    address,
                    "expected a shape and its figures such as '"
                            + EXAMPLE
                            + "', but found "
                            + (node == null ? "nothing" : Block.kindOf(node)));
        }
        List<String> shapes = new ArrayList<>(Arrays.stream(Kind.values()).map(Kind::key).toList());
        shapes.add(CLASS);
        List<String> found = new ArrayList<>();
        for (String shape : shapes) {
            if (block.has(shape)) {
                found.add(shape);
            }
        }
        if (usable && found.size() != 1) {
            List<String> written = block.names();
            String near =
                    found.isEmpty() && !written.isEmpty()
                            ? Nearest.hint(written.get(0), shapes)
                            : "expected one of: " + String.join(", ", shapes);
            tolerances.problem(
                    address,
                    found.isEmpty()
                            ? "no shape of the distribution; " + near
                            : "two shapes of one distribution, " + String.join(" and ", found));
        }
        this.isClass = found.contains(CLASS);
        this.kind = found.size() == 1 ? kind(found.get(0)) : null;
    }

    private static Kind kind(String word) {
        for (Kind kind : Kind.values()) {
            if (kind.key().equals(word)) {
                return kind;
            }
        }
        // A class is the limit of an error and says nothing about where within it.
        return Kind.RECTANGULAR;
    }

    /** A value of the distribution as text, with which the scenario can be read; null if none. */
    @Nullable Node sample() {
        Kind shape = kind;
        if (shape == null) {
            return null;
        }
        String key = isClass ? CLASS : shape.key();
        Node value = block.node(key);
        Node sample = null;
        if (isClass) {
            sample = value instanceof ScalarNode scalar ? zeroPercent(scalar) : null;
        } else if (shape == Kind.NORMAL) {
            sample = value instanceof ScalarNode ? value : null;
        } else {
            List<Node> ends = ends();
            sample = ends.size() == 2 ? ends.get(0) : null;
        }
        if (sample == null) {
            block.valueProblem(
                    key,
                    "expected "
                            + (isClass
                                    ? "a class index such as 'class: 0.5'"
                                    : shape == Kind.NORMAL
                                            ? "the mean such as 'normal: 20 °C'"
                                            : "two ends such as '%s: [-3 uV, 3 uV]'".formatted(key))
                            + ", but found "
                            + (value == null ? "nothing" : Block.kindOf(value)));
        }
        return sample;
    }

    private static ScalarNode zeroPercent(ScalarNode place) {
        return new ScalarNode(
                place.getTag(),
                true,
                "0 %",
                place.getScalarStyle(),
                place.getStartMark(),
                place.getEndMark());
    }

    private List<Node> ends() {
        return kind != null
                        && block.node(kind.key()) instanceof SequenceNode list
                        && list.getValue().stream().allMatch(it -> it instanceof ScalarNode)
                ? list.getValue()
                : List.of();
    }

    /**
     * Reads the figures.
     *
     * @param asked what the scenario takes at the address
     * @return null with a problem noted
     */
    @Nullable Tolerance read(KeyLog.Asked asked) {
        RecordUnit unit = asked.unit;
        Kind shape = kind;
        if (unit == null || shape == null) {
            return null;
        }
        long top = 0;
        if (shape == Kind.TRAPEZOIDAL) {
            block.require(TOP, "top: 50 %");
            top = block.quantity(TOP, RecordUnit.PARTS_PER_MILLION, 0, 1_000_000, 0);
        }
        long[] figures =
                isClass ? classLimits(unit) : shape == Kind.NORMAL ? normal(unit) : limits(unit);
        block.finish();
        if (figures.length == 0) {
            return null;
        }
        String key = isClass ? CLASS : shape.key();
        long low = figures[0];
        long high = figures[1];
        if (shape == Kind.NORMAL) {
            long spread = high - low;
            low -= FARTHEST * spread;
            high += (FARTHEST - 1) * spread;
        }
        if (low < asked.fromSteps || high > asked.toSteps) {
            block.valueProblem(
                    key,
                    "'%s' must be %s to %s, but these values reach from %s to %s"
                                    .formatted(
                                            address,
                                            QuantityFormat.format(asked.fromSteps, unit),
                                            QuantityFormat.format(asked.toSteps, unit),
                                            QuantityFormat.format(low, unit),
                                            QuantityFormat.format(high, unit))
                            + (shape == Kind.NORMAL ? " (mean and four times the spread)" : ""));
            return null;
        }
        return new Tolerance(
                address, unit, shape, figures[0], figures[1], top, asked.fromSteps, asked.toSteps);
    }

    private long[] classLimits(RecordUnit unit) {
        String text = block.text(CLASS, "0.5");
        if (unit.dimension() != Dimension.RATIO) {
            block.problem(
                    CLASS,
                    "a class is a limit in percent, and '%s' takes %s such as %s"
                            .formatted(
                                    address,
                                    unit.dimension().phrase(),
                                    unit.dimension().example()));
            return new long[0];
        }
        Matcher matcher = CLASS_INDEX.matcher(text == null ? "" : text);
        if (!matcher.matches()) {
            block.valueProblem(
                    CLASS,
                    "expected a class index such as 0.5, which stands for half a percent either"
                            + " way, but found '"
                            + Texts.shortened(text == null ? "" : text)
                            + "'");
            return new long[0];
        }
        String places = matcher.group(2) == null ? "" : matcher.group(2);
        long parts =
                Long.parseLong(matcher.group(1)) * PARTS_PER_PERCENT
                        + Long.parseLong((places + "0000").substring(0, 4));
        return wide(CLASS, unit, -parts, parts);
    }

    private long[] normal(RecordUnit unit) {
        RecordUnit spreadUnit = unit == RecordUnit.MILLICELSIUS ? RecordUnit.MILLIKELVIN : unit;
        block.require(SPREAD, SPREAD + ": " + Block.example(spreadUnit));
        long mean = value(block.node(Kind.NORMAL.key()), unit);
        long spread = block.quantity(SPREAD, spreadUnit, 0, Long.MAX_VALUE / 16, Long.MIN_VALUE);
        if (mean == Long.MIN_VALUE || spread == Long.MIN_VALUE) {
            return new long[0];
        }
        if (spread < FEWEST_STEPS / 2) {
            block.valueProblem(
                    SPREAD,
                    "the smallest step here is %s; expected a spread of at least %s"
                            .formatted(
                                    QuantityFormat.format(1, spreadUnit),
                                    QuantityFormat.format(FEWEST_STEPS / 2, spreadUnit)));
            return new long[0];
        }
        return new long[] {mean, mean + spread};
    }

    private long[] limits(RecordUnit unit) {
        String key = kind == null ? "" : kind.key();
        List<Node> ends = ends();
        if (ends.size() != 2) {
            return new long[0];
        }
        long low = value(ends.get(0), unit);
        long high = value(ends.get(1), unit);
        if (low == Long.MIN_VALUE || high == Long.MIN_VALUE) {
            return new long[0];
        }
        if (high <= low) {
            problems.add(ends.get(0), "the lower end stands first and is below the upper one");
            return new long[0];
        }
        return wide(key, unit, low, high);
    }

    private long[] wide(String key, RecordUnit unit, long low, long high) {
        if (high - low < FEWEST_STEPS) {
            block.valueProblem(
                    key,
                    "the smallest step here is %s; expected ends at least %s steps apart"
                            .formatted(QuantityFormat.format(1, unit), FEWEST_STEPS));
            return new long[0];
        }
        return new long[] {low, high};
    }

    private long value(@Nullable Node node, RecordUnit unit) {
        if (!(node instanceof ScalarNode scalar)) {
            return Long.MIN_VALUE;
        }
        try {
            return unit.dimension() == Dimension.CHARGE
                    ? CapacityRating.parse(scalar.getValue(), unit)
                    : Quantity.parse(scalar.getValue(), unit);
        } catch (QuantityException e) {
            problems.add(node, e.explanation());
            return Long.MIN_VALUE;
        }
    }
}
