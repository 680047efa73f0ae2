package org.gaugebench.sim.program;

import java.nio.charset.StandardCharsets;

/** The last bytes of a stream, and no more of it; written and read by different threads. */
final class LastBytes {
    private final byte[] ring;
    private long total;

    /**
     * Keeps nothing yet.
     *
     * @param size most bytes kept
     */
    LastBytes(int size) {
        ring = new byte[size];
    }

    /** Adds the first bytes of an array. */
    synchronized void add(byte[] bytes, int count) {
        for (int i = 0; i < count; i++) {
            ring[(int) (total++ % ring.length)] = bytes[i];
        }
    }

    /** What is kept, oldest first, as text; control characters except line feeds become points. */
    synchronized String text() {
        int kept = (int) Math.min(total, ring.length);
        byte[] bytes = new byte[kept];
        for (int i = 0; i < kept; i++) {
            bytes[i] = ring[(int) ((total - kept + i) % ring.length)];
        }
        return new String(bytes, StandardCharsets.UTF_8)
                .replaceAll("\r?\n", "\n")
                .replaceAll("[\\p{Cntrl}&&[^\n]]", ".");
    }
}
