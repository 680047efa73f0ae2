package org.gaugebench.sim.device;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.settings.Setting;

/**
 * What a program says of itself before its first life.
 *
 * @param name for reports
 * @param readout fields of each readout, in its order
 * @param registers that it gives, in its order; empty for none
 * @param settings that it wants to be told, in table order
 * @param frames whether all that follows is in frames
 * @param batch most ticks in one message
 * @param answerEach whether each tick of a batch gets a readout, or the last only
 * @param restartByMessage whether the process lives on when power comes back
 * @param digest whether its registers come with a digest of all its ticks
 * @param bus whether its registers come with the words of its bus view
 */
public record PipeHello(
        String name,
        List<ReadoutField> readout,
        List<Register> registers,
        List<Setting> settings,
        boolean frames,
        int batch,
        boolean answerEach,
        boolean restartByMessage,
        boolean digest,
        boolean bus) {
    /** Version of the protocol. */
    public static final int VERSION = 1;

    /** Most ticks in one message: what is written at once must fit a pipe. */
    public static final int MOST_BATCH = 1_024;

    /** Most lines of a hello; more is no hello. */
    static final int MOST_LINES = 100;

    private static final int MOST_NAME = 80;

    /** Figures of an answer to {@code registers}. */
    int registerFigures() {
        return registers.size() + (digest ? 1 : 0) + (bus ? BusWords.COUNT : 0);
    }

    /** Reads the lines as they come. */
    static final class Reader {
        private final List<String> seen = new ArrayList<>();
        private String name = "";
        private List<ReadoutField> readout = List.of();
        private List<Register> registers = List.of();
        private List<Setting> settings = List.of(Setting.values());
        private boolean frames;
        private int batch = 1;
        private boolean answerEach;
        private boolean restartByMessage;
        private boolean digest;
        private boolean bus;

        /**
         * Takes a line.
         *
         * @return whether it was the last one
         * @throws IllegalArgumentException with a sentence for people
         */
        boolean take(String line) {
            List<String> words = Arrays.asList(line.split(" ", -1));
            String key = words.get(0);
            List<String> rest = words.subList(1, words.size());
            if (seen.isEmpty() != key.equals("hello")) {
                throw new IllegalArgumentException(
                        seen.isEmpty()
                                ? "expected its hello first, such as 'hello 1 my-gauge 0.3'"
                                : "it said hello already");
            }
            if (seen.contains(key)) {
                throw new IllegalArgumentException("'" + key + "' stands there twice");
            }
            seen.add(key);
            switch (key) {
                case "hello" -> hello(line);
                case "readout" ->
                        readout = PipeNames.list(rest, ReadoutField.values(), PipeNames::of);
                case "registers" ->
                        registers = PipeNames.list(rest, Register.values(), PipeNames::of);
                case "settings" -> settings(rest);
                case "form" -> frames = choice(rest, "text", "frames");
                case "batch" -> batch = batch(rest);
                case "answer" -> answerEach = choice(rest, "last", "each");
                case "restart" -> restartByMessage = choice(rest, "process", "message");
                case "digest" -> digest = alone(key, rest);
                case "bus" -> bus = alone(key, rest);
                case "ready" -> {
                    return ready(rest);
                }
                default ->
                        throw new IllegalArgumentException(
                                "'%s' is no line of a hello; expected one such as".formatted(key)
                                        + " 'readout state-of-charge' or 'ready'");
            }
            return false;
        }

        private static boolean alone(String key, List<String> rest) {
            if (!rest.isEmpty()) {
                throw new IllegalArgumentException("expected the word '" + key + "' alone");
            }
            return true;
        }

        private void hello(String line) {
            String[] parts = line.split(" ", 3);
            if (parts.length < 2 || !parts[1].equals(Integer.toString(VERSION))) {
                throw new IllegalArgumentException(
                        "expected version %s of the protocol, 'hello %s my-gauge 0.3'"
                                .formatted(VERSION, VERSION));
            }
            name = parts.length < 3 ? "" : parts[2].strip();
            boolean printable = name.chars().allMatch(c -> c >= ' ' && c < 0x7F);
            if (name.isEmpty() || name.length() > MOST_NAME || !printable) {
                throw new IllegalArgumentException(
                        "expected a name of 1 to %s ASCII characters, 'hello %s my-gauge 0.3'"
                                .formatted(MOST_NAME, VERSION));
            }
        }

        private void settings(List<String> rest) {
            if (rest.equals(List.of("none"))) {
                settings = List.of();
                return;
            }
            List<Setting> wanted = PipeNames.list(rest, Setting.values(), Setting::key);
            settings = Arrays.stream(Setting.values()).filter(wanted::contains).toList();
        }

        private static boolean choice(List<String> rest, String usual, String other) {
            if (rest.equals(List.of(usual)) || rest.equals(List.of(other))) {
                return rest.get(0).equals(other);
            }
            throw new IllegalArgumentException("expected '" + usual + "' or '" + other + "'");
        }

        private static int batch(List<String> rest) {
            String word = rest.size() == 1 ? rest.get(0) : "";
            int count = word.matches("\\d{1,4}") ? Integer.parseInt(word) : 0;
            if (count < 1 || count > MOST_BATCH) {
                throw new IllegalArgumentException(
                        "expected a number of ticks, 1 to %s, such as 'batch 256'"
                                .formatted(MOST_BATCH));
            }
            return count;
        }

        private boolean ready(List<String> rest) {
            if (!rest.isEmpty()) {
                throw new IllegalArgumentException("expected the word 'ready' alone");
            }
            if (readout.isEmpty()) {
                throw new IllegalArgumentException(
                        "no readout was promised before; expected a line such as"
                                + " 'readout state-of-charge'");
            }
            return true;
        }

        PipeHello hello() {
            return new PipeHello(
                    name,
                    readout,
                    registers,
                    settings,
                    frames,
                    batch,
                    answerEach,
                    restartByMessage,
                    digest,
                    bus);
        }
    }
}
