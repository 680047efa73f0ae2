package org.gaugebench.sim.logs;

import java.util.List;
import java.util.stream.Collectors;

/** A log that cannot be counted; carries every problem found before reading stopped. */
public final class LogException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient List<LogProblem> problems;

    /**
     * Creates the exception.
     *
     * @param problems at least one
     */
    public LogException(List<LogProblem> problems) {
        super(problems.stream().map(LogProblem::toString).collect(Collectors.joining("\n")));
        this.problems = List.copyOf(problems);
    }

    /** What is wrong, in order of the file. */
    public List<LogProblem> problems() {
        return problems;
    }
}
