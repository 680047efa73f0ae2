package org.gaugebench.sim.scenario;

import java.util.List;

/** A scenario file that cannot be run; carries every problem found, in file order. */
public final class ScenarioException extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient List<ScenarioProblem> problems;

    /**
     * Creates the exception.
     *
     * @param problems at least one
     */
    public ScenarioException(List<ScenarioProblem> problems) {
        super(problems.toString());
        this.problems = List.copyOf(problems);
    }

    /**
     * What is wrong.
     *
     * @return every problem, in file order
     */
    public List<ScenarioProblem> problems() {
        return problems;
    }

    /**
     * All problems as people read them.
     *
     * @return {@link ScenarioProblem#render()} of each, one after the other
     */
    public String render() {
        StringBuilder out = new StringBuilder();
        problems.forEach(problem -> out.append(problem.render()));
        return out.toString();
    }
}
