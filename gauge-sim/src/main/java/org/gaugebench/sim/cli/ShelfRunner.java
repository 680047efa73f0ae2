package org.gaugebench.sim.cli;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ThreadFactory;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import org.gaugebench.sim.device.PipeCommand;
import org.gaugebench.sim.device.PipeFailure;
import org.gaugebench.sim.judge.RunRecorder;
import org.gaugebench.sim.judge.RunResult;
import org.gaugebench.sim.judge.ShelfCase;
import org.gaugebench.sim.judge.ShelfCase.Ending;
import org.gaugebench.sim.rig.Observer;
import org.gaugebench.sim.rig.Observers;
import org.gaugebench.sim.scenario.Scenario;
import org.jspecify.annotations.Nullable;

/**
 * Runs many scenarios on several threads and hands what came of them on in the order of the list,
 * so that nothing a user sees depends on the number of threads.
 *
 * <p>A run that dies of a defect, or takes too long, is a case like any other: the list goes on. A
 * run that does not even answer its deadline is left to its thread, which ends with the process.
 */
final class ShelfRunner {
    /** What a run that took too long may take to come to its next simulated minute. */
    private static final long GRACE_MILLIS = 2_000;

    /** How far the threads may run ahead of the case that is waited for. */
    private static final int CASES_AHEAD = 16;

    private final int threads;
    private final long timeoutMillis;
    private final boolean failFast;
    private final Simulation simulation;
    private final AtomicBoolean stopped = new AtomicBoolean();
    private final ThreadFactory daemons =
            work -> {
                Thread thread = new Thread(work, "scenario");
                thread.setDaemon(true);
                return thread;
            };

    /** One scenario with its seed, or the reason why it is not to run. */
    record Job(Scenario scenario, long seed, String skipReason, Observer guest, After after) {
        /** Runs with nobody looking on. */
        Job(Scenario scenario, long seed) {
            this(scenario, seed, "", Observer.NONE);
        }

        /** Runs with nothing to do afterwards. */
        Job(Scenario scenario, long seed, String skipReason, Observer guest) {
            this(scenario, seed, skipReason, guest, (result, watch) -> {});
        }
    }

    /** Something that runs a finished scenario again; it counts as part of the run. */
    interface After {
        /**
         * Does it.
         *
         * @param result what came of the run
         * @param watch must look on: it ends what takes too long
         */
        void of(RunResult result, Observer watch);
    }

    /** What a case is run with: the recorder, or something that fails on purpose in a test. */
    interface Simulation {
        RunResult run(Scenario scenario, long seed, Observer guest);
    }

    /** With a program in the place of each main gauge, or null for none. */
    ShelfRunner(ShelfOptions options, @Nullable PipeCommand program) {
        this(
                options.threads(),
                options.timeoutMillis(),
                options.failFast(),
                (scenario, seed, guest) -> RunRecorder.run(scenario, seed, guest, program));
    }

    ShelfRunner(int threads, long timeoutMillis, boolean failFast, Simulation simulation) {
        this.threads = threads;
        this.timeoutMillis = timeoutMillis;
        this.failFast = failFast;
        this.simulation = simulation;
    }

    /**
     * Runs them all; call once.
     *
     * @param jobs in the order in which they are told
     * @param told gets each case, on the calling thread
     */
    void run(List<Job> jobs, Consumer<ShelfCase> told) {
        ExecutorService pool = Executors.newFixedThreadPool(threads, daemons);
        try {
            Deque<Future<ShelfCase>> ahead = new ArrayDeque<>();
            Iterator<Job> left = jobs.iterator();
            for (Job job : jobs) {
                if (stopped.get()) {
                    told.accept(skipped(job, "an earlier scenario was not right, --fail-fast"));
                    continue;
                }
                while (ahead.size() < CASES_AHEAD * threads && left.hasNext()) {
                    Job next = left.next();
                    ahead.add(pool.submit(() -> supervised(next)));
                }
                ShelfCase each = await(job, ahead.remove());
                told.accept(each);
                stopped.set(failFast && !each.isGood());
            }
        } finally {
            stopped.set(true);
            pool.shutdownNow();
        }
    }

    private static ShelfCase skipped(Job job, String why) {
        String told = job.skipReason().isEmpty() ? why : job.skipReason();
        return ShelfCase.skipped(job.scenario(), job.seed(), told);
    }

    private static ShelfCase await(Job job, Future<ShelfCase> future) {
        try {
            return future.get();
        } catch (ExecutionException e) {
            return crashed(job, e.getCause() == null ? e : e.getCause(), 0);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return crashed(job, e, 0);
        }
    }

    private static ShelfCase crashed(Job job, Throwable defect, long tookNanos) {
        return new ShelfCase(
                job.scenario(),
                job.seed(),
                Ending.CRASHED,
                null,
                defect.toString(),
                defect,
                tookNanos);
    }

    private static ShelfCase brokeOff(Job job, PipeFailure failure, long tookNanos) {
        return new ShelfCase(
                job.scenario(),
                job.seed(),
                Ending.BROKE_OFF,
                null,
                String.valueOf(failure.getMessage()),
                failure,
                tookNanos);
    }

    private ShelfCase timedOut(Job job, String manner, long tookNanos) {
        return new ShelfCase(
                job.scenario(),
                job.seed(),
                Ending.TIMED_OUT,
                null,
                "it did not end within " + timeoutMillis / 1e3 + " s" + manner,
                null,
                tookNanos);
    }

    private ShelfCase supervised(Job job) throws InterruptedException {
        if (!job.skipReason().isEmpty()) {
            return skipped(job, "");
        }
        if (timeoutMillis == 0) {
            return simulated(job);
        }
        ExecutorService single = Executors.newSingleThreadExecutor(daemons);
        try {
            return single.submit(() -> simulated(job))
                    .get(timeoutMillis + GRACE_MILLIS, TimeUnit.MILLISECONDS);
        } catch (TimeoutException e) {
            return timedOut(
                    job,
                    " and does not answer: it hangs",
                    (timeoutMillis + GRACE_MILLIS) * 1_000_000);
        } catch (ExecutionException e) {
            return crashed(job, e.getCause() == null ? e : e.getCause(), 0);
        } finally {
            single.shutdownNow();
        }
    }

    /** A case of its own whatever happens: even a stack that overflows spoils one case only. */
    @SuppressWarnings("CatchingUnchecked")
    private ShelfCase simulated(Job job) {
        long startNanos = System.nanoTime();
        Deadline deadline = new Deadline(timeoutMillis, stopped::get);
        try {
            RunResult result =
                    simulation.run(
                            job.scenario(), job.seed(), Observers.both(job.guest(), deadline));
            job.after().of(result, deadline);
            return ShelfCase.finished(result, System.nanoTime() - startNanos);
        } catch (PipeFailure e) {
            return brokeOff(job, e, System.nanoTime() - startNanos);
        } catch (Deadline.Passed e) {
            return timedOut(job, "", System.nanoTime() - startNanos);
        } catch (Throwable defect) {
            return crashed(job, defect, System.nanoTime() - startNanos);
        }
    }
}
