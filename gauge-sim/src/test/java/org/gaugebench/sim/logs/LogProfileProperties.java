package org.gaugebench.sim.logs;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

/** The integral over pieces is the integral over the whole, wherever it is cut. */
class LogProfileProperties {
    @Property(tries = 300)
    void piecesAddUpToTheWhole(
            @ForAll @Size(min = 2, max = 20) List<@IntRange(min = 0, max = 5_000) Integer> steps,
            @ForAll @Size(min = 20, max = 20)
                    List<@IntRange(min = -300, max = 300) Integer> currents,
            @ForAll @Size(min = 1, max = 10) List<@IntRange(min = 1, max = 9_999) Integer> cuts,
            @ForAll Hold hold) {
        MeasuredLog.Builder builder =
                new MeasuredLog.Builder(
                        "log", new boolean[] {true, false, false, false, false, false});
        long nanos = 0;
        for (int r = 0; r < steps.size(); r++) {
            nanos += r == 0 ? 0 : steps.get(r) * 1_000_000L;
            builder.add(r + 2, nanos, new double[] {currents.get(r), 0, 0, 0, 0, 0});
        }
        MeasuredLog log = builder.build(List.of());
        LogProfile profile = new LogProfile(log, hold);
        List<Long> ends = new ArrayList<>();
        cuts.forEach(c -> ends.add(log.durationNanos() / 10_000 * c));
        ends.sort(null);
        ends.add(log.durationNanos());
        double sum = 0;
        long from = 0;
        for (long to : ends) {
            if (to > from) {
                sum += profile.meanAmps(from, to) * ((to - from) / 1e9);
                from = to;
            }
        }
        // Sums of at most 100 A over 100 s in doubles: 1e4 C with 53 bits, some 30 additions.
        assertEquals(profile.totalCoulombs(), sum, 1e-9);
        assertEquals(profile.totalCoulombs(), profile.coulombs(0, log.durationNanos()), 1e-9);
    }
}
