package org.gaugebench.sim.program;

/**
 * Bytes on their way from the thread that reads a program's output to the one that waits for an
 * answer. Bounded: a program that writes faster than it is read has to wait.
 */
final class ByteQueue {
    private final byte[] ring;
    private long put;
    private long taken;
    private boolean ended;
    private boolean closed;
    private long quietUntilNanos = Long.MAX_VALUE;

    ByteQueue(int size) {
        ring = new byte[size];
    }

    /** Adds bytes as soon as there is room; false when nobody will take any more. */
    synchronized boolean add(byte[] bytes, int count) throws InterruptedException {
        while (count > ring.length - (put - taken) && !closed) {
            wait();
        }
        if (closed) {
            return false;
        }
        int at = (int) (put % ring.length);
        int first = Math.min(count, ring.length - at);
        System.arraycopy(bytes, 0, ring, at, first);
        System.arraycopy(bytes, first, ring, 0, count - first);
        put += count;
        notifyAll();
        return true;
    }

    /** Nothing more will come. */
    synchronized void end() {
        ended = true;
        notifyAll();
    }

    /** The program has ended; what it wrote before may still be on its way for a moment. */
    synchronized void endAfter(long nanos) {
        quietUntilNanos = System.nanoTime() + nanos;
        notifyAll();
    }

    synchronized boolean isEmpty() {
        return put == taken;
    }

    /** Nobody will take any more. */
    synchronized void close() {
        closed = true;
        notifyAll();
    }

    /**
     * Waits for bytes and takes as many as there are.
     *
     * @param into receives them
     * @param from first place in it
     * @param untilNanos on the machine's clock; then the wait is over
     * @return how many, at least 1; {@link #ENDED} or {@link #TOO_LATE}
     * @throws InterruptedException when nobody waits for the run any more
     */
    synchronized int take(byte[] into, int from, long untilNanos) throws InterruptedException {
        while (put == taken) {
            long now = System.nanoTime();
            boolean quiet = quietUntilNanos != Long.MAX_VALUE && now - quietUntilNanos >= 0;
            if (ended || quiet) {
                return ENDED;
            }
            if (now - untilNanos >= 0) {
                return TOO_LATE;
            }
            long left = untilNanos - now;
            if (quietUntilNanos != Long.MAX_VALUE) {
                left = Math.min(left, quietUntilNanos - now);
            }
            wait(left / 1_000_000 + 1);
        }
        int count = (int) Math.min(put - taken, into.length - from);
        int at = (int) (taken % ring.length);
        int first = Math.min(count, ring.length - at);
        System.arraycopy(ring, at, into, from, first);
        System.arraycopy(ring, 0, into, from + first, count - first);
        taken += count;
        notifyAll();
        return count;
    }

    /** Nothing is left and nothing more will come. */
    static final int ENDED = -1;

    /** Nothing came in time. */
    static final int TOO_LATE = -2;
}
