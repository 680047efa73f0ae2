package org.gaugebench.sim.live.lessons;

import java.util.List;
import java.util.stream.Collectors;

/** A text of keys and values that cannot be used; carries every problem found, in file order. */
public final class TextException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient List<TextProblem> problems;

    /**
     * Creates the exception.
     *
     * @param problems at least one
     */
    public TextException(List<TextProblem> problems) {
        super(problems.toString());
        this.problems = List.copyOf(problems);
    }

    /** All problems as people read them, a line each. */
    public String render() {
        return problems.stream().map(TextProblem::toString).collect(Collectors.joining("\n"));
    }

    /** What is wrong, in file order. */
    public List<TextProblem> problems() {
        return problems;
    }
}
