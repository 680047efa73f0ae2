package org.gaugebench.sim.study;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * Some threads that run devices. What comes back stands in the order of the list, whatever the
 * number of threads: a device knows nothing of the others.
 */
public final class Workers implements AutoCloseable {
    private final ExecutorService pool;
    private final Runnable onDone;

    /**
     * Starts the threads.
     *
     * @param threads at least 1
     * @param onDone is told of each device that has run, by the thread that waits
     */
    public Workers(int threads, Runnable onDone) {
        this.onDone = onDone;
        this.pool =
                Executors.newFixedThreadPool(
                        threads,
                        work -> {
                            Thread thread = new Thread(work, "device");
                            thread.setDaemon(true);
                            return thread;
                        });
    }

    /** One device to run. */
    interface Job {
        DeviceRow run() throws StudyException;
    }

    /** Runs all of them. */
    List<DeviceRow> run(List<Job> jobs) throws StudyException {
        List<Future<DeviceRow>> futures = new ArrayList<>();
        for (Job job : jobs) {
            futures.add(pool.submit(job::run));
        }
        List<DeviceRow> rows = new ArrayList<>(jobs.size());
        for (Future<DeviceRow> future : futures) {
            rows.add(await(future));
            onDone.run();
        }
        return rows;
    }

    private static DeviceRow await(Future<DeviceRow> future) throws StudyException {
        try {
            return future.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new StudyException("the study was interrupted");
        } catch (ExecutionException e) {
            if (e.getCause() instanceof StudyException known) {
                throw known;
            }
            throw new IllegalStateException("a device cannot be run", e.getCause());
        }
    }

    @Override
    public void close() {
        pool.shutdownNow();
    }
}
