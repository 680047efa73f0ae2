package org.gaugebench.sim.plant;

import java.util.Locale;
import org.gaugebench.sim.logs.Hold;
import org.gaugebench.sim.plant.CompassSearch.Parameter;
import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.BatteryTraits;
import org.gaugebench.sim.scenario.Chemistry;

/**
 * The measured 17 Ah battery over a cycle of discharge, rest and recharge: the plant with all that
 * it has for lead-acid, or its open-circuit voltage with one resistance. Both know the coulombic
 * efficiency, for the state of charge hangs on it.
 */
final class LeadAcidCycle {
    private static final String FOLDER = "leadacid-17ah-solar-hub/";

    private static final String CYCLES = FOLDER + "battery1_cycles_3A_2.5A_2A_60s.csv";
    private static final String SLOW_DISCHARGE = FOLDER + "battery1_discharge_0.5A_60s.csv";

    private static final String[] LABELS = {"3.04 A cycle", "2.54 A cycle", "2.04 A cycle"};

    /** In the rests before the second and the third discharge. */
    private static final double[] BEGIN_SECONDS = {0, 84_000, 169_000, 300_000};

    /** Discharges of 19.7 to 19.8 Ah end at the cut-off. */
    private static final double AMP_HOURS = 20;

    private static final double[] STATES = {0.1, 0.25, 0.5, 0.75, 1};
    private static final double CELLS = 6;
    private static final double[] ACCEPTANCE_STARTS_SECONDS = {2_400, 3_600, 7_200, 10_800};

    // Parameters of the search, in order; volts are those of the battery.
    private static final int SERIES = 5;
    private static final int EFFICIENCY = 6;
    private static final int FAST = 7;
    private static final int SLOW = 9;
    private static final int HALF_GAP = 11;
    private static final int ACCEPTANCE = 12;
    private static final int END_CURRENT = 13;

    private static final Parameter[] WHOLE = {
        new Parameter(11.7, 0.2, 9, 13),
        new Parameter(0.4, 0.1, 0, 2),
        new Parameter(0.4, 0.1, 0, 2),
        new Parameter(0.4, 0.1, 0, 2),
        new Parameter(0.4, 0.1, 0, 2),
        new Parameter(0.05, 0.02, 0, 1),
        new Parameter(0.95, 0.02, 0.7, 1),
        new Parameter(0.05, 0.02, 0, 1),
        new Parameter(300, 100, 30, 1_200),
        new Parameter(0.05, 0.02, 0, 1),
        new Parameter(5_000, 2_000, 1_200, 40_000),
        new Parameter(0.02, 0.01, 0, 0.1),
        Parameter.fixed(0), // acceptance, from several starts
        new Parameter(0.01, 0.005, 0, 0.2)
    };

    private final double[] p;

    private LeadAcidCycle(double[] found) {
        p = found;
    }

    /** One of the three cycles, from 0; full at its first row. */
    static MeasuredRecord record(int cycle) {
        return new MeasuredRecord(
                LABELS[cycle],
                CYCLES,
                Hold.NEXT,
                1,
                BEGIN_SECONDS[cycle],
                BEGIN_SECONDS[cycle + 1]);
    }

    /** The slow discharge, days apart; full at its first row. */
    static MeasuredRecord slowDischarge() {
        return new MeasuredRecord("0.53 A discharge", SLOW_DISCHARGE, Hold.NEXT, 1);
    }

    /**
     * Everything: two RC pairs, hysteresis, acceptance and gassing. The search begins at several
     * acceptances, and what fits the record best is taken: the valleys are many.
     */
    static LeadAcidCycle wholePlant(MeasuredRecord on, StateRange range) {
        LeadAcidCycle best = null;
        for (double seconds : ACCEPTANCE_STARTS_SECONDS) {
            Parameter[] parameters = WHOLE.clone();
            parameters[ACCEPTANCE] = new Parameter(seconds, 1_800, 1_200, 36_000);
            LeadAcidCycle found = fitted(parameters, on, range);
            if (best == null || found.rmsVolts(on, range) < best.rmsVolts(on, range)) {
                best = found;
            }
        }
        return best;
    }

    /** Open-circuit voltage, one resistance and the efficiency. */
    static LeadAcidCycle resistanceAlone(MeasuredRecord on, StateRange range) {
        Parameter[] few = WHOLE.clone();
        for (int i = FAST; i < few.length; i++) {
            few[i] = Parameter.fixed(0);
        }
        return fitted(few, on, range);
    }

    private static LeadAcidCycle fitted(
            Parameter[] parameters, MeasuredRecord on, StateRange range) {
        return new LeadAcidCycle(
                CompassSearch.least(
                        parameters, found -> new LeadAcidCycle(found).rmsVolts(on, range)));
    }

    private Battery battery() {
        double[] cellVolts = new double[STATES.length];
        double volts = 0;
        for (int i = 0; i < cellVolts.length; i++) {
            volts += p[i];
            cellVolts[i] = volts / CELLS;
        }
        BatterySpec spec =
                new BatterySpec(
                        Chemistry.LEAD_ACID_AGM,
                        12,
                        micro(AMP_HOURS),
                        1_000_000,
                        micro(p[SERIES]),
                        micro(p[FAST]),
                        Math.round(p[FAST + 1] * 1_000),
                        micro(p[EFFICIENCY]),
                        0,
                        25_000,
                        Math.round(p[ACCEPTANCE] * 1_000),
                        micro(p[END_CURRENT]),
                        0,
                        0);
        BatteryTraits traits =
                BatteryTraits.NONE
                        .withSlowPolarization(micro(p[SLOW]), Math.round(p[SLOW + 1] * 1_000))
                        .withHysteresis(micro(p[HALF_GAP]));
        return new Battery(spec.with(traits), OpenCircuitTable.through(STATES, cellVolts));
    }

    /** Root of the mean square over time of what it is wrong by, in volts of the battery. */
    double rmsVolts(MeasuredRecord record, StateRange range) {
        double[] sums = new double[2];
        record.drive(
                battery(),
                (row, terminalVolts, state) -> {
                    if (state * 100 >= range.fromPercent() && state * 100 <= range.toPercent()) {
                        double off = terminalVolts - record.volts(row);
                        sums[0] += record.seconds(row) * off * off;
                        sums[1] += record.seconds(row);
                    }
                });
        return StrictMath.sqrt(sums[0] / sums[1]);
    }

    /** For people. */
    String words() {
        StringBuilder open = new StringBuilder();
        double volts = 0;
        for (int i = 0; i < STATES.length; i++) {
            volts += p[i];
            open.append(String.format(Locale.ROOT, "%.2f ", volts));
        }
        return String.format(
                Locale.ROOT,
                "open %sV, R0 %.0f mOhm, eta %.3f, %.0f mOhm (%.0f s), %.0f mOhm (%.0f s),"
                        + " gap %.1f mV, acceptance %.2f h, end current %.1f %%",
                open,
                p[SERIES] * 1e3,
                p[EFFICIENCY],
                p[FAST] * 1e3,
                p[FAST + 1],
                p[SLOW] * 1e3,
                p[SLOW + 1],
                p[HALF_GAP] * 1e3,
                p[ACCEPTANCE] / 3_600,
                p[END_CURRENT] * 100);
    }

    private static long micro(double value) {
        return Math.round(value * 1e6);
    }
}
