package org.gaugebench.sim.device;

import java.util.List;
import org.gaugebench.sim.program.CommandWords;

/**
 * How a program under test is started.
 *
 * @param text as the user wrote it
 * @param words that it was split into; the first one is the program
 * @param answerMillis how long each answer may take
 */
public record PipeCommand(String text, List<String> words, long answerMillis) {
    /**
     * Splits a command.
     *
     * @throws IllegalArgumentException with a sentence for people
     */
    public static PipeCommand of(String text, long answerMillis) {
        return new PipeCommand(text, CommandWords.of(text), answerMillis);
    }
}
