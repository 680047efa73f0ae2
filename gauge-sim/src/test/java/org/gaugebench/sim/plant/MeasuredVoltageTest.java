package org.gaugebench.sim.plant;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.gaugebench.sim.PageSection;
import org.junit.jupiter.api.Test;

/**
 * The plant against lithium cells of laboratories. Its parameters are fitted on one record, and
 * from there another record of the same cell is predicted from its current alone; nothing is
 * adjusted to that one. Beside it the open-circuit voltage and one resistance, fitted on the same
 * record. Fitted and judged between 20 and 90 %, where every record has been, and iron phosphate on
 * its plateau too.
 *
 * <p>Every ordered pair is there that the page does not except. A bound above a half stands where
 * the page says why the plant does not reach it; it is the measured ratio, rounded up to the next
 * 0.05.
 */
class MeasuredVoltageTest {
    private static final StateRange RANGE = new StateRange(20, 90);

    /** Where iron phosphate is flat on either side; beyond it bends under load. */
    private static final StateRange PLATEAU = new StateRange(30, 80);

    private static final Path PAGE = Path.of("docs", "models.md");

    private final VoltageTable table = new VoltageTable();

    @Test
    void predictsAnotherRecordOfTheSameCell() throws IOException {
        smallCell();
        middleCell();
        carCell();
        ironPhosphate();
        System.out.println(table.markdown());
        assertEquals(List.of(), table.failures());
        PageSection.check(PAGE, "measured cells", table.markdown());
    }

    private void smallCell() {
        MeasuredCell cell = MeasuredCell.smallCell();
        MeasuredRecord cycle = MeasuredCell.smallCell("US06 cycle", "25C_US06_raw_100ms");
        MeasuredRecord days = MeasuredCell.smallCell("31 h of cycles", "25C_sequence_31h_1s_mean");
        // A constant current alone: not fitted on, for it tells no resistance from a voltage.
        MeasuredRecord discharge =
                MeasuredCell.smallCell("2.9 A discharge", "25C_1C_discharge_new_cell_raw_10s");
        MeasuredRecord cold = MeasuredCell.smallCell("US06 cycle at 0 °C", "0C_US06_1s_mean");
        judge(
                cell,
                RANGE,
                cycle,
                new Bound(days, 0.55),
                new Bound(discharge, 0.5),
                new Bound(cold, 1));
        judge(
                cell,
                RANGE,
                days,
                new Bound(cycle, 0.5),
                new Bound(discharge, 0.5),
                new Bound(cold, 0.9));
    }

    private void middleCell() {
        MeasuredCell cell = MeasuredCell.middleCell();
        MeasuredRecord tenth = MeasuredCell.middleCell("0.5 A cycle", "0p1C");
        MeasuredRecord half = MeasuredCell.middleCell("2.5 A cycle", "0p5C");
        MeasuredRecord once = MeasuredCell.middleCell("5 A cycle", "1C");
        MeasuredRecord twice = MeasuredCell.middleCell("10 A cycle", "2C");
        judge(
                cell,
                RANGE,
                tenth,
                new Bound(half, 0.8),
                new Bound(once, 0.65),
                new Bound(twice, 0.6));
        judge(
                cell,
                RANGE,
                half,
                new Bound(tenth, 1.9),
                new Bound(once, 0.65),
                new Bound(twice, 0.5));
        judge(
                cell,
                RANGE,
                once,
                new Bound(tenth, 0.75),
                new Bound(half, 0.55),
                new Bound(twice, 0.5));
        judge(cell, RANGE, twice, new Bound(tenth, 1), new Bound(half, 0.5), new Bound(once, 0.5));
    }

    private void carCell() {
        MeasuredCell cell = MeasuredCell.carCell();
        MeasuredRecord once = MeasuredCell.carCellOnce();
        MeasuredRecord twice = MeasuredCell.carCellTwice();
        MeasuredRecord pulses = MeasuredCell.carCellPulses();
        judge(cell, RANGE, once, new Bound(twice, 0.7), new Bound(pulses, 1.05));
        judge(cell, RANGE, twice, new Bound(once, 0.5), new Bound(pulses, 1));
        judge(cell, RANGE, pulses, new Bound(once, 1.6), new Bound(twice, 1));
    }

    private void ironPhosphate() {
        MeasuredCell cell = MeasuredCell.ironPhosphate();
        MeasuredRecord once = MeasuredCell.ironPhosphate("2 A discharge", "1C");
        MeasuredRecord twice = MeasuredCell.ironPhosphate("4 A discharge", "2C");
        judge(cell, RANGE, once, new Bound(twice, 0.75));
        judge(cell, RANGE, twice, new Bound(once, 1.4));
        judge(cell, PLATEAU, once, new Bound(twice, 0.5));
        judge(cell, PLATEAU, twice, new Bound(once, 0.9));
    }

    /** A record to judge, and the most that the ratio of the errors may be. */
    private record Bound(MeasuredRecord judged, double ratio) {}

    private void judge(MeasuredCell cell, StateRange range, MeasuredRecord on, Bound... bounds) {
        CellVoltageFit fit = cell.fit(on, range);
        CellVoltageModel whole = fit.wholePlant(cell.hysteresis());
        CellVoltageModel alone = fit.resistanceAlone();
        System.out.println(
                cell.name()
                        + ", "
                        + on.label()
                        + ", mOhm: "
                        + whole.words()
                        + "; alone "
                        + alone.words());
        for (Bound bound : bounds) {
            table.add(
                    range.equals(RANGE) ? cell.name() : cell.name() + ", " + range,
                    on,
                    bound.judged(),
                    range.rmsVolts(whole, bound.judged()),
                    range.rmsVolts(alone, bound.judged()),
                    bound.ratio());
        }
    }

    /**
     * Why iron phosphate stays above a half: even fitted on the very record that is judged, two
     * pairs of constant resistance leave more than half of the error.
     */
    @Test
    void noConstantResistanceHalvesTheErrorOfIronPhosphate() {
        MeasuredCell cell = MeasuredCell.ironPhosphate();
        for (String name : List.of("1C", "2C")) {
            MeasuredRecord record = MeasuredCell.ironPhosphate(name, name);
            CellVoltageFit fit = cell.fit(record, RANGE);
            double plant = RANGE.rmsVolts(fit.wholePlant(false), record);
            double alone = RANGE.rmsVolts(fit.resistanceAlone(), record);
            System.out.printf(
                    "%s fitted on itself: %.1f of %.1f mV%n",
                    record.label(), plant * 1e3, alone * 1e3);
            assertTrue(plant > VoltageTable.HALF * alone, name + ": " + plant + ", " + alone);
        }
    }
}
