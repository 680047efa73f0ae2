package org.gaugebench.core.settings;

import java.util.List;

/** Settings that no gauge can be built from; carries every problem, not only the first. */
public final class SettingsException extends IllegalArgumentException {
    private static final long serialVersionUID = 1L;

    private final transient List<SettingsProblem> problems;

    /**
     * Creates the exception.
     *
     * @param problems at least one
     */
    public SettingsException(List<SettingsProblem> problems) {
        super(problems.toString());
        this.problems = List.copyOf(problems);
    }

    /**
     * What is wrong.
     *
     * @return every problem found
     */
    public List<SettingsProblem> problems() {
        return problems;
    }
}
