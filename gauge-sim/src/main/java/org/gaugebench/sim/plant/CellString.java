package org.gaugebench.sim.plant;

import java.util.Arrays;
import org.gaugebench.sim.scenario.BatteryTraits.WeakCell;
import org.jspecify.annotations.Nullable;

/**
 * The cells in series: all alike, or one that holds less than the others.
 *
 * <p>The same current flows through all, so the weak cell's charge differs from the others' by a
 * constant: nothing more than an offset. The string is empty when the weak cell is and full when
 * the others are; between, it gives {@code weak part x C - lag}. The others then still hold the
 * offset, which nothing can draw.
 */
final class CellString {
    private final OpenCircuitTable table;
    private final int cells;
    private final double cellCapacity;
    private final double weakCapacity;
    private final double offset;
    private final double capacity;
    private final boolean weak;

    /**
     * Creates the string.
     *
     * @param table of one cell
     * @param cells in series
     * @param cellCapacity of each but the weak one, in any unit
     * @param weakCell null for none
     */
    CellString(
            OpenCircuitTable table, int cells, double cellCapacity, @Nullable WeakCell weakCell) {
        this.table = table;
        this.cells = cells;
        this.cellCapacity = cellCapacity;
        weak = weakCell != null;
        if (weakCell == null) {
            weakCapacity = cellCapacity;
            offset = 0;
            capacity = cellCapacity;
        } else {
            weakCapacity = cellCapacity * (weakCell.capacityPartsPerMillion() / 1e6);
            capacity = weakCapacity - cellCapacity * (weakCell.lagPartsPerMillion() / 1e6);
            offset = cellCapacity - capacity;
        }
    }

    /** What the string gives, full to empty. */
    double capacity() {
        return capacity;
    }

    /** Charge that the other cells still hold when the weak one is empty. */
    double offset() {
        return offset;
    }

    boolean hasWeakCell() {
        return weak;
    }

    int cells() {
        return cells;
    }

    /** Open-circuit voltage of the whole string against the string's charge. */
    OpenCircuitCurve curve(double celsius) {
        if (!weak) {
            return new OpenCircuitCurve(table, cells, capacity, celsius);
        }
        double[] charges = bends();
        return new OpenCircuitCurve(
                charges,
                at -> {
                    double[] row = table.cellVoltsAt(at);
                    double[] volts = new double[charges.length];
                    for (int i = 0; i < volts.length; i++) {
                        double others = table.inRow(row, (charges[i] + offset) / cellCapacity);
                        volts[i] =
                                (cells - 1) * others + table.inRow(row, charges[i] / weakCapacity);
                    }
                    return volts;
                },
                celsius);
    }

    /** Open-circuit voltage of the weak cell alone against the string's charge. */
    OpenCircuitCurve weakCurve(double celsius) {
        return new OpenCircuitCurve(table, 1, weakCapacity, celsius);
    }

    /** Where the curve of either kind of cell bends, within the string's range. */
    private double[] bends() {
        double[] states = table.statesOfCharge();
        double[] all = new double[2 * states.length + 2];
        all[0] = 0;
        all[1] = capacity;
        for (int i = 0; i < states.length; i++) {
            all[2 + 2 * i] = within(states[i] * weakCapacity);
            all[3 + 2 * i] = within(states[i] * cellCapacity - offset);
        }
        return Arrays.stream(all).sorted().distinct().toArray();
    }

    private double within(double charge) {
        return Math.min(Math.max(charge, 0), capacity);
    }
}
