package org.gaugebench.sim.device;

import java.io.IOException;
import java.util.Arrays;
import org.gaugebench.core.port.Sample;

/**
 * The core behind the pipe with a fault that was planted. Arguments: {@code tick N} to take one
 * count too many in the N-th tick of the process, {@code over N} to do so whenever the counts are
 * above N, {@code word N} to tell one too many for the bus word of that code, {@code die N} to end
 * with code 9 and a message in the N-th tick, or {@code digest N} to fold a wrong figure in that
 * tick; then further lines of the hello.
 */
public final class PlantedCore extends PipeCore {
    private final String what;
    private final long figure;
    private long ticks;

    private PlantedCore(String[] words, String[] hello) {
        super(Arrays.asList(hello));
        what = words[0];
        figure = Long.parseLong(words[1]);
    }

    public static void main(String[] args) throws IOException {
        String[] hello = Arrays.copyOfRange(args, 2, args.length);
        new PlantedCore(args, hello).run(hello);
    }

    @Override
    void meet(Sample sample) {
        ticks++;
        if (what.equals("die") && ticks == figure) {
            System.err.println("assertion failed: count is below zero");
            System.exit(9);
        }
        boolean isMet =
                switch (what) {
                    case "tick" -> ticks == figure;
                    case "over" -> sample.shuntCounts > figure;
                    default -> false;
                };
        sample.shuntCounts += isMet ? 1 : 0;
    }

    @Override
    long digested(long digest) {
        return digest ^ (what.equals("digest") && ticks == figure ? 1 : 0);
    }

    @Override
    int busWord(int code) {
        boolean isMet = what.equals("word") && code == figure;
        return super.busWord(code) + (isMet ? 1 : 0);
    }
}
