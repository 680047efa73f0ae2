package org.gaugebench.sim.cli;

import java.util.function.BooleanSupplier;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Rig;

/**
 * Ends a run that takes too long, or that nobody waits for any more, at its next simulated minute.
 * It reads the machine's clock, and nothing of that reaches a result: a run ends as it would have,
 * or has no result.
 */
final class Deadline implements Observer {
    private final long endNanos;
    private final boolean limited;
    private final BooleanSupplier stopped;

    /**
     * Starts the clock.
     *
     * @param millis how long the run may take, or 0 for no limit
     * @param stopped says that nobody waits for the run any more
     */
    Deadline(long millis, BooleanSupplier stopped) {
        this.limited = millis > 0;
        this.endNanos = System.nanoTime() + millis * 1_000_000;
        this.stopped = stopped;
    }

    /** Unwinds a run from within. */
    static final class Passed extends RuntimeException {
        private static final long serialVersionUID = 1L;

        Passed() {
            super("the time is over", null, false, false);
        }
    }

    @Override
    public void onMoment(Rig rig) {
        if ((limited && System.nanoTime() - endNanos >= 0) || stopped.getAsBoolean()) {
            throw new Passed();
        }
    }
}
