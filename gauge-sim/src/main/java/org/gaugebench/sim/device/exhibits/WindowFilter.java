package org.gaugebench.sim.device.exhibits;

/**
 * The mean of the last 30 minutes, in slots of 5 seconds; of less while there is less. There is one
 * slot more than the window holds, and of the oldest only that part counts which is still inside.
 */
final class WindowFilter implements HoursFilter {
    private static final long WINDOW_MILLIS = 1_800_000;
    private static final long SLOT_MILLIS = 5_000;
    private static final int SLOTS = (int) (WINDOW_MILLIS / SLOT_MILLIS) + 1;

    private final double[] slotNanocoulombs = new double[SLOTS];
    private final long[] slotMillis = new long[SLOTS];
    private double lastMicroamps;
    private int slot;

    WindowFilter(boolean fromZero) {
        if (fromZero) {
            for (int i = 0; i < SLOTS; i++) {
                slotMillis[i] = SLOT_MILLIS;
            }
            clearSlot();
        }
    }

    @Override
    public void add(double microamps, long millis) {
        lastMicroamps = microamps;
        if (millis <= 0) {
            return;
        }
        if (slotMillis[slot] >= SLOT_MILLIS) {
            slot = (slot + 1) % SLOTS;
            clearSlot();
        }
        slotNanocoulombs[slot] += microamps * millis;
        slotMillis[slot] += millis;
    }

    private void clearSlot() {
        slotNanocoulombs[slot] = 0;
        slotMillis[slot] = 0;
    }

    /** Summed anew each time, in the same order: a running sum of floats would drift. */
    @Override
    public double microamps() {
        double sum = 0;
        long millis = 0;
        for (int back = 0; back < SLOTS && millis < WINDOW_MILLIS; back++) {
            int i = (slot - back + SLOTS) % SLOTS;
            if (slotMillis[i] > 0) {
                long inside = Math.min(slotMillis[i], WINDOW_MILLIS - millis);
                sum += slotNanocoulombs[i] * inside / slotMillis[i];
                millis += inside;
            }
        }
        return millis == 0 ? lastMicroamps : sum / millis;
    }
}
