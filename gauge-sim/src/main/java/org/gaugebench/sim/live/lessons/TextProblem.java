package org.gaugebench.sim.live.lessons;

/**
 * One thing wrong with a text of keys and values.
 *
 * @param file as the user named it
 * @param line from 1
 * @param column from 1
 * @param message what is wrong, what was expected and an example of it
 */
public record TextProblem(String file, int line, int column, String message) {
    @Override
    public String toString() {
        return file + ":" + line + ":" + column + ": " + message;
    }
}
