package org.gaugebench.core.band;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.gaugebench.core.settings.GaugeSettings;

/**
 * How often the truth lies in the band, and how wide the band is, over many drawn devices.
 *
 * <p>Width is judged in two ways, and the larger figure counts. <i>Scaled</i>: the factor by which
 * the band may shrink about the count, both sides alike, until exactly 95 % of the devices are left
 * in it; that is the band the gauge shows, only smaller. <i>Central</i>: the band's whole width
 * over that of the interval from the 2.5th to the 97.5th percentile of the error, which may lie
 * anywhere and need not hold the count; no band about a count can be expected to reach 1.
 */
final class CoverageTable {
    private static final double HELD = 0.95;

    private final String name;
    private final List<CoverageDevice> devices;

    CoverageTable(
            String name, GaugeSettings settings, CoverageDevice.Start start, long seed, int count) {
        this.name = name;
        devices =
                IntStream.range(0, count)
                        .parallel()
                        .mapToObj(
                                i -> {
                                    // Each device has its own stream: the same on any thread count.
                                    SplittableRandom own =
                                            new SplittableRandom(seed + i * 0x9E3779B97F4A7C15L);
                                    CoverageDevice d = new CoverageDevice(settings, start, own);
                                    d.run();
                                    return d;
                                })
                        .toList();
    }

    int known(int line) {
        return (int) devices.stream().filter(d -> d.isKnown(line)).count();
    }

    double inside(int line) {
        return devices.stream().filter(d -> d.isKnown(line) && need(d, line) <= 1).count()
                / (double) known(line);
    }

    double alwaysInside() {
        return devices.stream().filter(CoverageDevice::isAlwaysInside).count()
                / (double) devices.size();
    }

    /** The band over the same band scaled to hold exactly 95 %. */
    double scaledWidth(int line) {
        return 1 / percentile(sorted(line, true), HELD);
    }

    /** The band over the central 95 % of the errors. */
    double centralWidth(int line) {
        double[] errors = sorted(line, false);
        double width = percentile(errors, 0.975) - percentile(errors, 0.025);
        return (mean(line, true) + mean(line, false)) / width;
    }

    /** The part of the band that a device needs: at most 1 when the truth is inside. */
    private static double need(CoverageDevice d, int line) {
        double error = d.error(line);
        return error >= 0 ? error / d.highSide(line) : -error / d.lowSide(line);
    }

    private double[] sorted(int line, boolean asNeed) {
        double[] figures =
                devices.stream()
                        .filter(d -> d.isKnown(line))
                        .mapToDouble(d -> asNeed ? need(d, line) : d.error(line))
                        .toArray();
        Arrays.sort(figures);
        return figures;
    }

    private static double percentile(double[] sorted, double part) {
        double place = part * (sorted.length - 1);
        int below = (int) place;
        int above = Math.min(below + 1, sorted.length - 1);
        return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
    }

    private double mean(int line, boolean low) {
        return devices.stream()
                .filter(d -> d.isKnown(line))
                .mapToDouble(d -> low ? d.lowSide(line) : d.highSide(line))
                .average()
                .orElse(Double.NaN);
    }

    /** The table, for people. */
    String text() {
        StringBuilder text = new StringBuilder();
        text.append(
                String.format(
                        Locale.ROOT,
                        "%s: %d devices, inside at every hour %.2f %%%n",
                        name,
                        devices.size(),
                        100 * alwaysInside()));
        text.append("  day  unknown  inside %   band -low/+high %   width scaled  central\n");
        for (int line = 0; line < CoverageDevice.DAYS.length; line++) {
            int known = known(line);
            text.append(
                    String.format(
                            Locale.ROOT,
                            "  %3d  %7d",
                            CoverageDevice.DAYS[line],
                            devices.size() - known));
            text.append(
                    known == 0
                            ? "  nothing claimed\n"
                            : String.format(
                                    Locale.ROOT,
                                    "  %8.2f    -%5.2f / +%5.2f      %8.3f    %7.3f%n",
                                    100 * inside(line),
                                    mean(line, true) / 1e4,
                                    mean(line, false) / 1e4,
                                    scaledWidth(line),
                                    centralWidth(line)));
        }
        return text.toString();
    }
}
