package org.gaugebench.sim.judge;

import java.util.concurrent.ArrayBlockingQueue;
import org.gaugebench.core.port.Register;
import org.gaugebench.core.port.Registers;
import org.gaugebench.sim.rig.Lane;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;

/**
 * A gauge's registers tick by tick, with the time and the truth in front, from a run on a thread of
 * its own that is never more than a few blocks ahead.
 */
final class RegisterStream implements Observer, AutoCloseable {
    /** Cells of a row: time, true charge as bits, then the registers in table order. */
    static final int TIME = 0;

    static final int TRUTH = 1;
    static final int FIRST_REGISTER = 2;
    static final int ROW = FIRST_REGISTER + Registers.COUNT;

    private static final int ROWS_IN_BLOCK = 512;
    private static final int BLOCKS_AHEAD = 4;
    private static final Register[] REGISTERS = Register.values();

    /** Some rows; the last block of a run may be short, and may end with what stopped the run. */
    private static final class Block {
        private final long[] cells;
        private final int rows;
        private final boolean last;
        private final @Nullable Throwable defect;

        Block(long[] cells, int rows, boolean last, @Nullable Throwable defect) {
            this.cells = cells;
            this.rows = rows;
            this.last = last;
            this.defect = defect;
        }
    }

    private final ArrayBlockingQueue<Block> blocks = new ArrayBlockingQueue<>(BLOCKS_AHEAD);
    private final int gauge;
    private final Thread thread;
    private long[] filling = new long[ROWS_IN_BLOCK * ROW];
    private int filled;

    private Block reading = new Block(new long[0], 0, false, null);
    private int at = -1;

    RegisterStream(Scenario scenario, long seed, int gauge) {
        this.gauge = gauge;
        thread = new Thread(() -> run(scenario, seed), "compare");
        thread.setDaemon(true);
        thread.start();
    }

    /** Unwinds a run that nobody reads any more. */
    private static final class Left extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Left() {
            super("nobody reads any more", null, false, false);
        }
    }

    @SuppressWarnings("CatchingUnchecked")
    private void run(Scenario scenario, long seed) {
        try {
            new Rig(scenario, seed, this).run();
            send(true, null);
        } catch (Left e) {
            // as meant
        } catch (Throwable defect) {
            send(true, defect);
        }
    }

    private void send(boolean last, @Nullable Throwable defect) {
        try {
            blocks.put(new Block(filling, filled, last, defect));
        } catch (InterruptedException e) {
            throw new Left();
        }
        filling = new long[ROWS_IN_BLOCK * ROW];
        filled = 0;
    }

    @Override
    public Observer forTicks() {
        return this;
    }

    @Override
    public void onStart(Rig rig) {
        onTick(rig);
    }

    @Override
    public void onTick(Rig rig) {
        int base = filled * ROW;
        filling[base + TIME] = rig.timeMillis();
        filling[base + TRUTH] = Double.doubleToLongBits(rig.truth().chargeAmpHours());
        Lane lane = rig.lanes().get(gauge);
        Registers registers = lane.inspect();
        for (Register register : REGISTERS) {
            filling[base + FIRST_REGISTER + register.ordinal()] = registers.get(register);
        }
        filled++;
        if (filled == ROWS_IN_BLOCK) {
            send(false, null);
        }
    }

    /** Steps to the next row; false after the last one. */
    boolean next() throws InterruptedException {
        at++;
        while (at >= reading.rows) {
            if (reading.last) {
                Throwable defect = reading.defect;
                if (defect != null) {
                    throw new IllegalStateException("a run that was compared died", defect);
                }
                return false;
            }
            reading = blocks.take();
            at = 0;
        }
        return true;
    }

    /** A cell of the present row. */
    long cell(int index) {
        return reading.cells[at * ROW + index];
    }

    @Override
    public void close() {
        thread.interrupt();
    }
}
