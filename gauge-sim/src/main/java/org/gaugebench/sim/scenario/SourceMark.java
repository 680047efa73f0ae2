package org.gaugebench.sim.scenario;

/**
 * Where in a file something stands.
 *
 * @param file as the user named it
 * @param line from 1
 * @param column from 1
 */
public record SourceMark(String file, int line, int column) {
    @Override
    public String toString() {
        return file + ":" + line + ":" + column;
    }
}
