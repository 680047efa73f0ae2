package org.gaugebench.sim.judge;

import java.util.Locale;
import org.gaugebench.core.port.Command;
import org.gaugebench.core.port.CommandOutcome;

/**
 * A command that a gauge did not carry out. A refusal is no failure, but it must not be overlooked:
 * what follows in the scenario may rest on the command.
 *
 * @param gauge which
 * @param atMillis when
 * @param command what it was asked
 * @param outcome its one word
 */
public record RefusedCommand(String gauge, long atMillis, Command command, CommandOutcome outcome) {
    /** The command as scenario files write it: "zero-adjustment". */
    public String commandWords() {
        return words(command);
    }

    /** The answer for people: "not zero". */
    public String reason() {
        return words(outcome).replace("refused-", "").replace('-', ' ');
    }

    private static String words(Enum<?> code) {
        return code.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
