package org.gaugebench.sim.tune;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * Some threads that run cases. What comes back stands in the order of the list, whatever the number
 * of threads: a run knows nothing of the others.
 */
public final class TunePool implements AutoCloseable {
    private final ExecutorService pool;
    private final Runnable onDone;

    /**
     * Starts the threads.
     *
     * @param threads at least 1
     * @param onDone is told of each run that is done, by the thread that waits
     */
    public TunePool(int threads, Runnable onDone) {
        this.onDone = onDone;
        this.pool =
                Executors.newFixedThreadPool(
                        threads,
                        work -> {
                            Thread thread = new Thread(work, "tune");
                            thread.setDaemon(true);
                            return thread;
                        });
    }

    List<CaseScore> run(List<Callable<CaseScore>> jobs) {
        List<Future<CaseScore>> futures = new ArrayList<>();
        for (Callable<CaseScore> job : jobs) {
            futures.add(pool.submit(job));
        }
        List<CaseScore> scores = new ArrayList<>(jobs.size());
        for (Future<CaseScore> future : futures) {
            scores.add(await(future));
            onDone.run();
        }
        return scores;
    }

    private static CaseScore await(Future<CaseScore> future) {
        try {
            return future.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("the search was interrupted", e);
        } catch (ExecutionException e) {
            throw new IllegalStateException("a case cannot be run", e.getCause());
        }
    }

    @Override
    public void close() {
        pool.shutdownNow();
    }
}
