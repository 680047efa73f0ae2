package org.gaugebench.sim.bench;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import java.util.Locale;
import org.gaugebench.core.port.Sample;

/**
 * One contestant, or the whole loop, in a JVM of its own with the JVM's own flags: a figure in time
 * of the processor, after warming up. What the JVM makes of a method hangs on what ran before it,
 * and no other gauge did.
 */
public final class JavaSpeed {
    /** The name of the whole loop, beside those of {@link Contestant}. */
    static final String WHOLE_LOOP = "WHOLE_LOOP";

    private static final int ROUNDS = 7;
    private static final int WARMING_ROUNDS = 3;

    /** Ticks a round; a slow contestant takes fewer, one day at least. */
    private static final int FAST_TICKS = 5_000_000;

    private static final int SLOW_TICKS = 250_000;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    private final BenchGauge gauge;
    private final FrozenDay day = new FrozenDay();
    private final Sample sample = new Sample();
    private final FrozenLoop loop = new FrozenLoop();
    private int clockMillis;

    private JavaSpeed(Contestant contestant) {
        gauge = contestant.create();
        gauge.start();
    }

    /**
     * Prints nanoseconds per tick, the median of some rounds.
     *
     * @param args the name of a contestant, or WHOLE_LOOP
     */
    public static void main(String[] args) {
        boolean whole = args[0].equals(WHOLE_LOOP);
        Contestant contestant = whole ? Contestant.CORE : Contestant.valueOf(args[0]);
        JavaSpeed speed = new JavaSpeed(contestant);
        boolean slow = contestant == Contestant.BIG_DECIMAL;
        int days = Math.max(1, (slow ? SLOW_TICKS : FAST_TICKS) / FrozenDay.TICKS);
        double[] figures = new double[ROUNDS];
        for (int i = -WARMING_ROUNDS; i < ROUNDS; i++) {
            long begin = THREADS.getCurrentThreadCpuTime();
            for (int j = 0; j < days; j++) {
                if (whole) {
                    speed.loop.run();
                } else {
                    speed.feed();
                }
            }
            double nanos = THREADS.getCurrentThreadCpuTime() - begin;
            figures[Math.max(i, 0)] = nanos / days / FrozenDay.TICKS;
        }
        Arrays.sort(figures);
        System.out.printf(Locale.ROOT, "%.3f ns per tick%n", figures[ROUNDS / 2]);
        // What was worked out is printed, so that nothing can be left out.
        System.out.printf(
                Locale.ROOT,
                "%s%n",
                whole ? Long.toHexString(speed.loop.run()) : speed.gauge.chargeAmpHours() + " Ah");
    }

    private void feed() {
        day.feed(gauge, sample, clockMillis);
        clockMillis += FrozenDay.TICKS * FrozenDay.TICK_MILLIS;
    }
}
