package org.gaugebench.sim.program;

import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** One thread for all programs, which kills those that take too long to read what we write. */
final class Watchman {
    private static final long ROUND_MILLIS = 100;
    private static final Set<Entry> ENTRIES = ConcurrentHashMap.newKeySet();

    static {
        Thread thread = new Thread(Watchman::walk, "program-watch");
        thread.setDaemon(true);
        thread.start();
    }

    private Watchman() {}

    /** A write that may take a time, and no longer. */
    static final class Entry {
        private final Runnable kill;
        private volatile long endNanos;
        private volatile boolean writing;
        private volatile boolean late;

        private Entry(Runnable kill) {
            this.kill = kill;
        }

        void begin(long millis) {
            endNanos = System.nanoTime() + millis * 1_000_000;
            writing = true;
        }

        void end() {
            writing = false;
        }

        boolean isLate() {
            return late;
        }

        void close() {
            ENTRIES.remove(this);
        }

        private void look() {
            if (writing && System.nanoTime() - endNanos >= 0) {
                late = true;
                kill.run();
            }
        }
    }

    static Entry watch(Runnable kill) {
        Entry entry = new Entry(kill);
        ENTRIES.add(entry);
        return entry;
    }

    private static void walk() {
        while (true) {
            try {
                Thread.sleep(ROUND_MILLIS);
            } catch (InterruptedException e) {
                return;
            }
            ENTRIES.forEach(Entry::look);
        }
    }
}
