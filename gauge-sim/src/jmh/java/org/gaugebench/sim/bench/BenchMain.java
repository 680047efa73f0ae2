package org.gaugebench.sim.bench;

import java.util.Collection;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import org.gaugebench.core.port.Sample;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.ChainedOptionsBuilder;
import org.openjdk.jmh.runner.options.CommandLineOptionException;
import org.openjdk.jmh.runner.options.CommandLineOptions;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.VerboseMode;

/**
 * Runs the benchmarks and prints one table. The peers count, clamp, prove full and work out hours
 * with a plain single pole; the core's other rules, its band and its memory they do not have, so
 * every ratio is in the peers' favour. First it feeds three frozen days to every contestant
 * and refuses to measure when one of them does not do the core's work.
 */
public final class BenchMain {
    private static final int CHECKED_DAYS = 3;
    private static final double NANOS_PER_SECOND = 1e9;
    private static final double SECONDS_PER_YEAR = 365 * 86_400.0;

    /** Same work, other arithmetic: rounding of 1 uA a tick is at most 0.024 mAh a day. */
    private static final double CHARGE_TOLERANCE_AMP_HOURS = 1e-4;

    /** The core takes whole millivolts for energy: 1 mV in 12 V at most. */
    private static final double ENERGY_TOLERANCE_PARTS = 1e-4;

    private BenchMain() {}

    /**
     * Measures.
     *
     * @param args options of JMH, such as {@code -f 1 -i 3}
     */
    public static void main(String[] args) throws RunnerException, CommandLineOptionException {
        for (Contestant contestant : Contestant.values()) {
            compare(contestant);
        }
        ChainedOptionsBuilder options =
                new OptionsBuilder()
                        .parent(new CommandLineOptions(args))
                        .include(TickBenchmark.class.getName())
                        .include(LoopBenchmark.class.getName())
                        .addProfiler(GCProfiler.class)
                        .shouldFailOnError(true)
                        .verbosity(VerboseMode.SILENT);
        Map<Contestant, RunResult> results = new EnumMap<>(Contestant.class);
        Collection<RunResult> all = new Runner(options.build()).run();
        RunResult loop = null;
        for (RunResult result : all) {
            String contestant = result.getParams().getParam("contestant");
            if (contestant == null) {
                loop = result;
            } else {
                results.put(Contestant.valueOf(contestant), result);
            }
        }
        print(results);
        if (loop != null) {
            print(loop, results.get(Contestant.CORE));
        }
    }

    private static BenchGauge run(Contestant contestant) {
        BenchGauge gauge = contestant.create();
        gauge.start();
        FrozenDay day = new FrozenDay();
        Sample sample = new Sample();
        for (int i = 0; i < CHECKED_DAYS; i++) {
            day.feed(gauge, sample, i * FrozenDay.TICKS * FrozenDay.TICK_MILLIS);
        }
        return gauge;
    }

    private static void compare(Contestant contestant) {
        BenchGauge core = run(Contestant.CORE);
        BenchGauge peer = run(contestant);
        double charge = peer.chargeAmpHours() - core.chargeAmpHours();
        double energy = peer.energyOutWattHours() / core.energyOutWattHours() - 1;
        boolean same =
                Math.abs(charge) < CHARGE_TOLERANCE_AMP_HOURS
                        && Math.abs(energy) < ENERGY_TOLERANCE_PARTS
                        && peer.fullCount() == core.fullCount()
                        && core.fullCount() == CHECKED_DAYS
                        && peer.timeToEmptyMinutes() > 0
                        && core.timeToEmptyMinutes() > 0;
        if (!same) {
            throw new IllegalStateException(
                    String.format(
                            Locale.ROOT,
                            "%s does other work than the core: charge %+.6f Ah, energy %+.6f parts,"
                                    + " full %d and %d times, %d and %d min to empty",
                            contestant,
                            charge,
                            energy,
                            peer.fullCount(),
                            core.fullCount(),
                            peer.timeToEmptyMinutes(),
                            core.timeToEmptyMinutes()));
        }
    }

    /**
     * The least iteration stands beside the mean, and the ratio is of the least: another program on
     * the same cores can only add time.
     */
    private static void print(Map<Contestant, RunResult> results) {
        System.out.printf(
                Locale.ROOT,
                "%-30s %12s %9s %9s %9s%n",
                "frozen day, 1 Hz",
                "ns/tick mean",
                "least",
                "B/tick",
                "x core");
        RunResult core = results.get(Contestant.CORE);
        results.forEach(
                (contestant, result) -> {
                    double ratio = core == null ? Double.NaN : least(result) / least(core);
                    System.out.printf(
                            Locale.ROOT,
                            "%-30s %12.2f %9.2f %9.3f %9.2f%n",
                            contestant.label(),
                            result.getPrimaryResult().getScore(),
                            least(result),
                            bytes(result),
                            ratio);
                });
    }

    /** The whole loop: its cost beside the core's, and what that makes of a year. */
    private static void print(RunResult loop, RunResult core) {
        System.out.printf(
                Locale.ROOT,
                "%-30s %12.2f %9.2f %9.3f %9.2f%n",
                "whole loop with noise",
                loop.getPrimaryResult().getScore(),
                least(loop),
                bytes(loop),
                core == null ? Double.NaN : least(loop) / least(core));
        System.out.printf(
                Locale.ROOT,
                "%.0f simulated seconds a second; a year at 1 Hz in %.2f s%n",
                NANOS_PER_SECOND / least(loop),
                SECONDS_PER_YEAR * least(loop) / NANOS_PER_SECOND);
    }

    private static double least(RunResult result) {
        return result.getPrimaryResult().getStatistics().getMin();
    }

    /** The profiler's name carries a prefix in some versions. */
    private static double bytes(RunResult result) {
        return result.getSecondaryResults().entrySet().stream()
                .filter(e -> e.getKey().endsWith("gc.alloc.rate.norm"))
                .mapToDouble(e -> e.getValue().getScore())
                .findFirst()
                .orElse(Double.NaN);
    }
}
