package org.gaugebench.sim.plant;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import org.gaugebench.sim.logs.Hold;
import org.gaugebench.sim.logs.SharedLogs;
import org.gaugebench.sim.scenario.Chemistry;
import org.jspecify.annotations.Nullable;

/**
 * A measured cell: its records and where its open-circuit voltage comes from. Where a set has a
 * rested or slow record that is used; else, and where the two directions of the slow record lie as
 * far apart as what is to be explained, the voltage is fitted together with the resistances.
 *
 * <p>Hysteresis is fitted only where the open-circuit voltage is a mean of both directions: a fit
 * that moves both cannot tell them apart, and a slow discharge stands on its branch already.
 *
 * @param name for people
 * @param nothing chemistry and capacity
 * @param openCircuit null to fit it on the record
 * @param hysteresis whether to fit one
 */
record MeasuredCell(
        String name,
        CellVoltageModel nothing,
        @Nullable OpenCircuitTable openCircuit,
        boolean hysteresis) {
    private static final String SMALL = "panasonic-18650pf/";
    private static final String MIDDLE = "lgm50-5ah-rates/25C_";
    private static final String IRON = "aboutenergy-lfp-nmc/LFP_25C_";
    private static final String CAR = "nissan-leaf-cell-33ah/cell_";

    /** The cell of the drive cycles: their current goes up and down, which tells all apart. */
    static MeasuredCell smallCell() {
        return new MeasuredCell(
                "NCA 18650, 2.9 Ah", CellVoltageModel.nothing(Chemistry.NMC, 2.9), null, false);
    }

    /** Full at its first row. */
    static MeasuredRecord smallCell(String label, String name) {
        return new MeasuredRecord(label, SMALL + name + ".csv", Hold.NEXT, 1);
    }

    /** The 5 Ah cell; its table is the mean of charge and discharge after rests. */
    static MeasuredCell middleCell() {
        return new MeasuredCell(
                "NMC, 5 Ah",
                CellVoltageModel.nothing(Chemistry.NMC, 4.945),
                table(MIDDLE + "ocv_vs_soc.csv"),
                true);
    }

    static MeasuredRecord middleCell(String label, String name) {
        return new MeasuredRecord(label, MIDDLE + name + ".csv", Hold.NEXT, 1);
    }

    /** The 2 Ah iron phosphate cell; its slow discharge is on the discharge branch already. */
    static MeasuredCell ironPhosphate() {
        CellVoltageModel nothing = CellVoltageModel.nothing(Chemistry.LIFEPO4, 2.0745);
        MeasuredRecord slow = ironPhosphate("slow discharge", "Co20");
        return new MeasuredCell(
                "iron phosphate 18650, 2 Ah", nothing, slowDischarge(nothing, slow), false);
    }

    static MeasuredRecord ironPhosphate(String label, String name) {
        return new MeasuredRecord(label, IRON + name + ".csv", Hold.NEXT, 1);
    }

    /** The 33 Ah cell of a car; capacity as rated. */
    static MeasuredCell carCell() {
        return new MeasuredCell(
                "LMO, 33 Ah", CellVoltageModel.nothing(Chemistry.NMC, 33.1), null, false);
    }

    /** Empty at its first row: 30.35 Ah, by its own counter, under its first full charge. */
    static MeasuredRecord carCellOnce() {
        return new MeasuredRecord(
                "cycles at 30.6 A", CAR + "1C_cycles.csv", Hold.LINEAR, 1 - 30.35 / 33.1);
    }

    /** Full at its first row. */
    static MeasuredRecord carCellTwice() {
        return new MeasuredRecord("cycles at 61.2 A", CAR + "2C_cycles.csv", Hold.LINEAR, 1);
    }

    /** Empty at its first row: 30.18 Ah, by its own counter, under its full charge. */
    static MeasuredRecord carCellPulses() {
        return new MeasuredRecord(
                "pulses of 10 to 30 A", CAR + "pulse_test_25C.csv", Hold.NEXT, 1 - 30.18 / 33.1);
    }

    CellVoltageFit fit(MeasuredRecord on, StateRange range) {
        return new CellVoltageFit(nothing, openCircuit, on, range);
    }

    private static OpenCircuitTable slowDischarge(CellVoltageModel nothing, MeasuredRecord slow) {
        double[] states = nothing.states(slow);
        List<double[]> points = new ArrayList<>();
        for (int percent = 0, row = slow.rows() - 1; percent <= 100; percent++) {
            while (row > 0 && states[row] * 100 < percent) {
                row--;
            }
            points.add(new double[] {percent / 100.0, slow.volts(row)});
        }
        return through(points);
    }

    private static OpenCircuitTable table(String file) {
        try {
            List<String> lines = Files.readAllLines(SharedLogs.folder().resolve(file));
            List<double[]> points = new ArrayList<>();
            for (String line : lines.subList(1, lines.size())) {
                String[] cells = line.split(",", -1);
                points.add(
                        new double[] {
                            Double.parseDouble(cells[0]) / 100, Double.parseDouble(cells[1])
                        });
            }
            return through(points);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static OpenCircuitTable through(List<double[]> points) {
        return OpenCircuitTable.through(
                points.stream().mapToDouble(point -> point[0]).toArray(),
                points.stream().mapToDouble(point -> point[1]).toArray());
    }
}
