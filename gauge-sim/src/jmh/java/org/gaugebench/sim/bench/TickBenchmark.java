package org.gaugebench.sim.bench;

import java.util.concurrent.TimeUnit;
import org.gaugebench.core.port.Sample;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * One tick of the core and of each peer. An invocation feeds a whole frozen day; days follow each
 * other, so full is proven and the rule is armed again in each. Each gauge has forks of its own:
 * the call is monomorphic, as in a program that holds one gauge.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(2)
public class TickBenchmark {
    /** Which gauge; see {@link Contestant}. */
    @Param({"CORE", "DOUBLE_POW", "DOUBLE_TIDY", "BOXED_MAP", "BIG_DECIMAL"})
    public Contestant contestant = Contestant.CORE;

    private final FrozenDay day = new FrozenDay();
    private final Sample sample = new Sample();
    private BenchGauge gauge = contestant.create();
    private int clockMillis;

    /** Builds the gauge. */
    @Setup
    public void create() {
        gauge = contestant.create();
        gauge.start();
        clockMillis = 0;
    }

    /**
     * A day of ticks.
     *
     * @return the charge, so that the work is not dropped
     */
    @Benchmark
    @OperationsPerInvocation(FrozenDay.TICKS)
    public double day() {
        day.feed(gauge, sample, clockMillis);
        clockMillis += FrozenDay.TICKS * FrozenDay.TICK_MILLIS;
        return gauge.chargeAmpHours();
    }
}
