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
        super(problems.stream().map(TextProblem::toString).collect(Collectors.joining("\n")));
        this.problems = List.copyOf(problems);
    }

    /** What is wrong, in file order. */
    public List<TextProblem> problems() {
        return problems;
    }
}
