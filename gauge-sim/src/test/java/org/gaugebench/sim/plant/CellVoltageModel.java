package org.gaugebench.sim.plant;

import java.util.Locale;
import org.gaugebench.sim.scenario.BatterySpec;
import org.gaugebench.sim.scenario.BatteryTraits;
import org.gaugebench.sim.scenario.Chemistry;

/**
 * Everything that {@link Battery} needs to answer with one cell's voltage: the parameters that a
 * fit finds. Volts and ohms are those of a cell; the battery has as many as its 12 V ask for.
 *
 * @param chemistry gives the number of cells, no more
 * @param ampHours charge between empty and full
 * @param openCircuit voltage against state of charge
 * @param seriesOhms at once
 * @param fastOhms of the first RC pair
 * @param fastSeconds its time constant; 0 for none
 * @param slowOhms of the second
 * @param slowSeconds its time constant; 0 for none
 * @param halfGapVolts half the gap of the hysteresis
 */
record CellVoltageModel(
        Chemistry chemistry,
        double ampHours,
        OpenCircuitTable openCircuit,
        double seriesOhms,
        double fastOhms,
        double fastSeconds,
        double slowOhms,
        double slowSeconds,
        double halfGapVolts) {
    private static final OpenCircuitTable NOTHING =
            OpenCircuitTable.through(new double[] {0, 1}, new double[] {0, 0});

    /** No voltage at all: what is added to it answers alone. */
    static CellVoltageModel nothing(Chemistry chemistry, double ampHours) {
        return new CellVoltageModel(chemistry, ampHours, NOTHING, 0, 0, 0, 0, 0, 0);
    }

    CellVoltageModel withOpenCircuit(OpenCircuitTable table) {
        return new CellVoltageModel(
                chemistry,
                ampHours,
                table,
                seriesOhms,
                fastOhms,
                fastSeconds,
                slowOhms,
                slowSeconds,
                halfGapVolts);
    }

    CellVoltageModel withSeries(double ohms) {
        return new CellVoltageModel(
                chemistry,
                ampHours,
                openCircuit,
                ohms,
                fastOhms,
                fastSeconds,
                slowOhms,
                slowSeconds,
                halfGapVolts);
    }

    CellVoltageModel withPairs(double fast, double fastTime, double slow, double slowTime) {
        return new CellVoltageModel(
                chemistry,
                ampHours,
                openCircuit,
                seriesOhms,
                fast,
                fastTime,
                slow,
                slowTime,
                halfGapVolts);
    }

    CellVoltageModel withHalfGap(double volts) {
        return new CellVoltageModel(
                chemistry,
                ampHours,
                openCircuit,
                seriesOhms,
                fastOhms,
                fastSeconds,
                slowOhms,
                slowSeconds,
                volts);
    }

    int cells() {
        return chemistry.cellsOf(12);
    }

    Battery battery(double startStateOfCharge) {
        BatterySpec spec =
                new BatterySpec(
                        chemistry,
                        12,
                        micro(ampHours),
                        micro(startStateOfCharge),
                        micro(seriesOhms * cells()),
                        micro(fastOhms * cells()),
                        Math.round(fastSeconds * 1_000),
                        1_000_000,
                        0,
                        25_000,
                        0,
                        0,
                        0,
                        0);
        BatteryTraits traits =
                BatteryTraits.NONE
                        .withSlowPolarization(
                                micro(slowOhms * cells()), Math.round(slowSeconds * 1_000))
                        .withHysteresis(micro(halfGapVolts));
        return new Battery(spec.with(traits), openCircuit);
    }

    /** Voltage of one cell at every row of a record. */
    double[] answer(MeasuredRecord record) {
        double[] volts = new double[record.rows()];
        record.drive(
                battery(record.startStateOfCharge()),
                (row, terminalVolts, state) -> volts[row] = terminalVolts / cells());
        return volts;
    }

    /** State of charge at every row of a record. */
    double[] states(MeasuredRecord record) {
        double[] states = new double[record.rows()];
        record.drive(
                battery(record.startStateOfCharge()),
                (row, terminalVolts, state) -> states[row] = state);
        return states;
    }

    /** For people: ohms in mOhm, times in s. */
    String words() {
        String pairs =
                (fastOhms > 0 ? pair(fastOhms, fastSeconds) : "")
                        + (slowOhms > 0 ? pair(slowOhms, slowSeconds) : "");
        String gap =
                halfGapVolts > 0
                        ? String.format(Locale.ROOT, " + gap %.1f mV", halfGapVolts * 1e3)
                        : "";
        return String.format(Locale.ROOT, "%.1f", seriesOhms * 1e3) + pairs + gap;
    }

    private static String pair(double ohms, double seconds) {
        return String.format(Locale.ROOT, " + %.1f (%.0f s)", ohms * 1e3, seconds);
    }

    private static long micro(double value) {
        return Math.round(value * 1e6);
    }
}
