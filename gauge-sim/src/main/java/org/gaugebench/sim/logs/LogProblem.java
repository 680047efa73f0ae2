package org.gaugebench.sim.logs;

/**
 * One thing wrong with a log.
 *
 * @param file as the user named it
 * @param line line of the file, from 1; 0 where the whole file is meant
 * @param column character of the line, from 1; 0 where the whole row is meant
 * @param message what is wrong, what was expected and an example
 */
public record LogProblem(String file, int line, int column, String message) {
    @Override
    public String toString() {
        String place = line == 0 ? file : file + ":" + line + (column == 0 ? "" : ":" + column);
        return place + ": " + message;
    }
}
