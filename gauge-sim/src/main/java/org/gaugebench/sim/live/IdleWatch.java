package org.gaugebench.sim.live;

import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/** Knows how long no window has looked at the page. */
final class IdleWatch {
    /** A page that nobody looks at ends by itself after so long: a lesson's break is shorter. */
    static final long LONGEST_NANOS = TimeUnit.MINUTES.toNanos(30);

    private final LongSupplier nanos;
    private int windows;
    private long sinceNanos;

    IdleWatch(LongSupplier nanos) {
        this.nanos = nanos;
        sinceNanos = nanos.getAsLong();
    }

    synchronized void opened() {
        windows++;
    }

    synchronized void closed() {
        windows--;
        notifyAll();
        sinceNanos = nanos.getAsLong();
    }

    synchronized int windows() {
        return windows;
    }

    /**
     * Waits until no window looks any more.
     *
     * @param millis longest wait; a window that hears nothing does not hold up the end
     */
    synchronized void awaitNone(long millis) {
        long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(millis);
        try {
            while (windows > 0 && System.nanoTime() < end) {
                TimeUnit.NANOSECONDS.timedWait(this, end - System.nanoTime());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Whether the last window has been closed for too long, or none was ever opened. */
    synchronized boolean isOver() {
        return windows == 0 && nanos.getAsLong() - sinceNanos >= LONGEST_NANOS;
    }
}
