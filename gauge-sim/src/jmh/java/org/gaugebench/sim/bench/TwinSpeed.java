package org.gaugebench.sim.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * The core against builds of its C twin, the whole loop and BigDecimal on the frozen day, round by
 * round in turn, so that what the machine does meanwhile meets all of them. Each figure is of a
 * process of its own, in time of the processor; ratios are formed within a round.
 *
 * <p>Arguments: rounds, the folder of {@link FrozenDayVectors}, then a name and a program for each
 * build.
 */
public final class TwinSpeed {
    private static final Pattern FIGURE = Pattern.compile("([0-9.]+) ns per tick");

    /** A row of the table: how to get its figure, and those got so far. */
    private record Row(String name, List<String> command, double[] figures) {
        Row(String name, int rounds, String... command) {
            this(name, List.of(command), new double[rounds]);
        }
    }

    private TwinSpeed() {}

    /**
     * Prints a table: the median of each, and its ratio to the core.
     *
     * @param args as above
     * @throws IOException if a program cannot be started
     * @throws InterruptedException if somebody interrupts
     */
    public static void main(String[] args) throws IOException, InterruptedException {
        int rounds = Integer.parseInt(args[0]);
        List<Row> rows = new ArrayList<>();
        rows.add(java("Java core", rounds, Contestant.CORE.name()));
        for (int i = 2; i + 1 < args.length; i += 2) {
            rows.add(new Row(args[i], rounds, args[i + 1], "bench", args[1], "5"));
        }
        rows.add(java("whole loop", rounds, JavaSpeed.WHOLE_LOOP));
        rows.add(java(Contestant.BIG_DECIMAL.label(), rounds, Contestant.BIG_DECIMAL.name()));
        for (int round = 0; round < rounds; round++) {
            for (Row row : rows) {
                row.figures[round] = figure(row.command);
            }
        }
        print(rows, rounds);
    }

    private static Row java(String name, int rounds, String contestant) {
        return new Row(
                name,
                rounds,
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                JavaSpeed.class.getName(),
                contestant);
    }

    /** The median of the figures that a program says. */
    private static double figure(List<String> command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        double[] figures =
                FIGURE.matcher(said)
                        .results()
                        .mapToDouble(found -> Double.parseDouble(found.group(1)))
                        .toArray();
        if (process.waitFor() != 0 || figures.length == 0) {
            throw new IOException(command + " said: " + said);
        }
        return median(figures);
    }

    private static void print(List<Row> rows, int rounds) {
        double[] core = rows.get(0).figures;
        System.out.printf(
                "%-24s %-28s %-12s core over it, least to most%n",
                "",
                "ns a tick, least to most",
                "over core");
        for (Row row : rows) {
            double[] over = new double[rounds];
            double[] under = new double[rounds];
            for (int i = 0; i < rounds; i++) {
                over[i] = row.figures[i] / core[i];
                under[i] = core[i] / row.figures[i];
            }
            System.out.printf(
                    Locale.ROOT,
                    "%-24s %7.2f  %7.2f %7.2f    %6.2f       %.2f  %.2f %.2f%n",
                    row.name,
                    median(row.figures),
                    Arrays.stream(row.figures).min().orElseThrow(),
                    Arrays.stream(row.figures).max().orElseThrow(),
                    median(over),
                    median(under),
                    Arrays.stream(under).min().orElseThrow(),
                    Arrays.stream(under).max().orElseThrow());
        }
        System.out.printf(Locale.ROOT, "%d rounds in turn%n", rounds);
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
