package org.gaugebench.sim.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import org.gaugebench.core.port.Fault;
import org.gaugebench.core.port.Readout;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.sim.plant.TrueTimeToEmpty;
import org.gaugebench.sim.plant.Truth;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Outlook;
import org.gaugebench.sim.rig.Rig;

/**
 * Writes truth and readings over time as a table: comma, point, one row of column names, units at
 * the end of each name. A cell is empty where the gauge does not know the figure; all of them are
 * while it has no power.
 *
 * <p>The first row is time 0 and the last one the end of the run, whatever the interval.
 */
public final class TraceCsv implements Observer, AutoCloseable {
    private static final long MINUTE_MILLIS = 60_000;
    private static final Fault[] FAULTS = Fault.values();
    private static final List<String> GAUGE_COLUMNS =
            List.of(
                    "counts",
                    "current_A",
                    "voltage_V",
                    "soc_percent",
                    "lower_edge_percent",
                    "upper_edge_percent",
                    "charge_Ah",
                    "time_to_empty_min",
                    "time_to_empty_kind",
                    "time_to_full_min",
                    "time_to_full_kind",
                    "rule_state",
                    "rule_reason",
                    "held_min",
                    "trust",
                    "trust_reason",
                    "faults");

    private final FreshFile file;
    private final long everyMillis;
    private final boolean ahead;
    private final StringBuilder row = new StringBuilder(512);
    private long dueMillis;
    private long writtenMillis = -1;

    /**
     * Opens a trace.
     *
     * @param place where the table is to appear when the run has ended
     * @param everyMillis interval between rows; 0 for every tick
     * @throws IOException if the file cannot be written there
     */
    public TraceCsv(Path place, long everyMillis) throws IOException {
        this(place, everyMillis, false);
    }

    /**
     * Opens a trace.
     *
     * @param place where the table is to appear when the run has ended
     * @param everyMillis interval between rows; 0 for every tick
     * @param ahead whether each row also tells what is really left, for which a copy of the plant
     *     runs forward from it
     * @throws IOException if the file cannot be written there
     */
    public TraceCsv(Path place, long everyMillis, boolean ahead) throws IOException {
        this.file = new FreshFile(place);
        this.everyMillis = everyMillis;
        this.ahead = ahead;
    }

    @Override
    public void onStart(Rig rig) {
        row.append("time_s,true_soc_percent,true_charge_Ah,true_current_A,true_voltage_V");
        row.append(",temperature_C");
        if (ahead) {
            row.append(",true_available_Ah,true_time_to_empty_load_held_min");
            row.append(",true_time_to_empty_as_it_goes_min");
        }
        for (Lane lane : rig.lanes()) {
            String name = lane.name().replaceAll("[^A-Za-z0-9]+", "_");
            for (String column : GAUGE_COLUMNS) {
                row.append(',').append(name).append('_').append(column);
            }
        }
        endRow();
        write(rig);
    }

    @Override
    public Observer forTicks() {
        boolean isFiner = everyMillis % MINUTE_MILLIS != 0 || everyMillis == 0;
        return isFiner ? this : Observer.NONE;
    }

    @Override
    public void onTick(Rig rig) {
        writeIfDue(rig);
    }

    @Override
    public void onMoment(Rig rig) {
        boolean atEnd = rig.timeMillis() >= rig.scenario().durationMillis();
        if (atEnd && rig.timeMillis() != writtenMillis) {
            write(rig);
        } else {
            writeIfDue(rig);
        }
    }

    private void writeIfDue(Rig rig) {
        if (rig.timeMillis() >= dueMillis && rig.timeMillis() != writtenMillis) {
            write(rig);
        }
    }

    private void write(Rig rig) {
        writtenMillis = rig.timeMillis();
        dueMillis = everyMillis == 0 ? 0 : (writtenMillis / everyMillis + 1) * everyMillis;
        Truth truth = rig.truth();
        Decimals.append(row, writtenMillis, 3);
        decimal(StrictMath.round(truth.stateOfCharge() * 1e6), 4);
        decimal(StrictMath.round(truth.chargeAmpHours() * 1e6), 6);
        decimal(StrictMath.round(truth.meanCurrentAmps() * 1e6), 6);
        decimal(StrictMath.round(truth.voltageVolts() * 1e6), 6);
        decimal(StrictMath.round(truth.temperatureCelsius() * 1e3), 3);
        if (ahead) {
            outlook(rig.outlook());
        }
        for (Lane lane : rig.lanes()) {
            gauge(lane);
        }
        endRow();
    }

    private void outlook(Outlook outlook) {
        decimal(StrictMath.round(outlook.availableAmpHours() * 1e6), 6);
        minutes(outlook.millisWithLoadHeld());
        minutes(outlook.millisAsItGoes());
    }

    /** An empty cell for a time that never comes. */
    private void minutes(long millis) {
        row.append(',');
        if (millis != TrueTimeToEmpty.NEVER) {
            row.append(millis / MINUTE_MILLIS);
        }
    }

    private void gauge(Lane lane) {
        if (!lane.hasPower()) {
            row.append(",".repeat(GAUGE_COLUMNS.size()));
            return;
        }
        Registers registers = lane.inspect();
        Readout readout = lane.read();
        boolean known = readout.stateOfChargePartsPerMillion != Readout.NOT_KNOWN;
        decimal(registers.get(Register.SHUNT_COUNTS), 0);
        decimal(readout.currentMicroamps, 6);
        decimal(readout.voltageMicrovolts, 6);
        row.append(',');
        if (known) {
            Decimals.append(row, readout.stateOfChargePartsPerMillion, 4);
        }
        edge(readout.bandUnknown, readout.lowerEdgePartsPerMillion);
        edge(readout.bandUnknown, readout.upperEdgePartsPerMillion);
        row.append(',');
        if (known) {
            Decimals.append(row, readout.remainingNanocoulombs / 3_600_000, 6);
        }
        row.append(',');
        switch (readout.timeToEmptyState) {
            case ESTIMATE, MORE_THAN -> row.append(readout.timeToEmptyMinutes);
            default -> {
                // no figure: the cell stays empty
            }
        }
        row.append(',').append(readout.timeToEmptyState.name());
        row.append(',');
        switch (readout.timeToFullState) {
            case ESTIMATE, NOT_BEFORE -> row.append(readout.timeToFullMinutes);
            default -> {
                // no figure: the cell stays empty
            }
        }
        row.append(',').append(readout.timeToFullState.name());
        row.append(',').append(readout.ruleState.name());
        row.append(',').append(readout.ruleReason.name());
        decimal(registers.get(Register.RULE_HELD_MINUTES), 0);
        row.append(',').append(readout.trust.name());
        row.append(',').append(readout.trustReason.name());
        faults(readout.faultBits);
    }

    private void edge(boolean unknown, long partsPerMillion) {
        row.append(',');
        if (!unknown) {
            Decimals.append(row, partsPerMillion, 4);
        }
    }

    /** The names of the faults with a space between; an empty cell where there is none. */
    private void faults(int bits) {
        String separator = ",";
        for (Fault fault : FAULTS) {
            if ((bits & fault.bit()) != 0) {
                row.append(separator).append(fault.name());
                separator = " ";
            }
        }
        if (bits == 0) {
            row.append(',');
        }
    }

    private void decimal(long value, int places) {
        row.append(',');
        Decimals.append(row, value, places);
    }

    private void endRow() {
        row.append('\n');
        try {
            file.writer().append(row);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        row.setLength(0);
    }

    /**
     * Moves the finished table into place.
     *
     * @throws IOException if the last bytes or the move fail
     */
    public void keep() throws IOException {
        file.keep();
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}
