package org.gaugebench.sim.judge;

/**
 * A program that stood in a gauge's place.
 *
 * @param gauge whose place it took
 * @param name that it gives itself
 * @param command how it was started, as the user wrote it
 */
public record TestedProgram(String gauge, String name, String command) {}
