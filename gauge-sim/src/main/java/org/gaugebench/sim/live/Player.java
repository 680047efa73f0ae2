package org.gaugebench.sim.live;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import java.util.function.LongSupplier;

/**
 * Lets a bench run in step with the clock of the machine, and keeps everybody who looks at it or
 * works with it in a row. The clock decides how far the run is, never what comes of it.
 */
final class Player implements AutoCloseable {
    /** As fast as the machine can. */
    static final double FLAT_OUT = Double.POSITIVE_INFINITY;

    /** Slowest speed: real time. */
    static final double SLOWEST = 1;

    /** Fastest speed that can be asked for: a week in a second. */
    static final double FASTEST = 604_800;

    /** Up to ten minutes in a second the past is kept by the half second. */
    private static final double FINE_UP_TO = 600;

    private static final double NANOS_PER_MILLI = 1e6;

    /** Nobody waits longer than this for the bench: a tick takes well under a microsecond. */
    private static final long SLICE_NANOS = 6_000_000;

    private static final int TICKS_AT_ONCE = 2_000;

    /** About 60 slices a second. */
    private static final long PAUSE_MILLIS = 16;

    /** Behind by so much the machine cannot keep up: it goes on from where it is. */
    private static final long LAG_NANOS = 300_000_000;

    private final LongSupplier nanos;
    private final ReentrantLock lock = new ReentrantLock(true);
    private final Condition moved = lock.newCondition();
    private final Condition wake = lock.newCondition();
    private Bench bench;
    private boolean running;
    private boolean closed;
    private boolean revealed;
    private double speed = 3_600;
    private double present = SLOWEST;
    private long untilMillis;
    private long untilEvents = Long.MAX_VALUE;
    private long anchorNanos;
    private long anchorMillis;
    private long version = 1;
    private int runs = 1;

    Player(Bench bench, LongSupplier nanos) {
        this.bench = bench;
        this.nanos = nanos;
    }

    /** Begins to let it run, on a thread of its own that does not keep the process alive. */
    void start() {
        Thread thread = new Thread(this::loop, "bench");
        thread.setDaemon(true);
        thread.start();
    }

    private void loop() {
        lock.lock();
        try {
            while (!closed) {
                if (running) {
                    slice();
                    // Lets go of the lock, so that others come in between two slices.
                    wake.await(present == FLAT_OUT ? 1 : PAUSE_MILLIS, TimeUnit.MILLISECONDS);
                } else {
                    wake.await();
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            lock.unlock();
        }
    }

    /** Runs on as far as the clock says, but not longer than a slice. */
    void slice() {
        lock.lock();
        try {
            if (!running) {
                return;
            }
            long begin = nanos.getAsLong();
            long target = Math.min(untilMillis, dueMillis(begin));
            long tick = bench.scenario().tickMillis();
            long end = target - target % tick;
            boolean late = false;
            while (bench.rig().timeMillis() < end && !late && !isEventReached()) {
                long now = bench.rig().timeMillis();
                // An event is met within a minute, the shortest time in which a rule decides.
                long most = untilEvents == Long.MAX_VALUE ? TICKS_AT_ONCE * tick : 60_000;
                bench.advanceTo(Math.min(end, now + Math.max(tick, most)));
                late = nanos.getAsLong() - begin > SLICE_NANOS;
            }
            if (late && nanos.getAsLong() - begin + lagNanos() > LAG_NANOS) {
                anchor();
            }
            if (bench.rig().timeMillis() >= untilMillis || bench.isEnded() || isEventReached()) {
                pauseNow();
            }
            changed();
        } finally {
            lock.unlock();
        }
    }

    private long dueMillis(long now) {
        if (present == FLAT_OUT) {
            return Long.MAX_VALUE;
        }
        return anchorMillis + (long) ((now - anchorNanos) / NANOS_PER_MILLI * present);
    }

    private double lagNanos() {
        if (present == FLAT_OUT) {
            return 0;
        }
        long behind = dueMillis(nanos.getAsLong()) - bench.rig().timeMillis();
        return behind / present * NANOS_PER_MILLI;
    }

    private boolean isEventReached() {
        return bench.events().count() >= untilEvents;
    }

    /** A run that the finest level holds from end to end: seconds matter in it at any speed. */
    private boolean isShort() {
        return bench.scenario().durationMillis() <= History.widthMillis(0) * History.BUCKETS;
    }

    private void anchor() {
        anchorNanos = nanos.getAsLong();
        anchorMillis = bench.rig().timeMillis();
    }

    private void changed() {
        version++;
        moved.signalAll();
    }

    private void go(double atSpeed, long until, long events) {
        present = atSpeed;
        untilMillis = Math.min(until, bench.scenario().durationMillis());
        untilEvents = events;
        running = !bench.isEnded();
        bench.setFine(present <= FINE_UP_TO || isShort());
        anchor();
        changed();
        wake.signalAll();
    }

    private void pauseNow() {
        running = false;
        untilEvents = Long.MAX_VALUE;
    }

    /** Goes on at the chosen speed. */
    void play() {
        locked(it -> go(speed, Long.MAX_VALUE, Long.MAX_VALUE));
    }

    /** Stands still. */
    void pause() {
        locked(
                it -> {
                    pauseNow();
                    changed();
                });
    }

    /** One tick, and stands still. */
    void step() {
        locked(
                it -> {
                    pauseNow();
                    it.setFine(true);
                    it.advanceTo(it.rig().timeMillis() + it.scenario().tickMillis());
                    changed();
                });
    }

    /** On to the next event or change of the timeline, as fast as it goes. */
    void toNextEvent() {
        locked(it -> go(FLAT_OUT, Long.MAX_VALUE, it.events().count() + 1));
    }

    /** On to a moment, as fast as it goes. */
    void runTo(long millis) {
        // The last whole tick: a moment between two would never be reached.
        locked(it -> go(FLAT_OUT, millis - millis % it.scenario().tickMillis(), Long.MAX_VALUE));
    }

    /**
     * Chooses the speed.
     *
     * @param wanted simulated seconds in a second, {@link #SLOWEST} to {@link #FASTEST}
     */
    void setSpeed(double wanted) {
        locked(
                it -> {
                    speed = Math.min(Math.max(wanted, SLOWEST), FASTEST);
                    if (running && present != FLAT_OUT) {
                        go(speed, untilMillis, untilEvents);
                    } else {
                        changed();
                    }
                });
    }

    /** Shows the truth to everybody, or hides it. */
    void setRevealed(boolean shown) {
        locked(
                it -> {
                    revealed = shown;
                    changed();
                });
    }

    /** For the next class: back to the start, standing, with the truth hidden. */
    void reset() {
        locked(
                it -> {
                    it.reset();
                    fresh();
                });
    }

    /** Sets another bench up. */
    void load(Bench another) {
        locked(
                it -> {
                    bench = another;
                    fresh();
                });
    }

    private void fresh() {
        pauseNow();
        revealed = false;
        runs++;
        changed();
    }

    /** Something to be done with the bench. */
    interface Work<E extends Exception> {
        /** Does it. */
        void on(Bench bench) throws E;
    }

    /** Does something while the bench stands between two ticks; whoever looks hears of it. */
    <E extends Exception> void act(Work<E> work) throws E {
        lock.lock();
        try {
            work.on(bench);
            changed();
        } finally {
            lock.unlock();
        }
    }

    private void locked(Work<RuntimeException> work) {
        lock.lock();
        try {
            work.on(bench);
        } finally {
            lock.unlock();
        }
    }

    /** Looks while the bench stands between two ticks. */
    <T> T look(Function<View, T> eye) {
        lock.lock();
        try {
            return eye.apply(new View(bench, version, running, speed, present, revealed, runs));
        } finally {
            lock.unlock();
        }
    }

    /**
     * What there is to see, good only within {@link #look}.
     *
     * @param bench the run
     * @param version rises with everything that changes
     * @param running whether it goes on by itself
     * @param speed that was chosen, simulated seconds in a second
     * @param present at which it runs
     * @param revealed whether the truth is shown
     * @param runs counts from 1, and on with every start from the beginning
     */
    record View(
            Bench bench,
            long version,
            boolean running,
            double speed,
            double present,
            boolean revealed,
            int runs) {}

    /**
     * Waits for something new.
     *
     * @param seen version that is known
     * @param millis longest wait
     * @return whether there is something new, and it is not over
     */
    boolean awaitNewer(long seen, long millis) throws InterruptedException {
        lock.lock();
        try {
            long left = TimeUnit.MILLISECONDS.toNanos(millis);
            while (version <= seen && !closed && left > 0) {
                left = moved.awaitNanos(left);
            }
            return version > seen && !closed;
        } finally {
            lock.unlock();
        }
    }

    /** Whether it is over. */
    boolean isClosed() {
        lock.lock();
        try {
            return closed;
        } finally {
            lock.unlock();
        }
    }

    @Override
    public void close() {
        lock.lock();
        try {
            closed = true;
            running = false;
            moved.signalAll();
            wake.signalAll();
        } finally {
            lock.unlock();
        }
    }
}
