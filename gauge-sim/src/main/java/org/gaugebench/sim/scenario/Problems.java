package org.gaugebench.sim.scenario;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.Node;

/** Collects everything wrong with one file, so that its author hears of it all at once. */
final class Problems {
    /** Beyond this a list helps nobody; a file of the wrong kind would fill the screen. */
    private static final int MOST = 100;

    private final String file;
    private final String[] lines;
    private final List<ScenarioProblem> found = new ArrayList<>();
    private int leftOut;

    Problems(String file, String text) {
        this.file = file;
        this.lines = text.split("\r\n|\r|\n", -1);
    }

    /** Adds a problem at a position that counts from 1. */
    void add(SourceMark mark, String message) {
        if (found.size() >= MOST) {
            leftOut++;
            return;
        }
        int index = mark.line() - 1;
        String line = index >= 0 && index < lines.length ? lines[index] : "";
        found.add(new ScenarioProblem(mark, message, line));
    }

    void add(Node node, String message) {
        add(mark(node), message);
    }

    SourceMark mark(int line, int column) {
        return new SourceMark(file, line, column);
    }

    SourceMark mark(Mark mark) {
        return mark(mark.getLine() + 1, mark.getColumn() + 1);
    }

    SourceMark mark(Node node) {
        return node.getStartMark().map(this::mark).orElseGet(() -> mark(1, 1));
    }

    boolean isEmpty() {
        return found.isEmpty();
    }

    /** The text of a line, or an empty one. */
    String line(int number) {
        return number >= 1 && number <= lines.length ? lines[number - 1] : "";
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
        sorted.sort(
                Comparator.comparingInt((ScenarioProblem p) -> p.mark().line())
                        .thenComparingInt(p -> p.mark().column()));
        if (leftOut > 0) {
            sorted.add(new ScenarioProblem(mark(1, 1), "and " + leftOut + " more problems", ""));
        }
        throw new ScenarioException(sorted);
    }
}
