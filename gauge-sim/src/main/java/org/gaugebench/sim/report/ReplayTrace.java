package org.gaugebench.sim.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.sim.rig.ReplayListener;

/**
 * Writes one CSV row a tick: time, counts, and what the gauge made of them. The file is written
 * beside its place and moved there by {@link #finish}; without that nothing remains of it.
 */
public final class ReplayTrace implements ReplayListener, AutoCloseable {
    private static final String HEADER =
            "time_s,shunt_counts,current_A,voltage_V,counted_Ah,charge_Ah,"
                    + "state_of_charge_percent\n";
    private static final BigDecimal NANOCOULOMBS_PER_AMP_HOUR =
            BigDecimal.valueOf(3_600_000_000_000L);
    private static final int CHARGE_DECIMALS = 9;

    private final FreshFile file;
    private final Writer out;

    /**
     * Opens a file beside the target.
     *
     * @param target where the trace goes
     * @throws IOException if its folder cannot be written
     */
    public ReplayTrace(Path target) throws IOException {
        file = new FreshFile(target);
        out = file.writer();
        out.write(HEADER);
    }

    @Override
    public void afterTick(long millis, Registers registers) {
        long net =
                registers.get(Register.IN_NANOCOULOMBS) - registers.get(Register.OUT_NANOCOULOMBS);
        try {
            out.write(decimal(millis, 3));
            out.write(',');
            out.write(Long.toString(registers.get(Register.SHUNT_COUNTS)));
            out.write(',');
            out.write(decimal(registers.get(Register.CURRENT_MICROAMPS), 6));
            out.write(',');
            out.write(decimal(registers.get(Register.VOLTAGE_MICROVOLTS), 6));
            out.write(',');
            out.write(ampHours(net));
            out.write(',');
            out.write(ampHours(registers.get(Register.CHARGE_NANOCOULOMBS)));
            out.write(',');
            out.write(decimal(registers.get(Register.STATE_OF_CHARGE_PARTS_PER_MILLION), 4));
            out.write('\n');
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String decimal(long value, int decimals) {
        return BigDecimal.valueOf(value, decimals).toPlainString();
    }

    private static String ampHours(long nanocoulombs) {
        return BigDecimal.valueOf(nanocoulombs)
                .divide(NANOCOULOMBS_PER_AMP_HOUR, CHARGE_DECIMALS, RoundingMode.HALF_EVEN)
                .toPlainString();
    }

    /**
     * Moves the finished file to its place, over an older one.
     *
     * @throws IOException if the last bytes or the move fail
     */
    public void finish() throws IOException {
        file.keep();
    }

    /** Removes what was not finished. */
    @Override
    public void close() throws IOException {
        file.close();
    }
}
