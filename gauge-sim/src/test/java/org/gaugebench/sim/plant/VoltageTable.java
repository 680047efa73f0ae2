package org.gaugebench.sim.plant;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What the plant and a resistance alone were wrong by, pair of records by pair of records. */
final class VoltageTable {
    /** The plant has to halve the error of the open-circuit voltage and one resistance. */
    static final double HALF = 0.5;

    private final StringBuilder rows = new StringBuilder();
    private final List<String> failures = new ArrayList<>();
    private int pairs;
    private int met;

    VoltageTable() {
        rows.append("| battery | fitted on | judged on | plant, mV | one resistance, mV | ratio |");
        rows.append(" bound |\n|---|---|---|---|---|---|---|\n");
    }

    /**
     * Takes a pair.
     *
     * @param battery for people
     * @param on the record that was fitted on
     * @param judged the record that was predicted
     * @param plantVolts error of the whole plant
     * @param aloneVolts error of the open-circuit voltage with one resistance
     * @param bound most that their ratio may be: a half, or more where the page says why
     */
    void add(
            String battery,
            MeasuredRecord on,
            MeasuredRecord judged,
            double plantVolts,
            double aloneVolts,
            double bound) {
        double ratio = plantVolts / aloneVolts;
        rows.append(
                String.format(
                        Locale.ROOT,
                        "| %s | %s | %s | %.1f | %.1f | %.2f | %.2f |%n",
                        battery,
                        on.label(),
                        judged.label(),
                        plantVolts * 1e3,
                        aloneVolts * 1e3,
                        ratio,
                        bound));
        pairs++;
        met += ratio <= HALF ? 1 : 0;
        String pair = battery + ", " + on.label() + " -> " + judged.label() + ": ratio " + ratio;
        if (!(ratio <= bound)) {
            failures.add(pair + " is beyond " + bound);
        }
        if (bound > HALF && ratio <= HALF) {
            failures.add(pair + " is a half now: lower its bound, and tell the page");
        }
    }

    List<String> failures() {
        return failures;
    }

    String markdown() {
        return rows + "\nHalf the error or less in " + met + " of " + pairs + " pairs.\n";
    }
}
