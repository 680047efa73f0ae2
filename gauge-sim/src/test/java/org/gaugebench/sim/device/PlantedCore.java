package org.gaugebench.sim.device;

import java.io.IOException;
import java.util.Arrays;
import org.gaugebench.core.port.Sample;

/**
 * The core behind the pipe with a fault that was planted. Arguments: {@code tick N} to take one
 * count too many in the N-th tick of the process, or {@code over N} to do so whenever the counts
 * are above N; then further lines of the hello.
 */
public final class PlantedCore extends PipeCore {
    private final boolean isAtTick;
    private final long figure;
    private long ticks;

    private PlantedCore(String[] words, String[] hello) {
        super(Arrays.asList(hello));
        isAtTick = words[0].equals("tick");
        figure = Long.parseLong(words[1]);
    }

    public static void main(String[] args) throws IOException {
        String[] hello = Arrays.copyOfRange(args, 2, args.length);
        new PlantedCore(args, hello).run(hello);
    }

    @Override
    void meet(Sample sample) {
        ticks++;
        if (isAtTick ? ticks == figure : sample.shuntCounts > figure) {
            sample.shuntCounts++;
        }
    }
}
