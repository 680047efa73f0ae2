package org.gaugebench.sim.scenario;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.Node;

/**
 * Collects everything wrong with a scenario and the parts it includes, so that its author hears of
 * it all at once.
 */
final class Problems {
    /** Beyond this a list helps nobody; a file of the wrong kind would fill the screen. */
    private static final int MOST = 100;

    private final String file;
    private final Map<String, String[]> lines = new LinkedHashMap<>();
    private final Set<ScenarioProblem> found = new LinkedHashSet<>();
    private final @Nullable KeyLog log;
    private int leftOut;

    Problems(String file, String text) {
        this(file, text, null);
    }

    /** With a log of every key that is asked for. */
    Problems(String file, String text, @Nullable KeyLog log) {
        this.file = file;
        this.log = log;
        addFile(file, text);
    }

    @Nullable KeyLog log() {
        return log;
    }

    /** Makes a file known, so that problems in it can show its lines. */
    void addFile(String name, String text) {
        lines.put(name, text.split("\r\n|\r|\n", -1));
    }

    /** Adds a problem at a position that counts from 1. */
    void add(SourceMark mark, String message) {
        if (found.size() >= MOST) {
            leftOut++;
            return;
        }
        // A set: each run of a file that varies finds the same problems again.
        found.add(new ScenarioProblem(mark, message, line(mark)));
    }

    void add(Node node, String message) {
        add(mark(node), message);
    }

    SourceMark mark(int line, int column) {
        return new SourceMark(file, line, column);
    }

    SourceMark mark(Mark mark) {
        String name = lines.containsKey(mark.getName()) ? mark.getName() : file;
        return new SourceMark(name, mark.getLine() + 1, mark.getColumn() + 1);
    }

    SourceMark mark(Node node) {
        return node.getStartMark().map(this::mark).orElseGet(() -> mark(1, 1));
    }

    boolean isEmpty() {
        return found.isEmpty();
    }

    /** The text of a line, or an empty one. */
    String line(SourceMark mark) {
        String[] all = lines.get(mark.file());
        boolean inside = all != null && mark.line() >= 1 && mark.line() <= all.length;
        return all != null && inside ? all[mark.line() - 1] : "";
    }

    /**
     * Stops a reader that cannot go on, or one that is done.
     *
     * @throws ScenarioException if anything was found
     */
    void throwIfAny() throws ScenarioException {
        if (found.isEmpty()) {
            return;
        }
        List<ScenarioProblem> sorted = new ArrayList<>(found);
        List<String> files = List.copyOf(lines.keySet());
        sorted.sort(
                Comparator.comparingInt((ScenarioProblem p) -> files.indexOf(p.mark().file()))
                        .thenComparingInt(p -> p.mark().line())
                        .thenComparingInt(p -> p.mark().column()));
        if (leftOut > 0) {
            sorted.add(new ScenarioProblem(mark(1, 1), "and " + leftOut + " more problems", ""));
        }
        throw new ScenarioException(sorted);
    }
}
