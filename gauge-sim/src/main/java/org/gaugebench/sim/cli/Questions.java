package org.gaugebench.sim.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.gaugebench.sim.advice.TypedFields;
import org.gaugebench.sim.units.QuantityException;
import org.jspecify.annotations.Nullable;

/** Asks a person at a terminal for what the command line does not say. */
final class Questions {
    private final PrintStream out;
    private final InputStream in;

    Questions(Terminal terminal) {
        this.out = terminal.err();
        this.in = terminal.in();
    }

    /**
     * Asks until the answer can be read.
     *
     * @param question in plain words
     * @param example of an answer
     * @param parser of the answer
     * @return the answer as it was written; null for an empty one and for "not known"
     * @throws InputException if the input ends
     */
    @Nullable String ask(String question, String example, TypedFields.Parser<?> parser)
            throws InputException {
        while (true) {
            out.print(question + " (such as " + example + "): ");
            out.flush();
            String answer = line();
            if (answer.isBlank() || answer.strip().matches("(?i)not[ -]known")) {
                return null;
            }
            try {
                parser.parse(answer.strip());
                return answer.strip();
            } catch (QuantityException e) {
                out.println("  " + e.getMessage());
            }
        }
    }

    /** A line between questions. */
    void say(String line) {
        out.println(line);
    }

    /** As {@link #ask}, but an empty answer is asked again. */
    String need(String question, String example, TypedFields.Parser<?> parser)
            throws InputException {
        while (true) {
            String answer = ask(question, example, parser);
            if (answer != null) {
                return answer;
            }
            out.println("  This one is needed.");
        }
    }

    private String line() throws InputException {
        try {
            // Byte by byte: who asks next must find the next line, and not what a buffer left.
            ByteArrayOutputStream line = new ByteArrayOutputStream();
            int each = in.read();
            while (each >= 0 && each != '\n') {
                line.write(each);
                each = in.read();
            }
            if (each < 0 && line.size() == 0) {
                out.println();
                throw new InputException(
                        "the answers ended before the last question; expected all of them, or"
                                + " options, which --help shows");
            }
            return line.toString(StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new InputException("cannot read the answers: " + FileTrouble.words(e));
        }
    }
}
