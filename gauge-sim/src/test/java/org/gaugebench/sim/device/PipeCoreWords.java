package org.gaugebench.sim.device;

import java.util.function.IntUnaryOperator;
import java.util.stream.LongStream;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.core.port.Sample;

/** The words of text lines as {@link PipeCore} reads and writes them. */
final class PipeCoreWords {
    private PipeCoreWords() {}

    static <E extends Enum<E>> E constant(E[] constants, String name) {
        for (E each : constants) {
            if (PipeNames.of(each).equals(name)) {
                return each;
            }
        }
        throw new IllegalStateException("no name of its table: " + name);
    }

    static Sample sample(String[] words) {
        Sample sample = new Sample();
        sample.shuntCounts = Integer.parseInt(words[1]);
        sample.voltageCounts = Integer.parseInt(words[2]);
        sample.temperatureMillicelsius =
                words[3].equals("-") ? Sample.TEMPERATURE_ABSENT : Integer.parseInt(words[3]);
        sample.clockMillis = Integer.parseUnsignedInt(words[4]);
        return sample;
    }

    static String words(Readout of) {
        StringBuilder text = new StringBuilder();
        for (ReadoutField field : ReadoutField.values()) {
            text.append(' ').append(field.get(of));
        }
        return text.toString();
    }

    /** The program's hello, with further lines. */
    static String hello(boolean digests, boolean buses, String... lines) {
        return "hello 1 the core behind a pipe\nreadout all\nregisters all\n"
                + (digests ? "digest\n" : "")
                + (buses ? "bus\n" : "")
                + String.join("\n", lines)
                + (lines.length == 0 ? "ready\n" : "\nready\n");
    }

    /** All that an answer to {@code registers} holds. */
    static long[] figures(
            Registers registers,
            boolean digests,
            long digest,
            boolean buses,
            IntUnaryOperator busWord) {
        LongStream.Builder all = LongStream.builder();
        for (Register register : Register.values()) {
            all.add(registers.get(register));
        }
        if (digests) {
            all.add(digest);
        }
        for (int i = 0; buses && i < BusWords.COUNT; i++) {
            all.add(busWord.applyAsInt(BusWords.code(i)));
        }
        return all.build().toArray();
    }

    static String words(String head, long[] figures) {
        StringBuilder text = new StringBuilder(head);
        for (long figure : figures) {
            text.append(' ').append(figure);
        }
        return text.append('\n').toString();
    }

    /** Power went: everything of this life is dropped on the way up to where questions are read. */
    static final class Cut extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }
}
