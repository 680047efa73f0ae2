package org.gaugebench.sim.cli;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** How a list of scenarios is run. */
final class ShelfOptions {
    private static final int MOST_THREADS = 1_024;

    @Option(
            names = "--threads",
            paramLabel = "N",
            converter = ThreadCount.class,
            description =
                    "Scenarios that run at the same time (default: as many as the machine has"
                            + " cores). Output does not depend on it.")
    private @Nullable Integer threads;

    @Option(
            names = "--timeout",
            paramLabel = "TIME",
            converter = TraceInterval.class,
            description =
                    "Time that each scenario may take on this machine, such as '30 s'; one that"
                            + " takes longer is stopped and counts as wrong (default: no limit).")
    private @Nullable Long timeoutMillis;

    @Option(
            names = "--fail-fast",
            description = "Stop after the first scenario, in order, that is not right.")
    private boolean failFast;

    @Option(
            names = "--shard",
            paramLabel = "I/N",
            converter = Shard.Text.class,
            description =
                    "Run the I-th of N parts only, such as 2/4; the parts together are the whole"
                            + " list.")
    private @Nullable Shard shard;

    ShelfOptions() {}

    /** Reads a number of threads. */
    static final class ThreadCount implements ITypeConverter<Integer> {
        ThreadCount() {}

        @Override
        public Integer convert(String text) {
            if (text.matches("\\d{1,4}")) {
                int count = Integer.parseInt(text);
                if (count >= 1 && count <= MOST_THREADS) {
                    return count;
                }
            }
            throw new TypeConversionException(
                    "'%s' is no number of threads; expected 1 to %s, such as 2"
                            .formatted(text, MOST_THREADS));
        }
    }

    int threads() {
        return threads == null ? Runtime.getRuntime().availableProcessors() : threads;
    }

    /** Milliseconds for each scenario, or 0 for no limit. */
    long timeoutMillis() {
        Long asked = timeoutMillis;
        if (asked == null) {
            return 0;
        }
        // "tick" is an interval for traces; as a limit it means nothing.
        return Math.max(1, asked);
    }

    boolean failFast() {
        return failFast;
    }

    @Nullable Shard shard() {
        return shard;
    }
}
