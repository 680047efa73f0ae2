package org.gaugebench.sim.program;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * A running program whose standard input and output belong to one thread of ours.
 *
 * <p>Its output is read by a thread of its own, so that a wait can end; a write that the program
 * does not take is ended by a watchman who kills it. Whatever happens, {@link #kill()} leaves
 * nothing running, and the end of this process does the same for every program still alive.
 */
public final class ChildProgram implements AutoCloseable {
    /** Most bytes of standard error that are kept. */
    public static final int KEPT_ERROR_BYTES = 64 * 1024;

    /** Read ahead of the one who waits; then the program has to wait. */
    private static final int WAITING_BYTES = 256 * 1024;

    private static final int CHUNK_BYTES = 64 * 1024;

    /** A dead program's last words come through the pipe in less; a child may hold it for ever. */
    private static final long LAST_WORDS_NANOS = 300_000_000;

    /** A killed process is gone in far less; the wait only spares the eye a zombie. */
    private static final long GONE_MILLIS = 2_000;

    private static final String MARK = "GAUGEBENCH_PROGRAM";
    private static final Set<ChildProgram> ALIVE = ConcurrentHashMap.newKeySet();

    static {
        Runtime.getRuntime()
                .addShutdownHook(
                        new Thread(() -> ALIVE.forEach(ChildProgram::kill), "programs-end"));
    }

    private final Process process;
    private final String mark;
    private final OutputStream input;
    private final ByteQueue output = new ByteQueue(WAITING_BYTES);
    private final LastBytes errors = new LastBytes(KEPT_ERROR_BYTES);
    private final Thread errorReader;
    private final Watchman.Entry watch;

    private ChildProgram(Process process, String mark) {
        this.process = process;
        this.mark = mark;
        input = process.getOutputStream();
        ALIVE.add(this);
        // Nothing that it returns matters: the queue is told.
        var unused = process.onExit().thenRun(() -> output.endAfter(LAST_WORDS_NANOS));
        daemon("program-output", this::readOutput).start();
        errorReader = daemon("program-errors", this::readErrors);
        errorReader.start();
        watch = Watchman.watch(this::kill);
    }

    /**
     * Starts a program, without a shell, in the working folder of this one.
     *
     * @param words the program and its arguments
     * @return the running program
     * @throws ProgramException when the system cannot start it
     */
    public static ChildProgram start(List<String> words) {
        String mark = UUID.randomUUID().toString();
        ProcessBuilder builder = new ProcessBuilder(words);
        builder.environment().put(MARK, mark);
        try {
            return new ChildProgram(builder.start(), MARK + "=" + mark);
        } catch (IOException e) {
            String message = String.valueOf(e.getMessage());
            throw new ProgramException(
                    "it cannot be started: " + message.replaceFirst("^.*error=\\d+, ", ""));
        }
    }

    private static Thread daemon(String name, Runnable work) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        return thread;
    }

    private void readOutput() {
        byte[] chunk = new byte[CHUNK_BYTES];
        try (InputStream from = process.getInputStream()) {
            int count = from.read(chunk);
            while (count >= 0 && output.add(chunk, count)) {
                count = from.read(chunk);
            }
        } catch (IOException | InterruptedException e) {
            // Killed under our hands: the same as an end.
        }
        output.end();
    }

    private void readErrors() {
        byte[] chunk = new byte[CHUNK_BYTES];
        try (InputStream from = process.getErrorStream()) {
            for (int count = from.read(chunk); count >= 0; count = from.read(chunk)) {
                errors.add(chunk, count);
            }
        } catch (IOException e) {
            // as above
        }
    }

    /**
     * Writes to the program's standard input.
     *
     * @param bytes to write
     * @param count the first so many of them
     * @param millis how long the program may take to read them
     * @throws ProgramException when the program does not read any more
     */
    void write(byte[] bytes, int count, long millis) {
        watch.begin(millis);
        try {
            input.write(bytes, 0, count);
            input.flush();
        } catch (IOException e) {
            throw watch.isLate() ? late("read its input", millis) : noLongerReads();
        } finally {
            watch.end();
        }
    }

    private static ProgramException late(String what, long millis) {
        return new ProgramException("it did not %s within %s s".formatted(what, millis / 1e3));
    }

    private ProgramException noLongerReads() {
        String end = ending(LAST_WORDS_NANOS / 1_000_000);
        return new ProgramException(end.isEmpty() ? "it closed its standard input" : end);
    }

    /** Whether it has written something that nobody has read yet. */
    boolean hasOutput() {
        return !output.isEmpty();
    }

    /**
     * Waits for output and takes what there is.
     *
     * @param into receives it
     * @param from first place in it
     * @param sinceNanos when the question was asked, on the machine's clock
     * @param millis how long the answer may take from then
     * @return number of bytes, at least 1
     * @throws ProgramException when nothing comes, too much came, or nobody waits any more
     */
    int read(byte[] into, int from, long sinceNanos, long millis) {
        int count;
        try {
            count = output.take(into, from, sinceNanos + millis * 1_000_000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new ProgramException("nobody waits for it any more");
        }
        if (count == ByteQueue.TOO_LATE) {
            throw late("answer", millis);
        }
        if (count == ByteQueue.ENDED) {
            String end = ending(LAST_WORDS_NANOS / 1_000_000);
            throw new ProgramException(end.isEmpty() ? "it closed its standard output" : end);
        }
        return count;
    }

    /** How it ended, in words; empty while it runs. */
    private String ending(long waitMillis) {
        try {
            if (process.waitFor(waitMillis, TimeUnit.MILLISECONDS)) {
                return words(process.exitValue());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return "";
    }

    private static String words(int exitCode) {
        String signal = exitCode > 128 ? " (killed by signal %s?)".formatted(exitCode - 128) : "";
        return "it ended with exit code " + exitCode + signal;
    }

    /**
     * Closes the program's standard input and waits for its end.
     *
     * @param millis how long it may take
     * @throws ProgramException when it does not end, ends with another exit code than 0, or had
     *     more to say
     */
    public void finish(long millis) {
        try {
            closeInput();
            if (!process.waitFor(millis, TimeUnit.MILLISECONDS)) {
                throw late("end", millis);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new ProgramException("nobody waits for it any more");
        }
        if (process.exitValue() != 0) {
            throw new ProgramException(words(process.exitValue()));
        }
        if (hasOutput()) {
            throw new ProgramException("it wrote more than it was asked for");
        }
    }

    private void closeInput() {
        try {
            input.close();
        } catch (IOException e) {
            // It does not read any more; its exit code tells the rest.
        }
    }

    /** The end of its standard error. */
    public @Nullable String errorText() {
        try {
            // What was written before an end is still on its way.
            errorReader.join(process.isAlive() ? 1 : LAST_WORDS_NANOS / 1_000_000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        String text = errors.text();
        return text.isBlank() ? null : text;
    }

    /** Kills it and all that it started; may be called again. */
    public void kill() {
        Leftovers.kill(process, mark);
        try {
            process.waitFor(GONE_MILLIS, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        ALIVE.remove(this);
        output.end();
        output.close();
    }

    /** Its number in the system, for tests. */
    public ProcessHandle handle() {
        return process.toHandle();
    }

    @Override
    public void close() {
        watch.close();
        kill();
        closeInput();
    }
}
