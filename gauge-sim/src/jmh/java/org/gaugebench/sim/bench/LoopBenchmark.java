package org.gaugebench.sim.bench;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** One tick of the whole loop: plant, noise, front end, core, digest each minute. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class LoopBenchmark {
    private final FrozenLoop loop = new FrozenLoop();

    /**
     * A day of ticks, a new rig each time.
     *
     * @return the digest, so that the work is not dropped
     */
    @Benchmark
    @OperationsPerInvocation(86_400)
    public long day() {
        return loop.run();
    }
}
