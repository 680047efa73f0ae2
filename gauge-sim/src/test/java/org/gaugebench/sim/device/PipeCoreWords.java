package org.gaugebench.sim.device;

import org.gaugebench.core.port.Readout;
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

    /** Power went: everything of this life is dropped on the way up to where questions are read. */
    static final class Cut extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }
}
