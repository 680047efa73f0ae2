package org.gaugebench.sim.bench;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.gaugebench.core.port.Sample;

/**
 * The core against builds of its C twin on the frozen day, round by round in turn, so that what the
 * machine does meanwhile meets all of them. Time of the processor on both sides.
 *
 * <p>Arguments: rounds, the folder of {@link FrozenDayVectors}, then a name and a program for each
 * build.
 */
public final class TwinSpeed {
    private static final int DAYS_A_ROUND = 58;
    private static final Pattern FIGURE = Pattern.compile("([0-9.]+) ns per tick");

    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    private final FrozenDay day = new FrozenDay();
    private final CoreGauge core = new CoreGauge();
    private final Sample sample = new Sample();
    private int clockMillis;

    private TwinSpeed() {
        core.start();
    }

    /**
     * Prints a table: the median of each, and the core's over it.
     *
     * @param args as above
     * @throws IOException if a program cannot be started
     * @throws InterruptedException if somebody interrupts
     */
    public static void main(String[] args) throws IOException, InterruptedException {
        int rounds = Integer.parseInt(args[0]);
        String folder = args[1];
        List<String> names = new ArrayList<>(List.of("Java core"));
        List<String> programs = new ArrayList<>(List.of(""));
        for (int i = 2; i + 1 < args.length; i += 2) {
            names.add(args[i]);
            programs.add(args[i + 1]);
        }
        double[][] figures = new double[names.size()][rounds];
        TwinSpeed java = new TwinSpeed();
        // Two rounds for the compiler, which none of the others needs.
        java.round();
        java.round();
        for (int round = 0; round < rounds; round++) {
            figures[0][round] = java.round();
            for (int i = 1; i < names.size(); i++) {
                figures[i][round] = round(programs.get(i), folder);
            }
        }
        double own = median(figures[0]);
        for (int i = 0; i < names.size(); i++) {
            double[] all = figures[i].clone();
            Arrays.sort(all);
            System.out.printf(
                    Locale.ROOT,
                    "%-28s %6.2f ns a tick (%.2f to %.2f), the core takes %.2f times that%n",
                    names.get(i),
                    median(all),
                    all[0],
                    all[rounds - 1],
                    own / median(all));
        }
        System.out.printf(Locale.ROOT, "%d rounds in turn%n", rounds);
        System.out.printf(Locale.ROOT, "core: %.6f Ah at the end%n", java.core.chargeAmpHours());
    }

    private double round() {
        long begin = THREADS.getCurrentThreadCpuTime();
        for (int i = 0; i < DAYS_A_ROUND; i++) {
            day.feed(core, sample, clockMillis);
            clockMillis += FrozenDay.TICKS * FrozenDay.TICK_MILLIS;
        }
        double nanos = THREADS.getCurrentThreadCpuTime() - begin;
        return nanos / DAYS_A_ROUND / FrozenDay.TICKS;
    }

    private static double round(String program, String folder)
            throws IOException, InterruptedException {
        Process process = new ProcessBuilder(program, "bench", folder, "1").start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        Matcher figure = FIGURE.matcher(said);
        if (process.waitFor() != 0 || !figure.find()) {
            throw new IOException(program + " said: " + said);
        }
        return Double.parseDouble(figure.group(1));
    }

    private static double median(double[] figures) {
        double[] sorted = figures.clone();
        Arrays.sort(sorted);
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1
                ? sorted[middle]
                : (sorted[middle - 1] + sorted[middle]) / 2;
    }
}
