package org.gaugebench.sim.scenario;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.gaugebench.sim.units.Texts;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/** Reads the mistakes that an exhibit makes. */
final class MistakesReader {
    private static final String KEY = "mistakes";

    private final Problems problems;
    private final Block gauge;

    MistakesReader(Problems problems, Block gauge) {
        this.problems = problems;
        this.gauge = gauge;
    }

    /** The mistakes; empty, with a problem, for a gauge that cannot make any. */
    Set<Mistake> read(GaugeSpec.Kind kind) {
        Set<Mistake> mistakes = EnumSet.noneOf(Mistake.class);
        if (kind != GaugeSpec.Kind.EXHIBIT) {
            if (gauge.has(KEY)) {
                gauge.problem(
                        KEY,
                        "only an exhibit makes mistakes by name; expected 'kind: exhibit' beside"
                                + " them");
            }
            return mistakes;
        }
        gauge.require(KEY, "mistakes: [float-accumulator]");
        List<Node> nodes = gauge.list(KEY, "float-accumulator");
        for (Node node : nodes) {
            add(mistakes, node);
        }
        if (gauge.node(KEY) instanceof SequenceNode && nodes.isEmpty()) {
            gauge.valueProblem(
                    KEY,
                    "an exhibit makes at least one mistake; expected 'mistakes:"
                            + " [float-accumulator]', or 'kind: plain-counter'");
        }
        for (String problem : MistakeCheck.problems(mistakes)) {
            gauge.valueProblem(KEY, problem);
        }
        return mistakes;
    }

    private void add(Set<Mistake> mistakes, Node node) {
        String word = node instanceof ScalarNode scalar ? scalar.getValue() : "";
        Mistake mistake = Mistake.ofKey(word);
        if (mistake == null) {
            problems.add(
                    node,
                    "there is no mistake '"
                            + Texts.shortened(word)
                            + "'; "
                            + Nearest.hint(
                                    word,
                                    Arrays.stream(Mistake.values()).map(Mistake::key).toList()));
        } else if (!mistakes.add(mistake)) {
            problems.add(node, "'" + word + "' stands twice; once is enough");
        }
    }

    /** Whether the gauge believes something at power-up that nobody told it. */
    static boolean believesAtStart(Set<Mistake> mistakes) {
        return mistakes.stream().anyMatch(it -> it.family() == MistakeFamily.START);
    }

    /** As the file writes them, in the order of the table. */
    static String text(Set<Mistake> mistakes) {
        return mistakes.stream()
                .sorted()
                .map(Mistake::key)
                .collect(Collectors.joining(", ", "[", "]"));
    }
}
