package org.gaugebench.sim.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.gaugebench.sim.logs.SharedLogs;
import org.junit.jupiter.api.Test;

/**
 * The core counts measured logs to the laboratory's own counter. The files stay outside the
 * project; where {@code GAUGEBENCH_DATA} does not point to them the tests skip and say so.
 *
 * <p>The integral here is independent of the product's reader and profile: lines split at commas,
 * sums in BigDecimal.
 */
class ReplaySharedLogsTest {
    private static final int[] SHUNT_AMPS = {5, 10, 20, 50, 100, 200};

    /** Its rows are points 60 s apart, and the charger switches on between two of them. */
    private static final String SLOWLY_SAMPLED = "25C_1C_charge_after_discharge_raw_60s.csv";

    /** Points 60 s apart with constant-voltage tails; every other log has means or is dense. */
    private static final Set<String> LINEAR = Set.of("cell_1C_cycles.csv", "cell_2C_cycles.csv");

    /** Its own README doubts that the current is the battery's; here the check may not tell. */
    private static final Set<String> DOUBTFUL = Set.of("engine_charge_9min.csv");

    private static final BigDecimal SECONDS_PER_HOUR = BigDecimal.valueOf(3600);
    private static final BigDecimal TWO = BigDecimal.valueOf(2);

    @Test
    void countsEveryLogWithACounter() throws IOException {
        List<String> table = new ArrayList<>();
        List<String> failures = new ArrayList<>();
        table.add(
                row("log", "hold", "shunt", "counted Ah", "exact Ah", "lab Ah", "%exact", "%lab"));
        int files = 0;
        for (Path file : logsWith("tester_Ah")) {
            files++;
            count(file, table, failures);
        }
        table.forEach(System.out::println);
        assertTrue(files > 0, "no file with tester_Ah in " + SharedLogs.folder());
        assertEquals(List.of(), failures);
    }

    private static void count(Path file, List<String> table, List<String> failures)
            throws IOException {
        String name = file.getFileName().toString();
        boolean linear = LINEAR.contains(name);
        Exact exact = exact(file, linear);
        String shunt = smallestShunt(exact.peak) + " A / 60 mV";
        List<String> args = new ArrayList<>(args(file, shunt, "charge"));
        args.addAll(List.of("--counter", "tester_Ah", "--hold", linear ? "linear" : "next"));
        ReplayRun run = ReplayRun.of(args);
        assertEquals(0, run.exitCode, run.err);
        double throughput = exact.throughput.doubleValue();
        double offExact = 100 * (run.number("countedAh") - exact.net.doubleValue()) / throughput;
        double offLab = 100 * (run.number("countedAh") - exact.counter.doubleValue()) / throughput;
        table.add(
                row(
                        name,
                        linear ? "linear" : "next",
                        shunt,
                        format("%.5f", run.number("countedAh")),
                        format("%.5f", exact.net.doubleValue()),
                        format("%.5f", exact.counter.doubleValue()),
                        format("%+.5f", offExact),
                        format("%+.4f", offLab)));
        check(failures, name + " from the exact integral", offExact, 0.02);
        // 0.86 % is what 60 s sampling of a current that switches on costs; see the data's README.
        check(
                failures,
                name + " from the laboratory",
                offLab,
                name.equals(SLOWLY_SAMPLED) ? 0.9 : 0.2);
        // The command's own figures agree with the independent ones, to its nine decimals.
        check(failures, name + " throughput", run.number("throughputAh") - throughput, 1e-6);
        check(
                failures,
                name + " difference",
                run.number("differencePercentOfThroughput") - offLab,
                1e-5);
    }

    private static void check(List<String> failures, String what, double value, double limit) {
        if (!(Math.abs(value) <= limit)) {
            failures.add(what + ": " + value + " is beyond " + limit);
        }
    }

    @Test
    void refusesExactlyTheInvertedLogs() throws IOException {
        List<String> failures = new ArrayList<>();
        Set<String> untold = new TreeSet<>();
        int files = 0;
        for (Path file : logsWith("voltage_V")) {
            files++;
            String shunt = "300 A / 60 mV";
            List<String> asItIs = new ArrayList<>(args(file, shunt, "charge"));
            asItIs.addAll(List.of("--voltage", "voltage_V"));
            List<String> inverted = new ArrayList<>(args(file, shunt, "discharge"));
            inverted.addAll(List.of("--voltage", "voltage_V"));
            ReplayRun right = ReplayRun.of(asItIs);
            ReplayRun wrong = ReplayRun.of(inverted);
            if (right.exitCode != 0) {
                failures.add(file + " refused: " + right.err);
                continue;
            }
            String answer = right.text("answer");
            System.out.printf(
                    Locale.ROOT,
                    "%-52s %-12s score %+.2f steps %+.2f; inverted: %s%n",
                    file.getFileName(),
                    answer,
                    right.number("score"),
                    right.number("steps"),
                    wrong.exitCode == 2 ? "refused" : wrong.text("answer"));
            boolean refused = wrong.exitCode == 2 && wrong.err.contains("contradicts the voltage");
            boolean cannotTell = wrong.exitCode == 0 && wrong.text("answer").equals("cannot-tell");
            if (!refused && !cannotTell) {
                failures.add(file + " inverted was taken: " + wrong.out + wrong.err);
            }
            if (!refused) {
                untold.add(file.getFileName().toString());
            }
        }
        assertTrue(files > 0, "no file with voltage_V in " + SharedLogs.folder());
        assertEquals(List.of(), failures);
        assertTrue(DOUBTFUL.containsAll(untold), "cannot tell: " + untold);
    }

    private static List<String> args(Path file, String shunt, String positive) {
        return List.of(
                file.toString(),
                "--time",
                "time_s",
                "--current",
                "current_A",
                "--positive",
                positive,
                "--shunt",
                shunt,
                "--adc",
                "20 bit, 100 mV",
                "--capacity",
                "60 Ah",
                "--json");
    }

    private static int smallestShunt(BigDecimal peak) {
        for (int amps : SHUNT_AMPS) {
            if (peak.compareTo(BigDecimal.valueOf(amps)) <= 0) {
                return amps;
            }
        }
        throw new AssertionError("no shunt covers " + peak);
    }

    private record Exact(
            BigDecimal net, BigDecimal throughput, BigDecimal counter, BigDecimal peak) {}

    private static Exact exact(Path file, boolean linear) throws IOException {
        List<String> lines = Files.readAllLines(file);
        List<String> header = List.of(lines.get(0).split(","));
        int t = header.indexOf("time_s");
        int i = header.indexOf("current_A");
        int c = header.indexOf("tester_Ah");
        BigDecimal net = BigDecimal.ZERO;
        BigDecimal throughput = BigDecimal.ZERO;
        String[] before = lines.get(1).split(",");
        BigDecimal peak = new BigDecimal(before[i]).abs();
        BigDecimal firstCount = new BigDecimal(before[c]);
        for (String line : lines.subList(2, lines.size())) {
            String[] row = line.split(",");
            BigDecimal step = new BigDecimal(row[t]).subtract(new BigDecimal(before[t]));
            BigDecimal a = new BigDecimal(before[i]);
            BigDecimal b = new BigDecimal(row[i]);
            BigDecimal mean = linear ? a.add(b).divide(TWO) : b;
            BigDecimal moved = mean.abs();
            if (linear && a.signum() * b.signum() < 0) {
                moved =
                        a.multiply(a)
                                .add(b.multiply(b))
                                .divide(b.subtract(a).abs().multiply(TWO), MathContext.DECIMAL64);
            }
            net = net.add(mean.multiply(step));
            throughput = throughput.add(moved.multiply(step));
            peak = peak.max(b.abs());
            before = row;
        }
        return new Exact(
                net.divide(SECONDS_PER_HOUR, MathContext.DECIMAL64),
                throughput.divide(SECONDS_PER_HOUR, MathContext.DECIMAL64),
                new BigDecimal(before[c]).subtract(firstCount),
                peak);
    }

    private static Set<Path> logsWith(String column) throws IOException {
        try (Stream<Path> files = Files.walk(SharedLogs.folder())) {
            return files.filter(f -> f.toString().endsWith(".csv"))
                    .filter(f -> headerHas(f, column) && headerHas(f, "current_A"))
                    .collect(Collectors.toCollection(TreeSet::new));
        }
    }

    private static boolean headerHas(Path file, String column) {
        try (Stream<String> lines = Files.lines(file)) {
            List<String> header = List.of(lines.findFirst().orElse("").split(","));
            return header.contains(column) && header.contains("time_s");
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static String format(String pattern, double value) {
        return String.format(Locale.ROOT, pattern, value);
    }

    private static String row(String name, String... cells) {
        StringBuilder row = new StringBuilder(String.format("%-46s", name));
        for (String cell : cells) {
            row.append(String.format(" %13s", cell));
        }
        return row.toString();
    }
}
